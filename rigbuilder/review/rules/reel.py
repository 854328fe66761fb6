"""Rules about the reel: what line it throws, and how it is filled."""

import re

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import LBF_N, OZ_KG
from rigbuilder.reference.words import LineType, ReelKind, RetrieveLoad
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice, other_line, other_test, with_backing
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

_SIZE = re.compile(r"\d{2,5}")
_YARD_M = 0.9144
# Common practice: the joint lies deeper than 1.5 casts, or the cast and 25 yd, whichever is more.
_CASTS, _SPARE_M = 1.5, 25 * _YARD_M
_TRIM_M = 10 * _YARD_M  # common practice: 10-20 yd are cut off in a season
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


def _bare_arbor(case: Case) -> Hit | None:
    if not case.is_braided() or case.rig.backing is not None:
        return None
    return Hit(
        Severity.FAULT,
        headline=lambda say: f"braid {say.test(case.main_n)} on a bare spool, no backing",
    )


def _needed_m(case: Case) -> float | None:
    cast = case.rig.cast_m
    return None if cast is None else max(_CASTS * cast, cast + _SPARE_M)


def _joint_in_cast(case: Case) -> Hit | None:
    length, needed = case.main.length_m, _needed_m(case)
    if case.rig.backing is None or length is None or needed is None or length >= needed:
        return None
    cast = case.rig.cast_m or 0.0
    return Hit(
        Severity.RISK if length < cast * 1.1 else Severity.NOTE,
        headline=lambda say: f"{say.line(length)} of main line over backing, casts of {say.cast(cast)}",
        numbers=lambda: (
            Number.of("main line", length, Dimension.LENGTH, "line"),
            Number.of("main line that keeps the joint under", needed + _TRIM_M, Dimension.LENGTH, "line"),
        ),
        part=Part.BACKING,
    )


def _too_little(case: Case) -> Hit | None:
    length, cast = case.main.length_m, case.rig.cast_m
    if length is None or cast is None or case.rig.backing is not None:
        return None
    needed = cast + _SPARE_M
    if length >= needed:
        return None
    return Hit(
        Severity.RISK if length < cast * 1.25 else Severity.NOTE,
        headline=lambda say: f"{say.line(length)} of line for casts of {say.cast(cast)}",
        numbers=lambda: (
            Number.of("line on the reel", length, Dimension.LENGTH, "line"),
            Number.of("cast and a run", needed, Dimension.LENGTH, "line"),
        ),
    )


def _does_not_fit(case: Case) -> Hit | None:
    length, holds = case.main.length_m, case.facts.spool_holds_m
    if length is None or holds is None or length <= holds.typical * 1.1:
        return None
    fault = length > holds.high
    return Hit(
        Severity.RISK if fault else Severity.NOTE,
        headline=lambda say: f"{say.line(length)} of line on a spool that holds {say.line(holds.typical)}",
        numbers=lambda: (Number.of("the spool holds", holds, Dimension.LENGTH, "line"),),
    )


def _backed(case: Case, say: Speaker) -> str:
    return "backing under the braid keeps it from slipping" if case.is_braided() and case.rig.backing else ""


