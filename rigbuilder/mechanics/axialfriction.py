"""Friction of the water on a line that is suddenly pulled along itself."""

import numpy as np
from numpy.polynomial.chebyshev import chebval
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require

SMALLEST_TIME = 1e-3  # nu t / a² below which the short-time series is used [1]
LARGEST_TIME = 1e5  # nu t / a² up to which the fit was made; held constant beyond [1]

# Chebyshev coefficients of ln G against ln(nu t / a²) from 1e-3 to 1e5, fitted to the exact
# integral of the impulsively pulled cylinder (DERIVED; largest error 2e-5 of the value) [1].
_FIT = (
    *(-0.0123258, -2.3221737, 0.58227, -0.0593394, -0.0323002, 0.0142829, 0.0013542),
    *(-0.0027498, 0.0004695, 0.0004057, -0.000203, -2.92e-05, 5.1e-05),
)


def friction_function(*, reduced_time: ArrayLike) -> Array:
    """Wall friction G(T) of a long cylinder started along its own axis.

    G(T) = (4/pi²) * integral over u from 0 to infinity of exp(-T u²) / {u [J0²(u) + Y0²(u)]},
    which tends to 1/sqrt(pi T) + 1/2 at small T.

    Parameters
    ----------
    reduced_time : float or array
        T = nu t / a², time counted in how far friction spreads from the line's surface. [1]

    Returns
    -------
    array
        G, shape of the input. [1]

    Raises
    ------
    ImpossibleInput
        A time that is not positive.

    Notes
    -----
    Range 0 < T <= 1e5, error 2e-5 of the value; the value at 1e5 is kept beyond.

    References
    ----------
    PUBLISHED: Rayleigh 1911 and Batchelor 1954 (read second-hand); integral and fit DERIVED.
    """
    require(quantity="reduced time of the pull", value=reduced_time, above=0.0)
    time = array(reduced_time)
    series = 1.0 / np.sqrt(np.pi * time) + 0.5 - 0.25 * np.sqrt(time / np.pi) + time / 8.0
    low, high = np.log(SMALLEST_TIME), np.log(LARGEST_TIME)
    place = 2.0 * (np.log(np.clip(time, SMALLEST_TIME, LARGEST_TIME)) - low) / (high - low) - 1.0
    return np.where(time < SMALLEST_TIME, series, np.exp(chebval(place, _FIT)))


def axial_friction(
    *,
    diameter_m: ArrayLike,
    length_m: ArrayLike,
    speed_m_s: ArrayLike,
    time_s: ArrayLike,
    viscosity_pa_s: ArrayLike,
    density_kg_m3: ArrayLike,
) -> Array:
    """Friction on a straight wetted line pulled lengthwise, 2 pi mu U G(nu t / a²) L.

    Parameters
    ----------
    diameter_m : float or array
        Line diameter. [m]
    length_m : float or array
        Length in the water. [m]
    speed_m_s : float or array
        Speed along the line. [m/s]
    time_s : float or array
        Time since the pull began. [s]
    viscosity_pa_s : float or array
        Viscosity of the water. [Pa s]
    density_kg_m3 : float or array
        Density of the water. [kg/m3]

    Returns
    -------
    array
        Friction force, shape of the inputs broadcast together. [N]

    Raises
    ------
    ImpossibleInput
        A diameter, time, viscosity or density that is not positive; a negative length or speed.

    Notes
    -----
    Laminar, smooth, straight line; show one half to seven times the value as its range.

    References
    ----------
    PUBLISHED: Rayleigh 1911 and Batchelor 1954 (read second-hand).
    """
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    require(quantity="line length in m", value=length_m, at_least=0.0)
    require(quantity="speed in m/s", value=speed_m_s, at_least=0.0)
    require(quantity="time in s", value=time_s, above=0.0)
    require(quantity="viscosity in Pa s", value=viscosity_pa_s, above=0.0)
    require(quantity="density of the water in kg/m³", value=density_kg_m3, above=0.0)
    radius_m = array(diameter_m) / 2.0
    spread = np.divide(viscosity_pa_s, density_kg_m3) * array(time_s) / radius_m**2
    shear = 2.0 * np.pi * np.multiply(viscosity_pa_s, speed_m_s) * friction_function(reduced_time=spread)
    return array(shear * array(length_m))
