"""The JSON Schema of a card accepts what ships and refuses what it should."""

import json

import jsonschema
import pytest

from rigbuilder import resources
from rigbuilder.model.document import put
from rigbuilder.model.schema import card_schema
from rigbuilder.model.usual import usual_document

SHIPPED = sorted(resources.path("usual").glob("*.rigcard")) + sorted(resources.path("demo").glob("*.rigcard"))


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_shipped_cards_fit_the_schema(path) -> None:  # type: ignore[no-untyped-def]
    jsonschema.validate(json.loads(path.read_text(encoding="utf-8")), card_schema())


@pytest.mark.parametrize(
    ("field", "value"),
    [("main.type", "string"), ("main.test", 12), ("format", "other"), ("tags", "x"), ("log", [{"on": 1}])],
)
def test_what_a_card_may_not_say_is_refused(field: str, value: object) -> None:
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(put(usual_document("frog"), field, value), card_schema())


def test_the_schema_is_itself_valid() -> None:
    jsonschema.Draft202012Validator.check_schema(card_schema())
