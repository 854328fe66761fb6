"""Rules about the reel: what line and lure it throws."""

import re

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import LBF_N, OZ_KG
from rigbuilder.reference.words import LineType, ReelKind, RetrieveLoad
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice, other_line, other_test
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

_SIZE = re.compile(r"\d{2,5}")
_COIL = Source(Kind.COMPUTED, "bending stiffness of the line over the square of the spool's radius")


def reel_size(case: Case) -> float | None:
    """Return the reel's size number, where the card gives one."""
    match = _SIZE.search(case.rig.reel.size or "")
    return float(match[0]) if match else None


def _reaching_spool(case: Case) -> tuple[LineType, float]:
    """Return type and test [N] of the stiffest line that is cast off the spool."""
    leader, rod = case.leader, case.rig.rod
    if leader is not None and case.is_braided() and leader.length_m and rod.length_m:
        on_spool = leader.length_m > rod.length_m * 1.1
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


RULES = (
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
        mends=(other_test, other_line, advice("Take a reel with a bigger spool")),
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
        mends=(advice("Throw it on spinning tackle, or use a reel with a shallow light spool"),),
    ),
)
