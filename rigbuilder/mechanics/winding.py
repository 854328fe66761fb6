"""Turns of the handle: what they bring in, and how many a length takes."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require


def retrieve_per_turn(*, fill_diameter_m: ArrayLike, gear_ratio: ArrayLike) -> Array:
    """Line wound by one turn of the handle at the present fill, pi D i.

    Parameters
    ----------
    fill_diameter_m : float or array
        Diameter over the line on the spool. [m]
    gear_ratio : float or array
        Turns of spool or rotor for one of the handle. [1]

    Returns
    -------
    array
        Line per turn, shape of the inputs broadcast together. [m]

    Raises
    ------
    ImpossibleInput
        A diameter or ratio that is not positive.

    References
    ----------
    COMPUTED: circumference times gear ratio.
    """
    require(quantity="diameter over the line in m", value=fill_diameter_m, above=0.0)
    require(quantity="gear ratio", value=gear_ratio, above=0.0)
    return array(np.pi * np.multiply(fill_diameter_m, gear_ratio))


def handle_turns(
    *, start_diameter_m: ArrayLike, end_diameter_m: ArrayLike, length_m: ArrayLike, gear_ratio: ArrayLike
) -> Array:
    """Turns of the handle that wind a length while the spool grows from one diameter to another.

    N = L / (pi i (D0 + D1) / 2), the exact integral of dL / (pi D i) with D² linear in L.

    Parameters
    ----------
    start_diameter_m, end_diameter_m : float or array
        Diameter over the line before and after. [m]
    length_m : float or array
        Length wound. [m]
    gear_ratio : float or array
        Turns of spool or rotor for one of the handle. [1]

    Returns
    -------
    array
        Turns, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        A diameter or ratio that is not positive, an end below the start, a negative length.

    Notes
    -----
    A tight grip on the line while filling matters more than the last turn: count on ±5 %.

    References
    ----------
    COMPUTED: integral over the growing spool; checked turn by turn.
    """
    require(quantity="diameter at the start in m", value=start_diameter_m, above=0.0)
    grown_m = np.subtract(end_diameter_m, start_diameter_m)
    require(quantity="growth of the spool in m", value=grown_m, at_least=0.0)
    require(quantity="line length in m", value=length_m, at_least=0.0)
    require(quantity="gear ratio", value=gear_ratio, above=0.0)
    middle_m = np.add(start_diameter_m, end_diameter_m) / 2.0
    return array(np.divide(length_m, np.pi * middle_m * array(gear_ratio)))


def line_mass(*, length_m: ArrayLike, linear_density_kg_m: ArrayLike) -> Array:
    """Mass that a kitchen scale gains as a length goes on the spool.

    Parameters
    ----------
    length_m : float or array
        Length wound. [m]
    linear_density_kg_m : float or array
        Dry mass per length of the line. [kg/m]

    Returns
    -------
    array
        Mass, shape of the inputs broadcast together. [kg]

    Raises
    ------
    ImpossibleInput
        A negative length or a mass per length that is not positive.

    References
    ----------
    COMPUTED: length times mass per length.
    """
    require(quantity="line length in m", value=length_m, at_least=0.0)
    require(quantity="mass of the line in kg/m", value=linear_density_kg_m, above=0.0)
    return array(np.multiply(length_m, linear_density_kg_m))
