"""Closed shapes of a still line for drawing: hung, rising, held between two ends."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array

_STEEPEST = 6.0  # asinh of the steepest slope that is tried: 200 in 1
_TRIES, _ROUNDS, _STEPS = 65, 3, 48
_MOST = 300.0


def rising_line(
    *, horizontal_n: float, vertical_n: float, weight_n_m: float, rise_m: float, points: int
) -> tuple[Array, Array]:
    """Return distances and heights [m] of a line that leaves the water and rises to the tip, a catenary."""
    pull = max(horizontal_n, 1e-9)
    start = float(np.arcsinh(vertical_n / pull))
    scale = pull / max(weight_n_m, 1e-9)
    end = float(np.arccosh(max(np.cosh(start) + rise_m / scale, 1.0)))
    slope = np.linspace(start, max(end, start), points)
    heights = scale * (np.cosh(slope) - np.cosh(start))
    distances = scale * (slope - start)
    if heights[-1] > 0.0:
        distances, heights = distances * (rise_m / heights[-1]), heights * (rise_m / heights[-1])
    return distances, heights


def hung_line(
    *, weight_n_m: float, span_m: float, tension_n: float, depth_m: float, points: int
) -> tuple[Array, Array]:
    """Return distances and heights [m] of a line between two ends at the surface.

    It hangs as a catenary where it has had time to; else it lies at the depth that it has
    sunk to, joined to both ends by the catenary of its tension. Line that floats lies flat.
    """
    # Crowded towards both ends, where the shape bends.
    x = span_m * (1.0 - np.cos(np.linspace(0.0, np.pi, points))) / 2.0
    if weight_n_m <= 0.0 or depth_m <= 0.0:
        return x, np.zeros(points)
    scale = tension_n / weight_n_m
    near = np.minimum(x, span_m - x)
    half = min(span_m / (2.0 * scale), _MOST)
    sag = scale * (np.cosh(half) - 1.0)
    reach = span_m / 2.0 if sag <= depth_m else scale * float(np.arccosh(1.0 + depth_m / scale))
    left = np.maximum(reach - near, 0.0) / scale
    return x, -min(sag, depth_m) + scale * (np.cosh(np.minimum(left, _MOST)) - 1.0)


def held_line(
    *,
    wet_n_m: float,
    dry_n_m: float,
    tension_n: ArrayLike,
    start_m: float,
    end_m: float,
    span_m: float,
    points: int,
) -> tuple[Array, Array]:
    """Return distances and heights [m] of a line held between two ends, in water below 0 and in air above.

    Of several tensions each gives a row of heights. The slope at the start is found by trying
    many at once and closing in.
    """
    tension = np.atleast_1d(np.asarray(tension_n, dtype=float))
    line = _Held(wet_n_m, dry_n_m, tension, start_m, span_m)
    low, high = np.full(tension.size, -_STEEPEST), np.full(tension.size, _STEEPEST)
    for _ in range(_ROUNDS):
        tries = np.linspace(low, high, _TRIES)
        reached = line.heights(tries)[-1] >= end_m
        above = np.where(reached.any(axis=0), reached.argmax(axis=0), _TRIES - 1)
        cases = np.arange(tension.size)
        low, high = tries[np.maximum(above - 1, 0), cases], tries[above, cases]
    heights = line.heights((low + high)[None] / 2.0)[:, 0]
    heights = heights + np.linspace(np.zeros_like(tension), end_m - heights[-1], _STEPS + 1)
    x = np.linspace(0.0, span_m, points)
    at = np.linspace(0.0, span_m, _STEPS + 1)
    rows = np.stack([np.interp(x, at, heights[:, case]) for case in range(tension.size)])
    return x, rows if np.ndim(tension_n) else rows[0]


@dataclass(frozen=True, slots=True)
class _Held:
    """A line that starts at one height and is followed over its span, for several tensions at once."""

    wet_n_m: float
    dry_n_m: float
    tension_n: Array
    start_m: float
    span_m: float

    def heights(self, slopes: Array) -> Array:
        """Heights along the line for first slopes (asinh) of shape (tries, tensions), steps first."""
        step = self.span_m / _STEPS
        wet, dry = self.wet_n_m * step / self.tension_n, self.dry_n_m * step / self.tension_n
        heights = np.empty((_STEPS + 1, *slopes.shape))
        heights[0], slope = self.start_m, slopes.astype(float)
        for place in range(_STEPS):
            turn = np.where(heights[place] < 0.0, wet, dry)
            middle = np.clip(slope + turn / 2.0, -_STEEPEST * 2, _STEEPEST * 2)
            heights[place + 1] = heights[place] + step * np.sinh(middle)
            slope = slope + turn
        return heights
