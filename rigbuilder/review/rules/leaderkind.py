"""Rules about whether a leader is needed at all, and against teeth."""

from rigbuilder.model.fields import Part
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
from rigbuilder.review.core import Example, Hit, Rule, Severity
from rigbuilder.review.mends import (
    advice,
    with_leader,
    without_leader,
)
from rigbuilder.review.rules.common import resists_teeth
from rigbuilder.sources import COMMON_PRACTICE


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
    if resists_teeth(case) or teeth is FishTeeth.NONE:
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


def _in_the_weed(case: Case) -> Hit | None:
    leader, cover = case.leader, case.rig.water.cover
    if leader is None or case.technique.leader.need is not LeaderNeed.NONE or not case.is_braided():
        return None
    if cover not in (Cover.THICK_GRASS, Cover.MATTED_GRASS, Cover.LILY_PADS) or resists_teeth(case):
        return None
    return Hit(Severity.RISK, headline=lambda say: f"leader knot in {cover}")


def _wire_without_teeth(case: Case) -> Hit | None:
    leader = case.leader
    if leader is None or leader.type is not LineType.WIRE or case.technique.toothed:
        return None
    if case.rig.fish.teeth is not FishTeeth.NONE:
        return None
    return Hit(Severity.NOTE, headline=lambda say: "wire leader where no toothed fish live")


RULES = (
    Rule(
        name="leader-missing",
        part=Part.LEADER,
        severity=Severity.FAULT,
        what="Practice puts a leader on this line for the technique, and there is none.",
        why="Limp braid falls back over trebles and swivels, it shows, and it wears fast on "
        "hard edges. A short stretch of stiffer, clearer line keeps it away from the lure.",
        sources=(COMMON_PRACTICE,),
        check=_missing,
        rests_on=("leader.type",),
        wrong=(
            Example("walking bait", {"leader": None, "knots.lure": "palomar"}),
            Example("Carolina rig", {"leader": None}),
        ),
        right=(Example("walking bait"), Example("Carolina rig")),
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
        rests_on=("fish.teeth", "leader.type"),
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
        name="leader-knot-in-the-weed",
        part=Part.LEADER,
        severity=Severity.RISK,
        what="A leader is joined on for a technique of thick cover where practice ties braid straight on.",
        why="The joint combs up every stem and strand; it stops the lure short and takes the "
        "cutting edge off the braid.",
        sources=(COMMON_PRACTICE,),
        check=_in_the_weed,
        rests_on=("leader.type", "water.cover"),
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
)
