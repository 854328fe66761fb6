"""Rules about the line against the label of the rod."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.words import LineType
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice, other_line, other_test
from rigbuilder.review.speak import Speaker
from rigbuilder.review.tackle_mends import usual_rod
from rigbuilder.sources import COMMON_PRACTICE
from rigbuilder.units.dimensions import Dimension

_HALF, _TWICE = 0.5, 2.0  # common practice: beyond these the rig is for another job
_BELOW_ROD, _WELL_BELOW_ROD = 1.0, 0.8
# Common practice: a smooth line up to a quarter above the top label passes with care. Lead-core is sold in
# few tests and let out behind a boat on any rod that the lure suits.
_ABOVE_ROD = 1.25
# Common practice: braid up to 2.5 times a nylon label passes; the cautious stop at 1.5 times.
_ROUNDING = 0.005  # labels in pounds and kilograms round differently
_BRAID_ON_NYLON_LABEL, _MODEST = 2.5, 1.5


def _below_rod(case: Case) -> Hit | None:
    span = case.rig.rod.line_n
    if span is None:
        return None
    braid_on_nylon = case.is_braided() and not case.rig.rod.line_for_braid
    share = round(case.main_reach_n.high / span.low, 3)  # labels in pounds and kilograms round differently
    if share >= _BELOW_ROD - _ROUNDING or (braid_on_nylon and share >= _HALF):
        return None
    return Hit(
        Severity.RISK if share < _WELL_BELOW_ROD else Severity.NOTE,
        headline=lambda say: f"{say.test(case.main_n)} line on a rod marked {say.tests(span)}",
        numbers=lambda: _rod_numbers(case),
        part=Part.ROD,
    )


def _rod_numbers(case: Case) -> tuple[Number, ...]:
    span = case.rig.rod.line_n
    assert span is not None  # noqa: S101 - only called after the check has seen it
    return (
        Number.of("test", case.main_n, Dimension.FORCE, "test"),
        Number.between("rod's line range", span, Dimension.FORCE, "test"),
    )


def _label_is_law(case: Case) -> bool:
    """Tell whether the coach holds braid, too, against the number on the rod."""
    return not case.shipped and "never" in case.house.choice("braid-on-nylon-rod", case.reference)


def _above_rod(case: Case) -> Hit | None:
    span = case.rig.rod.line_n
    if span is None or (case.is_braided() and not case.rig.rod.line_for_braid and not _label_is_law(case)):
        return None
    share = round(case.main_reach_n.low / span.high, 3)
    if share <= 1.0 + _ROUNDING:
        return None
    return Hit(
        Severity.RISK if share > _ABOVE_ROD and not case.is_type(LineType.LEAD_CORE) else Severity.NOTE,
        headline=lambda say: f"{say.test(case.main_n)} line on a rod marked {say.tests(span)}",
        numbers=lambda: _rod_numbers(case),
    )


def _braid_over_nylon_label(case: Case) -> Hit | None:
    rod, leader, span = case.rig.rod, case.leader, case.rig.rod.line_n
    if span is None or not case.is_braided() or rod.line_for_braid:
        return None
    top = span.high
    modest = not case.shipped and "modest" in case.house.choice("braid-on-nylon-rod", case.reference)
    if case.main_n <= (_MODEST if modest else _BRAID_ON_NYLON_LABEL) * top or (
        leader and (leader.test_n or 0.0) <= top
    ):
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: f"braid {say.test(case.main_n)} on a rod marked {say.tests(span)}",
        detail=lambda say: "Judge it by the drag, not by the test: it is the drag that loads the rod.",
        numbers=lambda: _rod_numbers(case),
    )


def _on_the_rod(case: Case, say: Speaker) -> str:
    span = case.rig.rod.line_n
    if span is None or not span.low * (1 - _ROUNDING) <= case.main_n <= span.high * (1 + _ROUNDING):
        return ""
    return f"{say.test(case.main_n)} is inside the rod's {say.tests(span)}"


RULES = (
    Rule(
        name="test-below-rod",
        part=Part.ROD,
        severity=Severity.RISK,
        what="The line is lighter than the rod's label begins with.",
        why="The label says for which breaking loads the blank is made. A rod for stronger "
        "line hardly bends before a light one breaks, so nothing cushions the strike, and "
        "light lures throw badly off it.",
        sources=(COMMON_PRACTICE,),
        check=_below_rod,
        wrong=(
            Example(
                "Texas rig",
                {
                    "rod.label": None,
                    "rod.line": "14-25 lb",
                    "rod.power": "heavy",
                    "rod.action": "fast",
                    "main.type": "fluorocarbon",
                    "main.test": "10 lb",
                },
            ),
        ),
        right=(
            Example(
                "Texas rig",
                {
                    "rod.label": None,
                    "rod.line": "10-17 lb",
                    "rod.power": "medium heavy",
                    "rod.action": "fast",
                    "main.type": "fluorocarbon",
                    "main.test": "14 lb",
                },
            ),
        ),
        mends=(other_test, other_line, usual_rod),
        mistakes=("M26",),
        settled=_on_the_rod,
    ),
    Rule(
        name="test-above-rod",
        part=Part.ROD,
        severity=Severity.RISK,
        what="The line is stronger than the rod's label allows.",
        why="The label says how much pull the blank is made for. Where the line holds more, the "
        "rod itself can become the weakest link; and stiff thick line through small rings "
        "costs distance and aim.",
        sources=(COMMON_PRACTICE,),
        check=_above_rod,
        wrong=(
            Example(
                "Texas rig",
                {
                    "rod.label": None,
                    "rod.line": "6-10 lb",
                    "rod.power": "medium",
                    "rod.action": "fast",
                    "main.type": "fluorocarbon",
                    "main.test": "15 lb",
                },
            ),
        ),
        right=(
            Example(
                "Texas rig",
                {
                    "rod.label": None,
                    "rod.line": "10-17 lb",
                    "rod.power": "medium heavy",
                    "rod.action": "fast",
                    "main.type": "fluorocarbon",
                    "main.test": "15 lb",
                },
            ),
        ),
        mends=(other_test, other_line, usual_rod),
        mistakes=("M25",),
    ),
    Rule(
        name="braid-far-above-nylon-label",
        part=Part.ROD,
        severity=Severity.NOTE,
        what="Braid of more than two and a half times the top of a rod's nylon label is on the reel.",
        why="A rod label means nylon unless it says otherwise. Braid of that strength never "
        "breaks before the rod, so only the drag, or a leader inside the label, protects the "
        "blank.",
        sources=(COMMON_PRACTICE,),
        check=_braid_over_nylon_label,
        differ="braid-on-nylon-rod",
        wrong=(
            Example(
                "swim jig",
                {
                    "rod.label": None,
                    "rod.line": "8-14 lb",
                    "rod.power": "medium heavy",
                    "rod.action": "fast",
                    "main.test": "40 lb",
                    "drag": "3 lb",
                },
            ),
        ),
        right=(
            Example(
                "swim jig",
                {
                    "rod.label": None,
                    "rod.line": "12-20 lb",
                    "rod.power": "heavy",
                    "rod.action": "fast",
                    "main.test": "40 lb",
                    "drag": "3 lb",
                },
            ),
        ),
        mends=(usual_rod, advice("Keep the drag below a third of the rod's top label, never locked")),
        mistakes=("M25",),
    ),
)
