"""Knot strength as a ratio of two random strengths, and what own pull tests say about it."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require
from rigbuilder.mechanics.uncertainty import Range

ENOUGH_READINGS = (
    5  # pulls from which own tests stand on their own [1] COMMON PRACTICE: yarn and line tests use 3 to 10
)

# Student's t at the 95th percentile for 1, 2, 3, ... degrees of freedom [1]; tests hold it against scipy.
_STUDENT_T_95 = (
    *(6.3138, 2.9200, 2.3534, 2.1318, 2.0150, 1.9432, 1.8946, 1.8595, 1.8331, 1.8125),
    *(1.7959, 1.7823, 1.7709, 1.7613, 1.7531, 1.7459, 1.7396, 1.7341, 1.7291, 1.7247),
    *(1.7207, 1.7171, 1.7139, 1.7109, 1.7081, 1.7056, 1.7033, 1.7011, 1.6991, 1.6973),
)


def efficiency(
    *, knot_mean_n: ArrayLike, knot_sd_n: ArrayLike, line_mean_n: ArrayLike, line_sd_n: ArrayLike
) -> tuple[Array, Array]:
    """Mean and standard deviation of knot strength over straight strength (delta rule).

    eta = (m_k / m_l) (1 + cv_l²),  cv_eta = sqrt(cv_k² + cv_l²) of m_k / m_l

    Parameters
    ----------
    knot_mean_n, knot_sd_n : float or array
        Mean and standard deviation of the knotted line's strength. [N]
    line_mean_n, line_sd_n : float or array
        The same for the straight line, measured in the same state (wet or dry). [N]

    Returns
    -------
    tuple of two arrays
        Mean and standard deviation of the efficiency. [1]

    Raises
    ------
    ImpossibleInput
        A mean that is not positive or a negative standard deviation.

    Notes
    -----
    Independent strengths, coefficients of variation up to about 0.15.

    References
    ----------
    PUBLISHED: "Basic Statistical Properties of the Knot Efficiency", Symmetry 2022, 14:1926.
    """
    require(quantity="mean strength of the knot in N", value=knot_mean_n, above=0.0)
    require(quantity="mean strength of the line in N", value=line_mean_n, above=0.0)
    require(quantity="spread of the knot in N", value=knot_sd_n, at_least=0.0)
    require(quantity="spread of the line in N", value=line_sd_n, at_least=0.0)
    ratio = np.divide(knot_mean_n, line_mean_n)
    knot_cv, line_cv = np.divide(knot_sd_n, knot_mean_n), np.divide(line_sd_n, line_mean_n)
    mean = ratio * (1.0 + line_cv**2)
    return array(mean), array(ratio * np.sqrt(knot_cv**2 + line_cv**2))


@dataclass(frozen=True, slots=True)
class PullTests:
    """What a series of pulls on a scale says."""

    count: int
    mean_n: float
    sd_n: float
    next_pull: Range  # where the next pull will fall, 5 % below and 5 % above [N]

    @property
    def enough(self) -> bool:
        """Whether there are enough pulls to replace the catalogue's range."""
        return self.count >= ENOUGH_READINGS


def pull_tests(*, readings_n: Sequence[float]) -> PullTests:
    """Mean, spread and prediction range of readings, m ± t s sqrt(1 + 1/n).

    Parameters
    ----------
    readings_n : sequence of float
        Breaking loads read from a scale, at least two. [N]

    Returns
    -------
    PullTests
        Count, mean, standard deviation, and the range of the next pull. [N]

    Raises
    ------
    ImpossibleInput
        Fewer than two readings, or one that is not positive.

    Notes
    -----
    The range covers the next single pull, not the mean: it is the next knot that must hold.
    Its low end is kept at 0.

    References
    ----------
    COMPUTED: normal prediction interval with Student's t (Student 1908).
    """
    require(quantity="number of pulls", value=float(len(readings_n)), at_least=2.0)
    readings = array(readings_n)
    require(quantity="reading in N", value=readings, above=0.0)
    count, mean, deviation = len(readings), float(readings.mean()), float(readings.std(ddof=1))
    freedom = min(count - 1, len(_STUDENT_T_95))
    reach = _STUDENT_T_95[freedom - 1] * deviation * np.sqrt(1.0 + 1.0 / count)
    return PullTests(count, mean, deviation, Range(max(mean - reach, 0.0), mean, mean + reach))


def efficiency_range(*, knot: PullTests, line: PullTests) -> Range:
    """Range of a knot's efficiency from own pulls of knotted and of straight line.

    Parameters
    ----------
    knot, line : PullTests
        Pulls of the knotted and of the straight line in the same state. [N]

    Returns
    -------
    Range
        Efficiency of the next knot, 5th and 95th percentile. [1]

    Raises
    ------
    ImpossibleInput
        Never for results of :func:`pull_tests`.

    References
    ----------
    PUBLISHED: delta rule as in :func:`efficiency`, the spreads widened for few pulls by Student's t.
    """
    mean, _ = efficiency(
        knot_mean_n=knot.mean_n, knot_sd_n=knot.sd_n, line_mean_n=line.mean_n, line_sd_n=line.sd_n
    )
    knot_reach, line_reach = (float(test.next_pull.high) / test.mean_n - 1.0 for test in (knot, line))
    reach = float(mean) * float(np.hypot(knot_reach, line_reach))
    return Range(max(float(mean) - reach, 0.0), float(mean), float(mean) + reach)
