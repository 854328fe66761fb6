"""Which link breaks first: the chain from hook to arbor as independent random strengths.

Strength of a link = straight dry strength x label honesty x wetness x knot x wear x
bend. Every factor has its range; :func:`link_strength` combines them, and the chain
then takes each link as normally distributed.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require
from rigbuilder.mechanics.uncertainty import Range, combine

GRID_POINTS = 48  # strengths at which the chain is evaluated [1]
REACH = 4.0  # standard deviations covered on either side [1]
TAIL = 0.05  # low and high of the chain are its 5th and 95th percentile [1]


@dataclass(frozen=True, slots=True)
class Chain:
    """Strength of a chain, and the chance of each link to be the one that breaks.

    ``breaks_first`` has the links on its last axis and sums to 1 there; the other
    fields have the shape of what is left.
    """

    breaks_first: Array
    mean_n: Array
    sd_n: Array
    strength: Range  # 5th percentile, median, 95th percentile [N]


def link_strength(*, dry_strength_n: Range, factors: Mapping[str, Range]) -> Range:
    """Strength of one link as the product of straight strength and its factors.

    Parameters
    ----------
    dry_strength_n : Range
        Straight dry strength as labelled or measured. [N]
    factors : mapping of str to Range
        Label honesty, wetness, knot, wear, bend and whatever else multiplies it. [1]

    Returns
    -------
    Range
        Strength of the link in use. [N]

    Raises
    ------
    ImpossibleInput
        A negative strength or factor.

    References
    ----------
    COMPUTED: product of independent factors, combined in their logarithms.
    """
    for name, factor in factors.items():
        require(quantity=f"factor for {name}", value=factor.low, at_least=0.0)
    require(quantity="straight strength in N", value=dry_strength_n.low, at_least=0.0)

    def product(**values: ArrayLike) -> Array:
        result: Array = np.ones(())
        for value in values.values():
            result = result * array(value)
        return result

    named = {f"factor_{place}": factor for place, factor in enumerate(factors.values())}
    return combine(product, inputs={"dry_strength_n": dry_strength_n, **named})


def chain_strength(*, mean_n: ArrayLike, sd_n: ArrayLike, points: int = GRID_POINTS) -> Chain:
    """Weakest link of independent, normally distributed strengths.

    P(i first) = integral of f_i(x) times the product of S_j(x) over all j other than i.

    Parameters
    ----------
    mean_n : array (..., links)
        Mean strength of each link, links on the last axis. [N]
    sd_n : array (..., links)
        Standard deviation of each; 0 for a link that is exactly known. [N]
    points : int
        Grid points of the integration. [1]

    Returns
    -------
    Chain
        Chance of each link to go first; mean, deviation and percentiles of the chain. [N]

    Raises
    ------
    ImpossibleInput
        A mean that is not positive, a negative deviation or fewer than 16 points.

    Notes
    -----
    Trapezoidal rule, in error by less than 1e-3 in each probability. A spread narrower
    than one grid step is widened to it. A link of infinite strength never breaks first:
    give it a mean far above the others instead.

    References
    ----------
    COMPUTED: order statistics of independent variables; checked by brute-force sampling.
    """
    require(quantity="number of grid points", value=float(points), at_least=16.0)
    means, spreads = np.broadcast_arrays(array(mean_n), array(sd_n))
    require(quantity="mean strength of a link in N", value=means, above=0.0)
    require(quantity="spread of a link's strength in N", value=spreads, at_least=0.0)
    lowest = (means - REACH * spreads).min(axis=-1)
    highest = (means + REACH * spreads).min(axis=-1)
    pad = 1e-3 * means.min(axis=-1)  # keeps the grid open where every link is exactly known
    lowest, highest = lowest - pad, highest + pad
    step = (highest - lowest) / (points - 1)
    grid = lowest[..., None] + step[..., None] * np.arange(points)
    spreads = np.maximum(spreads, step[..., None])
    deviates = (grid[..., None, :] - means[..., None]) / spreads[..., None]
    density, survival = _normal(deviates)
    hazard = density / (spreads[..., None] * np.maximum(survival, 1e-300))
    whole = survival.prod(axis=-2)
    first = (hazard * whole[..., None, :]).sum(axis=-1)
    first = first / first.sum(axis=-1, keepdims=True)
    return _summary(grid=grid, survival=whole, density=hazard.sum(axis=-2) * whole, first=first)


def _summary(*, grid: Array, survival: Array, density: Array, first: Array) -> Chain:
    """Moments and percentiles of the chain from its survival and density on the grid (last axis)."""
    step = grid[..., 1] - grid[..., 0]
    weight = np.ones(grid.shape[-1])
    weight[[0, -1]] = 0.5
    mean = grid[..., 0] + step * (survival * weight).sum(axis=-1)
    offset = grid - grid[..., :1]
    corner = step**2 / 6.0  # the trapezoidal rule's error where the integrand starts at an angle
    second = 2.0 * step * (offset * survival * weight).sum(axis=-1) + corner
    variance = np.maximum(second - (mean - grid[..., 0]) ** 2, 0.0)
    fall = density * step[..., None]
    low, median, high = (
        grid[..., 0] + step * _steps_to(left=1.0 - share, survival=survival, fall=fall)
        for share in (TAIL, 0.5, 1.0 - TAIL)
    )
    return Chain(first, mean, np.sqrt(variance), Range(low, median, high))


def _steps_to(*, left: float, survival: Array, fall: Array) -> Array:
    """Grid steps after which a share ``left`` survives: Newton on the cubic through the cell's ends."""
    last = np.clip((survival > left).sum(axis=-1), 1, survival.shape[-1] - 1)
    begin, end = ((last - 1)[..., None], last[..., None])
    value0, value1, fall0, fall1 = (
        np.take_along_axis(values, place, axis=-1)[..., 0]
        for values, place in ((survival, begin), (survival, end), (fall, begin), (fall, end))
    )
    change = value1 - value0
    bend2, bend3 = 3.0 * change + 2.0 * fall0 + fall1, -fall0 - fall1 - 2.0 * change
    at = np.clip((value0 - left) / np.maximum(-change, 1e-300), 0.0, 1.0)
    for _ in range(3):
        value = value0 + at * (-fall0 + at * (bend2 + at * bend3))
        slope = np.minimum(-fall0 + at * (2.0 * bend2 + 3.0 * at * bend3), -1e-12)
        at = np.clip(at - (value - left) / slope, 0.0, 1.0)
    return array(last - 1.0 + at)


def _normal(deviates: Array) -> tuple[Array, Array]:
    """Density and survival of the standard normal, error of the latter below 1e-7.

    Abramowitz & Stegun 1964, formula 26.2.17 (PUBLISHED; coefficients as printed there).
    """
    density = deviates * deviates
    density *= -0.5
    np.exp(density, out=density)
    density *= 0.3989422804014327
    inverse = np.abs(deviates)
    inverse *= 0.2316419
    inverse += 1.0
    np.reciprocal(inverse, out=inverse)
    tail = 1.330274429 * inverse
    tail += -1.821255978
    for coefficient in (1.781477937, -0.356563782, 0.319381530):
        tail *= inverse
        tail += coefficient
    tail *= inverse
    tail *= density
    return density, np.where(deviates >= 0.0, tail, 1.0 - tail)
