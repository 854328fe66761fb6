"""Rules about whether a leader is needed, of what, and how long."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.reference.words import (
    BraidDirect,
    Cover,
    FishTeeth,
    HookClass,
    LeaderNeed,
    LineType,
    RetrieveLoad,
)
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import (
    advice,
    other_leader_length,
    other_leader_type,
    with_leader,
    without_leader,
)
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

_BITE_FLUOROCARBON_N = 60 * LBF_N  # common practice: below it fluorocarbon is bitten through too often
_SHORT_SURFACE_M = 0.61  # common practice: a stiff leader up to about 24 in does not drag a nose down
_ROCK_CAST_M, _ROCK_LEADER_M = 27.4, 1.5  # common practice: beyond 30 yd over rock, 5 ft and more


def _leader_n(case: Case) -> float:
    return (case.leader.test_n or 0.0) if case.leader else 0.0


def _resists_teeth(case: Case) -> bool:
    leader = case.leader
    if leader is None:
        return False
    heavy = leader.type is LineType.FLUOROCARBON and _leader_n(case) >= _BITE_FLUOROCARBON_N * 0.999
    return leader.type is LineType.WIRE or heavy


def _missing(case: Case) -> Hit | None:
    need = case.technique.leader.need_on(case.main.type)
    if case.leader is not None or need not in (LeaderNeed.USUAL, LeaderNeed.REQUIRED):
        return None
    if not case.is_braided() and need is not LeaderNeed.REQUIRED:
        return None
    severity = _missing_severity(case, need)
    if severity is Severity.RIGHT:
        return None
    return Hit(
        severity,
        headline=lambda say: f"{case.main.type} straight to the {case.technique.name}, no leader",
        detail=lambda say: case.technique.braid_direct_why if case.is_braided() else "",
    )


def _missing_severity(case: Case, need: LeaderNeed) -> Severity:
    technique, water = case.technique, case.rig.water
    if need is LeaderNeed.REQUIRED:
        return Severity.FAULT if technique.toothed else Severity.RISK
    direct = technique.braid_direct
    if direct in (BraidDirect.YES, BraidDirect.ACCEPTABLE):
        return Severity.RIGHT
    resting_trebles = technique.hook_class in (HookClass.LIGHT_TREBLE, HookClass.HEAVY_TREBLE)
    if resting_trebles and RetrieveLoad.STOP_GO in technique.retrieve_load:
        return Severity.RISK
    muddy = water.clarity_m is not None and water.clarity_m < 0.91
    return Severity.NOTE if muddy or direct is BraidDirect.DISCOURAGED else Severity.RISK


def _no_bite_leader(case: Case) -> Hit | None:
    teeth = case.rig.fish.teeth
    if _resists_teeth(case) or teeth is FishTeeth.NONE:
        return None
    if teeth is FishTeeth.PRESENT:
        severity = Severity.FAULT
    elif case.technique.toothed:
        severity = Severity.NOTE
    else:
        return None
    end = case.end
    return Hit(
        severity,
        headline=lambda say: f"{end.type} {say.test(end.test_n or 0.0)} in front of toothed fish",
    )


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


def _in_the_weed(case: Case) -> Hit | None:
    leader, cover = case.leader, case.rig.water.cover
    if leader is None or case.technique.leader.need is not LeaderNeed.NONE or not case.is_braided():
        return None
    if cover not in (Cover.THICK_GRASS, Cover.MATTED_GRASS, Cover.LILY_PADS) or _resists_teeth(case):
        return None
    return Hit(Severity.RISK, headline=lambda say: f"leader knot in {cover}")


_SHORT, _LONG = (
    0.5,
    2.0,
)  # common practice: beyond these shares of the usual lengths a leader does another job


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
    if leader is None or not usual or leader.type in usual or _resists_teeth(case):
        return None
    if leader.type is LineType.COPOLYMER and LineType.NYLON in usual:
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: (
            f"{leader.type} leader for a {case.technique.name}: {' or '.join(map(str, usual))} is usual"
        ),
    )


def _wire_without_teeth(case: Case) -> Hit | None:
    leader = case.leader
    if leader is None or leader.type is not LineType.WIRE or case.technique.toothed:
        return None
    if case.rig.fish.teeth is not FishTeeth.NONE:
        return None
    return Hit(Severity.NOTE, headline=lambda say: "wire leader where no toothed fish live")


RULES = (
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
        name="wire-without-teeth",
        part=Part.LEADER,
        severity=Severity.NOTE,
        what="A wire leader is tied on although the card says that no toothed fish are about.",
        why="Wire is stiff, shines and kinks. Where nothing bites through line it only costs "
        "bites and spoils the movement of the lure.",
        sources=(COMMON_PRACTICE,),
        check=_wire_without_teeth,
        wrong=(
            Example(
                "spinnerbait",
                {
                    "leader.type": "wire",
                    "leader.test": "14 lb",
                    "leader.length": "12 in",
                    "leader.knot": None,
                    "hardware.swivel": "30 lb",
                    "knots.lure": "haywire twist",
                },
            ),
        ),
        right=(Example("spinnerbait"),),
        mends=(without_leader,),
        replaces=("leader-material-unusual", "leader-length-unusual"),
    ),
    Rule(
        name="leader-missing",
        part=Part.LEADER,
        severity=Severity.FAULT,
        what="Practice puts a leader on this line for the technique, and there is none.",
        why="Limp braid falls back over trebles and swivels, it shows, and it wears fast on "
        "hard edges. A short stretch of stiffer, clearer line keeps it away from the lure.",
        sources=(COMMON_PRACTICE,),
        check=_missing,
        wrong=(
            Example("walking bait", {"leader": None, "knots.lure": "palomar"}),
            Example("carolina rig", {"leader": None}),
        ),
        right=(Example("walking bait"), Example("carolina rig")),
        mends=(with_leader,),
        mistakes=("M19",),
    ),
    Rule(
        name="no-bite-leader",
        part=Part.LEADER,
        severity=Severity.FAULT,
        what="Toothed fish are about, and neither wire nor heavy fluorocarbon is in front of the lure.",
        why="Pike and their kin cut nylon, thin fluorocarbon and braid in one bite. The lure "
        "is lost, and the fish keeps hooks and line in its mouth.",
        sources=(COMMON_PRACTICE,),
        check=_no_bite_leader,
        differ="pike-leader",
        wrong=(Example("spinnerbait", {"fish.teeth": "present", "leader": None}),),
        right=(Example("spinnerbait", {"fish.teeth": "none", "leader": None}),),
        mends=(with_leader, advice("Tie a leader of light wire, 9 to 18 in, or of fluorocarbon of 80 lb")),
        replaces=(
            "leader-missing",
            "leader-outside-practice",
            "leader-material-unusual",
            "leader-length-unusual",
        ),
        mistakes=("M32",),
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
    Rule(
        name="leader-knot-in-the-weed",
        part=Part.LEADER,
        severity=Severity.RISK,
        what="A leader is joined on for a technique of thick cover where practice ties braid straight on.",
        why="The joint combs up every stem and strand; it stops the lure short and takes the "
        "cutting edge off the braid.",
        sources=(COMMON_PRACTICE,),
        check=_in_the_weed,
        wrong=(
            Example(
                "hollow-body frog",
                {
                    "leader.type": "nylon",
                    "leader.test": "25 lb",
                    "leader.length": "24 in",
                    "leader.knot": "double uni",
                    "water.cover": "matted grass",
                },
            ),
        ),
        right=(Example("hollow-body frog", {"water.cover": "matted grass"}),),
        mends=(without_leader,),
        replaces=("leader-outside-practice",),
    ),
)
