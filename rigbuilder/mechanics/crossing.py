"""Where a rising function reaches zero, for many cases at once."""

from collections.abc import Callable

import numpy as np

from rigbuilder.mechanics.arrays import Array, array


def crossing(
    *, function: Callable[[Array], Array], low: Array, high: Array, points: int = 9, passes: int = 3
) -> Array:
    """First place between two bounds where a function rises through zero.

    Each pass lays ``points`` places over the bracket of every case, evaluates
    them in one call and keeps the gap in which the sign changes; the last gap
    is crossed by a straight line. Where the function stays below zero the
    upper bound comes back, where it starts above zero the lower one.

    Parameters
    ----------
    function : callable
        Takes places of shape (points, cases), returns values of that shape. [any]
    low, high : array
        Bounds, shape (cases,). [unit of the place]
    points : int
        Places per pass, at least 3. [1]
    passes : int
        Number of passes, at least 1. [1]

    Returns
    -------
    array
        Place of the crossing, shape (cases,). [unit of the place]

    References
    ----------
    DERIVED: interval refinement with linear interpolation.
    """
    share = np.linspace(0.0, 1.0, points)[:, None]
    for _ in range(passes):
        places = low + (high - low) * share
        values = function(places)
        above = values >= 0.0
        # A function that never rises through zero keeps its last gap, one that starts above its first.
        upper = np.where(above.any(axis=0), above.argmax(axis=0), points - 1).clip(1)
        cases = np.arange(places.shape[1])
        low, high = places[upper - 1, cases], places[upper, cases]
        below, beyond = values[upper - 1, cases], values[upper, cases]
    rise = beyond - below
    safe = np.where(rise == 0.0, 1.0, rise)
    inside = np.clip(np.where(rise == 0.0, 1.0, -below / safe), 0.0, 1.0)
    return array(low + (high - low) * inside)
