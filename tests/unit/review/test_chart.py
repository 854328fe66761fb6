"""The line chart is the same review with every other line on the reel."""

from typing import Any

import pytest

from rigbuilder.model.document import put_all
from rigbuilder.model.reading import read
from rigbuilder.model.rig import Rig
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.reference.words import LineType, Rank
from rigbuilder.review import offered
from rigbuilder.review.chart import SHOWN, Cell, Grade, chart
from rigbuilder.review.core import Severity
from rigbuilder.review.engine import Report, review
from rigbuilder.review.speak import Speaker


def rig_of(technique: str, changes: dict[str, Any] | None = None) -> Rig:
    rig = read(put_all(usual_document(technique), changes or {}), load()).rig
    assert rig is not None
    return rig


def cells_of(technique: str, changes: dict[str, Any] | None = None) -> list[Cell]:
    return chart(rig_of(technique, changes), load(), House.shipped())


def test_offers_every_type_and_test_and_marks_the_present_one() -> None:
    cells = cells_of("frog")
    for kind in SHOWN:
        assert [cell.test_lb for cell in cells if cell.type is kind] == [
            float(t) for t in offered.tests_lb()[kind]
        ]
    (present,) = [cell for cell in cells if cell.present]
    assert (present.type, present.test_lb) == (LineType.BRAID, 50)


def test_own_odd_test_stands_among_the_others() -> None:
    assert [cell.test_lb for cell in cells_of("flip-jig", {"main.test": "19 lb"}) if cell.present] == [19.0]


def _said(report: Report) -> list[tuple[str, Severity, str]]:
    return [(found.rule.name, found.severity, found.headline(Speaker())) for found in report.findings]


@pytest.mark.parametrize("technique", ["frog", "drop-shot", "spinnerbait", "carolina"])
def test_grade_is_the_worst_reason_of_the_same_review(technique: str) -> None:
    for cell in cells_of(technique):
        assert _said(cell.report) == _said(review(cell.report.case.rig, load(), House.shipped()))
        verdict = cell.report.verdict
        assert (cell.grade is Grade.NEVER) == (verdict is Severity.FAULT)
        assert (cell.grade is Grade.POOR) == (verdict is Severity.RISK)
        assert (cell.because is None) == (not cell.report.findings)


@pytest.mark.parametrize("technique", sorted(load().techniques))
def test_line_of_the_usual_rig_is_first_choice_or_works(technique: str) -> None:
    (present,) = [cell for cell in cells_of(technique) if cell.present]
    assert present.grade in (Grade.FIRST_CHOICE, Grade.WORKS)


@pytest.mark.parametrize("technique", ["walking-bait", "popper", "frog", "float-rig", "inshore-topwater"])
def test_type_ranked_never_is_never_in_any_test(technique: str) -> None:
    never = {kind for kind in SHOWN if load().techniques[technique].lines[kind].rank is Rank.NEVER}
    assert never
    assert {cell.grade for cell in cells_of(technique) if cell.type in never} == {Grade.NEVER}


def test_candidates_carry_what_practice_would_hang_on_them_unless_pinned() -> None:
    braid = next(c for c in cells_of("spinnerbait") if c.type is LineType.BRAID and c.test_lb == 40)
    assert braid.report.case.rig.backing is not None
    pinned = next(
        c
        for c in cells_of("spinnerbait", {"pinned": ["backing"], "backing": None})
        if c.type is LineType.BRAID and c.test_lb == 40
    )
    assert pinned.report.case.rig.backing is None
    assert pinned.grade is Grade.NEVER


def test_second_ring_types_may_be_asked_for() -> None:
    cells = chart(rig_of("panfish-jig"), load(), House.shipped(), extra=(LineType.FUSED_BRAID,))
    assert LineType.FUSED_BRAID in {cell.type for cell in cells}


def test_another_line_has_no_kink_and_no_history() -> None:
    old = {"log": [{"on": "2020-01-01", "what": "filled"}, {"on": "2026-01-01", "what": "retied"}]}
    for changes in ({"main.condition": "kinked"}, old):
        cells = cells_of("texas-open", changes)
        (present,) = [cell for cell in cells if cell.present]
        assert present.grade in (Grade.NEVER, Grade.POOR)
        assert any(cell.grade is Grade.FIRST_CHOICE for cell in cells if cell.type is LineType.FLUOROCARBON)
