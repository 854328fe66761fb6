"""Rules about knots, joints and what is clipped in between."""

from rigbuilder.model.fields import Part
from rigbuilder.model.rig import Line
from rigbuilder.reference.knots import Knot
from rigbuilder.reference.ranges import LBF_N, Range
from rigbuilder.reference.words import GuidePassage, HookClass, JointPlace, LineType
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice, other_joint, other_leader_length, other_lure_knot
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

_FAILS, _WEAK = 0.5, 0.62  # common practice: a planned strength below half is no knot for the line


def _knot(case: Case, name: str | None) -> Knot | None:
    return case.reference.knots.get(name) if name else None


def _shares(knot: Knot, line: Line) -> Range | None:
    return knot.efficiency_in(line.type)


def _lure_knot(case: Case) -> Hit | None:
    knot, end = _knot(case, case.rig.knots.lure), case.end
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
    knot, end = _knot(case, case.rig.knots.lure), case.end
    return f"{knot.name} knot suits {end.type}" if knot is not None and end.type in knot.suits else ""


def _loop_over_trebles(case: Case) -> Hit | None:
    knot = _knot(case, case.rig.knots.lure)
    if knot is None or knot.for_large_trebles or case.hook is not HookClass.HEAVY_TREBLE:
        return None
    return Hit(Severity.NOTE, headline=lambda say: f"{knot.name} knot on a lure with large trebles")


def _joint(case: Case) -> Hit | None:
    leader = case.leader
    knot = _knot(case, leader.knot if leader else None)
    if leader is None or knot is None or case.rig.hardware.swivel_n is not None:
        return None
    reason = _joint_reason(case, knot, leader)
    if reason is None:
        return None
    severity, words = reason
    return Hit(
        severity,
        headline=lambda say: (
            f"{knot.name} knot between {case.main.type} {say.test(case.main_n)} and "
            f"{leader.type} {say.test(leader.test_n or 0.0)}"
        ),
        detail=lambda say: words,
        numbers=lambda: _ratio_numbers(case, knot),
    )


_JOINS = (JointPlace.LINE_TO_LEADER, JointPlace.LEADER_SECTIONS, JointPlace.LOOP, JointPlace.WIRE,
          JointPlace.SWIVEL)  # fmt: skip


def _joint_reason(case: Case, knot: Knot, leader: Line) -> tuple[Severity, str] | None:
    braid = case.main.type.is_braided
    if not any(knot.serves(place) for place in _JOINS):
        return Severity.FAULT, f"The {knot.name} is no knot for joining two lines."
    if (
        leader.type is LineType.WIRE
        and not knot.serves(JointPlace.WIRE)
        and not knot.serves(JointPlace.SWIVEL)
    ):
        return (Severity.RISK, "Plain knots slip on wire.") if LineType.WIRE not in knot.suits else None
    if case.main.type in knot.avoid:
        return (Severity.FAULT if braid else Severity.RISK), knot.avoid_note
    ratio = _ratio(case)
    if knot.ratio is None or ratio is None:
        return None
    if ratio.low > knot.ratio.high * 1.05:
        return Severity.FAULT if ratio.low > 1.5 * knot.ratio.high else Severity.RISK, _ratio_words(
            ratio, knot
        )
    if ratio.typical > knot.ratio.high * 1.15:
        return Severity.RISK, _ratio_words(ratio, knot)
    if ratio.high < knot.ratio.low * 0.95:
        return Severity.RISK, _ratio_words(ratio, knot)
    return None


def _ratio(case: Case) -> Range | None:
    """Return the leader's diameter over the main line's: the larger over the smaller unless braid is meant."""
    leader, main = case.facts.leader_diameter_m, case.facts.main_diameter_m
    if leader is None:
        return None
    ratio = Range(leader.low / main.high, leader.typical / main.typical, leader.high / main.low)
    if case.is_braided() or ratio.typical >= 1:
        return ratio
    return Range(1 / ratio.high, 1 / ratio.typical, 1 / ratio.low)


def _ratio_words(ratio: Range, knot: Knot) -> str:
    assert knot.ratio is not None  # noqa: S101 - asked only of knots with a range
    return (
        f"One line is about {ratio.typical:.1f} times as thick as the other; this knot wants "
        f"{knot.ratio.low:g} to {knot.ratio.high:g}."
    )


def _ratio_numbers(case: Case, knot: Knot) -> tuple[Number, ...]:
    ratio = _ratio(case)
    return () if ratio is None else (Number.of("leader diameter over main diameter", ratio),)


