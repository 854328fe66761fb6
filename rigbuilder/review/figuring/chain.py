"""The chain from hook to arbor: what every link bears, and which is likely to go first."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from rigbuilder.mechanics.strength import chain_strength
from rigbuilder.mechanics.uncertainty import Range, combine
from rigbuilder.model.fields import Part
from rigbuilder.model.rig import Line, Rig
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.reference.ranges import Range as Spread
from rigbuilder.reference.techniques import Technique
from rigbuilder.reference.words import HookClass
from rigbuilder.review.facts import Link
from rigbuilder.review.figuring.material import ranges
from rigbuilder.review.figuring.sections import Sections

# Pull that opens or tears out a hook [lbf], low / typical / high: untested trade impressions, from memory.
HOOK_LB: dict[HookClass, tuple[float, float, float]] = {
    HookClass.LIGHT_WIRE_SINGLE: (4.0, 6.0, 10.0),
    HookClass.LIGHT_TREBLE: (6.0, 9.0, 14.0),
    HookClass.MEDIUM_SINGLE: (10.0, 15.0, 25.0),
    HookClass.HEAVY_TREBLE: (15.0, 25.0, 45.0),
    HookClass.HEAVY_SINGLE: (20.0, 30.0, 50.0),
    HookClass.WEEDLESS_DOUBLE: (25.0, 35.0, 60.0),
}
_ANY_KNOT = (0.5, 0.7, 0.9)  # a knot that the table has no figure for, from memory
_HARDWARE = (0.85, 1.0, 1.2)  # swivels and snaps against their printed strength, from memory
_ABSENT_N = 1e6
_POINTS = 96
_NAMES = (
    (Part.LURE, "hook"),
    (Part.KNOTS, "knot at the lure"),
    (Part.KNOTS, "snap"),
    (Part.LEADER, "leader"),
    (Part.KNOTS, "joint of leader and main line"),
    (Part.KNOTS, "swivel"),
    (Part.MAIN, "main line"),
)


@dataclass(frozen=True, slots=True)
class Chains:
    """Strength ranges of all links, arrays of shape (rigs, links), and of the whole chains (rigs,)."""

    present: np.ndarray[tuple[int, ...], np.dtype[np.bool_]]
    strength_n: Range
    goes_first: np.ndarray[tuple[int, ...], np.dtype[np.float64]]
    chain_n: Range

    def links(self, index: int) -> tuple[Link, ...]:
        """Return the links of one rig that are there, from the hook upwards."""
        return tuple(
            Link(part, name, _spread(self.strength_n, index, place), float(self.goes_first[index, place]))
            for place, (part, name) in enumerate(_NAMES)
            if self.present[index, place]
        )


def _spread(value: Range, row: int, place: int) -> Spread:
    return Spread(*(float(end[row, place]) for end in (value.low, value.typical, value.high)))


def chains(
    rigs: Sequence[Rig],
    techniques: Sequence[Technique],
    main: Sections,
    leader: Sections,
    reference: Reference,
) -> Chains:
    """Return the chains of many rigs in one pass; ``leader`` holds the main line where there is none."""
    has_leader = np.array([rig.leader is not None for rig in rigs])
    ends: list[Line] = [rig.leader or rig.main for rig in rigs]
    joined = np.array([_is_knotted(rig) for rig in rigs])
    lure_knot = ranges(
        [_efficiency(rig.knots.lure, end, reference) for rig, end in zip(rigs, ends, strict=True)]
    )
    joint = ranges([_joint_efficiency(rig, reference) for rig in rigs])
    weaker = Range(*(np.minimum(getattr(main.wet_break_n, e), getattr(leader.wet_break_n, e)) for e in _ENDS))
    columns = [
        (ranges([tuple(pull * LBF_N for pull in HOOK_LB[t.hook_class]) for t in techniques]), True),
        (_times(leader.wet_break_n, lure_knot), True),
        (_hardware([rig.hardware.snap_n for rig in rigs]), np.array([r.hardware.snap_n is not None for r in rigs])),
        (leader.wet_break_n, has_leader),
        (_times(weaker, joint), has_leader & joined),
        (_hardware([rig.hardware.swivel_n for rig in rigs]), np.array([r.hardware.swivel_n is not None for r in rigs])),
        (main.wet_break_n, True),
    ]  # fmt: skip
    present = np.stack([np.broadcast_to(there, len(rigs)) for _, there in columns], axis=-1)
    strength = Range(*(
        np.where(present, np.stack([np.broadcast_to(getattr(value, end), len(rigs)) for value, _ in columns], -1), _ABSENT_N)
        for end in _ENDS
    ))  # fmt: skip
    chain = chain_strength(mean_n=strength.mean(), sd_n=strength.deviation(), points=_POINTS)
    return Chains(present, strength, chain.breaks_first, chain.strength)


_ENDS = ("low", "typical", "high")


def _times(strength: Range, share: Range) -> Range:
    return combine(lambda a, b: a * b, inputs={"a": strength, "b": share})


def _hardware(printed: Sequence[float | None]) -> Range:
    value = np.array([strength or _ABSENT_N for strength in printed])
    return Range(*(value * factor for factor in _HARDWARE))


def _efficiency(knot: str | None, line: Line, reference: Reference) -> tuple[float, float, float]:
    if knot is None or knot not in reference.knots:
        return _ANY_KNOT
    known = reference.knots[knot].efficiency_in(line.type)
    return _ANY_KNOT if known is None else (known.low, known.typical, known.high)


def _is_knotted(rig: Rig) -> bool:
    return rig.leader is not None and rig.leader.knot is not None


def _joint_efficiency(rig: Rig, reference: Reference) -> tuple[float, float, float]:
    if rig.leader is None:
        return (1.0, 1.0, 1.0)
    weaker = rig.main if (rig.main.test_n or 0) <= (rig.leader.test_n or 0) else rig.leader
    return _efficiency(rig.leader.knot, weaker, reference)
