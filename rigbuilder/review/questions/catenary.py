"""Closed shapes of a still line for drawing: hung, rising, held between two ends."""

import numpy as np

from rigbuilder.mechanics.arrays import Array

_STEEPEST = 6.0  # asinh of the steepest slope that is tried: 200 in 1
_TRIES, _ROUNDS, _STEPS = 65, 3, 64
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
    tension_n: float,
    start_m: float,
    end_m: float,
    span_m: float,
    points: int,
) -> tuple[Array, Array]:
    """Return distances and heights [m] of a line held between two ends, in water below 0 and in air above.

    The slope at the start is found by trying many at once and closing in.
    """
    low, high = -_STEEPEST, _STEEPEST
    for _ in range(_ROUNDS):
        tries = np.linspace(low, high, _TRIES)
        ends = _heights(tries, wet_n_m, dry_n_m, tension_n, start_m, span_m)[-1]
        above = int(np.argmax(ends >= end_m)) if (ends >= end_m).any() else _TRIES - 1
        low, high = float(tries[max(above - 1, 0)]), float(tries[above])
    best = np.array([(low + high) / 2.0])
    heights = _heights(best, wet_n_m, dry_n_m, tension_n, start_m, span_m)[:, 0]
    heights = heights + np.linspace(0.0, end_m - heights[-1], heights.size)
    x = np.linspace(0.0, span_m, points)
    return x, np.interp(x, np.linspace(0.0, span_m, _STEPS + 1), heights)


def _heights(
    slopes: Array, wet_n_m: float, dry_n_m: float, tension_n: float, start_m: float, span_m: float
) -> Array:
    """Heights along the line for many first slopes (asinh), shape (steps + 1, slopes)."""
    step = span_m / _STEPS
    heights = np.empty((_STEPS + 1, slopes.size))
    heights[0], slope = start_m, slopes.astype(float)
    for place in range(_STEPS):
        turn = np.where(heights[place] < 0.0, wet_n_m, dry_n_m) * step / tension_n
        middle = np.clip(slope + turn / 2.0, -_STEEPEST * 2, _STEEPEST * 2)
        heights[place + 1] = heights[place] + step * np.sinh(middle)
        slope = slope + turn
    return heights