def _joint_in_guides(case: Case) -> Hit | None:
    leader, rod = case.leader, case.rig.rod
    knot = _knot(case, leader.knot if leader else None)
    if leader is None or leader.length_m is None or rod.length_m is None:
        return None
    swivel = case.rig.hardware.swivel_n is not None
    if leader.length_m <= rod.length_m or (knot is None and not swivel):
        return None
    if (
        not swivel
        and knot is not None
        and knot.guides in (GuidePassage.FAIR, GuidePassage.GOOD, GuidePassage.BEST)
    ):
        return None
    joint = "swivel" if swivel else f"{knot.name if knot else ''} knot"
    return Hit(
        Severity.FAULT if swivel else Severity.RISK,
        headline=lambda say: f"{joint} has to pass the guides: {say.leader(leader.length_m or 0.0)} leader",
        numbers=lambda: (
            Number.of("leader", leader.length_m or 0.0, Dimension.LENGTH, "leader"),
            Number.of("rod", rod.length_m or 0.0, Dimension.LENGTH, "rod"),
        ),
    )


def _no_swivel(case: Case) -> Hit | None:
    lure = case.reference.lure(case.technique)
    if not lure.spins or case.rig.hardware.swivel_n is not None:
        return None
    if not case.rig.says("hardware.swivel"):
        return None
    return Hit(Severity.RISK, headline=lambda say: f"{case.technique.name} without a swivel: it spins")


def _swivel_drowns(case: Case) -> Hit | None:
    technique, hardware = case.technique, case.rig.hardware
    if hardware.swivel_n is None or hardware.snap_n is None or case.reference.lure(technique).spins:
        return None
    if case.leader is not None and technique.leader.need is not None and technique.toothed:
        return None
    if technique.hook_class is HookClass.HEAVY_TREBLE:
        return None
    return Hit(Severity.NOTE, headline=lambda say: f"snap and swivel on a {technique.name}")


def _hardware_weak(case: Case) -> Hit | None:
    hardware, weakest = case.rig.hardware, case.weakest_label_n
    found = [(word, value) for word, value in (("swivel", hardware.swivel_n), ("snap", hardware.snap_n))
             if value is not None and value < weakest * 0.999]  # fmt: skip
    if not found:
        return None
    word, value = min(found, key=lambda item: item[1])
    return Hit(
        Severity.RISK if value < 0.8 * weakest else Severity.NOTE,
        headline=lambda say: f"{say.test(value)} {word} on {say.test(weakest)} line",
    )


def _backing_joint(case: Case) -> Hit | None:
    backing = case.rig.backing
    knot = _knot(case, backing.knot if backing else None)
    if backing is None or knot is None:
        return None
    places = (JointPlace.BACKING, JointPlace.LINE_TO_LEADER, JointPlace.LEADER_SECTIONS)
    fits = any(knot.serves(place) for place in places)
    if fits and not (case.is_braided() and case.main.type in knot.avoid):
        return None
    return Hit(
        Severity.RISK,
        headline=lambda say: f"{knot.name} knot between {backing.type} backing and {case.main.type}",
        detail=lambda say: knot.avoid_note,
    )


