"""Rules about the knot at the lure."""

from rigbuilder.model.fields import Part
from rigbuilder.model.rig import Line
from rigbuilder.reference.knots import Knot
from rigbuilder.reference.ranges import LBF_N, Range
from rigbuilder.reference.words import HookClass, JointPlace, LineType
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import other_lure_knot
from rigbuilder.review.rules.common import knot_called
from rigbuilder.review.speak import Speaker, an
from rigbuilder.sources import COMMON_PRACTICE

_FAILS, _WEAK = 0.5, 0.62  # common practice: a planned strength below half is no knot for the line


def _shares(knot: Knot, line: Line) -> Range | None:
    return knot.efficiency_in(line.type)


def _lure_knot(case: Case) -> Hit | None:
    knot, end = knot_called(case, case.rig.knots.lure), case.end
    if knot is None or end.type is LineType.WIRE or knot.serves(JointPlace.WIRE):
        return None
    severity = _suits(knot, end)
    if severity is Severity.RIGHT:
        return None
    share = _shares(knot, end)
    return Hit(
        severity,
        headline=lambda say: f"{knot.name} knot in {end.type} {say.test(end.test_n or 0.0)} at the lure",
        detail=lambda say: _limit_words(knot, end) or knot.avoid_note,
        numbers=lambda: () if share is None else (Number.of("share of the line's strength left", share),),
    )


def _suits(knot: Knot, line: Line) -> Severity:
    share = _shares(knot, line)
    limit = knot.max_lb(line.type)
    over = limit is not None and (line.test_n or 0.0) / LBF_N > limit * 1.001
    if line.type in knot.avoid:
        return Severity.FAULT if line.type.is_braided else Severity.RISK
    if over:
        far = limit is not None and (line.test_n or 0.0) / LBF_N > limit * 1.5
        return Severity.RISK if far or line.type is LineType.FLUOROCARBON else Severity.NOTE
    if share is not None and share.typical < _FAILS:
        return Severity.FAULT if line.type.is_braided else Severity.RISK
    return Severity.RIGHT


def _limit_words(knot: Knot, line: Line) -> str:
    return next((limit.why for limit in knot.limits if limit.type is line.type), "")


def _knot_settled(case: Case, say: Speaker) -> str:
    knot, end = knot_called(case, case.rig.knots.lure), case.end
    return f"{knot.name} knot suits {end.type}" if knot is not None and end.type in knot.suits else ""


def _loop_over_trebles(case: Case) -> Hit | None:
    knot = knot_called(case, case.rig.knots.lure)
    if knot is None or knot.for_large_trebles or case.hook is not HookClass.HEAVY_TREBLE:
        return None
    return Hit(Severity.NOTE, headline=lambda say: f"{knot.name} knot on a lure with large trebles")


def _snell_on_lure(case: Case) -> Hit | None:
    knot = knot_called(case, case.rig.knots.lure)
    if knot is None or not knot.for_plain_hooks or case.reference.lure(case.technique).plain_hook:
        return None
    return Hit(
        Severity.RISK,
        headline=lambda say: f"{knot.name} on {an(case.technique.name)}, which has no bare hook shank",
    )


RULES = (
    Rule(
        name="hook-knot-on-a-lure",
        part=Part.KNOTS,
        severity=Severity.RISK,
        what="A knot that is wound round the shank of a bare hook is tied to a lure.",
        why="The wraps need a straight shank to lie on. On the eye or ring of a lure there "
        "is none, so they slide together, cross and cut each other.",
        sources=(COMMON_PRACTICE,),
        check=_snell_on_lure,
        rests_on=("knots.lure",),
        wrong=(Example("spinnerbait", {"knots.lure": "snell"}),),
        right=(Example("Texas rig in cover", {"knots.lure": "snell"}),),
        mends=(other_lure_knot,),
        replaces=("lure-knot-wrong-for-line",),
    ),
    Rule(
        name="lure-knot-wrong-for-line",
        part=Part.KNOTS,
        severity=Severity.FAULT,
        what="The knot at the lure does not hold, or does not seat, in the line it is tied in.",
        why="A knot holds by squeezing the line until it cannot slide. Braid is too slippery "
        "for knots made for nylon and creeps out of them; thick or hard line never beds down "
        "in knots with many turns.",
        sources=(COMMON_PRACTICE,),
        check=_lure_knot,
        rests_on=("knots.lure", "leader.type"),
        wrong=(
            Example("hollow-body frog", {"knots.lure": "improved clinch"}),
            Example(
                "Texas rig",
                {"knots.lure": "improved clinch", "main.type": "fluorocarbon", "main.test": "17 lb"},
            ),
        ),
        right=(Example("hollow-body frog", {"knots.lure": "palomar"}), Example("Texas rig")),
        mends=(other_lure_knot,),
        mistakes=("M03", "M04"),
        settled=_knot_settled,
    ),
    Rule(
        name="loop-knot-over-large-trebles",
        part=Part.KNOTS,
        severity=Severity.NOTE,
        what="A knot that has to be passed over the lure is tied to a lure with large trebles.",
        why="The doubled line has to go over every hook. It catches, crosses itself and "
        "seats badly; a knot tied with a single end does not.",
        sources=(COMMON_PRACTICE,),
        check=_loop_over_trebles,
        wrong=(Example("glide bait", {"knots.lure": "palomar"}),),
        right=(Example("glide bait"),),
        mends=(other_lure_knot,),
    ),
)
