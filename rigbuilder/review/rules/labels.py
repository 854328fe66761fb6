"""Rules about a line's label that does not add up."""

import math

from rigbuilder.model.fields import Part
from rigbuilder.model.rig import Line
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Rule, Severity
from rigbuilder.review.mends import advice, plain_diameter
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source

# Printed test over printed cross-section [Pa]: what labels of such line say, from American, Japanese and
# European spools, some of which boast; common practice. Inside the inner pair nothing is odd, beyond the
# outer pair a number was misread or stands in another unit.
_SMOOTH_PA = (3.0e8, 3.8e8, 1.35e9, 1.8e9)
_BRAID_PA = (7.0e8, 9.0e8, 6.0e9, 9.0e9)


def _limits(line: Line) -> tuple[float, float, float, float] | None:
    if line.type.is_braided:
        return _BRAID_PA
    return _SMOOTH_PA if line.type.is_single_strand else None


def _stress(line: Line) -> float | None:
    if line.test_n is None or line.diameter_m is None:
        return None
    return line.test_n / (math.pi / 4 * line.diameter_m**2)


def _does_not_add_up(case: Case) -> Hit | None:
    return _line_hit(case.main, Part.MAIN) or (_line_hit(case.leader, Part.LEADER) if case.leader else None)


def _line_hit(line: Line, part: Part) -> Hit | None:
    stress, limits = _stress(line), _limits(line)
    if stress is None or limits is None or limits[1] <= stress <= limits[2]:
        return None
    weak = stress < limits[1]
    return Hit(
        Severity.NOTE if limits[0] <= stress <= limits[3] else Severity.RISK,
        headline=lambda say: (
            f"{line.type} of {_diameter(line, say)} marked {_test(line, say)}: too "
            + ("little for its thickness" if weak else "much for its thickness")
        ),
        detail=lambda say: _likely(line, weak=weak),
        part=part,
    )


def _diameter(line: Line, say: Speaker) -> str:
    return say.diameter(line.diameter_m or 0.0)


def _test(line: Line, say: Speaker) -> str:
    return say.test(line.test_n or 0.0)


def _likely(line: Line, *, weak: bool) -> str:
    if not weak:
        return "Pounds may have been read as kilograms."
    if line.type.is_braided:
        return "The number may be the nylon that is as thick, not the test: labels print both."
    return "Kilograms may have been read as pounds."


RULES = (
    Rule(
        name="label-does-not-add-up",
        part=Part.MAIN,
        severity=Severity.RISK,
        what="Printed test and printed diameter of a line do not go together for its material.",
        why="A line holds about so much for its thickness, whoever made it. When the two "
        "numbers disagree that far, one was misread: kilograms for pounds, or the thickness "
        "of a braid, given in pounds of nylon, for its strength. Drag and knots worked out "
        "from it are wrong as well.",
        sources=(
            Source(Kind.COMPUTED, "printed test over cross-section, against what labels of such line say"),
            COMMON_PRACTICE,
        ),
        check=_does_not_add_up,
        wrong=(Example("Ned rig", {"main.test": "10 lb", "main.diameter": "0.32 mm"}),),
        right=(Example("Ned rig", {"main.test": "10 lb", "main.diameter": "0.16 mm"}),),
        mends=(plain_diameter, advice("Look for the second unit on the spool, and measure the line")),
        mistakes=("M40",),
    ),
)
