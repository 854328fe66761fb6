"""Rules about what a leader is made of, and how long it is."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.words import (
    Cover,
    LineType,
)
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import (
    other_leader_length,
    other_leader_type,
)
from rigbuilder.review.rules.common import resists_teeth
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
    if not on_rock or leader.length_m >= _ROCK_LEADER_M * 0.99:
        return None
    return Hit(
        Severity.RISK,
        headline=lambda say: f"{say.leader(leader.length_m or 0.0)} leader on a long cast over rock",
        numbers=lambda: (Number.of("leader", leader.length_m or 0.0, Dimension.LENGTH, "leader"),),
    )


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
            f"{say.leader(length)} leader is {way} for a {case.technique.name}: {say.leaders(usual)} is usual"
        ),
        numbers=lambda: (
            Number.of("leader", length, Dimension.LENGTH, "leader"),
            Number("usual leaders", usual.low, usual.middle, usual.high, Dimension.LENGTH, "leader"),
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
            f"{leader.type} leader for a {case.technique.name}: {' or '.join(map(str, usual))} is usual"
        ),
    )


RULES = (
    Rule(
        name="leader-material-unusual",
        part=Part.LEADER,
        severity=Severity.NOTE,
        what="The leader is of a material that the technique is not usually fished with.",
        why="Nylon floats nearly and gives; fluorocarbon sinks, shows little and resists "
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
        replaces=("leader-length-unusual",),
        wrong=(Example("tube", {"water.cover": "rock", "cast": "40 yd", "leader.length": "18 in"}),),
        right=(Example("tube", {"water.cover": "rock", "cast": "40 yd", "leader.length": "84 in"}),),
        mends=(other_leader_length,),
        mistakes=("M31",),
    ),
)