RULES = (
    Rule(
        name="line-too-stiff-for-spinning-reel",
        part=Part.REEL,
        severity=Severity.RISK,
        what="The line, or a leader long enough to reach the spool, is stiffer than a spinning reel of this "
        "size throws.",
        why="Stiff line does not lie down on a small spool. Its coils spring off in bunches on the cast, which "
        "costs distance and makes bird's nests.",
        sources=(COMMON_PRACTICE,),
        check=_too_stiff,
        wrong=(Example("shaky head", {"main.type": "fluorocarbon", "main.test": "14 lb", "leader": None,
                                      "reel.label": None, "reel.kind": "spinning", "reel.size": "2500",
                                      "rod.label": None, "rod.line": "6-15 lb", "knots.lure": "uni"}),),
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
        why="Thin line works its way between the turns below when a strike or a snag pulls it tight, and beside "
        "the spool's rim. The next cast stops dead on it.",
        sources=(COMMON_PRACTICE,),
        check=_too_thin,
        wrong=(Example("swim jig", {"main.test": "15 lb", "rod.label": None, "rod.line": "12-25 lb",
                                    "rod.power": "heavy", "rod.action": "fast", "drag": "4 lb"}),),
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
        why="When the spool is stopped hard by a two-ounce lure, thin braid bites into the turns below and "
        "parts, and the lure flies on alone.",
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
        why="On a casting reel the lure has to spin the spool up. Too light a lure cannot: the cast is short, "
        "and every gust makes the spool run ahead of the line.",
        sources=(COMMON_PRACTICE,),
        check=_too_light_for_casting,
        wrong=(Example("finesse jig", {"reel.label": None, "reel.kind": "baitcasting", "reel.size": "150",
                                       "reel.capacity": None, "lure.weight": "1/8 oz", "lure.trailer": None,
                                       "main.type": "fluorocarbon", "main.test": "12 lb", "leader": None}),),
        right=(Example("finesse jig"),),
        mends=(advice("Throw it on spinning tackle, or use a reel with a shallow light spool"),),
    ),
    Rule(
        name="braid-on-bare-arbor",
        part=Part.BACKING,
        severity=Severity.FAULT,
        what="Braid is tied straight to the spool, with nothing under it.",
        why="Braid does not grip smooth metal. Under load the whole filling turns on the spool, and the drag "
        "seems to have failed. A few turns of nylon, or tape, hold it.",
        sources=(COMMON_PRACTICE,),
        check=_bare_arbor,
        wrong=(Example("hollow-body frog", {"backing": None}),),
        right=(Example("hollow-body frog"),),
        mends=(with_backing, advice("Or wind one turn of thin tape round the spool and tie over it")),
        mistakes=("M09",),
        settled=_backed,
    ),
    Rule(
        name="backing-joint-inside-cast",
        part=Part.BACKING,
        severity=Severity.RISK,
        what="There is so little main line over the backing that a long cast or a run reaches the joint.",
        why="The joint is a lump. When it comes off the spool in the middle of a cast the coils catch on it; in "
        "a fight it is the weakest place on the reel.",
        sources=(COMMON_PRACTICE,),
        check=_joint_in_cast,
        wrong=(Example("walking bait", {"main.length": "30 yd", "cast": "40 yd"}),),
        right=(Example("walking bait", {"main.length": "100 yd", "cast": "40 yd"}),),
        mends=(advice("Wind on more main line: a cast and a half, and what will be trimmed off"),),
        replaces=("too-little-line",),
        mistakes=("M30", "M45"),
    ),
    Rule(
        name="too-little-line",
        part=Part.MAIN,
        severity=Severity.RISK,
        what="There is too little line on the reel for the cast and a run.",
        why="Near the end of the line every turn comes off a small spool: the drag tightens, casts fall short, "
        "and a good fish reaches the knot at the arbor.",
        sources=(COMMON_PRACTICE,),
        check=_too_little,
        wrong=(Example("spinnerbait", {"main.length": "35 yd", "cast": "35 yd", "backing": None}),),
        right=(Example("spinnerbait", {"main.length": "100 yd", "cast": "35 yd", "backing": None}),),
        mends=(advice("Fill the reel: put backing under, and at least a cast and 25 yd of main line"),),
        mistakes=("M45",),
    ),
    Rule(
        name="line-does-not-fit-spool",
        part=Part.REEL,
        severity=Severity.RISK,
        what="More line is meant to go on than the reel's label says it holds.",
        why="An overfilled spool throws loops off its lip on spinning reels, and rubs and overruns on casting "
        "reels.",
        sources=(Source(Kind.COMPUTED, "capacity on the label, scaled by the square of the diameters"),),
        check=_does_not_fit,
        wrong=(Example("spinnerbait", {"main.length": "300 yd"}),),
        right=(Example("spinnerbait", {"main.length": "100 yd"}),),
        mends=(advice("Put less on, so that the line ends 1.5 to 3 mm below the lip"),),
        mistakes=("M07",),
    ),
)  # fmt: skip
