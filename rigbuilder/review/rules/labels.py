"""Rules about a line's label that does not add up."""

import math

from rigbuilder.model.fields import Part
from rigbuilder.model.rig import Line
from rigbuilder.reference.words import LineType
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Rule, Severity
from rigbuilder.review.mends import advice, plain_diameter
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source

# Printed test over printed cross-section [Pa]: what labels of such line say, from US, European and
# Japanese spools; common practice. Outside it a number was misread or stands in another unit.
_NYLON_PA, _BRAID_PA = (3.5e8, 1.35e9), (8.0e8, 5.5e9)
_LABEL_PA = {
    LineType.NYLON: _NYLON_PA,
    LineType.COPOLYMER: _NYLON_PA,
    LineType.FLUOROCARBON: (3.0e8, 1.25e9),
    LineType.HYBRID: _NYLON_PA,
    LineType.BRAID: _BRAID_PA,
    LineType.FUSED_BRAID: _BRAID_PA,
}


def _stress(line: Line) -> float | None:
    if line.test_n is None or line.diameter_m is None:
        return None
    return line.test_n / (math.pi / 4 * line.diameter_m**2)


def _does_not_add_up(case: Case) -> Hit | None:
    return _line_hit(case.main, Part.MAIN) or (_line_hit(case.leader, Part.LEADER) if case.leader else None)


def _line_hit(line: Line, part: Part) -> Hit | None:
    stress, limits = _stress(line), _LABEL_PA.get(line.type)
    if stress is None or limits is None or limits[0] <= stress <= limits[1]:
        return None
    weak = stress < limits[0]
    return Hit(
        Severity.RISK,
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
        wrong=(Example("ned rig", {"main.test": "10 lb", "main.diameter": "0.32 mm"}),),
        right=(Example("ned rig", {"main.test": "10 lb", "main.diameter": "0.16 mm"}),),
        mends=(plain_diameter, advice("Look for the second unit on the spool, and measure the line")),
        mistakes=("M40",),
    ),
)
