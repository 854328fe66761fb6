"""Rules about how the day shifts the type of line: clarity, cover, depth, wind, cold, range."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.words import LineType, Rank, ReelKind
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice, other_line
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import COMMON_PRACTICE
from rigbuilder.units.dimensions import Dimension

_GOOD = (Rank.FIRST_CHOICE, Rank.WORKS)
_COLD_C = 8.5  # common practice: below it smooth dense line turns stiff on the spool
_AS_FAVOURED = {
    LineType.COPOLYMER: LineType.NYLON,
    LineType.FUSED_BRAID: LineType.BRAID,
    LineType.HYBRID: LineType.NYLON,
}


def _votes(case: Case, kind: LineType) -> int:
    leanings = case.aim.leanings()
    return max(len(leanings[kind]), len(leanings[_AS_FAVOURED.get(kind, kind)]))


def _another_suits(case: Case) -> Hit | None:
    own = _votes(case, case.main.type)
    if case.leader is not None:
        own = max(own, _votes(case, case.leader.type))
    better = [
        kind
        for kind, line in case.technique.lines.items()
        if line.rank is Rank.FIRST_CHOICE and kind is not case.main.type and _votes(case, kind) > own
    ]
    if not better:
        return None
    best = max(better, key=lambda kind: _votes(case, kind))
    leanings = case.aim.leanings()
    names = leanings[best] or leanings[_AS_FAVOURED.get(best, best)]
    return Hit(
        Severity.NOTE,
        headline=lambda say: f"{case.main.type} where the day favours {best}",
        detail=lambda say: f"What speaks for {best} today: {', '.join(names)}.",
    )


def _degrees(degrees_c: float, say: Speaker) -> str:
    return say.span(degrees_c, degrees_c, Dimension.TEMPERATURE)


def _frost(case: Case) -> Hit | None:
    air = case.rig.water.air_c
    if air is None or air >= 0 or not case.is_braided():
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: f"braid in air of {_degrees(air, say)}",
        part=Part.MAIN,
    )


def _stiff_in_the_cold(case: Case) -> Hit | None:
    warmth = case.rig.water.temperature_c
    if warmth is None or warmth >= _COLD_C or case.rig.reel.kind is not ReelKind.SPINNING:
        return None
    if not case.is_type(LineType.FLUOROCARBON, LineType.HYBRID):
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: f"{case.main.type} on a spinning reel in water of {_degrees(warmth, say)}",
        numbers=lambda: (Number.of("water", warmth, Dimension.TEMPERATURE, ""),),
    )


RULES = (
    Rule(
        name="day-favours-another-line",
        part=Part.MAIN,
        severity=Severity.NOTE,
        what="Today's water, weather or distance speak for another of the technique's first choices.",
        why="Several types of line may do for a technique, and the day decides between them. "
        "Clear water speaks for line that is hard to see, short casts for line that stretches, "
        "long casts and deep water for line that does not.",
        sources=(COMMON_PRACTICE,),
        check=_another_suits,
        wrong=(
            Example(
                "square-bill crankbait", {"main.type": "fluorocarbon", "main.test": "14 lb", "cast": "10 m"}
            ),
        ),
        right=(
            Example(
                "square-bill crankbait", {"main.type": "fluorocarbon", "main.test": "14 lb", "cast": "20 m"}
            ),
        ),
        mends=(other_line,),
        differ="crank-line",
    ),
    Rule(
        name="braid-in-frost",
        part=Part.MAIN,
        severity=Severity.NOTE,
        what="Braid is fished while the air is below freezing.",
        why="Braid carries water through the rings and onto the spool, where it freezes and "
        "stops the line. Smooth line sheds it.",
        sources=(COMMON_PRACTICE,),
        check=_frost,
        wrong=(Example("jigging spoon", {"main.type": "braid", "main.test": "20 lb", "water.air": "-5 C"}),),
        right=(
            Example(
                "jigging spoon", {"main.type": "fluorocarbon", "main.test": "14 lb", "water.air": "-5 C"}
            ),
        ),
        mends=(other_line, advice("Use a smooth line, or treat fresh braid against icing")),
        replaces=("day-favours-another-line",),
        mistakes=("M44",),
    ),
    Rule(
        name="stiff-line-in-cold-water",
        part=Part.MAIN,
        severity=Severity.NOTE,
        what="Fluorocarbon is the main line of a spinning reel in water below about 8 °C.",
        why="Cold makes dense line stiffer, and stiff line keeps the shape of the spool: it "
        "comes off in coils just when lures are fished slowly and bites are soft.",
        sources=(COMMON_PRACTICE,),
        check=_stiff_in_the_cold,
        wrong=(
            Example(
                "tube",
                {
                    "main.type": "fluorocarbon",
                    "main.test": "8 lb",
                    "leader": None,
                    "water.temperature": "5 C",
                },
            ),
        ),
        right=(
            Example(
                "tube",
                {
                    "main.type": "fluorocarbon",
                    "main.test": "8 lb",
                    "leader": None,
                    "water.temperature": "15 C",
                },
            ),
        ),
        mends=(other_line,),
        replaces=("day-favours-another-line",),
    ),
)
