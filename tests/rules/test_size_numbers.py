"""A braid sold by its PE number is judged by the end of its tests that speaks for it (common practice)."""

import pytest

from rigbuilder.model.document import put_all
from rigbuilder.model.usual import usual_document
from tests.rules.examples import reviewed

BELOW, ABOVE, ROD = "test-below-practice", "test-above-practice", "test-below-rod"


@pytest.mark.parametrize(
    ("size", "spoken"),
    [("PE 0.1", {BELOW}), ("PE 0.6", set()), ("PE 0.8", set()), ("PE 1", set()), ("PE 3", {ABOVE})],
)
def test_a_ned_rig_takes_the_usual_size_numbers(size: str, spoken: set[str]) -> None:
    changes = {"main.test": size, "main.diameter": None, "rod.label": None, "rod.line": "4-12 lb"}
    _, report = reviewed(put_all(usual_document("ned"), changes))
    assert {found.rule.name for found in report.findings} & {BELOW, ABOVE} == spoken


def test_a_rod_marked_in_size_numbers_takes_the_line_of_its_numbers() -> None:
    changes = {"main.test": "PE 0.6", "main.diameter": None, "rod.label": "2.13 m ML F 3-10 g PE 0.4-0.8"}
    _, report = reviewed(put_all(usual_document("ned"), changes))
    assert not {found.rule.name for found in report.findings} & {ROD, "test-above-rod"}
