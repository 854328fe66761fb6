"""Combining ranges: from low / typical / high of the inputs to that of a result.

The method, in words. Low and high of an input are read as its 5th and 95th
percentile, typical as its median. Every input in turn is moved to its low and to
its high while all others stay typical. What lifts the result is collected upwards,
what lowers it downwards, each in quadrature (root of the sum of squares). Where the
result is positive throughout, deviations are counted in its logarithm, because most
results are products of their inputs; otherwise in the result itself.

It assumes that inputs vary independently and that none changes the effect of
another by much. The tests hold it against brute-force sampling: low, typical and high
lie within a tenth of the range's width of the sampled 5th, 50th and 95th percentile,
also for lopsided inputs (whose median the typical result follows least well).

References: first-order propagation, JCGM 100:2008 (GUM) clause 5.1.2; the split into
upper and lower deviations is common practice for asymmetric ranges.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require

Z_90 = 1.6448536269514722  # standard normal deviate of the 95th percentile [1]
SQRT_TWO_PI = 2.5066282746310002  # [1]


@dataclass(frozen=True, slots=True, init=False, eq=False)
class Range:
    """Low, typical and high of one quantity; floats or arrays that broadcast together."""

    low: Array
    typical: Array
    high: Array

    def __init__(self, low: ArrayLike, typical: ArrayLike, high: ArrayLike) -> None:
        for name, value in (("low", low), ("typical", typical), ("high", high)):
            object.__setattr__(self, name, array(value))
        require(quantity="step from low to typical", value=self.typical - self.low, at_least=0.0)
        require(quantity="step from typical to high", value=self.high - self.typical, at_least=0.0)

    def mean(self) -> Array:
        """Mean of the two half-normals that share the typical value as median. [unit of the quantity]"""
        below, above = self._half_deviations()
        return self.typical + (above - below) / SQRT_TWO_PI

    def deviation(self) -> Array:
        """Standard deviation of the same two half-normals. [unit of the quantity]"""
        below, above = self._half_deviations()
        square = (below**2 + above**2) / 2.0 - (self.mean() - self.typical) ** 2
        return array(np.sqrt(square))

    def at(self, deviate: ArrayLike) -> Array:
        """Value at a standard normal deviate (0 = typical, ±1.645 = high or low), for sampling."""
        below, above = self._half_deviations()
        steps = array(deviate)
        return array(self.typical + np.where(steps < 0.0, below, above) * steps)

    def _half_deviations(self) -> tuple[Array, Array]:
        return (self.typical - self.low) / Z_90, (self.high - self.typical) / Z_90


def known(value: ArrayLike) -> Range:
    """A range without width: a measured or exact value.

    Parameters
    ----------
    value : float or array
        The value. [unit of the quantity]

    Returns
    -------
    Range
        Low, typical and high all equal to it. [unit of the quantity]

    Raises
    ------
    ImpossibleInput
        A value that is not finite.

    References
    ----------
    COMPUTED: identity.
    """
    return Range(value, value, value)


def around(value: ArrayLike, *, low_factor: float, high_factor: float) -> Range:
    """A positive value with its range as factors, (0.7, 1.3) for ±30 %.

    Parameters
    ----------
    value : float or array
        Typical value, not negative. [unit of the quantity]
    low_factor, high_factor : float
        Factors at most 1 and at least 1. [1]

    Returns
    -------
    Range
        The range. [unit of the quantity]

    Raises
    ------
    ImpossibleInput
        A negative value or factors on the wrong side of 1.

    References
    ----------
    COMPUTED: multiplication.
    """
    require(quantity="value with its range as factors", value=value, at_least=0.0)
    require(quantity="low factor", value=low_factor, at_least=0.0, at_most=1.0)
    require(quantity="high factor", value=high_factor, at_least=1.0)
    return Range(np.multiply(value, low_factor), value, np.multiply(value, high_factor))


def combine(function: Callable[..., ArrayLike], *, inputs: Mapping[str, Range]) -> Range:
    """Low, typical and high of a result from those of its inputs (method: top of this module).

    Parameters
    ----------
    function : callable
        Takes the inputs by keyword, broadcasts over arrays; bind fixed arguments beforehand. [function]
    inputs : mapping of str to Range
        The uncertain arguments. [units of the arguments]

    Returns
    -------
    Range
        The result's range, shape of the function's result. [unit of the result]

    Raises
    ------
    ImpossibleInput
        Whatever the function refuses.

    References
    ----------
    PUBLISHED: JCGM 100:2008 (GUM) clause 5.1.2, first order, evaluated by finite steps.
    """
    typical_inputs = {name: value.typical for name, value in inputs.items()}
    typical = array(function(**typical_inputs))
    moved: list[tuple[Array, Array]] = []
    for name, value in inputs.items():
        if np.array_equal(value.low, value.high):
            continue
        low = array(function(**{**typical_inputs, name: value.low}))
        high = array(function(**{**typical_inputs, name: value.high}))
        moved.append((low, high))
    if not moved:
        return known(typical)
    ends = np.stack([np.stack(np.broadcast_arrays(low, high, typical)[:2]) for low, high in moved])
    return quadrature(typical=np.broadcast_to(typical, ends.shape[2:]), ends=ends)


def quadrature(*, typical: Array, ends: Array) -> Range:
    """Root sum of squares of what lifts a result and of what lowers it (method: top of this module).

    Parameters
    ----------
    typical : array
        The result with every input typical. [unit of the result]
    ends : array (inputs, 2, ...)
        The result with one input after another moved to its low and to its high. [unit of the result]

    Returns
    -------
    Range
        The result's range, shape of ``typical``. [unit of the result]

    Raises
    ------
    ImpossibleInput
        A result that is not finite.

    References
    ----------
    PUBLISHED: JCGM 100:2008 (GUM) clause 5.1.2, first order, evaluated by finite steps.
    """
    if typical.size and typical.min() > 0.0 and ends.min() > 0.0:
        log_up, log_down = _lift_and_drop(np.log(ends / typical))
        return Range(typical * np.exp(-log_down), typical, typical * np.exp(log_up))
    positive = (typical > 0.0) & np.all(ends > 0.0, axis=(0, 1))
    safe_typical = np.where(positive, typical, 1.0)
    safe_ends = np.where(positive, ends, 1.0)
    logs = np.log(safe_ends / safe_typical)
    log_up, log_down = _lift_and_drop(logs)
    up, down = _lift_and_drop(ends - typical)
    low = np.where(positive, safe_typical * np.exp(-log_down), typical - down)
    high = np.where(positive, safe_typical * np.exp(log_up), typical + up)
    return Range(np.minimum(low, typical), typical, np.maximum(high, typical))


def _lift_and_drop(steps: Array) -> tuple[Array, Array]:
    low, high = steps[:, 0], steps[:, 1]
    lift = np.maximum(np.maximum(low, high), 0.0)
    drop = np.minimum(np.minimum(low, high), 0.0)
    lift *= lift
    drop *= drop
    return np.sqrt(lift.sum(axis=0)), np.sqrt(drop.sum(axis=0))
