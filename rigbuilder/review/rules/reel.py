"""Rules about the reel: what line and lure it throws."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import LBF_N, OZ_KG
from rigbuilder.reference.words import LineType, ReelKind, RetrieveLoad
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice, other_leader_length, other_line, other_test
from rigbuilder.review.rules.common import is_of_practice, is_shallow, reel_size
from rigbuilder.review.tackle_mends import usual_reel
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

_SPRINGS = 1.3  # common practice: a step past the limit is the upper end, two are tangles
_WOUND_M = 1.0  # common practice: a metre past the rod's length lies on the spool as a handful of turns
_COIL = Source(Kind.COMPUTED, "bending stiffness of the line over the square of the spool's radius")
_WIDE_SIZE = 200  # common practice: fluorocarbon over 20 lb wants a casting reel of size 200 or so


def _spinning_side(case: Case) -> tuple[str, ...]:
    return case.house.choice("spinning-limit", case.reference)


def _reaching_spool(case: Case) -> tuple[LineType, float]:
    """Return type and test [N] of the stiffest line that is cast off the spool."""
    leader, rod = case.leader, case.rig.rod
    if leader is not None and case.is_braided() and leader.length_m and rod.length_m:
        on_spool = leader.length_m > rod.length_m + _WOUND_M and "by-leader" not in _spinning_side(case)
        if on_spool and leader.type is not LineType.WIRE:
            return leader.type, leader.test_n or 0.0
    return case.main.type, case.main_n


def _too_stiff(case: Case) -> Hit | None:
    size = reel_size(case)
    if case.rig.reel.kind is not ReelKind.SPINNING or size is None:
        return None
    kind, test = _reaching_spool(case)
    if kind.is_braided and not case.is_braided():
        return None
    limit = case.reference.spinning_limit(size).max_n(kind)
    if test <= limit * 1.001:
        return None
    return Hit(
        Severity.RISK if test > _SPRINGS * limit and not kind.is_braided else Severity.NOTE,
        headline=lambda say: f"{kind} {say.test(test)} on a {case.rig.reel.size} spinning reel, "
        f"which throws up to {say.test(limit)}",
        numbers=lambda: (
            Number.of("test", test, Dimension.FORCE, "test"),
            Number.of("most that this size throws", limit, Dimension.FORCE, "test"),
            Number.of("pull that straightens its coils", case.facts.straighten_n, Dimension.FORCE, "nose"),
        ),
        sources=(_COIL,),
        part=Part.REEL,
        rests_on=() if kind is case.main.type else ("leader.length", "rod.length"),
    )  # fmt: skip


def _too_thin(case: Case) -> Hit | None:
    if case.rig.reel.kind is not ReelKind.BAITCASTING or case.technique.trolled:
        return None
    limits = case.reference.casting_limits
    shallow = is_shallow(case)
    if case.is_braided():
        least = limits.braid_min_shallow_lb if shallow else limits.braid_min_lb
    else:
        least = limits.nylon_min_shallow_lb if shallow else limits.nylon_min_lb
    test_lb = case.main_reach_n.high / LBF_N
    if test_lb >= least * 0.999:
        return None
    braid = case.is_braided()
    return Hit(
        Severity.RISK if braid else Severity.NOTE,
        headline=lambda say: (
            f"{case.main.type} {say.test(case.main_n)} on a casting reel, "
            f"which wants {say.test(least * LBF_N)} or more"
        ),
        numbers=lambda: (
            Number.of("test", case.main_n, Dimension.FORCE, "test"),
            Number.of("least on this spool", least * LBF_N, Dimension.FORCE, "test"),
        ),
        part=Part.MAIN,
    )


def _big_lure_thin_braid(case: Case) -> Hit | None:
    limits = case.reference.casting_limits
    thrown = RetrieveLoad.DRAG not in case.technique.retrieve_load
    heavy = thrown and case.rig.lure.total_kg >= limits.big_bait_oz * OZ_KG * 0.999
    if not heavy or not case.is_braided() or case.main_n >= limits.big_bait_braid_min_lb * LBF_N * 0.999:
        return None
    return Hit(
        Severity.NOTE if is_of_practice(case) else Severity.RISK,
        headline=lambda say: f"{say.lure(case.rig.lure.total_kg)} lure on braid {say.test(case.main_n)}",
    )


def _springy(case: Case) -> Hit | None:
    size, limit = reel_size(case), case.reference.casting_limits.fluorocarbon_backlash_lb * LBF_N
    if case.rig.reel.kind is not ReelKind.BAITCASTING or size is None or size >= _WIDE_SIZE:
        return None
    if not case.is_type(LineType.FLUOROCARBON) or case.main_n <= limit * 1.001:
        return None
    if RetrieveLoad.PITCH in case.technique.retrieve_load:
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: f"fluorocarbon {say.test(case.main_n)} on a casting reel of size {size:g}",
        detail=lambda say: f"Above {say.test(limit)} practice takes size {_WIDE_SIZE} or half a filling.",
    )


RULES = (
    Rule(
        name="line-too-stiff-for-spinning-reel",
        part=Part.REEL,
        severity=Severity.RISK,
        what="The line, or a leader long enough to reach the spool, is stiffer than a "
        "spinning reel of this size throws.",
        why="Stiff line does not lie down on a small spool. Its coils spring off in bunches "
        "on the cast, which costs distance and ends in tangles.",
        sources=(COMMON_PRACTICE,),
        check=_too_stiff,
        rests_on=("reel.kind", "reel.size"),
        wrong=(
            Example(
                "shaky head",
                {
                    "main.type": "fluorocarbon",
                    "main.test": "14 lb",
                    "leader": None,
                    "reel.label": None,
                    "reel.kind": "spinning",
                    "reel.size": "2500",
                    "rod.label": None,
                    "rod.line": "6-15 lb",
                    "knots.lure": "uni",
                },
            ),
        ),
        right=(Example("shaky head"),),
        mends=(other_test, other_leader_length, other_line, advice("Take a reel with a bigger spool")),
        differ="spinning-limit",
        replaces=("test-above-practice",),
        mistakes=("M16",),
    ),
    Rule(
        name="line-too-thin-for-casting-reel",
        part=Part.MAIN,
        severity=Severity.RISK,
        what="The line is thinner than a casting reel's spool handles.",
        why="Thin line works its way between the turns below when a strike or a snag pulls "
        "it tight, and beside the spool's rim. The next cast stops dead on it.",
        sources=(COMMON_PRACTICE,),
        check=_too_thin,
        rests_on=("reel.kind",),
        wrong=(
            Example(
                "swim jig",
                {
                    "main.test": "15 lb",
                    "rod.label": None,
                    "rod.line": "12-25 lb",
                    "rod.power": "heavy",
                    "rod.action": "fast",
                    "drag": "4 lb",
                },
            ),
        ),
        right=(Example("swim jig", {"main.test": "40 lb"}),),
        mends=(other_test, other_line, advice("Use spinning tackle for thin line")),
        replaces=("test-below-practice",),
        mistakes=("M17",),
    ),
    Rule(
        name="thin-braid-under-big-lure",
        part=Part.MAIN,
        severity=Severity.RISK,
        what="A big lure is thrown on braid too thin to give the spool a firm body.",
        why="When the spool is stopped hard by a two-ounce lure, thin braid bites into the "
        "turns below and parts, and the lure flies on alone.",
        sources=(COMMON_PRACTICE,),
        check=_big_lure_thin_braid,
        wrong=(Example("umbrella rig", {"main.test": "40 lb", "lure.weight": "3 oz"}),),
        right=(Example("umbrella rig", {"main.test": "65 lb"}),),
        mends=(other_test,),
        replaces=("test-below-practice",),
    ),
    Rule(
        name="springy-line-on-small-casting-reel",
        part=Part.REEL,
        severity=Severity.NOTE,
        what="Fluorocarbon of more than 20 lb is cast off a small casting reel.",
        why="Thick fluorocarbon wants to spring open. On a small spool its loops lift as "
        "soon as the thumb does, and every slip becomes an overrun.",
        sources=(COMMON_PRACTICE,),
        check=_springy,
        wrong=(Example("big soft swimbait", {"reel.size": "150"}),),
        right=(Example("big soft swimbait", {"reel.size": "300"}),),
        mends=(usual_reel, other_test),
    ),
)
