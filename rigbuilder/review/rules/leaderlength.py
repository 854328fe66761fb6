"""Rules about what a leader is made of, and how long it is."""

from collections.abc import Sequence

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import INCH_M, LBF_N, Span
from rigbuilder.reference.words import (
    Cover,
    LineType,
)
from rigbuilder.review.case import Case
from rigbuilder.review.conditions import Move, steps_between
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity, Words
from rigbuilder.review.leader_aim import leader_aim
from rigbuilder.review.mends import other_leader_length, other_leader_test, other_leader_type
from rigbuilder.review.rules.common import leader_n, resists_teeth
from rigbuilder.review.speak import Speaker, an
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

_SHORT_SURFACE_M = 0.61  # common practice: a stiff leader up to about 24 in does not drag a nose down
_ROCK_CAST_M, _ROCK_LEADER_M = 27.4, 1.5  # common practice: beyond 30 yd over rock, 5 ft and more
_SHORT, _LONG = 0.5, 2.0  # common practice: beyond these shares of the usual a leader does another job


def _sinks_on_top(case: Case) -> Hit | None:
    leader, technique = case.leader, case.technique
    if leader is None or not technique.is_surface or technique.leader.below_float:
        return None
    if leader.type not in (LineType.FLUOROCARBON, LineType.HYBRID):
        return None
    length = leader.length_m or 0.0
    short = length <= _SHORT_SURFACE_M * 1.01
    return Hit(
        Severity.NOTE if short else Severity.RISK,
        headline=lambda say: f"{say.leader(length)} of sinking {leader.type} leader on a surface lure",
        numbers=lambda: (Number.of("leader", length, Dimension.LENGTH, "leader"),),
    )


def _too_short(case: Case) -> Hit | None:
    leader, water = case.leader, case.rig.water
    if leader is None or leader.length_m is None or leader.type is LineType.WIRE or not case.is_braided():
        return None
    far = case.rig.cast_m is not None and case.rig.cast_m > _ROCK_CAST_M
    on_rock = water.cover is Cover.ROCK and far and not case.technique.is_surface
    if not on_rock or leader.length_m >= _least_over_rock(case) * 0.99:
        return None
    return Hit(
        Severity.RISK,
        headline=lambda say: f"{say.leader(leader.length_m or 0.0)} leader on a long cast over rock",
        numbers=lambda: (Number.of("leader", leader.length_m or 0.0, Dimension.LENGTH, "leader"),),
    )


def _least_over_rock(case: Case) -> float:
    """Return the leader [m] that rock far out asks for; techniques of short leaders have theirs."""
    usual = case.technique.leader.length_m
    return _ROCK_LEADER_M if usual is None or usual.high >= _ROCK_LEADER_M else usual.low


def _usual_words(usual: Span, say: Speaker) -> str:
    return say.span(usual.low, usual.high, Dimension.LENGTH, "leader")


def _length(case: Case) -> Hit | None:
    leader, usual = case.leader, case.technique.leader.length_m
    if leader is None or leader.length_m is None or usual is None or leader.type is LineType.WIRE:
        return None
    length = leader.length_m
    if usual.low * _SHORT <= length <= usual.high * _LONG * 1.01:
        return None
    way = "short" if length < usual.low else "long"
    return Hit(
        Severity.NOTE,
        headline=lambda say: (
            f"{say.leader(length)} leader is {way} for {an(case.technique.name)}, "
            f"usually {_usual_words(usual, say)}"
        ),
        numbers=lambda: (
            Number.of("leader", length, Dimension.LENGTH, "leader"),
            Number.between("usual leaders", usual, Dimension.LENGTH, "leader"),
        ),
    )


def _material(case: Case) -> Hit | None:
    leader, usual = case.leader, case.technique.leader.materials
    if leader is None or not usual or leader.type in usual or resists_teeth(case):
        return None
    if leader.type is LineType.COPOLYMER and LineType.NYLON in usual:
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: (
            f"{leader.type} leader for {an(case.technique.name)}: {' or '.join(map(str, usual))} is usual"
        ),
    )


_STEPS_OFF = 2  # rungs of the ladder: one is a shade, two are another leader


def _off_the_aim(case: Case) -> Hit | None:
    leader = case.leader
    if leader is None or leader.type is LineType.WIRE or resists_teeth(case):
        return None
    aim, ladders = leader_aim(case.aim, case.main.type), case.reference.ladders
    length = (leader.length_m or 0.0) / INCH_M
    if aim.length_in is not None and aim.length_moves and length:
        steps = steps_between(ladders.leader_in, length, aim.length_in[1])
        if _is_off(steps, aim.length_moves, [move.leader_length for move in aim.length_moves]):
            return _off_hit(
                lambda say: say.leader(leader.length_m or 0.0),
                lambda say: say.leader(aim.length_in[1] * INCH_M if aim.length_in else 0.0),
                "shorter" if steps < 0 else "longer",
                aim.length_moves,
            )
    if aim.test_lb is None or not aim.test_moves:
        return None
    steps = steps_between(ladders.leader_lb, leader_n(case) / LBF_N, aim.test_lb[1])
    if not _is_off(steps, aim.test_moves, [move.leader_test for move in aim.test_moves]):
        return None
    wish = aim.test_lb[1] * LBF_N
    return _off_hit(
        lambda say: say.test(leader_n(case)),
        lambda say: say.test(wish),
        "lighter" if steps < 0 else "heavier",
        aim.test_moves,
    )


