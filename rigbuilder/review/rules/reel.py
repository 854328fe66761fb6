"""Rules about the reel: what line and lure it throws."""

import re

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import LBF_N, OZ_KG
from rigbuilder.reference.words import LineType, ReelKind, RetrieveLoad
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice, other_leader_length, other_line, other_test
from rigbuilder.review.tackle_mends import usual_reel, usual_weight
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

_WOUND_M = 1.0  # common practice: a metre past the rod's length lies on the spool as a handful of turns
_SIZE = re.compile(r"\d{2,5}")
_COIL = Source(Kind.COMPUTED, "bending stiffness of the line over the square of the spool's radius")


def reel_size(case: Case) -> float | None:
    """Return the reel's size number, where the card gives one."""
    match = _SIZE.search(case.rig.reel.size or "")
    return float(match[0]) if match else None


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
    straighten = case.facts.straighten_n
    return Hit(
        Severity.RISK if test > 1.15 * limit and not kind.is_braided else Severity.NOTE,
        headline=lambda say: f"{kind} {say.test(test)} on a {case.rig.reel.size} spinning reel, "
        f"which throws up to {say.test(limit)}",
        numbers=lambda: (
            Number.of("test", test, Dimension.FORCE, "test"),
            Number.of("most that this size throws", limit, Dimension.FORCE, "test"),
            *(() if straighten is None
              else (Number.of("pull that straightens its coils", straighten, Dimension.FORCE, "nose"),)),
        ),
        sources=() if straighten is None else (_COIL,),
        part=Part.REEL,
    )  # fmt: skip


def _is_shallow(case: Case) -> bool:
    """Tell whether the reel is one with a shallow spool for light line, by what its label holds."""
    holds = case.rig.reel.capacity
    light = any((c.test_n or 0) <= 9 * LBF_N and c.length_m <= 110 for c in holds if c.test_n)
    return light or any((c.diameter_m or 1) <= 0.00026 for c in holds)


def _too_thin(case: Case) -> Hit | None:
    if case.rig.reel.kind is not ReelKind.BAITCASTING:
        return None
    limits = case.reference.casting_limits
    shallow = _is_shallow(case)
    if case.is_braided():
        least = limits.braid_min_shallow_lb if shallow else limits.braid_min_lb
    else:
        least = limits.nylon_min_shallow_lb if shallow else limits.nylon_min_lb
    test_lb = case.main_n / LBF_N
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
        Severity.RISK,
        headline=lambda say: f"{say.lure(case.rig.lure.total_kg)} lure on braid {say.test(case.main_n)}",
    )


def _too_light_for_casting(case: Case) -> Hit | None:
    if case.rig.reel.kind is not ReelKind.BAITCASTING:
        return None
    limits, total = case.reference.casting_limits, case.rig.lure.total_kg
    least = (limits.lure_min_shallow_oz if _is_shallow(case) else limits.lure_min_oz) * OZ_KG
    if total >= least * 0.98:
        return None
    return Hit(
        Severity.RISK if total < 0.6 * least else Severity.NOTE,
        headline=lambda say: (
            f"{say.lure(total)} lure on a casting reel, which throws {say.lure(least)} and up"
        ),
        part=Part.LURE,
    )


def _unusual_kind(case: Case) -> Hit | None:
    kind, usual = case.rig.reel.kind, case.technique.reel.kinds
    if kind in usual or (kind is ReelKind.SPINCAST and ReelKind.SPINNING in usual):
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: f"{kind} reel for a {case.technique.name}: {' or '.join(usual)} is usual",
    )


_SLOW, _QUICK = 0.82, 1.25  # common practice: a band of gear ratios is about this wide


