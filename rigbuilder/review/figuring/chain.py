"""The chain from hook to arbor: what every link bears, and which is likely to go first."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from rigbuilder.mechanics.arrays import Array
from rigbuilder.mechanics.strength import chain_strength
from rigbuilder.mechanics.uncertainty import Range as Ranges
from rigbuilder.model.fields import Part
from rigbuilder.model.rig import Line, Rig
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import Range
from rigbuilder.reference.techniques import Technique
from rigbuilder.reference.words import LineType
from rigbuilder.review.facts import Link
from rigbuilder.review.figuring.spread import product, triple
from rigbuilder.review.hook_wire import bears_like

OwnKnots = Mapping[tuple[str, LineType], Range]
"""Share of strength that a person's own pull tests found for a knot in a type of line."""

ANY_KNOT = (0.5, 0.7, 0.9)  # a knot that the table has no figure for, from memory
HARDWARE = (0.85, 1.0, 1.2)  # swivels and snaps against their printed strength, from memory
_ABSENT_N = 1e6  # a link that is not there never goes first
POINTS = 32  # chances to go first within 0.02 and strengths within 2 % of a fine grid
_NAMES = (
    (Part.LURE, "hook"),
    (Part.LURE, "split ring"),
    (Part.KNOTS, "knot at the lure"),
    (Part.KNOTS, "snap"),
    (Part.LEADER, "leader"),
    (Part.KNOTS, "joint of leader and main line"),
    (Part.KNOTS, "swivel"),
    (Part.MAIN, "main line"),
)


@dataclass(frozen=True, slots=True)
class Chains:
    """Strength of all links, shape (3, rigs, links), their chances, and the whole chains (3, rigs)."""

    present: NDArray[np.bool_]
    strength_n: Array
    goes_first: Array
    chain_n: Array

    def links(self, index: int) -> tuple[Link, ...]:
        """Return the links of one rig that are there, from the hook upwards."""
        return tuple(
            Link(part, name, Range(*map(float, self.strength_n[:, index, place])), float(chance))
            for place, ((part, name), chance) in enumerate(zip(_NAMES, self.goes_first[index], strict=True))
            if self.present[index, place]
        )


def chains(
    rigs: Sequence[Rig],
    techniques: Sequence[Technique],
    main_n: Array,
    end_n: Array,
    reference: Reference,
    own: OwnKnots,
) -> Chains:
    """Return the chains of many rigs; ``main_n`` and ``end_n`` are the wet straight breaks of their lines."""
    efficiency = _Efficiency(reference, own)
    ends: list[Line] = [rig.leader or rig.main for rig in rigs]
    weaker = np.minimum(main_n, end_n)
    at_lure = triple([efficiency(rig.knots.lure, end) for rig, end in zip(rigs, ends, strict=True)])
    joint = triple([_joint(rig, efficiency) for rig in rigs])
    columns = (
        (_hooks(rigs, techniques, reference), True),
        _split_rings(techniques, reference),
        (product(end_n, at_lure), True),
        _printed([rig.hardware.snap_n for rig in rigs]),
        (end_n, np.array([rig.leader is not None for rig in rigs])),
        (product(weaker, joint), np.array([_is_knotted(rig) for rig in rigs])),
        _printed([rig.hardware.swivel_n for rig in rigs]),
        (main_n, True),
    )
    present = np.stack([np.broadcast_to(there, len(rigs)) for _, there in columns], axis=-1)
    strength = np.where(present, np.stack([value for value, _ in columns], axis=-1), _ABSENT_N)
    # Links that no rig has would only cost time.
    occurs = np.flatnonzero(present.any(axis=0))
    links = Ranges(*strength[..., occurs])
    chain = chain_strength(mean_n=links.mean(), sd_n=links.deviation(), points=POINTS)
    first = np.zeros(present.shape)
    first[:, occurs] = chain.breaks_first
    # The normal curves of wide links reach below nothing, which no link does.
    whole = np.maximum(np.stack([chain.strength.low, chain.strength.typical, chain.strength.high]), 0.0)
    return Chains(present, strength, first, whole)


def _hooks(rigs: Sequence[Rig], techniques: Sequence[Technique], reference: Reference) -> Array:
    """Pull that opens each rig's class of hook [N]."""
    opens = {kind: tuple(row.opens_n) for kind, row in reference.hooks.items()}
    worn = {(technique.hook_class, rig.lure.hook) for rig, technique in zip(rigs, techniques, strict=True)}
    known = {pair: opens[bears_like(*pair)] for pair in worn}
    pairs = zip(rigs, techniques, strict=True)
    return triple([known[technique.hook_class, rig.lure.hook] for rig, technique in pairs])


def _split_rings(techniques: Sequence[Technique], reference: Reference) -> tuple[Array, NDArray[np.bool_]]:
    """Pull that opens the split rings [N] of each technique whose hooks hang on them."""
    rings = {kind: row.split_ring_n for kind, row in reference.hooks.items()}
    found = [rings[technique.hook_class] for technique in techniques]
    value = triple([(_ABSENT_N,) * 3 if ring is None else tuple(ring) for ring in found])
    return value, np.array([ring is not None for ring in found])


def _printed(printed: Sequence[float | None]) -> tuple[Array, NDArray[np.bool_]]:
    value = np.array([strength or _ABSENT_N for strength in printed])
    return np.outer(HARDWARE, value), np.array([strength is not None for strength in printed])


class _Efficiency:
    """Share of strength that a knot leaves: own tests first, then the catalogue, then any knot's range."""

    def __init__(self, reference: Reference, own: OwnKnots) -> None:
        self._reference, self._own = reference, own
        self._known: dict[tuple[str | None, LineType], tuple[float, ...]] = {}

    def __call__(self, knot: str | None, line: Line) -> tuple[float, ...]:
        key = (knot, line.type)
        if key not in self._known:
            self._known[key] = self._find(knot, line.type)
        return self._known[key]

    def _find(self, knot: str | None, kind: LineType) -> tuple[float, ...]:
        if knot is None:
            return ANY_KNOT
        row = self._reference.knots.get(knot)
        found = self._own.get((knot, kind)) or (row.efficiency_in(kind) if row is not None else None)
        return ANY_KNOT if found is None else (found.low, found.typical, found.high)


def _is_knotted(rig: Rig) -> bool:
    return rig.leader is not None and rig.leader.knot is not None


def _joint(rig: Rig, efficiency: Callable[[str | None, Line], tuple[float, ...]]) -> tuple[float, ...]:
    if rig.leader is None:
        return (1.0, 1.0, 1.0)
    weaker = rig.main if (rig.main.test_n or 0) <= (rig.leader.test_n or 0) else rig.leader
    return efficiency(rig.leader.knot, weaker)
