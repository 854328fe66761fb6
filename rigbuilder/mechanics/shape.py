"""Steady shape of a line that is towed through water or held in a current.

Symbols follow the literature on towed cables: arc length from the lure,
tension split into a horizontal and a vertical share, angle above the
horizontal signed (a floating line may point downwards toward the rod).
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require
from rigbuilder.mechanics.limits import critical_angle
from rigbuilder.mechanics.loads import Load

FEWEST_STEPS, MOST_STEPS = 14, 240
"""Bounds on the steps from lure to rod; the fewest serve short lines and slow water [1]."""

LARGEST_STRIDE, LARGEST_DECAY = 0.4, 1.5
"""Largest step in the logarithm of arc length, and largest decay in one step, kept to 0.1 % in depth [1]."""

_HORIZONTAL, _VERTICAL, _LAYBACK, _HEIGHT = range(4)


@dataclass(frozen=True, slots=True)
class LinePoint:
    """One point of each line: where it is and how it pulls; all arrays of one shape."""

    arc_m: Array
    horizontal_n: Array
    vertical_n: Array
    layback_m: Array
    height_m: Array

    @property
    def tension_n(self) -> Array:
        """Tension of the line [N]."""
        return array(np.hypot(self.horizontal_n, self.vertical_n))

    @property
    def angle_rad(self) -> Array:
        """Angle of the line above the horizontal, signed [rad]."""
        return array(np.arctan2(self.vertical_n, self.horizontal_n))


@dataclass(frozen=True, slots=True)
class Shape:
    """Lines from lure to rod at nodes whose distance grows with the distance from the lure."""

    outline: tuple[int, ...]  # shape of the inputs broadcast together; cases are its elements in order
    states: Array  # (nodes, 4, cases): horizontal and vertical tension, layback, height above the lure
    slopes: Array  # the same, change per step
    scale_m: Array  # (cases,): length over which the line bends near the lure
    stride: Array  # (cases,): one step in the logarithm of 1 + arc / scale

    def arc_m(self, place: Array) -> Array:
        """Arc length from the lure [m] at a place counted in nodes, any shape (…, cases)."""
        return self.scale_m * np.expm1(self.stride * place)

    def between(self, node: NDArray[np.intp]) -> Callable[[Array], LinePoint]:
        """Points of the lines from a node of each to the next, by a cubic in the place.

        The function takes places counted in nodes, shape (…, cases).
        """
        cases = np.arange(node.size)
        before, after = self.states[node, :, cases].T, self.states[node + 1, :, cases].T
        slope_before, slope_after = self.slopes[node, :, cases].T, self.slopes[node + 1, :, cases].T
        bend = 2.0 * (before - after) + slope_before + slope_after
        lean = 3.0 * (after - before) - 2.0 * slope_before - slope_after

        def at(place: Array) -> LinePoint:
            u = (place - node)[..., None, :]
            return _point(self.arc_m(place), before + u * (slope_before + u * (lean + u * bend)))

        return at

    def nodes(self) -> LinePoint:
        """Points of the lines at all nodes, shape (nodes, cases)."""
        place = np.arange(self.states.shape[0], dtype=float)[:, None]
        return _point(self.arc_m(place), self.states)

    def end(self) -> LinePoint:
        """Points of the lines at the rod, shape (cases,)."""
        return _point(self.scale_m * np.expm1(self.stride * (len(self.states) - 1)), self.states[-1])


def _point(arc_m: Array, state: Array) -> LinePoint:
    return LinePoint(
        arc_m=arc_m,
        horizontal_n=state[..., _HORIZONTAL, :],
        vertical_n=state[..., _VERTICAL, :],
        layback_m=state[..., _LAYBACK, :],
        height_m=state[..., _HEIGHT, :],
    )


def steady_shape(
    *,
    load: Load,
    wet_weight_n_m: ArrayLike,
    pull_down_n: ArrayLike,
    drag_n: ArrayLike,
    length_m: ArrayLike,
    steps: int | None = None,
) -> Shape:
    """Integrate the shape of many lines at once, from the lure toward the rod.

    Parameters
    ----------
    load : Load
        Force of the water on a metre of each line. [N/m]
    wet_weight_n_m : float or array
        Weight in water; negative floats. [N/m]
    pull_down_n : float or array
        Downward pull of the lure: weight in water, plus the dive of a lipped lure. [N]
    drag_n : float or array
        Drag of the lure, backward. [N]
    length_m : float or array
        Line in the water. [m]
    steps : int, optional
        Fourth-order Runge–Kutta steps; as many as the stiffest line needs when left out. [1]

    Returns
    -------
    Shape
        Nodes of each line; cases are the inputs broadcast together, in order. [m, N]

    Raises
    ------
    ImpossibleInput
        For a length that is not positive, negative lure drag, or input that is not finite.

    Notes
    -----
    Inextensible line without bending stiffness, flow uniform and steady, no
    lift of the line, line in one vertical plane; longer than about 100 bending
    lengths (some centimetres). Steps grow with the distance from the lure,
    since that is where the line bends. With known coefficients such models
    agree with flume tanks and sea trials within 5 %.

    References
    ----------
    PUBLISHED: cable equations as in the WHOI Cable source code. MEMORY: Pode
    1951, Berteaux 1976. Accuracy PUBLISHED: Kebede and others 2016; Ablow and
    Schechter 1983, Ocean Engineering 10:443.
    """
    require(quantity="weight of the line in water in N/m", value=wet_weight_n_m)
    require(quantity="downward pull of the lure in N", value=pull_down_n)
    require(quantity="drag of the lure in N", value=drag_n, at_least=0.0)
    require(quantity="line length in m", value=length_m, above=0.0)
    weight, pull, drag, length, broadside = (
        np.ascontiguousarray(part)
        for part in np.broadcast_arrays(
            *np.atleast_1d(array(wet_weight_n_m), array(pull_down_n), array(drag_n), array(length_m)),
            np.atleast_1d(load.broadside_n_m),
        )
    )
    scale = np.maximum(np.hypot(pull, drag) / np.maximum(broadside + np.abs(weight), 1e-12), 1e-6 * length)
    stretch = np.log1p(length / scale)
    steps = _steps_needed(load, weight, stretch) if steps is None else steps
    stride = stretch / steps
    start = np.stack([drag, pull, np.zeros_like(drag), np.zeros_like(drag)])
    states, slopes = _march(load, weight, start, scale, stride, steps)
    return Shape(
        outline=weight.shape,
        states=states.reshape(steps + 1, len(start), -1),
        slopes=slopes.reshape(steps + 1, len(start), -1),
        scale_m=scale.ravel(),
        stride=stride.ravel(),
    )


def _steps_needed(load: Load, weight: Array, stretch: Array) -> int:
    """Steps that keep the march stable and exact where the line runs at its critical angle.

    There a disturbance of the angle dies out at 2F sin φ / T per metre while the tension T grows
    by the weight and friction of each metre, so that their ratio is the stiffness in logarithmic steps.
    """
    broadside = np.maximum(load.broadside_n_m, 1e-12)
    angle = critical_angle(wet_weight_n_m=weight, broadside_n_m=broadside)
    sine, cosine = np.sin(angle), np.cos(angle)
    _, friction = load.forces(sine, cosine)
    stiffness = 2.0 * broadside * np.abs(sine) / (friction + weight * sine + 1e-12)
    needed = np.max(stretch * np.maximum(1.0 / LARGEST_STRIDE, stiffness / LARGEST_DECAY))
    return int(np.ceil(np.clip(needed, FEWEST_STEPS, MOST_STEPS)))


def _march(
    load: Load, weight: Array, start: Array, scale: Array, stride: Array, steps: int
) -> tuple[Array, Array]:
    states = np.empty((steps + 1, *start.shape))
    slopes = np.empty_like(states)
    half_growth = np.exp(0.5 * stride)
    metres = scale * stride  # metres of line per unit of step, here at the lure
    state = start
    for step in range(steps):
        middle = metres * half_growth
        ahead = middle * half_growth
        first = _slope(load, weight, state, metres)
        second = _slope(load, weight, state + 0.5 * first, middle)
        third = _slope(load, weight, state + 0.5 * second, middle)
        fourth = _slope(load, weight, state + third, ahead)
        states[step], slopes[step] = state, first
        second += third
        state = state + (first + 2.0 * second + fourth) / 6.0
        metres = ahead
    states[steps], slopes[steps] = state, _slope(load, weight, state, metres)
    return states, slopes


def _slope(load: Load, weight: Array, state: Array, metres: Array) -> Array:
    """Change of the state over ``metres`` of line: balance of forces on the line element."""
    pull = state[:_LAYBACK]
    # The floor stands for a lure without weight and drag, whose line has no direction of its own.
    tension = np.sqrt(pull[0] * pull[0] + pull[1] * pull[1] + 1e-24)
    direction = pull / tension
    cosine, sine = direction
    normal, tangential = load.forces(sine, cosine)
    slope = np.empty_like(state)
    balance = slope[:_LAYBACK]
    np.multiply(tangential, direction, out=balance)
    balance[_HORIZONTAL] += normal * sine
    balance[_VERTICAL] += weight - normal * cosine
    slope[_LAYBACK:] = direction
    slope *= metres
    return slope
