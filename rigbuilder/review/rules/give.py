"""Rules about how much line and rod give."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.words import HookClass, LineType, Rank, RetrieveLoad
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice, other_line, usual_drag
from rigbuilder.review.rules.common import line_words
from rigbuilder.review.speak import an
from rigbuilder.review.tackle_mends import usual_rod
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

_STIFF_ACTIONS = ("fast", "extra fast")
_STIFF_POWERS = ("medium heavy", "heavy", "extra heavy", "extra extra heavy")
_SHORT_M = 27.4  # common practice: inside about 30 yd nothing but the rod gives with braid
_DEEP_M = 9.14  # common practice: past 30 ft of water stretch blunts a line worked up and down
_BIG_HOOKS = (HookClass.HEAVY_SINGLE, HookClass.WEEDLESS_DOUBLE, HookClass.HEAVY_TREBLE)
_GIVES = (LineType.NYLON, LineType.COPOLYMER, LineType.HYBRID)


def _nothing_gives(case: Case) -> Hit | None:
    rod, technique = case.rig.rod, case.technique
    if case.hook is not HookClass.LIGHT_TREBLE or not case.is_braided():
        return None
    if str(rod.action) not in _STIFF_ACTIONS or str(rod.power) not in _STIFF_POWERS:
        return None
    usual_rod_here = rod.action in technique.rod.actions and rod.power in technique.rod.powers
    if usual_rod_here and _is_mild(case):
        return None
    peak = case.facts.peak_force_n
    return Hit(
        Severity.RISK,
        headline=lambda say: f"braid, {an(str(rod.power))} {rod.action} rod and small trebles: nothing gives",
        numbers=lambda: (
            () if peak is None else (Number.of("jerk when a fish surges", peak, Dimension.FORCE, "drag"),)
        ),
        rests_on=("leader.type", "drag") if usual_rod_here else (),
    )


def _is_mild(case: Case) -> bool:
    """Tell whether a leader and a drag within the technique's share leave the hooks something to give."""
    percent, drag = case.technique.drag.percent, case.rig.drag_n
    if case.leader is None or percent is None or drag is None:
        return False
    return drag <= percent.high / 100 * case.weakest_label_n * 1.05


def _is_ranked(case: Case) -> bool:
    """Tell whether practice fishes the technique with this type of line."""
    return case.practice is not None and case.practice.rank in (Rank.FIRST_CHOICE, Rank.WORKS)


def _stretches_too_much(case: Case) -> Hit | None:
    cast = case.rig.cast_m
    if case.is_braided() or cast is None or cast < _SHORT_M or case.hook not in _BIG_HOOKS:
        return None
    share = case.facts.hook_share
    if share.typical >= 0.6:
        return None
    usual = _is_ranked(case) and cast <= case.technique.distance_m.high * 1.01
    return Hit(
        Severity.RISK if share.high < 0.8 and not usual else Severity.NOTE,
        headline=lambda say: f"{line_words(case, say)} gives too much at {say.cast(cast)}",
        detail=lambda say: (
            f"The hook gets about {share.typical * 100:.0f} % "
            f"({share.low * 100:.0f}–{share.high * 100:.0f}) of what the usual rig gives."
        ),
        numbers=lambda: (Number.of("pull at the hook, share of the usual rig", share),),
    )


def _stretches_in_the_deep(case: Case) -> Hit | None:
    depth = case.rig.water.depth_m
    if depth is None or depth < _DEEP_M or not case.is_type(*_GIVES):
        return None
    if RetrieveLoad.VERTICAL not in case.technique.retrieve_load:
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: f"{line_words(case, say)} worked up and down in {say.depth(depth)} of water",
        numbers=lambda: (Number.of("depth", depth, Dimension.LENGTH, "depth"),),
    )


RULES = (
    Rule(
        name="nothing-gives-on-small-trebles",
        part=Part.ROD,
        severity=Severity.RISK,
        what="Small trebles are fished on braid with a stiff, fast rod: stiffer than the "
        "technique wants, or with a firm drag.",
        why="Small trebles hold by thin wire in a little skin. When neither line nor rod "
        "gives, every head shake tears the hole wider or opens a hook, and the fish comes "
        "off at the jump.",
        sources=(COMMON_PRACTICE,),
        check=_nothing_gives,
        rests_on=("rod.power", "rod.action"),
        wrong=(
            Example(
                "square-bill crankbait",
                {
                    "main.type": "braid",
                    "main.test": "30 lb",
                    "leader": None,
                    "rod.label": "7'0\" H F 12-25 lb 1/4-3/4 oz",
                    "knots.lure": "palomar",
                },
            ),
        ),
        right=(Example("square-bill crankbait"),),
        mends=(usual_rod, usual_drag, other_line, advice("Take a softer rod with a moderate action")),
        mistakes=("M21",),
        differ="treble-drag",
    ),
    Rule(
        name="line-stretches-too-far-out",
        part=Part.MAIN,
        severity=Severity.RISK,
        what="A stretching line has to drive heavy hooks at the end of a long cast; a note where the "
        "technique is fished with such line that far out.",
        why="Stretch grows with the line that is out. At long range the sweep of the rod "
        "goes into lengthening the line, and little of it reaches a hook that needs a firm "
        "push.",
        sources=(
            Source(Kind.COMPUTED, "rod, main line and leader as springs in a row, slack taken up first"),
        ),
        check=_stretches_too_much,
        rests_on=("cast",),
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
        differ="fluorocarbon-stretch",
    ),
    Rule(
        name="line-stretches-in-deep-water",
        part=Part.MAIN,
        severity=Severity.NOTE,
        what="A stretching line is worked up and down in more than about thirty feet of water.",
        why="All the line down to the lure stretches like a rubber band. Small lifts of the "
        "rod are lost in it, bites arrive as a dull weight, and the hook is driven late.",
        sources=(COMMON_PRACTICE,),
        check=_stretches_in_the_deep,
        wrong=(
            Example("jigging spoon", {"main.type": "nylon", "main.test": "14 lb", "water.depth": "14 m"}),
        ),
        right=(Example("jigging spoon", {"water.depth": "14 m"}),),
        mends=(other_line,),
    ),
)
