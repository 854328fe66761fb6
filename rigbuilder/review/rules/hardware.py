"""Rules about swivels and snaps."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.reference.words import HookClass, RetrieveLoad
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Rule, Severity
from rigbuilder.review.rules.common import rests_on_leader
from rigbuilder.review.speak import an
from rigbuilder.review.tackle_mends import stronger_hardware, with_snap, with_swivel, without_swivel
from rigbuilder.sources import COMMON_PRACTICE


def _no_swivel(case: Case) -> Hit | None:
    lure = case.reference.lure(case.technique)
    if not lure.spins or case.rig.hardware.swivel_n is not None:
        return None
    if RetrieveLoad.VERTICAL in case.technique.retrieve_load and case.rig.hardware.snap_n is not None:
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
    return Hit(Severity.NOTE, headline=lambda say: f"snap and swivel on {an(technique.name)}")


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
        rests_on=rests_on_leader(case),
    )


_CLUMSY = 8.0  # common practice: hardware eight times as strong as the line is too big for it
_LIGHT_KG = 0.0142  # common practice: half an ounce, below which the weight of hardware tells


def _clumsy(case: Case) -> Hit | None:
    hardware, lure = case.rig.hardware, case.rig.lure.total_kg
    strongest = max((value for value in (hardware.swivel_n, hardware.snap_n) if value), default=0.0)
    end = case.end.test_n or case.main_n
    if strongest <= _CLUMSY * end or strongest <= 30 * LBF_N or lure > _LIGHT_KG:
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: (
            f"{say.test(strongest)} hardware on {say.test(end)} line and a {say.lure(lure)} lure"
        ),
    )


RULES = (
    Rule(
        name="hardware-too-big",
        part=Part.KNOTS,
        severity=Severity.NOTE,
        what="A swivel or snap many times stronger than the line hangs on a light lure.",
        why="Strong hardware is big hardware. On a light lure its weight counts: it shows and "
        "kills the movement. And nothing is gained, for the line parts long before it.",
        sources=(COMMON_PRACTICE,),
        check=_clumsy,
        wrong=(Example("inline spinner", {"hardware.swivel": "60 lb"}),),
        right=(Example("inline spinner", {"hardware.swivel": "10 lb"}),),
        mends=(stronger_hardware,),
    ),
    Rule(
        name="no-swivel-on-spinning-lure",
        part=Part.KNOTS,
        severity=Severity.RISK,
        what="A lure that spins is tied on without a swivel.",
        why="Every turn of the lure that no swivel lets out goes into the line. Slack line "
        "then twists into loops that jump off the reel.",
        sources=(COMMON_PRACTICE,),
        check=_no_swivel,
        wrong=(Example("inline spinner", {"hardware.swivel": None}),),
        right=(Example("inline spinner", {"hardware.swivel": "20 lb"}),),
        mends=(with_swivel, with_snap),
        mistakes=("M14",),
    ),
    Rule(
        name="snap-swivel-not-needed",
        part=Part.KNOTS,
        severity=Severity.NOTE,
        what="Snap and swivel hang on a lure that does not spin.",
        why="Their weight tips and damps a light lure, fish see them, and hooks catch on "
        "them. A loop knot, or a plain round snap, gives the lure the same freedom.",
        sources=(COMMON_PRACTICE,),
        check=_swivel_drowns,
        wrong=(Example("popper", {"hardware.swivel": "30 lb", "hardware.snap": "30 lb"}),),
        right=(Example("popper", {"hardware.swivel": None, "hardware.snap": None}),),
        mends=(without_swivel,),
        differ="snap-or-direct",
        mistakes=("M15",),
    ),
    Rule(
        name="hardware-weaker-than-line",
        part=Part.KNOTS,
        severity=Severity.RISK,
        what="A swivel or snap is marked weaker than the line it is tied to.",
        why="It gives way before the line does, and nobody sees it coming: the lure is simply gone.",
        sources=(COMMON_PRACTICE,),
        check=_hardware_weak,
        wrong=(Example("Carolina rig", {"hardware.swivel": "6 lb"}),),
        right=(Example("Carolina rig", {"hardware.swivel": "50 lb"}),),
        mends=(stronger_hardware,),
    ),
)
