"""Every shipped row says how it is known, and its figures say their unit."""

import re
import tomllib
from collections.abc import Iterator

import pytest
from pydantic import BaseModel, ValidationError

from rigbuilder import resources
from rigbuilder.reference.load import citations, load
from rigbuilder.reference.ranges import Range, Span
from rigbuilder.reference.rows import Row
from rigbuilder.reference.texts import Term
from rigbuilder.sources import Kind, Source

UNITS = re.compile(
    r"_(lb|n|oz|kg|m|in|yd|pa|c|m2|m_s|n_m|kg_m3|g_kg|kg_m3|months|outings)$|_lb_m$|_lb_per_oz$|_share$|_ratio$"
)
DIMENSIONLESS = {
    "ratio",  # gear ratio or thicker over thinner diameter
    "size",  # size numbers of reels
    "numbers",
    "value",  # an Estimate names its unit beside it
    "test",  # steps along a ladder
    "leader_test",
    "leader_length",
    "lure_weight",
    "percent",
    "submerged",
    "length_exponent",
    "backing_cast_factor",
    "reel_share_smooth",
    "above",  # a clause is in the SI unit of its field
    "below",
    "efficiency",
    "sizes",
    "action_factor",
}


def _models(value: object, place: str = "") -> Iterator[tuple[str, BaseModel]]:
    if isinstance(value, BaseModel):
        yield place, value
        for name in type(value).model_fields:
            yield from _models(getattr(value, name), f"{place}/{name}")
    elif hasattr(value, "items"):
        for key, inner in value.items():
            yield from _models(inner, f"{place}/{key}")
    elif isinstance(value, tuple):
        for index, inner in enumerate(value):
            yield from _models(inner, f"{place}/{index}")


ALL = list(_models(load()))
ROWS = [(place, row) for place, row in ALL if isinstance(row, Row)]


def test_there_are_rows_to_walk() -> None:
    assert len(ROWS) > 500


def test_every_row_says_how_it_is_known() -> None:
    for place, row in ROWS:
        assert row.sources, place
        assert row.sources[0].kind is row.kind or row.kind is Kind.PUBLISHED, place


def test_what_is_called_published_cites_a_published_work() -> None:
    for place, row in ROWS:
        cited = [source for source in row.sources if source.kind is Kind.PUBLISHED]
        assert len(cited) == len(row.cite), place
        assert row.kind is not Kind.PUBLISHED or cited, place


def test_only_good_sources_are_listed_and_each_is_cited() -> None:
    table = tomllib.loads(resources.read_text("sources.toml"))
    assert {row["grade"] for row in table.values()} == {"A", "B"}
    used = {key for _, row in ROWS for key in row.cite}
    assert used <= set(table)


def test_sources_name_no_address_and_no_shop() -> None:
    for source in citations().values():
        assert "http" not in str(source)
        assert "www" not in str(source)


def test_figures_carry_their_unit_in_their_name() -> None:
    for place, model in ALL:
        for name in type(model).model_fields:
            value = getattr(model, name)
            numeric = isinstance(value, float | Span | Range) and not isinstance(value, bool)
            assert not numeric or UNITS.search(name) or name in DIMENSIONLESS, f"{place}: {name}"


def test_texts_are_sentences_without_source_codes_or_leftovers() -> None:
    for name in (
        "techniques",
        "knots",
        "lines",
        "adjusters",
        "mistakes",
        "glossary",
        "safety",
        "drag",
        "filling",
    ):
        text = resources.read_text(f"{name}.toml")
        assert not re.search(r"\[[ST]\d\d\]|COMMON PRACTICE", text), name


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ({"term": "a", "meaning": "b", "kind": "published"}, "cites no source"),
        ({"term": "a", "meaning": "b", "kind": "hearsay"}, "hearsay"),
        ({"term": "a", "meaning": "b", "kind": "from memory", "cite": ["nobody"]}, "nobody"),
        ({"term": "a", "meaning": "b", "kind": "from memory", "mening": "c"}, "mening"),
        ({"term": "a", "meaning": "b"}, "kind"),
    ],
)
def test_a_row_that_hides_its_source_is_refused(row: dict[str, object], said: str) -> None:
    with pytest.raises(ValidationError, match=said):
        Term.model_validate(row, context={"citations": {"x": Source(Kind.PUBLISHED, "X")}})
