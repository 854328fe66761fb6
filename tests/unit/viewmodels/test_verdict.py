"""The review in a few words."""

import pytest

from rigbuilder.model.document import put
from rigbuilder.model.usual import usual_document
from rigbuilder.viewmodels.verdict import verdict
from tests.unit.viewmodels.parts import demo_card, make_bench

pytestmark = pytest.mark.usefixtures("qapp")


def test_a_faulty_rig_is_counted_by_severity() -> None:
    found = verdict(make_bench(demo_card()))
    assert found.kind == "fault"
    assert "fault" in found.text
    assert found.field == ""


def test_a_usual_rig_has_neither_fault_nor_risk() -> None:
    found = verdict(make_bench(usual_document("frog")))
    assert found.kind in ("right", "note")


def test_a_card_that_cannot_be_reviewed_leads_to_its_first_field() -> None:
    bench = make_bench(put(put(demo_card(), "main.test", "16 bananas"), "drag", "x"))
    found = verdict(bench)
    assert found.text == "2 fields to fill in or mend"
    assert found.field == "main.test"


def test_a_card_without_a_rod_leads_to_the_label_of_the_rod() -> None:
    document = demo_card()
    del document["rod"]
    assert verdict(make_bench(document)).field == "rod.label"
