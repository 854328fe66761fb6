"""One vectorised pass from rigs to the figures that rules read."""

from collections.abc import Sequence

import numpy as np

from rigbuilder.mechanics.uncertainty import Range as Ranges
from rigbuilder.model.rig import Line, Rig
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import Range
from rigbuilder.reference.techniques import Technique
from rigbuilder.review.facts import Facts
from rigbuilder.review.figuring.chain import chains
from rigbuilder.review.figuring.sections import sections


def figures(rigs: Sequence[Rig], techniques: Sequence[Technique], reference: Reference) -> list[Facts]:
    """Return the figures of many rigs; ``techniques`` are theirs, in the same order."""
    main = sections([rig.main for rig in rigs], reference)
    ends: list[Line] = [rig.leader or rig.main for rig in rigs]
    leader = sections(ends, reference)
    chain = chains(rigs, techniques, main, leader, reference)
    rows = range(len(rigs))
    diameters, leaders = _rows(main.diameter_m), _rows(leader.diameter_m)
    straight, chain_n = _rows(main.wet_break_n), _rows(chain.chain_n)
    ends_n = _rows(leader.wet_break_n)
    return [
        Facts(
            main_diameter_m=diameters[i],
            leader_diameter_m=leaders[i] if rigs[i].leader is not None else None,
            main_straight_n=straight[i],
            leader_straight_n=ends_n[i] if rigs[i].leader is not None else None,
            links=chain.links(i),
            chain_n=chain_n[i],
        )
        for i in rows
    ]


def _rows(value: Ranges) -> list[Range]:
    table = np.stack([value.low, value.typical, value.high], axis=-1).tolist()
    return [Range(*row) for row in table]
