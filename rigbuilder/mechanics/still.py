"""A line at rest: how it sags by its weight and bows in a current or in wind."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require

_SLACKEST = 300.0
"""Largest wL/2H that is computed with, where the line hangs straight down and up anyway [1]."""


def _sinhc(value: Array) -> Array:
    """sinh(x)/x, which is 1 at 0."""
    small = np.abs(value) < 1e-4
    safe = np.where(small, 1.0, value)
    return array(np.where(small, 1.0 + value**2 / 6.0, np.sinh(safe) / safe))


def _half_slope(weight: ArrayLike, span: ArrayLike, tension: ArrayLike) -> Array:
    """The parameter wL/2H of a level catenary, after refusing what cannot be."""
    require(quantity="weight of the line in N/m", value=weight)
    require(quantity="span in m", value=span, above=0.0)
    require(quantity="tension in N", value=tension, above=0.0)
    return array(np.clip(array(weight) * array(span) / (2.0 * array(tension)), -_SLACKEST, _SLACKEST))


def sag(*, weight_n_m: ArrayLike, span_m: ArrayLike, tension_n: ArrayLike) -> Array:
    """Sag of a still line between two ends at the same height: exact catenary.

    Parameters
    ----------
    weight_n_m : float or array
        Weight per metre in water or in air; negative floats. [N/m]
    span_m : float or array
        Distance between the ends, more than 0. [m]
    tension_n : float or array
        Horizontal tension, more than 0. [N]

    Returns
    -------
    array
        Sag at the middle, positive downwards, broadcast shape. [m]

    Raises
    ------
    ImpossibleInput
        For a span or tension that is not positive.

    Notes
    -----
    Exact; a diameter wrong by 10 % moves the weight, and so the sag, by 20 %.

    References
    ----------
    PUBLISHED: catenary, any textbook of statics.
    """
    half = _half_slope(weight_n_m, span_m, tension_n)
    return array(array(span_m) / 4.0 * half * _sinhc(half / 2.0) ** 2)


def parabola_sag(*, weight_n_m: ArrayLike, span_m: ArrayLike, tension_n: ArrayLike) -> Array:
    """Sag of a taut still line, wL²/8H: the form for explanations.

    Parameters
    ----------
    weight_n_m : float or array
        Weight per metre in water or in air; negative floats. [N/m]
    span_m : float or array
        Distance between the ends, more than 0. [m]
    tension_n : float or array
        Horizontal tension, more than 0. [N]

    Returns
    -------
    array
        Sag at the middle, positive downwards, broadcast shape. [m]

    Raises
    ------
    ImpossibleInput
        For a span or tension that is not positive.

    Notes
    -----
    Within 1 % up to a sag of a twelfth of the span.

    References
    ----------
    PUBLISHED: shallow catenary, any textbook of statics.
    """
    half = _half_slope(weight_n_m, span_m, tension_n)
    return array(array(span_m) / 4.0 * half)


def extra_length(*, weight_n_m: ArrayLike, span_m: ArrayLike, tension_n: ArrayLike) -> Array:
    """Line that the sag takes up beyond the straight distance: exact catenary.

    Parameters
    ----------
    weight_n_m : float or array
        Weight per metre in water or in air; its sign does not matter. [N/m]
    span_m : float or array
        Distance between the ends, more than 0. [m]
    tension_n : float or array
        Horizontal tension, more than 0. [N]

    Returns
    -------
    array
        Length of line minus span, broadcast shape. [m]

    Raises
    ------
    ImpossibleInput
        For a span or tension that is not positive.

    References
    ----------
    PUBLISHED: catenary, any textbook of statics.
    """
    half = _half_slope(weight_n_m, span_m, tension_n)
    series = half**2 / 6.0 * (1.0 + half**2 / 20.0)  # the difference below loses digits when taut
    return array(array(span_m) * np.where(np.abs(half) < 1e-2, series, _sinhc(half) - 1.0))


def parabola_extra_length(*, weight_n_m: ArrayLike, span_m: ArrayLike, tension_n: ArrayLike) -> Array:
    """Line that the sag of a taut line takes up, w²L³/24H²: the form for explanations.

    Parameters
    ----------
    weight_n_m : float or array
        Weight per metre in water or in air; its sign does not matter. [N/m]
    span_m : float or array
        Distance between the ends, more than 0. [m]
    tension_n : float or array
        Horizontal tension, more than 0. [N]

    Returns
    -------
    array
        Length of line minus span, broadcast shape. [m]

    Raises
    ------
    ImpossibleInput
        For a span or tension that is not positive.

    References
    ----------
    PUBLISHED: shallow catenary, any textbook of statics.
    """
    half = _half_slope(weight_n_m, span_m, tension_n)
    return array(array(span_m) * half**2 / 6.0)


@dataclass(frozen=True, slots=True)
class Hanging:
    """Forces at the ends of a hanging line; all arrays of one shape [N]."""

    horizontal_n: Array
    vertical_top_n: Array  # carried by the upper end
    vertical_bottom_n: Array  # at the lower end, positive where it pulls that end up


def hanging_line(
    *, weight_n_m: ArrayLike, span_m: ArrayLike, rise_m: ArrayLike, length_m: ArrayLike
) -> Hanging:
    """Forces at the ends of a line of known length between two points at rest.

    Parameters
    ----------
    weight_n_m : float or array
        Weight per metre, 0 or more. [N/m]
    span_m : float or array
        Horizontal distance between the ends, more than 0. [m]
    rise_m : float or array
        Height of the upper end over the lower one, 0 or more. [m]
    length_m : float or array
        Length of line, more than the straight distance. [m]

    Returns
    -------
    Hanging
        Horizontal tension and the vertical shares at both ends. [N]

    Raises
    ------
    ImpossibleInput
        For line not longer than the straight distance, or negative weight or rise.

    Notes
    -----
    Inextensible; the line touches nothing in between.

    References
    ----------
    PUBLISHED: catenary between two points, any textbook of statics.
    """
    require(quantity="weight of the line in N/m", value=weight_n_m, at_least=0.0)
    require(quantity="span in m", value=span_m, above=0.0)
    require(quantity="rise in m", value=rise_m, at_least=0.0)
    weight, span, rise, length = (array(part) for part in (weight_n_m, span_m, rise_m, length_m))
    require(
        quantity="line length beyond the straight distance in m",
        value=length - np.hypot(span, rise),
        above=0.0,
    )
    target = np.sqrt((length - rise) * (length + rise)) / span  # sinh(u)/u
    u = np.where(target < 3.0, np.sqrt(6.0 * (target - 1.0)), np.log(2.0 * target) + 1.0)
    for _ in range(12):  # Newton on ln(sinh(u)/u), which is convex enough to close in from above
        ratio = _sinhc(u)
        u = u - (np.log(ratio) - np.log(target)) / (1.0 / np.tanh(u) - 1.0 / u)
    top = 0.5 * weight * (length + rise / np.tanh(u))
    return Hanging(
        horizontal_n=weight * span / (2.0 * u), vertical_top_n=top, vertical_bottom_n=top - weight * length
    )


def cross_flow_bow(*, force_n_m: ArrayLike, span_m: ArrayLike, tension_n: ArrayLike) -> Array:
    """Bow that a current or the wind puts into a line across it.

    Parameters
    ----------
    force_n_m : float or array
        Drag of a metre of line across the flow, see :func:`cylinder.normal_force`. [N/m]
    span_m : float or array
        Length of line in the flow, more than 0. [m]
    tension_n : float or array
        Tension of the line, more than 0. [N]

    Returns
    -------
    array
        Largest distance from the straight line, broadcast shape. [m]

    Raises
    ------
    ImpossibleInput
        For a span or tension that is not positive.

    Notes
    -----
    Small bow, up to about a twelfth of the span; beyond that the line gives way and bows less.

    References
    ----------
    PUBLISHED: evenly loaded shallow cable, any textbook of statics.
    """
    return parabola_sag(weight_n_m=force_n_m, span_m=span_m, tension_n=tension_n)