def _unusual_ratio(case: Case) -> Hit | None:
    ratio, usual = case.rig.reel.ratio, case.technique.reel.ratio
    if ratio is None or not case.rig.says("reel.ratio") or usual.low * _SLOW <= ratio <= usual.high * _QUICK:
        return None
    way = "slow" if ratio < usual.low else "fast"
    return Hit(
        Severity.NOTE,
        headline=lambda say: (
            f"{ratio:g}:1 is {way} for a {case.technique.name}, usually wound with "
            f"{usual.low:g} to {usual.high:g}:1"
        ),
    )


_WIDE_SIZE = 200  # common practice: fluorocarbon over 20 lb wants a casting reel of size 200 or so


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
        name="reel-kind-unusual",
        part=Part.REEL,
        severity=Severity.NOTE,
        what="The technique is not usually fished with this kind of reel.",
        why="A casting reel throws strong line and heavy lures and stops them with the "
        "thumb; a spinning reel lets light lures and thin line go. In each other's place "
        "both cost casts.",
        sources=(COMMON_PRACTICE,),
        check=_unusual_kind,
        wrong=(Example("flipping jig", {"reel.kind": "spinning", "reel.size": "4000"}),),
        right=(Example("flipping jig", {"reel.kind": "baitcasting", "reel.size": "150"}),),
        mends=(usual_reel,),
    ),
    Rule(
        name="gear-ratio-unusual",
        part=Part.REEL,
        severity=Severity.NOTE,
        what="The reel winds much slower or faster than the technique is fished.",
        why="The gear sets the pace without thinking. Too fast a reel pulls a deep lure up "
        "and tires the wrist; too slow a one does not take in slack in time for the strike.",
        sources=(COMMON_PRACTICE,),
        check=_unusual_ratio,
        wrong=(Example("deep-diving crankbait", {"reel.ratio": "9.1:1"}),),
        right=(Example("deep-diving crankbait", {"reel.ratio": "5.4:1"}),),
        mends=(usual_reel, advice("Wind at the pace of the lure, not of the reel")),
    ),
    Rule(
        name="springy-line-on-small-casting-reel",
        part=Part.REEL,
        severity=Severity.NOTE,
        what="Fluorocarbon of more than 20 lb is cast off a small casting reel.",
        why="Thick fluorocarbon wants to spring open. On a small spool its loops lift as "
        "soon as the thumb does, and every small mistake on the cast becomes an overrun.",
        sources=(COMMON_PRACTICE,),
        check=_springy,
        wrong=(Example("big soft swimbait", {"reel.size": "150"}),),
        right=(Example("big soft swimbait", {"reel.size": "300"}),),
        mends=(usual_reel, other_test),
    ),
    Rule(
        name="line-too-stiff-for-spinning-reel",
        part=Part.REEL,
        severity=Severity.RISK,
        what="The line, or a leader long enough to reach the spool, is stiffer than a "
        "spinning reel of this size throws.",
        why="Stiff line does not lie down on a small spool. Its coils spring off in bunches "
        "on the cast, which costs distance and makes bird's nests.",
        sources=(COMMON_PRACTICE,),
        check=_too_stiff,
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
        name="lure-too-light-for-casting-reel",
        part=Part.LURE,
        severity=Severity.RISK,
        what="The lure is too light to turn a casting reel's spool.",
        why="On a casting reel the lure has to spin the spool up. Too light a lure cannot: "
        "the cast is short, and every gust makes the spool run ahead of the line.",
        sources=(COMMON_PRACTICE,),
        check=_too_light_for_casting,
        wrong=(
            Example(
                "finesse jig",
                {
                    "reel.label": None,
                    "reel.kind": "baitcasting",
                    "reel.size": "150",
                    "reel.capacity": None,
                    "lure.weight": "1/8 oz",
                    "lure.trailer": None,
                    "main.type": "fluorocarbon",
                    "main.test": "12 lb",
                    "leader": None,
                },
            ),
        ),
        right=(Example("finesse jig"),),
        mends=(usual_reel, usual_weight, advice("Throw it on spinning tackle, or off a shallow light spool")),
    ),
)
