"""Lengths of line out for the charts over distance."""

import numpy as np

from rigbuilder.model.rig import Rig
from rigbuilder.review.case import Case

_PLACES = 9


def cast_of(case: Case) -> float:
    """Return the cast of a rig, the technique's usual one where the card has none [m]."""
    return case.rig.cast_m or case.technique.distance_m.middle


def distances(cast_m: float, *, longest: float) -> tuple[float, ...]:
    """Return distances [m] from short range to ``longest``, the cast itself among them."""
    short = min(4.0, 0.4 * cast_m)
    spread = np.geomspace(short, max(longest, 1.5 * cast_m), _PLACES)
    return tuple(sorted({*(round(float(x), 3) for x in spread), cast_m}))


def at_cast(rig: Rig, cast_m: float) -> Rig:
    """Return the rig cast to another distance."""
    return rig.with_(cast_m=cast_m)