def _is_off(steps: int, moves: Sequence[Move], by: Sequence[float]) -> bool:
    """Tell whether a leader lies two rungs off, on the side away from which the day moves it."""
    return bool(moves) and abs(steps) >= _STEPS_OFF and sum(by) * steps < 0


def _off_hit(found: Words, wish: Words, way: str, moves: Sequence[Move]) -> Hit:
    names = " and ".join(move.state.name for move in moves)
    return Hit(
        Severity.NOTE,
        headline=lambda say: f"{found(say)} leader is {way} than the {wish(say)} to aim at today",
        detail=lambda say: f"What moves it today: {names}.",
    )


RULES = (
    Rule(
        name="leader-off-the-aim",
        part=Part.LEADER,
        severity=Severity.NOTE,
        what="The leader is two steps or more from the test or length that the day points at.",
        why="Clear water and fish that are fished hard ask for more distance between lure "
        "and main line; stained water, weed and wind for less. Big fish and the shore ask "
        "for strength.",
        sources=(COMMON_PRACTICE,),
        check=_off_the_aim,
        wrong=(
            Example(
                "Ned rig",
                {"leader.length": "24 in", "water.clarity": "4 m", "water.pressure": "high"},
            ),
        ),
        right=(
            Example(
                "Ned rig",
                {"leader.length": "96 in", "water.clarity": "4 m", "water.pressure": "high"},
            ),
        ),
        mends=(other_leader_length, other_leader_test),
    ),
    Rule(
        name="leader-material-unusual",
        part=Part.LEADER,
        severity=Severity.NOTE,
        what="The leader is of a material that the technique is not usually fished with.",
        why="Nylon nearly floats and gives; fluorocarbon sinks, shows less and resists "
        "stones; wire stops teeth. The wrong one lifts a lure that should lie still, or "
        "sinks one that should float.",
        sources=(COMMON_PRACTICE,),
        check=_material,
        wrong=(Example("drop shot", {"leader.type": "nylon"}),),
        right=(Example("drop shot", {"leader.type": "fluorocarbon"}),),
        mends=(other_leader_type,),
    ),
    Rule(
        name="leader-length-unusual",
        part=Part.LEADER,
        severity=Severity.NOTE,
        what="The leader is less than half, or more than twice, as long as the technique's usual leaders.",
        why="Too short and the fish sees the main line, or the main line touches what the "
        "leader should spare; too long and the joint runs through the rings on every cast.",
        sources=(COMMON_PRACTICE,),
        check=_length,
        reads="leader",
        differ="surface-leader-length",
        wrong=(Example("walking bait", {"leader.length": "4 in"}),),
        right=(Example("walking bait", {"leader.length": "12 in"}),),
        mends=(other_leader_length,),
    ),
    Rule(
        name="leader-sinks-surface-lure",
        part=Part.LEADER,
        severity=Severity.RISK,
        what="A sinking leader runs to a lure that works on the surface.",
        why="A long sinking leader hangs under the nose at every pause and draws it down. A "
        "short stiff one hardly weighs anything, but nylon does the same job and floats "
        "better.",
        sources=(
            Source(Kind.COMPUTED, "wetted weight of the leader from its diameter and density"),
            COMMON_PRACTICE,
        ),
        check=_sinks_on_top,
        rests_on=("leader.type", "leader.length"),
        differ="surface-leader-length",
        replaces=("leader-material-unusual",),
        wrong=(Example("walking bait", {"leader.type": "fluorocarbon", "leader.length": "60 in"}),),
        right=(Example("walking bait", {"leader.type": "nylon", "leader.length": "18 in"}),),
        mends=(other_leader_type, other_leader_length),
    ),
    Rule(
        name="leader-too-short-for-rock",
        part=Part.LEADER,
        severity=Severity.RISK,
        what="On long casts over rock the leader is so short that the braid or the joint lies on the stones.",
        why="At the end of a long cast the line lies flat along the bottom. What touches the "
        "stones there should be the tough leader, not the braid that parts on the first "
        "edge.",
        sources=(COMMON_PRACTICE,),
        check=_too_short,
        rests_on=("leader.length", "water.cover", "cast"),
        replaces=("leader-length-unusual",),
        wrong=(Example("tube", {"water.cover": "rock", "cast": "40 yd", "leader.length": "18 in"}),),
        right=(Example("tube", {"water.cover": "rock", "cast": "40 yd", "leader.length": "84 in"}),),
        mends=(other_leader_length,),
        mistakes=("M31",),
    ),
)
