"""Rules about how much line and rod give."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.words import (
    HookClass,
)
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice, other_line
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

_STIFF_ACTIONS = ("fast", "extra fast")
_STIFF_POWERS = ("medium heavy", "heavy", "extra heavy", "extra extra heavy")
_SHORT_M = 27.4  # common practice: inside about 30 yd nothing but the rod gives with braid
_BIG_HOOKS = (HookClass.HEAVY_SINGLE, HookClass.WEEDLESS_DOUBLE, HookClass.HEAVY_TREBLE)


def _line_words(case: Case, say: Speaker) -> str:
    return f"{case.main.type} {say.test(case.main_n)}"


def _nothing_gives(case: Case) -> Hit | None:
    rod = case.rig.rod
    if case.hook is not HookClass.LIGHT_TREBLE or not case.is_braided():
        return None
    if str(rod.action) not in _STIFF_ACTIONS or str(rod.power) not in _STIFF_POWERS:
        return None
    peak = case.facts.peak_force_n
    return Hit(
        Severity.RISK,
        headline=lambda say: f"braid, a {rod.power} {rod.action} rod and small trebles: nothing gives",
        numbers=lambda: (
            () if peak is None else (Number.of("jerk when a fish surges", peak, Dimension.FORCE, "drag"),)
        ),
    )


def _stretches_too_much(case: Case) -> Hit | None:
    share, cast = case.facts.hook_share, case.rig.cast_m
    if share is None or cast is None or cast < _SHORT_M or case.hook not in _BIG_HOOKS:
        return None
    if share.typical >= 0.6:
        return None
    return Hit(
        Severity.RISK if share.high < 0.8 else Severity.NOTE,
        headline=lambda say: f"{_line_words(case, say)} gives too much at {say.cast(cast)}",
        detail=lambda say: (
            f"The hook gets about {share.typical * 100:.0f} % "
            f"({share.low * 100:.0f}–{share.high * 100:.0f}) of what the usual rig gives."
        ),
        numbers=lambda: (Number.of("pull at the hook, share of the usual rig", share),),
    )


RULES = (
    Rule(
        name="nothing-gives-on-small-trebles",
        part=Part.ROD,
        severity=Severity.RISK,
        what="Braid and a stiff, fast rod are used with small trebles.",
        why="Small trebles hold by thin wire in a little skin. When neither line nor rod "
        "gives, every head shake tears the hole wider or opens a hook, and the fish comes "
        "off at the jump.",
        sources=(COMMON_PRACTICE,),
        check=_nothing_gives,
        wrong=(
            Example(
                "square-bill crankbait",
                {
                    "main.type": "braid",
                    "main.test": "30 lb",
                    "leader": None,
                    "rod.label": None,
                    "rod.power": "heavy",
                    "rod.action": "fast",
                    "rod.line": "12-25 lb",
                    "rod.lure": "1/4-3/4 oz",
                    "knots.lure": "palomar",
                },
            ),
        ),
        right=(Example("square-bill crankbait"),),
        mends=(other_line, advice("Take a softer rod with a moderate action, and set the drag lightly")),
        mistakes=("M21",),
    ),
    Rule(
        name="line-stretches-too-far-out",
        part=Part.MAIN,
        severity=Severity.RISK,
        what="A stretching line has to drive heavy hooks at the end of a long cast.",
        why="Stretch grows with the line that is out. At long range the sweep of the rod "
        "goes into lengthening the line, and little of it reaches a hook that needs a firm "
        "push.",
        sources=(
            Source(Kind.COMPUTED, "rod, main line and leader as springs in a row, slack taken up first"),
        ),
        check=_stretches_too_much,
        wrong=(
            Example(
                "rotating-tail surface bait",
                {
                    "main.type": "nylon",
                    "main.test": "17 lb",
                    "leader": None,
                    "cast": "45 m",
                    "knots.lure": "uni",
                },
            ),
        ),
        right=(Example("rotating-tail surface bait", {"cast": "45 m"}),),
        mends=(other_line,),
    ),
)
