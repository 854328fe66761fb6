"""The cross-section of a line: what diameter, density and material make of it.

Material values (stress, tenacity, modulus, density, wet factor) are arguments:
they belong to the tables of line types and carry their own sources there.
Braid, which is described by its mass, has its own relations in :mod:`braid`.
"""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import STANDARD_GRAVITY_M_S2, Array, array
from rigbuilder.mechanics.errors import require


def area(*, diameter_m: ArrayLike) -> Array:
    """Cross-section of a solid round line.

    Parameters
    ----------
    diameter_m : float or array
        Diameter, more than 0. [m]

    Returns
    -------
    array
        Area, same shape. [m²]

    Raises
    ------
    ImpossibleInput
        For a diameter that is not positive.

    References
    ----------
    DERIVED: area of a circle.
    """
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    return array(np.pi / 4.0 * array(diameter_m) ** 2)


def strength_from_diameter(*, diameter_m: ArrayLike, stress_pa: ArrayLike) -> Array:
    """Breaking strength of a solid round line.

    Parameters
    ----------
    diameter_m : float or array
        Diameter, more than 0. [m]
    stress_pa : float or array
        Breaking stress of the material, more than 0. [Pa]

    Returns
    -------
    array
        Strength of straight, unknotted line, broadcast shape. [N]

    Raises
    ------
    ImpossibleInput
        For a diameter or stress that is not positive.

    Notes
    -----
    Thick line is a little weaker per area: a fit to a customary table of sizes
    gives the exponent 1.91 instead of 2.

    References
    ----------
    DERIVED: definition of stress.
    """
    require(quantity="breaking stress in Pa", value=stress_pa, above=0.0)
    return array(area(diameter_m=diameter_m) * array(stress_pa))


def diameter_from_strength(*, strength_n: ArrayLike, stress_pa: ArrayLike) -> Array:
    """Diameter that a solid round line needs for a strength.

    Parameters
    ----------
    strength_n : float or array
        Strength of straight, unknotted line, more than 0. [N]
    stress_pa : float or array
        Breaking stress of the material, more than 0. [Pa]

    Returns
    -------
    array
        Diameter, broadcast shape. [m]

    Raises
    ------
    ImpossibleInput
        For a strength or stress that is not positive.

    References
    ----------
    DERIVED: inverse of :func:`strength_from_diameter`.
    """
    require(quantity="line strength in N", value=strength_n, above=0.0)
    require(quantity="breaking stress in Pa", value=stress_pa, above=0.0)
    return array(np.sqrt(4.0 / np.pi * array(strength_n) / array(stress_pa)))


def linear_density(*, diameter_m: ArrayLike, density_kg_m3: ArrayLike) -> Array:
    """Mass per metre of a solid round line.

    Parameters
    ----------
    diameter_m : float or array
        Diameter of the solid, more than 0. [m]
    density_kg_m3 : float or array
        Density of the material, more than 0. [kg/m³]

    Returns
    -------
    array
        Mass per metre, broadcast shape. [kg/m]

    Raises
    ------
    ImpossibleInput
        For a diameter or density that is not positive.

    References
    ----------
    DERIVED: area × density.
    """
    require(quantity="density of the line in kg/m³", value=density_kg_m3, above=0.0)
    return array(area(diameter_m=diameter_m) * array(density_kg_m3))


def dry_weight(*, linear_density_kg_m: ArrayLike) -> Array:
    """Weight of a metre of line in air.

    Parameters
    ----------
    linear_density_kg_m : float or array
        Mass per metre, more than 0. [kg/m]

    Returns
    -------
    array
        Weight per metre, same shape. [N/m]

    Raises
    ------
    ImpossibleInput
        For a mass that is not positive.

    References
    ----------
    DERIVED: mass × standard gravity.
    """
    require(quantity="mass per metre in kg/m", value=linear_density_kg_m, above=0.0)
    return array(array(linear_density_kg_m) * STANDARD_GRAVITY_M_S2)


def wet_weight(
    *, linear_density_kg_m: ArrayLike, density_kg_m3: ArrayLike, water_density_kg_m3: ArrayLike
) -> Array:
    """Weight of a metre of wetted line in water.

    Parameters
    ----------
    linear_density_kg_m : float or array
        Mass per metre of the dry line, more than 0. [kg/m]
    density_kg_m3 : float or array
        Density of the fibre (not of the bulk of a braid), more than 0. [kg/m³]
    water_density_kg_m3 : float or array
        Density of the water. [kg/m³]

    Returns
    -------
    array
        Weight per metre; negative floats, broadcast shape. [N/m]

    Raises
    ------
    ImpossibleInput
        For a mass or density that is not positive.

    Notes
    -----
    Holds for braid whatever its porosity, once water has filled the gaps.

    References
    ----------
    PUBLISHED: Archimedes' principle.
    """
    require(quantity="density of the line in kg/m³", value=density_kg_m3, above=0.0)
    require(quantity="water density in kg/m³", value=water_density_kg_m3, at_least=0.0)
    buoyancy = array(water_density_kg_m3) / array(density_kg_m3)
    return array(dry_weight(linear_density_kg_m=linear_density_kg_m) * (1.0 - buoyancy))
