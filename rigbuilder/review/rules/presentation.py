"""Rules about how the lure is meant to be worked."""

from rigbuilder.model.fields import Part
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Rule, Severity
from rigbuilder.review.mends import usual_presentation
from rigbuilder.review.speak import Speaker, an
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
    return f"{case.rig.presentation} is how {an(case.technique.name)} is fished"


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
        rests_on=("presentation",),
        wrong=(Example("drop shot", {"presentation": "floating"}),),
        right=(Example("drop shot", {"presentation": "finesse"}),),
        mends=(usual_presentation,),
        settled=_fits,
    ),
)
