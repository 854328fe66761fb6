"""Rules about how the lure is meant to be worked, and about the weather."""

from rigbuilder.model.fields import Part
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Rule, Severity
from rigbuilder.review.mends import advice, usual_presentation
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import COMMON_PRACTICE


def _does_not_fit(case: Case) -> Hit | None:
    presentation, technique = case.rig.presentation, case.technique
    if presentation in technique.presentations:
        return None
    usual = " or ".join(map(str, technique.presentations))
    return Hit(
        Severity.RISK,
        headline=lambda say: f"{technique.name} as {presentation}: it is fished as {usual}",
    )


def _fits(case: Case, say: Speaker) -> str:
    if case.rig.presentation not in case.technique.presentations:
        return ""
    return f"{case.rig.presentation} is how a {case.technique.name} is fished"


def _frost(case: Case) -> Hit | None:
    air = case.rig.water.air_c
    if air is None or air >= 0 or not case.is_braided():
        return None
    return Hit(Severity.NOTE, headline=lambda say: "braid in frost", part=Part.MAIN)


RULES = (
    Rule(
        name="presentation-does-not-fit",
        part=Part.LURE,
        severity=Severity.RISK,
        what="The presentation on the card is not one in which the technique is fished.",
        why="Line, leader and rod are judged by how the lure is worked. If that does not fit "
        "the lure, the rest is right for something else.",
        sources=(COMMON_PRACTICE,),
        check=_does_not_fit,
        wrong=(Example("drop shot", {"presentation": "floating"}),),
        right=(Example("drop shot", {"presentation": "finesse"}),),
        mends=(usual_presentation,),
        settled=_fits,
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
        mends=(advice("Use nylon or fluorocarbon, or treat fresh braid against icing"),),
        mistakes=("M44",),
    ),
)
