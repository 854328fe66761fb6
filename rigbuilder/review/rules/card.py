"""Rules about the card itself: rules that it asks not to hear."""

from rigbuilder.model.fields import Part
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Rule, Severity
from rigbuilder.review.mends import advice
from rigbuilder.sources import COMMON_PRACTICE


def _idle(case: Case, spoken: frozenset[str]) -> Hit | None:
    idle = [entry.rule for entry in case.rig.silenced if entry.rule not in spoken]
    if not idle:
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: f"silenced, yet it has nothing to say: {', '.join(idle)}",
    )


RULES = (
    Rule(
        name="silencing-without-effect",
        part=Part.LURE,
        severity=Severity.NOTE,
        what="The card silences a rule that would not speak anyway.",
        why="A silencing that is left standing hides the reason on the day when it comes "
        "back. It may be a slip of the pen in the rule's name, or the rig has been mended "
        "since.",
        sources=(COMMON_PRACTICE,),
        after=_idle,
        wrong=(
            Example(
                "hollow-body frog",
                {"silenced": [{"rule": "braid-on-bare-arbor", "why": "taped spool"}]},
                says="the usual rig for hollow-body frog, backed, with braid-on-bare-arbor silenced",
            ),
        ),
        right=(
            Example(
                "hollow-body frog",
                {"backing": None, "silenced": [{"rule": "braid-on-bare-arbor", "why": "taped spool"}]},
                says="the usual rig for hollow-body frog on a taped spool, with braid-on-bare-arbor silenced",
            ),
        ),
        mends=(advice("Take the silencing off the card"),),
    ),
)
