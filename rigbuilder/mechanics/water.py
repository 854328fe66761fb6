"""Properties of fresh, brackish and sea water at the surface."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require

PRACTICAL_PER_ABSOLUTE = 35.0 / 35.16504
"""Practical salinity per absolute salinity [kg/g]; reference composition, IAPWS 2008."""

T68_PER_T90 = 1.00024
"""Degrees of the 1968 temperature scale per degree of the 1990 scale [1]."""


def _check(temperature_c: ArrayLike, salinity_g_kg: ArrayLike) -> tuple[Array, Array]:
    require(quantity="water temperature in °C", value=temperature_c, at_least=-2.0, at_most=60.0)
    require(quantity="salinity in g/kg", value=salinity_g_kg, at_least=0.0, at_most=120.0)
    return array(temperature_c), array(salinity_g_kg)


def density(*, temperature_c: ArrayLike, salinity_g_kg: ArrayLike = 0.0) -> Array:
    """Density of water at one atmosphere.

    Parameters
    ----------
    temperature_c : float or array
        Water temperature, checked over 0 to 35. [°C]
    salinity_g_kg : float or array
        Absolute salinity: 0 fresh, about 35.2 open sea. [g/kg]

    Returns
    -------
    array
        Density, broadcast shape. [kg/m³]

    Raises
    ------
    ImpossibleInput
        For water colder than −2 °C or hotter than 60 °C, or a salinity that is none.

    Notes
    -----
    Within 0.005 kg/m³ of IAPWS-95 and TEOS-10 over 0 to 35 °C. The pressure of
    50 m of water would add 0.23 kg/m³ and is left out.

    References
    ----------
    PUBLISHED: one-atmosphere equation of state of sea water, Millero and Poisson
    1981, UNESCO 1983 (EOS-80); coefficients from MEMORY, checked against the
    printed check value, IAPWS-95 and TEOS-10.
    """
    temperature, salinity = _check(temperature_c, salinity_g_kg)
    t = temperature * T68_PER_T90
    s = salinity * PRACTICAL_PER_ABSOLUTE
    fresh = np.polynomial.polynomial.polyval(
        t, [999.842594, 6.793952e-2, -9.095290e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9]
    )
    linear = np.polynomial.polynomial.polyval(t, [8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9])
    root = np.polynomial.polynomial.polyval(t, [-5.72466e-3, 1.0227e-4, -1.6546e-6])
    return array(fresh + linear * s + root * s**1.5 + 4.8314e-4 * s**2)


def viscosity(*, temperature_c: ArrayLike, salinity_g_kg: ArrayLike = 0.0) -> Array:
    """Dynamic viscosity of water at one atmosphere.

    Parameters
    ----------
    temperature_c : float or array
        Water temperature, checked over 0 to 35. [°C]
    salinity_g_kg : float or array
        Absolute salinity: 0 fresh, about 35.2 open sea. [g/kg]

    Returns
    -------
    array
        Dynamic viscosity, broadcast shape. [Pa s]

    Raises
    ------
    ImpossibleInput
        For water colder than −2 °C or hotter than 60 °C, or a salinity that is none.

    Notes
    -----
    Fresh water within 0.01 % of IAPWS 2008; the share of salt is good to 1.5 %.

    References
    ----------
    PUBLISHED: IAPWS SR6-08 for fresh water, coefficients from MEMORY and checked
    against IAPWS 2008. MEMORY: factor for salt after Sharqawy and others 2010.
    """
    temperature, salinity = _check(temperature_c, salinity_g_kg)
    reduced = (temperature + 273.15) / 300.0
    fresh = 1e-6 * (
        280.68 * reduced**-1.9 + 511.45 * reduced**-7.7 + 61.131 * reduced**-19.6 + 0.45903 * reduced**-40.0
    )
    s = salinity / 1000.0
    linear = np.polynomial.polynomial.polyval(temperature, [1.541, 1.998e-2, -9.52e-5])
    square = np.polynomial.polynomial.polyval(temperature, [7.974, -7.561e-2, 4.724e-4])
    return array(fresh * (1.0 + linear * s + square * s**2))


def surface_tension(*, temperature_c: ArrayLike) -> Array:
    """Surface tension of clean fresh water against air.

    Parameters
    ----------
    temperature_c : float or array
        Water temperature, checked over 0 to 35. [°C]

    Returns
    -------
    array
        Surface tension, same shape. [N/m]

    Raises
    ------
    ImpossibleInput
        For water colder than −2 °C or hotter than 60 °C.

    Notes
    -----
    Slime, salt and grease change it; a natural surface is often some per cent lower.

    References
    ----------
    PUBLISHED: IAPWS R1-76, surface tension of ordinary water substance.
    """
    temperature, _ = _check(temperature_c, 0.0)
    tau = 1.0 - (temperature + 273.15) / 647.096
    return array(0.2358 * tau**1.256 * (1.0 - 0.625 * tau))
