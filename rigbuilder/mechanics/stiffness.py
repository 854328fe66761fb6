"""How a line resists stretching and bending, and what water leaves of its strength."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require


def axial_stiffness(*, area_m2: ArrayLike, modulus_pa: ArrayLike) -> Array:
    """Pull per strain of a line, EA.

    Parameters
    ----------
    area_m2 : float or array
        Area of solid material (for a braid: mass per metre ÷ fibre density), more than 0. [m²]
    modulus_pa : float or array
        Modulus of elasticity; for a braid the effective one, which its weave lowers, more than 0. [Pa]

    Returns
    -------
    array
        Axial stiffness, broadcast shape. [N]

    Raises
    ------
    ImpossibleInput
        For an area or modulus that is not positive.

    Notes
    -----
    Nylon's modulus varies by 30 % with rate, wetness and creep.

    References
    ----------
    PUBLISHED: Hooke's law, any textbook of mechanics of materials.
    """
    require(quantity="area of the line in m²", value=area_m2, above=0.0)
    require(quantity="modulus of elasticity in Pa", value=modulus_pa, above=0.0)
    return array(array(area_m2) * array(modulus_pa))


def bending_stiffness(*, diameter_m: ArrayLike, modulus_pa: ArrayLike) -> Array:
    """Moment per curvature of a solid round line, EI.

    Parameters
    ----------
    diameter_m : float or array
        Diameter, more than 0. [m]
    modulus_pa : float or array
        Modulus of elasticity, more than 0. [Pa]

    Returns
    -------
    array
        Bending stiffness, broadcast shape. [N m²]

    Raises
    ------
    ImpossibleInput
        For a diameter or modulus that is not positive.

    Notes
    -----
    Not for braid, whose fibres slide past each other: close to none.

    References
    ----------
    PUBLISHED: second moment of area of a circle, any textbook of mechanics of materials.
    """
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    require(quantity="modulus of elasticity in Pa", value=modulus_pa, above=0.0)
    return array(np.pi / 64.0 * array(diameter_m) ** 4 * array(modulus_pa))


def wet_strength(*, dry_strength_n: ArrayLike, wet_factor: ArrayLike) -> Array:
    """Strength of soaked line.

    Parameters
    ----------
    dry_strength_n : float or array
        Strength of dry, straight line, more than 0. [N]
    wet_factor : float or array
        Share of strength left when soaked, above 0 and at most 1. [1]

    Returns
    -------
    array
        Strength, broadcast shape. [N]

    Raises
    ------
    ImpossibleInput
        For a strength that is not positive or a factor outside its limits.

    References
    ----------
    DERIVED: product; the factor comes with the material and carries its source there.
    """
    require(quantity="line strength in N", value=dry_strength_n, above=0.0)
    require(quantity="share of strength left when wet", value=wet_factor, above=0.0, at_most=1.0)
    return array(array(dry_strength_n) * array(wet_factor))
