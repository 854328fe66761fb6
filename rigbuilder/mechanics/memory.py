"""Coil memory: how hard the spool bends a line, and what pull straightens it again.

How much of the bend stays after storage is published nowhere that we found, so these
figures rank lines and spools; they do not say how a line will look.
"""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require


def coil_strain(*, diameter_m: ArrayLike, spool_diameter_m: ArrayLike) -> Array:
    """Strain of the outer fibre on the spool, d / (D + d).

    Parameters
    ----------
    diameter_m : float or array
        Line diameter. [m]
    spool_diameter_m : float or array
        Diameter of the surface that it is wound on. [m]

    Returns
    -------
    array
        Strain, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        A diameter that is not positive.

    Notes
    -----
    For solid lines; the fibres of a braid slide past each other.

    References
    ----------
    COMPUTED: plane sections stay plane.
    """
    _require_coil(diameter_m=diameter_m, spool_diameter_m=spool_diameter_m)
    return array(np.divide(diameter_m, np.add(spool_diameter_m, diameter_m)))


def coil_radius(*, diameter_m: ArrayLike, spool_diameter_m: ArrayLike) -> Array:
    """Radius of the line's middle on the spool, (D + d) / 2.

    Parameters
    ----------
    diameter_m : float or array
        Line diameter. [m]
    spool_diameter_m : float or array
        Diameter of the surface that it is wound on. [m]

    Returns
    -------
    array
        Radius, shape of the inputs broadcast together. [m]

    Raises
    ------
    ImpossibleInput
        A diameter that is not positive.

    References
    ----------
    COMPUTED: geometry.
    """
    _require_coil(diameter_m=diameter_m, spool_diameter_m=spool_diameter_m)
    return array(np.add(spool_diameter_m, diameter_m) / 2.0)


def straightening_tension(*, bending_stiffness_n_m2: ArrayLike, coil_radius_m: ArrayLike) -> Array:
    """Scale of the pull that draws a fully set coil straight, EI / R².

    Parameters
    ----------
    bending_stiffness_n_m2 : float or array
        EI of the line; about 0 for braid. [N m2]
    coil_radius_m : float or array
        Radius of the coil. [m]

    Returns
    -------
    array
        Pull, shape of the inputs broadcast together. [N]

    Raises
    ------
    ImpossibleInput
        A negative stiffness or a radius that is not positive.

    References
    ----------
    COMPUTED: bending energy against work of the pull (scale, not a threshold).
    """
    _require_bend(bending_stiffness_n_m2=bending_stiffness_n_m2, coil_radius_m=coil_radius_m)
    return array(np.divide(bending_stiffness_n_m2, np.square(coil_radius_m, dtype=float)))


def coil_moment(*, bending_stiffness_n_m2: ArrayLike, coil_radius_m: ArrayLike) -> Array:
    """Moment that holds the line on the spool, EI / R.

    Parameters
    ----------
    bending_stiffness_n_m2 : float or array
        EI of the line. [N m2]
    coil_radius_m : float or array
        Radius of the coil. [m]

    Returns
    -------
    array
        Moment, shape of the inputs broadcast together. [N m]

    Raises
    ------
    ImpossibleInput
        A negative stiffness or a radius that is not positive.

    References
    ----------
    COMPUTED: elastic bending.
    """
    _require_bend(bending_stiffness_n_m2=bending_stiffness_n_m2, coil_radius_m=coil_radius_m)
    return array(np.divide(bending_stiffness_n_m2, coil_radius_m))


def stored_energy(*, bending_stiffness_n_m2: ArrayLike, coil_radius_m: ArrayLike) -> Array:
    """Energy per length that wants to spring off the spool, EI / (2 R²).

    Parameters
    ----------
    bending_stiffness_n_m2 : float or array
        EI of the line. [N m2]
    coil_radius_m : float or array
        Radius of the coil. [m]

    Returns
    -------
    array
        Energy per length, shape of the inputs broadcast together. [J/m]

    Raises
    ------
    ImpossibleInput
        A negative stiffness or a radius that is not positive.

    References
    ----------
    COMPUTED: elastic bending.
    """
    tension = straightening_tension(
        bending_stiffness_n_m2=bending_stiffness_n_m2, coil_radius_m=coil_radius_m
    )
    return array(tension / 2.0)


def _require_coil(*, diameter_m: ArrayLike, spool_diameter_m: ArrayLike) -> None:
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    require(quantity="spool diameter in m", value=spool_diameter_m, above=0.0)


def _require_bend(*, bending_stiffness_n_m2: ArrayLike, coil_radius_m: ArrayLike) -> None:
    require(quantity="bending stiffness in N m²", value=bending_stiffness_n_m2, at_least=0.0)
    require(quantity="radius of the coil in m", value=coil_radius_m, above=0.0)
