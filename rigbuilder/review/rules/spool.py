"""Rules about how the spool is filled."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import YARD_M
from rigbuilder.reference.words import LineType, RetrieveLoad
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice, with_backing
from rigbuilder.review.speak import Speaker
from rigbuilder.review.tackle_mends import less_line, more_line, usual_backing
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

_CASTS, _SPARE_M = 1.5, 25 * YARD_M
_TRIM_M = 10 * YARD_M  # common practice: 10-20 yd are cut off in a season

_FAR_OVER = 1.3  # common practice: a third more than even the kindest reading of the label
_HALF_EMPTY = 0.6  # common practice: casts fall short by about a quarter from there


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
    if length is None or length <= holds.high:
        return None
    return Hit(
        Severity.RISK if length > _FAR_OVER * holds.high else Severity.NOTE,
        headline=lambda say: f"{say.line(length)} of line on a spool that holds {say.line(holds.typical)}",
        numbers=lambda: (Number.of("the spool holds", holds, Dimension.LENGTH, "line"),),
        rests_on=() if case.rig.reel.capacity else ("reel.size",),
    )


def _backed(case: Case, say: Speaker) -> str:
    return "backing under the braid keeps it from slipping" if case.is_braided() and case.rig.backing else ""


def _half_empty(case: Case) -> Hit | None:
    if case.main.length_m is None or RetrieveLoad.PITCH in case.technique.retrieve_load:
        return None
    if case.rig.backing is not None and case.rig.backing.length_m is None:
        return None
    share = case.facts.fill_share
    if share.typical >= _HALF_EMPTY or share.high > 1.0:
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: (
            f"{say.line(case.main.length_m or 0.0)} of line fills {share.typical * 100:.0f} % of the spool"
        ),
        numbers=lambda: (Number.of("how full the spool is", share),),
    )


def _lead_core_under(case: Case) -> Hit | None:
    backing = case.rig.backing
    if backing is None or backing.type is not LineType.LEAD_CORE:
        return None
    return Hit(Severity.RISK, headline=lambda say: f"lead-core as backing under {case.main.type}")


RULES = (
    Rule(
        name="spool-half-empty",
        part=Part.REEL,
        severity=Severity.NOTE,
        what="The line on the card fills the spool by less than about two thirds.",
        why="On its way out the line has to climb over a high edge, so casts fall short; "
        "each turn of the handle brings in less; and the same drag setting pulls harder on a "
        "small radius. Backing under the line puts that right for little money.",
        sources=(
            Source(Kind.COMPUTED, "line on the spool over the room on it, by length times diameter squared"),
        ),
        check=_half_empty,
        wrong=(Example("spinnerbait", {"main.length": "60 yd", "cast": "20 yd", "backing": None}),),
        right=(Example("spinnerbait", {"main.length": "130 yd", "cast": "20 yd", "backing": None}),),
        mends=(advice("Put backing under the line until it ends 1.5 to 3 mm below the lip"),),
        mistakes=("M08",),
    ),
    Rule(
        name="lead-core-as-backing",
        part=Part.BACKING,
        severity=Severity.RISK,
        what="Lead-core line is wound on as backing.",
        why="It is thick, heavy, and its core breaks at the first sharp bend. The spool "
        "turns sluggish, and a kink down there is never seen.",
        sources=(COMMON_PRACTICE,),
        check=_lead_core_under,
        wrong=(Example("swim jig", {"backing.type": "lead-core", "backing.test": "18 lb"}),),
        right=(Example("swim jig", {"backing.type": "nylon", "backing.test": "14 lb"}),),
        mends=(usual_backing,),
        replaces=("backing-joint-wrong",),
    ),
    Rule(
        name="braid-on-bare-arbor",
        part=Part.BACKING,
        severity=Severity.FAULT,
        what="Braid is tied straight to the spool, with nothing under it.",
        why="Braid does not grip smooth metal. Under load the whole filling turns on the "
        "spool, and the drag seems to have failed. A few turns of nylon, or tape, hold it.",
        sources=(COMMON_PRACTICE,),
        check=_bare_arbor,
        rests_on=("backing.type",),
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
        why="The joint is a lump. When it comes off the spool in the middle of a cast the "
        "coils catch on it; in a fight it is the weakest place on the reel.",
        sources=(COMMON_PRACTICE,),
        check=_joint_in_cast,
        rests_on=("backing.type", "cast"),
        wrong=(Example("walking bait", {"main.length": "30 yd", "cast": "40 yd"}),),
        right=(Example("walking bait", {"main.length": "100 yd", "cast": "40 yd"}),),
        mends=(more_line,),
        replaces=("too-little-line",),
        mistakes=("M30", "M45"),
    ),
    Rule(
        name="too-little-line",
        part=Part.MAIN,
        severity=Severity.RISK,
        what="There is too little line on the reel for the cast and a run.",
        why="Near the end of the line every turn comes off a small spool: the drag tightens, "
        "casts fall short, and a good fish reaches the knot at the arbor.",
        sources=(COMMON_PRACTICE,),
        check=_too_little,
        rests_on=("cast",),
        wrong=(Example("spinnerbait", {"main.length": "35 yd", "cast": "35 yd", "backing": None}),),
        right=(Example("spinnerbait", {"main.length": "100 yd", "cast": "35 yd", "backing": None}),),
        mends=(more_line,),
        mistakes=("M45",),
    ),
    Rule(
        name="line-does-not-fit-spool",
        part=Part.REEL,
        severity=Severity.RISK,
        what="More line is meant to go on than the reel's label says it holds.",
        why="An overfilled spool throws loops off its lip on spinning reels, and rubs and "
        "overruns on casting reels.",
        sources=(Source(Kind.COMPUTED, "capacity on the label, scaled by the square of the diameters"),),
        check=_does_not_fit,
        wrong=(Example("spinnerbait", {"main.length": "300 yd"}),),
        right=(Example("spinnerbait", {"main.length": "100 yd"}),),
        mends=(less_line, advice("Stop 1.5 to 3 mm below the lip")),
        mistakes=("M07",),
    ),
)
