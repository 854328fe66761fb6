"""Rules about which reel is used: its kind, its gear, and the lightest lure that it throws."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import OZ_KG
from rigbuilder.reference.words import ReelKind
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Rule, Severity
from rigbuilder.review.mends import advice
from rigbuilder.review.rules.common import is_shallow
from rigbuilder.review.speak import an
from rigbuilder.review.tackle_mends import usual_reel, usual_weight
from rigbuilder.sources import COMMON_PRACTICE

_SLOW, _QUICK = 0.82, 1.25  # common practice: a band of gear ratios is about this wide


def _too_light_for_casting(case: Case) -> Hit | None:
    if case.rig.reel.kind is not ReelKind.BAITCASTING:
        return None
    limits, total = case.reference.casting_limits, case.rig.lure.total_kg
    least = (limits.lure_min_shallow_oz if is_shallow(case) else limits.lure_min_oz) * OZ_KG
    if total >= least * 0.98:
        return None
    return Hit(
        Severity.RISK if total < 0.6 * least else Severity.NOTE,
        headline=lambda say: (
            f"{say.lure(total)} lure on a casting reel, which throws {say.lure(least)} and up"
        ),
        part=Part.LURE,
    )


def _unusual_kind(case: Case) -> Hit | None:
    kind, usual = case.rig.reel.kind, case.technique.reel.kinds
    if kind in usual or (kind is ReelKind.SPINCAST and ReelKind.SPINNING in usual):
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: f"{kind} reel for {an(case.technique.name)}: {' or '.join(usual)} is usual",
    )


def _unusual_ratio(case: Case) -> Hit | None:
    ratio, usual = case.rig.reel.ratio, case.technique.reel.ratio
    if ratio is None or not case.rig.says("reel.ratio") or usual.low * _SLOW <= ratio <= usual.high * _QUICK:
        return None
    way = "slow" if ratio < usual.low else "fast"
    return Hit(
        Severity.NOTE,
        headline=lambda say: (
            f"{ratio:g}:1 is {way} for {an(case.technique.name)}, usually wound with "
            f"{usual.low:g} to {usual.high:g}:1"
        ),
    )


RULES = (
    Rule(
        name="reel-kind-unusual",
        part=Part.REEL,
        severity=Severity.NOTE,
        what="The technique is not usually fished with this kind of reel.",
        why="A casting reel throws strong line and heavy lures and stops them with the "
        "thumb; a spinning reel lets light lures and thin line go. Used the other way "
        "round, each of them casts worse.",
        sources=(COMMON_PRACTICE,),
        check=_unusual_kind,
        wrong=(Example("flipping jig", {"reel.kind": "spinning", "reel.size": "4000"}),),
        right=(Example("flipping jig", {"reel.kind": "baitcasting", "reel.size": "150"}),),
        mends=(usual_reel,),
    ),
    Rule(
        name="gear-ratio-unusual",
        part=Part.REEL,
        severity=Severity.NOTE,
        what="The reel winds much slower or faster than the technique is fished.",
        why="The gear ratio sets the pace of the lure. Too fast a reel pulls a deep lure up "
        "and tires the wrist; too slow a one does not take in slack in time for the strike.",
        sources=(COMMON_PRACTICE,),
        check=_unusual_ratio,
        wrong=(Example("deep-diving crankbait", {"reel.ratio": "9.1:1"}),),
        right=(Example("deep-diving crankbait", {"reel.ratio": "5.4:1"}),),
        mends=(usual_reel, advice("Wind at the pace of the lure, not of the reel")),
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
        rests_on=("reel.kind",),
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
        mends=(usual_reel, usual_weight, advice("Throw it on spinning tackle, or off a shallow light spool")),
    ),
)
