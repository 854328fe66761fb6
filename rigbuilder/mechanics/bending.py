"""What a tight bend, a kink or a thin ring does to a line."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require


def bending_strain(*, diameter_m: ArrayLike, radius_m: ArrayLike) -> Array:
    """Strain of the outermost fibre of a bent round line, d / (2 R).

    Parameters
    ----------
    diameter_m : float or array
        Line diameter. [m]
    radius_m : float or array
        Radius of the bend, to the middle of the line. [m]

    Returns
    -------
    array
        Strain, 0.01 is one per cent, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        A diameter or radius that is not positive.

    Notes
    -----
    For a solid line. The fibres of a braid slide past each other and strain far less.

    References
    ----------
    COMPUTED: plane sections stay plane.
    """
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    require(quantity="bend radius in m", value=radius_m, above=0.0)
    return array(np.divide(diameter_m, radius_m) / 2.0)


def kinked(*, strain: ArrayLike, break_extension: ArrayLike) -> NDArray[np.bool_]:
    """Whether a bend strains the outer fibre past its break: cut the piece out.

    Parameters
    ----------
    strain : float or array
        Strain of the outermost fibre. [1]
    break_extension : float or array
        Extension at break of the material, 0.25 for typical nylon. [1]

    Returns
    -------
    array of bool
        True where the fibre is past its break, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        A negative strain or a break extension that is not positive.

    References
    ----------
    COMPUTED: comparison of strains.
    """
    require(quantity="strain", value=strain, at_least=0.0)
    require(quantity="break extension", value=break_extension, above=0.0)
    return np.asarray(np.greater_equal(strain, break_extension))


def pin_efficiency(*, diameter_m: ArrayLike, pin_diameter_m: ArrayLike) -> Array:
    """Strength left in a line bent over a pin or ring, 1 - 0.5 / sqrt(D / d).

    Parameters
    ----------
    diameter_m : float or array
        Line diameter. [m]
    pin_diameter_m : float or array
        Diameter of pin, ring or hook wire. [m]

    Returns
    -------
    array
        Share of the straight strength, between 0.5 and 1. [1]

    Raises
    ------
    ImpossibleInput
        A diameter that is not positive.

    Notes
    -----
    A rule for wire rope, used here for its trend. For D / d >= 1; thinner pins are held at 0.5.

    References
    ----------
    MEMORY: pin rule of wire rope handbooks.
    """
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    require(quantity="pin diameter in m", value=pin_diameter_m, above=0.0)
    ratio = np.maximum(np.divide(pin_diameter_m, diameter_m), 1.0)
    return array(1.0 - 0.5 / np.sqrt(ratio))
