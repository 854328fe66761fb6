"""Rules about the rod's power and action, and about what its label says."""

from collections.abc import Sequence
from enum import StrEnum

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.reference.words import HookClass, Power, ReelKind
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice
from rigbuilder.review.speak import Speaker, an
from rigbuilder.review.tackle_mends import usual_rod
from rigbuilder.sources import COMMON_PRACTICE
from rigbuilder.units.dimensions import Dimension

_STRONG_HOOKS = (HookClass.HEAVY_SINGLE, HookClass.WEEDLESS_DOUBLE)
_FAR = 2  # steps of the words on rods: makers differ by one
_ODD = 0.6  # common practice: a label whose top is this far under or over what the power word means


def _steps(value: StrEnum, usual: Sequence[StrEnum]) -> int:
    """Return the signed distance in words from the nearest usual one; negative is softer or slower."""
    words = list(type(value))
    place, places = words.index(value), [words.index(word) for word in usual]
    return min(place - min(places), 0) or max(place - max(places), 0)


def _too_soft(case: Case) -> Hit | None:
    power, usual = case.rig.rod.power, case.technique.rod.powers
    if power is None or case.hook not in _STRONG_HOOKS or not usual:
        return None
    words = list(Power)
    if words.index(power) >= words.index(Power.MEDIUM_HEAVY) or _steps(power, usual) >= 0:
        return None
    return Hit(
        Severity.RISK,
        headline=lambda say: f"{power} rod behind {an(case.hook)} hook, where {usual[0]} is usual",
    )


def _power(case: Case) -> Hit | None:
    power, usual = case.rig.rod.power, case.technique.rod.powers
    if power is None or not usual or power in usual or abs(_steps(power, usual)) < _FAR:
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: f"{power} rod for {an(case.technique.name)}, where {_listed(usual)} is usual",
    )


def _action(case: Case) -> Hit | None:
    action, usual = case.rig.rod.action, case.technique.rod.actions
    if action is None or not usual or action in usual or abs(_steps(action, usual)) < _FAR:
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: (
            f"{action} action for {an(case.technique.name)}, where {_listed(usual)} is usual"
        ),
    )


def _listed(words: Sequence[StrEnum]) -> str:
    return str(words[0]) if len(words) == 1 else f"{words[0]} to {words[-1]}"


def _right_rod(case: Case, say: Speaker) -> str:
    rod, usual = case.rig.rod, case.technique.rod
    if rod.power in usual.powers and rod.action in usual.actions:
        return f"{an(str(rod.power))} rod of {rod.action} action suits {an(case.technique.name)}"
    return ""


def _odd_label(case: Case) -> Hit | None:
    rod = case.rig.rod
    if rod.power is None or rod.line_n is None or rod.line_for_braid or not case.rig.says("rod.power"):
        return None
    kind = ReelKind.SPINNING if case.rig.reel.kind is not ReelKind.BAITCASTING else ReelKind.BAITCASTING
    usual = case.reference.rods.power(rod.power).line_lb(kind).scaled(LBF_N)
    top = rod.line_n.high
    if usual.high * _ODD <= top <= usual.high / _ODD:
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: (
            f"{rod.power} rod marked {say.tests(rod.line_n)}, where {say.tests(usual)} is usual"
            if rod.line_n
            else ""
        ),
        numbers=lambda: (
            Number.of("top of the label", top, Dimension.FORCE, "test"),
            Number.between("usual label", usual, Dimension.FORCE, "test"),
        ),
    )


RULES = (
    Rule(
        name="rod-too-soft-for-hook",
        part=Part.ROD,
        severity=Severity.RISK,
        what="A rod of medium power or less stands behind a strong single hook or a double frog hook.",
        why="A thick hook needs a hard push to go in past its barb. A soft rod folds under "
        "that push: the tip travels, the hook stays where it is, and the fish spits it out.",
        sources=(COMMON_PRACTICE,),
        check=_too_soft,
        rests_on=("rod.power",),
        wrong=(Example("flipping jig", {"rod.label": "7'0\" M F 14-30 lb 3/8-1 1/2 oz"}),),
        right=(Example("flipping jig", {"rod.label": "7'0\" H F 14-30 lb 3/8-1 1/2 oz"}),),
        mends=(usual_rod, advice("Take a stronger and faster rod")),
        replaces=("rod-power-unusual", "rod-label-odd"),
        mistakes=("M22",),
    ),
    Rule(
        name="rod-power-unusual",
        part=Part.ROD,
        severity=Severity.NOTE,
        what="The rod is two words of power or more from what the technique is fished with.",
        why="Power is how much load bends the rod. Too much and a light lure flies badly and "
        "small hooks tear out; too little and the hook is not driven. The words differ "
        "between makers, so one step says little.",
        sources=(COMMON_PRACTICE,),
        check=_power,
        wrong=(Example("Ned rig", {"rod.power": "heavy"}),),
        right=(Example("Ned rig", {"rod.power": "medium"}),),
        mends=(usual_rod,),
        settled=_right_rod,
    ),
    Rule(
        name="rod-action-unusual",
        part=Part.ROD,
        severity=Severity.NOTE,
        what="The rod's action is two words or more from what the technique is fished with.",
        why="Action is where the rod bends first. A slow rod lets trebles take hold and "
        "spares thin wire; a fast one moves the lure smartly and drives a single hook.",
        sources=(COMMON_PRACTICE,),
        check=_action,
        wrong=(Example("deep-diving crankbait", {"rod.action": "fast"}),),
        right=(Example("deep-diving crankbait", {"rod.action": "moderate fast"}),),
        mends=(usual_rod,),
    ),
    Rule(
        name="rod-label-odd",
        part=Part.ROD,
        severity=Severity.NOTE,
        what="The line range on the rod does not go with its word of power.",
        why="On labels with two units kilograms are easily read as pounds, or the other way "
        "round, and then every sum that follows is wrong by more than a factor of two. Or "
        "the maker means something else by the word.",
        sources=(COMMON_PRACTICE,),
        check=_odd_label,
        wrong=(Example("walking bait", {"rod.label": "7'0\" MH F 4-9 lb 1/4-1 oz"}),),
        right=(Example("walking bait", {"rod.label": "7'0\" MH F 4-9 kg 1/4-1 oz"}),),
        mends=(advice("Look on the label for the second unit"),),
        mistakes=("M40",),
    ),
)