RULES = (
    Rule(
        name="lure-knot-wrong-for-line",
        part=Part.KNOTS,
        severity=Severity.FAULT,
        what="The knot at the lure does not hold, or does not seat, in the line it is tied in.",
        why="A knot holds by squeezing the line until it cannot slide. Braid is too slippery for knots made "
        "for nylon and creeps out of them; thick or hard line never beds down in knots with many turns.",
        sources=(COMMON_PRACTICE,),
        check=_lure_knot,
        wrong=(
            Example("hollow-body frog", {"knots.lure": "improved clinch"}),
            Example("texas rig", {"knots.lure": "improved clinch", "main.type": "fluorocarbon", "main.test": "17 lb"}),
        ),
        right=(Example("hollow-body frog", {"knots.lure": "palomar"}), Example("texas rig")),
        mends=(other_lure_knot,),
        mistakes=("M03", "M04"),
        settled=_knot_settled,
    ),
    Rule(
        name="loop-knot-over-large-trebles",
        part=Part.KNOTS,
        severity=Severity.NOTE,
        what="A knot that has to be passed over the lure is tied to a lure with large trebles.",
        why="The doubled line has to go over every hook. It catches, crosses itself and seats badly; a knot "
        "tied with a single end does not.",
        sources=(COMMON_PRACTICE,),
        check=_loop_over_trebles,
        wrong=(Example("glide bait", {"knots.lure": "palomar"}),),
        right=(Example("glide bait"),),
        mends=(other_lure_knot,),
    ),
    Rule(
        name="joint-wrong-for-lines",
        part=Part.KNOTS,
        severity=Severity.FAULT,
        what="The knot between main line and leader does not suit the two lines or their thickness.",
        why="A joint grips only when both lines can bite into each other. A thin slippery line slides out of "
        "it or cuts, and two lines of very different thickness cannot share the load.",
        sources=(Source(Kind.COMPUTED, "both diameters, as printed or from the test"), COMMON_PRACTICE),
        check=_joint,
        wrong=(
            Example("drop shot", {"leader.knot": "blood"}),
            Example("drop shot", {"leader.knot": "improved clinch"}),
        ),
        right=(Example("drop shot", {"leader.knot": "double uni"}),),
        mends=(other_joint,),
        mistakes=("M03", "M28"),
    ),
    Rule(
        name="joint-passes-guides",
        part=Part.KNOTS,
        severity=Severity.FAULT,
        what="The leader is longer than the rod, and its joint is too bulky to run through the rings.",
        why="On every cast the joint shoots through the rings at the lure's speed. A lump knocks against them, "
        "shortens the cast, and sooner or later catches and breaks a ring or the line.",
        sources=(COMMON_PRACTICE,),
        check=_joint_in_guides,
        wrong=(Example("drop shot", {"leader.knot": "surgeon's join", "leader.length": "120 in"}),),
        right=(Example("drop shot", {"leader.knot": "fg", "leader.length": "120 in"}),),
        mends=(other_joint, other_leader_length),
        mistakes=("M29",),
    ),
    Rule(
        name="no-swivel-on-spinning-lure",
        part=Part.KNOTS,
        severity=Severity.RISK,
        what="A lure that spins is tied on without a swivel.",
        why="Every turn of the lure that no swivel lets out goes into the line. Slack line then twists into "
        "loops that jump off the reel.",
        sources=(COMMON_PRACTICE,),
        check=_no_swivel,
        wrong=(Example("inline spinner", {"hardware.swivel": None}),),
        right=(Example("inline spinner", {"hardware.swivel": "20 lb"}),),
        mends=(advice("Put a small ball-bearing swivel at the lure, or a foot or two above it"),),
        mistakes=("M14",),
    ),
    Rule(
        name="snap-swivel-not-needed",
        part=Part.KNOTS,
        severity=Severity.NOTE,
        what="Snap and swivel hang on a lure that does not spin.",
        why="Their weight tips and damps a light lure, fish see them, and hooks catch on them. A loop knot or a "
        "bare round-bend snap gives the lure the same freedom.",
        sources=(COMMON_PRACTICE,),
        check=_swivel_drowns,
        wrong=(Example("popper", {"hardware.swivel": "30 lb", "hardware.snap": "30 lb"}),),
        right=(Example("popper", {"hardware.swivel": None, "hardware.snap": None}),),
        mends=(advice("Tie straight to the lure, or use a bare round-bend snap"),),
        mistakes=("M15",),
    ),
    Rule(
        name="hardware-weaker-than-line",
        part=Part.KNOTS,
        severity=Severity.RISK,
        what="A swivel or snap is marked weaker than the line it is tied to.",
        why="It opens before the line breaks, and nobody sees it coming: the lure is simply gone.",
        sources=(COMMON_PRACTICE,),
        check=_hardware_weak,
        wrong=(Example("carolina rig", {"hardware.swivel": "6 lb"}),),
        right=(Example("carolina rig", {"hardware.swivel": "50 lb"}),),
        mends=(advice("Use a swivel and snap marked at least as strong as the leader"),),
    ),
    Rule(
        name="backing-joint-wrong",
        part=Part.BACKING,
        severity=Severity.RISK,
        what="The knot between backing and main line does not suit the two.",
        why="It lies under all the main line and is forgotten until a long run reaches it. Then it has to hold "
        "and to slip out smoothly.",
        sources=(COMMON_PRACTICE,),
        check=_backing_joint,
        wrong=(Example("hollow-body frog", {"backing.knot": "palomar"}),),
        right=(Example("hollow-body frog", {"backing.knot": "double uni"}),),
        mends=(),
    ),
)  # fmt: skip
