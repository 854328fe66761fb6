"""The line chart: the same review with every other line on the reel.

A cell is that line, fresh and filled as practice fills it, with the leader, knots,
backing and drag that practice would put with it, unless the person has pinned one of
them. Its grade is set by its weakest reason; there is no second set of thresholds.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from rigbuilder.model.rig import Line, Rig
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.reference.techniques import Technique
from rigbuilder.reference.words import Condition, LineType, Rank
from rigbuilder.review.core import Finding, Severity
from rigbuilder.review.dressing import dressed
from rigbuilder.review.engine import Report, lay_out, report, review
from rigbuilder.review.offered import tests_lb

SHOWN = (LineType.NYLON, LineType.COPOLYMER, LineType.FLUOROCARBON, LineType.BRAID)
_SAME_LB = 0.05
_LESS_TODAY = "day-favours-another-line"


class Grade(StrEnum):
    """How well a line suits the rig."""

    FIRST_CHOICE = "first choice"
    WORKS = "works"
    POOR = "poor"
    NEVER = "never"


@dataclass(frozen=True, slots=True)
class Cell:
    """One line of the chart: a whole reviewed rig with its grade."""

    type: LineType
    test_lb: float
    report: Report
    present: bool

    @property
    def because(self) -> Finding | None:
        """Return the reason that sets the grade, ``None`` where nothing speaks against the line."""
        return self.report.findings[0] if self.report.findings else None

    @property
    def grade(self) -> Grade:
        """Return the grade: the worst reason decides; practice's own choice is first choice."""
        if self.report.verdict is Severity.FAULT:
            return Grade.NEVER
        if self.report.verdict is Severity.RISK:
            return Grade.POOR
        return Grade.FIRST_CHOICE if _is_first_choice(self.report) else Grade.WORKS


def _is_first_choice(report: Report) -> bool:
    """Tell whether practice takes this type first, in this test, and the day does not favour another."""
    case = report.case
    if any(finding.rule.name == _LESS_TODAY for finding in report.findings):
        return False
    line = case.practice
    aim = case.aim.for_type(case.main.type)
    if line is None or line.rank is not Rank.FIRST_CHOICE or aim is None:
        return False
    return aim.low_lb - _SAME_LB <= case.main_n / LBF_N <= aim.high_lb + _SAME_LB


def chart(
    rig: Rig,
    reference: Reference,
    house: House,
    *,
    extra: Sequence[LineType] = (),
    present: Report | None = None,
) -> list[Cell]:
    """Return the cells of the chart, by type and test; ``extra`` adds second-ring types.

    The present line stands among them with its own test, leader, knots and drag;
    ``present`` is its review, where that is at hand already.
    """
    types = dict.fromkeys((*SHOWN, *extra, rig.main.type))
    present_lb = round((rig.main.test_n or 0.0) / LBF_N, 2)
    rows: list[tuple[LineType, float]] = []
    for kind in types:
        tests = set(map(float, tests_lb().get(kind, ())))
        if kind is rig.main.type and all(abs(test - present_lb) > _SAME_LB for test in tests):
            tests.add(present_lb)
        rows += [(kind, test) for test in sorted(tests)]
    technique = reference.techniques[rig.technique]
    renewed = rig.with_(log=()) if rig.log else rig  # another line has no history yet
    others = [row for row in rows if not _is_present(rig, *row)]
    candidates = [_candidate(renewed, kind, test, technique, reference) for kind, test in others]
    reviewed = dict(zip(others, map(report, lay_out(candidates, reference, house)), strict=True))
    own = present or review(rig, reference, house)
    return [Cell(*row, reviewed.get(row, own), row not in reviewed) for row in rows]


def _is_present(rig: Rig, kind: LineType, test_lb: float) -> bool:
    return kind is rig.main.type and abs((rig.main.test_n or 0.0) / LBF_N - test_lb) <= _SAME_LB


def _candidate(rig: Rig, kind: LineType, test_lb: float, technique: Technique, reference: Reference) -> Rig:
    main = Line(
        type=kind,
        test_n=test_lb * LBF_N,
        condition=Condition.FRESH,
        convention=rig.main.convention,
    )
    return dressed(rig, main, technique, reference)
