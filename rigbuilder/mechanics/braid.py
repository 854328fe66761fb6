"""Braid, described by its mass per metre: tex = grams per kilometre = 1e-6 kg/m.

Its strength follows the mass of fibre; water, spool and fish meet its outside
diameter, which the gaps between the fibres enlarge.
"""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require

TEX_KG_M = 1e-6
"""One tex, a gram per kilometre [kg/m]; ISO 1144."""


def strength_from_mass(*, linear_density_kg_m: ArrayLike, tenacity_n_tex: ArrayLike) -> Array:
    """Breaking strength of a braid, from its mass per metre.

    Parameters
    ----------
    linear_density_kg_m : float or array
        Mass per metre, more than 0. [kg/m]
    tenacity_n_tex : float or array
        Strength per linear density, more than 0. [N/tex]

    Returns
    -------
    array
        Strength of straight, unknotted line, broadcast shape. [N]

    Raises
    ------
    ImpossibleInput
        For a mass or tenacity that is not positive.

    References
    ----------
    PUBLISHED: definition of tenacity, ISO 2062.
    """
    require(quantity="mass per metre in kg/m", value=linear_density_kg_m, above=0.0)
    require(quantity="tenacity in N/tex", value=tenacity_n_tex, above=0.0)
    return array(array(linear_density_kg_m) / TEX_KG_M * array(tenacity_n_tex))


def mass_from_strength(*, strength_n: ArrayLike, tenacity_n_tex: ArrayLike) -> Array:
    """Mass per metre that a braid needs for a strength.

    Parameters
    ----------
    strength_n : float or array
        Strength of straight, unknotted line, more than 0. [N]
    tenacity_n_tex : float or array
        Strength per linear density, more than 0. [N/tex]

    Returns
    -------
    array
        Mass per metre, broadcast shape. [kg/m]

    Raises
    ------
    ImpossibleInput
        For a strength or tenacity that is not positive.

    References
    ----------
    DERIVED: inverse of :func:`strength_from_mass`.
    """
    require(quantity="line strength in N", value=strength_n, above=0.0)
    require(quantity="tenacity in N/tex", value=tenacity_n_tex, above=0.0)
    return array(array(strength_n) / array(tenacity_n_tex) * TEX_KG_M)


def solid_diameter(*, linear_density_kg_m: ArrayLike, density_kg_m3: ArrayLike) -> Array:
    """Diameter that the fibres of a braid would have as one solid rod.

    Parameters
    ----------
    linear_density_kg_m : float or array
        Mass per metre, more than 0. [kg/m]
    density_kg_m3 : float or array
        Density of the fibre, more than 0. [kg/m³]

    Returns
    -------
    array
        Diameter of the solid, broadcast shape. [m]

    Raises
    ------
    ImpossibleInput
        For a mass or density that is not positive.

    References
    ----------
    DERIVED: inverse of :func:`section.linear_density`.
    """
    require(quantity="mass per metre in kg/m", value=linear_density_kg_m, above=0.0)
    require(quantity="density of the line in kg/m³", value=density_kg_m3, above=0.0)
    return array(np.sqrt(4.0 / np.pi * array(linear_density_kg_m) / array(density_kg_m3)))


def outside_diameter(*, solid_diameter_m: ArrayLike, packing: ArrayLike) -> Array:
    """Outside diameter of a braid, which is what water, spool and fish meet.

    Parameters
    ----------
    solid_diameter_m : float or array
        Diameter of the fibres as one solid rod, more than 0. [m]
    packing : float or array
        Share of the outside area that is fibre, above 0 and at most 1; 0.6 to 0.8 for braid. [1]

    Returns
    -------
    array
        Outside diameter, broadcast shape. [m]

    Raises
    ------
    ImpossibleInput
        For a diameter that is not positive or a packing outside its limits.

    References
    ----------
    DERIVED: equal fibre area. The usual packing is COMMON PRACTICE; ropes give 0.63 to 0.65 (PUBLISHED:
    property table of the MoorPy library).
    """
    require(quantity="line diameter in m", value=solid_diameter_m, above=0.0)
    require(quantity="packing of the braid", value=packing, above=0.0, at_most=1.0)
    return array(array(solid_diameter_m) / np.sqrt(array(packing)))
