"""Rules about the joints between backing, main line and leader."""

from rigbuilder.model.fields import Part
from rigbuilder.model.rig import Line
from rigbuilder.reference.knots import Knot
from rigbuilder.reference.ranges import Range
from rigbuilder.reference.words import GuidePassage, JointPlace, LineType
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import other_joint, other_leader_length
from rigbuilder.review.rules.common import knot_called
from rigbuilder.review.tackle_mends import other_backing_knot, usual_backing
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

_JOINS = (JointPlace.LINE_TO_LEADER, JointPlace.LEADER_SECTIONS, JointPlace.LOOP, JointPlace.WIRE,
          JointPlace.SWIVEL)  # fmt: skip


def _joint(case: Case) -> Hit | None:
    leader = case.leader
    knot = knot_called(case, leader.knot if leader else None)
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


def _joint_reason(case: Case, knot: Knot, leader: Line) -> tuple[Severity, str] | None:
    if not any(knot.serves(place) for place in _JOINS):
        return Severity.FAULT, f"The {knot.name} is no knot for joining two lines."
    if (
        leader.type is LineType.WIRE
        and not knot.serves(JointPlace.WIRE)
        and not knot.serves(JointPlace.SWIVEL)
    ):
        return (Severity.RISK, "Plain knots slip on wire.") if LineType.WIRE not in knot.suits else None
    if case.main.type in knot.avoid:
        return Severity.RISK, knot.avoid_note
    if _only_for_braid(knot) and not case.is_braided():
        return Severity.RISK, "It grips by biting thin braid into a thicker leader; smooth lines slide."
    return _misfit(case, knot)


def _only_for_braid(knot: Knot) -> bool:
    return all(kind.is_braided for kind in knot.suits)


def _misfit(case: Case, knot: Knot) -> tuple[Severity, str] | None:
    """Return what is wrong between the thickness of the two lines and what the knot wants."""
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
    """Return leader over main line in diameter; between smooth lines the thicker over the thinner."""
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
    knot = knot_called(case, leader.knot if leader else None)
    if leader is None or leader.length_m is None or rod.length_m is None:
        return None
    swivel = case.rig.hardware.swivel_n is not None and (knot is None or knot.serves(JointPlace.SWIVEL))
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
        Severity.RISK,
        headline=lambda say: f"{joint} has to pass the rings: {say.leader(leader.length_m or 0.0)} leader",
        numbers=lambda: (
            Number.of("leader", leader.length_m or 0.0, Dimension.LENGTH, "leader"),
            Number.of("rod", rod.length_m or 0.0, Dimension.LENGTH, "rod"),
        ),
        rests_on=() if swivel else ("leader.knot",),
    )


def _backing_joint(case: Case) -> Hit | None:
    backing = case.rig.backing
    knot = knot_called(case, backing.knot if backing else None)
    if backing is None or knot is None:
        return None
    places = (JointPlace.BACKING, JointPlace.LINE_TO_LEADER, JointPlace.LEADER_SECTIONS)
    fits = any(knot.serves(place) for place in places)
    words = f"{knot.name} knot between {backing.type} backing and {case.main.type}"
    if not fits or (case.is_braided() and case.main.type in knot.avoid):
        return Hit(Severity.RISK, headline=lambda say: words, detail=lambda say: knot.avoid_note)
    ratio = _thickness(case.facts.backing_diameter_m, case.facts.main_diameter_m)
    if ratio is None or knot.ratio is None or ratio.low <= knot.ratio.high:
        return None
    return Hit(
        Severity.RISK,
        headline=lambda say: words,
        detail=lambda say: _ratio_words(ratio, knot),
        numbers=lambda: (Number.of("thicker line over thinner", ratio),),
    )


def _thickness(one: Range | None, other: Range | None) -> Range | None:
    """Return the thicker diameter over the thinner."""
    if one is None or other is None:
        return None
    if one.typical < other.typical:
        one, other = other, one
    return Range(max(one.low / other.high, 1.0), one.typical / other.typical, one.high / other.low)


RULES = (
    Rule(
        name="joint-wrong-for-lines",
        part=Part.KNOTS,
        severity=Severity.FAULT,
        what="The knot between main line and leader does not suit the two lines or their thickness.",
        why="A joint grips only when both lines can bite into each other. A thin slippery "
        "line slides out of it or cuts, and two lines of very different thickness cannot "
        "share the load.",
        sources=(Source(Kind.COMPUTED, "both diameters, as printed or from the test"), COMMON_PRACTICE),
        check=_joint,
        rests_on=("leader.knot",),
        wrong=(
            Example("drop shot", {"leader.knot": "blood"}),
            Example("drop shot", {"leader.knot": "improved clinch"}),
        ),
        right=(Example("drop shot", {"leader.knot": "double uni"}),),
        mends=(other_joint,),
        mistakes=("M03", "M28"),
        differ="fg-or-double-uni",
    ),
    Rule(
        name="joint-passes-guides",
        part=Part.KNOTS,
        severity=Severity.RISK,
        what="The leader is longer than the rod, and its joint is too bulky to run through the rings.",
        why="On every cast the joint shoots through the rings at the lure's speed. A lump "
        "knocks against them, shortens the cast, and sooner or later catches and breaks a "
        "ring or the line.",
        sources=(COMMON_PRACTICE,),
        check=_joint_in_guides,
        rests_on=("leader.length", "rod.length"),
        wrong=(
            Example("Carolina rig", {"leader.length": "120 in"}),
            Example("drop shot", {"leader.knot": "surgeon's join", "leader.length": "120 in"}),
        ),
        right=(
            Example("Carolina rig", {"leader.length": "36 in"}),
            Example("drop shot", {"leader.knot": "fg", "leader.length": "120 in"}),
        ),
        mends=(other_joint, other_leader_length),
        mistakes=("M29",),
        differ="joint-place",
    ),
    Rule(
        name="backing-joint-wrong",
        part=Part.BACKING,
        severity=Severity.RISK,
        what="The knot between backing and main line does not suit the two.",
        why="It lies under all the main line and is forgotten until a long run reaches it. "
        "Then it has to hold and to slip out smoothly.",
        sources=(COMMON_PRACTICE,),
        check=_backing_joint,
        rests_on=("backing.knot",),
        wrong=(Example("hollow-body frog", {"backing.knot": "palomar"}),),
        right=(Example("hollow-body frog", {"backing.knot": "double uni"}),),
        mends=(other_backing_knot, usual_backing),
    ),
)
