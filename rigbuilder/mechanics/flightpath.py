"""The path of lures through the air, step by step for many at once.

Runge-Kutta steps of fourth order, as long as the slowing of each lure allows, so that
they grow as it slows down. What slows a lure is told in ``cast``.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from rigbuilder.mechanics.arrays import STANDARD_GRAVITY_M_S2, Array, array
from rigbuilder.mechanics.errors import ImpossibleInput

MOST_STEPS = 4000  # a lure still aloft after this many is not a lure [1]


@dataclass(frozen=True, slots=True, eq=False)
class Air:
    """What slows each lure, per mass: own drag [1/m], starting the line [1/m], its friction [1/m2]."""

    lure: Array
    start: Array
    friction: Array
    wind: Array

    def of(self, some: NDArray[np.bool_]) -> "Air":
        """Return the same for some of the lures."""
        return Air(self.lure[some], self.start[some], self.friction[some], self.wind[some])

    def slowing(self, state: Array) -> Array:
        """Rate that steps must follow [1/s]: four times that at which the lures slow down; never quite 0."""
        _, _, level, up, flown = state
        speed = np.sqrt(level * level + up * up)
        own, line = self.lure * (speed + np.abs(self.wind)), (self.start + self.friction * flown) * speed
        return array(4.0 * (own + line) + 1e-12)

    def rates(self, state: Array) -> Array:
        """Time derivative of (x, z, vx, vz, s)."""
        _, _, level, up, flown = state
        past = level - self.wind
        own = self.lure * np.sqrt(past * past + up * up)
        speed = np.sqrt(level * level + up * up)
        line = (self.start + self.friction * flown) * speed
        result = np.empty_like(state)
        result[0], result[1], result[4] = level, up, speed
        result[2] = -own * past - line * level
        result[3] = -own * up - line * up - STANDARD_GRAVITY_M_S2
        return result


def march(*, air: Air, state: Array, longest: Array) -> tuple[Array, Array, Array]:
    """Fly until every lure is down; landing is placed inside its step.

    Parameters
    ----------
    air : Air
        What slows each lure. [per mass]
    state : array (5, lures)
        Distance, height, level speed, upward speed and path flown at release. [m, m, m/s, m/s, m]
    longest : array (lures,)
        Longest step of each. [s]

    Returns
    -------
    tuple of three arrays (lures,)
        Distance, time and speed on meeting the water. [m, s, m/s]

    Raises
    ------
    ImpossibleInput
        A lure so light that it does not come down.

    References
    ----------
    COMPUTED: classical Runge-Kutta steps; landing on the cubic through both ends of its step.
    """
    ends = np.zeros((3, longest.size))
    aloft, time = np.arange(longest.size), np.zeros_like(longest)
    for _ in range(MOST_STEPS):
        step = np.minimum(longest, 1.0 / air.slowing(state))
        first = air.rates(state)
        second = air.rates(state + 0.5 * step * first)
        third = air.rates(state + 0.5 * step * second)
        fourth = air.rates(state + step * third)
        after = state + step / 6.0 * (first + 2.0 * (second + third) + fourth)
        down = (after[1] <= 0.0) & (after[3] < 0.0)
        if down.any():
            ends[:, aloft[down]] = _ends(
                air=air.of(down), before=state[:, down], after=after[:, down], first=first[:, down],
                step=step[down], time=time[down],
            )  # fmt: skip
            # Lures that are down need no more steps.
            up = ~down
            if not up.any():
                return ends[0], ends[1], ends[2]
            air, after, aloft = air.of(up), after[:, up], aloft[up]
            longest, time, step = longest[up], time[up], step[up]
        state, time = after, time + step
    raise ImpossibleInput("time in the air in s", float(time.min()), "one in which the lure comes down")


def _ends(*, air: Air, before: Array, after: Array, first: Array, step: Array, time: Array) -> Array:
    """Distance, time and speed of lures that meet the water in this step."""
    share = _landing(before=before, after=after, step=step)
    where = _hermite(before=before, after=after, first=first, last=air.rates(after), step=step, at=share)
    return np.stack([where[0], time + share * step, np.hypot(where[2], where[3])])


def _landing(*, before: Array, after: Array, step: Array) -> Array:
    """Share of the step at which the height is 0: Newton on its cubic from the straight line's crossing."""
    fall = np.minimum(after[1] - before[1], -1e-300)
    share = np.clip(-before[1] / fall, 0.0, 1.0)
    rise0, rise1 = before[3] * step, after[3] * step
    bend3 = rise0 + rise1 - 2.0 * fall
    bend2 = 3.0 * fall - 2.0 * rise0 - rise1
    for _ in range(4):
        height = before[1] + share * (rise0 + share * (bend2 + share * bend3))
        slope = np.minimum(rise0 + share * (2.0 * bend2 + 3.0 * share * bend3), -1e-300)
        share = np.clip(share - height / slope, 0.0, 1.0)
    return array(share)


def _hermite(
    *,
    before: Array,
    after: Array,
    first: Array,
    last: Array,
    step: Array,
    at: Array,
) -> Array:
    """State at a share of the step, cubic through both ends and their rates."""
    change, rate0, rate1 = after - before, first * step, last * step
    bend = 3.0 * change - 2.0 * rate0 - rate1
    return array(before + at * (rate0 + at * (bend + at * (rate0 + rate1 - 2.0 * change))))
