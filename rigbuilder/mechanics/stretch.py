"""Line and rod as springs: how far they give and what reaches the other end."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require


def line_stiffness(
    *,
    axial_stiffness_n: ArrayLike,
    length_m: ArrayLike,
    rate_factor: ArrayLike = 1.0,
    wet_factor: ArrayLike = 1.0,
) -> Array:
    """Spring stiffness of a straight piece of line, k = EA / L.

    Parameters
    ----------
    axial_stiffness_n : float or array
        EA of the dry line pulled slowly. [N]
    length_m : float or array
        Length of the piece. [m]
    rate_factor : float or array
        How much stiffer a quick pull finds the line; 1.2 to 1.5 for nylon from memory. [1]
    wet_factor : float or array
        Stiffness of the soaked line over that of the dry one; below 1 for nylon. [1]

    Returns
    -------
    array
        Stiffness, shape of the inputs broadcast together. [N/m]

    Raises
    ------
    ImpossibleInput
        A stiffness, length or factor that is not positive.

    References
    ----------
    COMPUTED: Hooke's law of a uniform bar; rate and wetness factors MEMORY.
    """
    require(quantity="axial stiffness of the line in N", value=axial_stiffness_n, above=0.0)
    require(quantity="line length in m", value=length_m, above=0.0)
    require(quantity="rate factor", value=rate_factor, above=0.0)
    require(quantity="wet factor", value=wet_factor, above=0.0)
    stiffness = np.multiply(axial_stiffness_n, rate_factor) * array(wet_factor) / array(length_m)
    return array(stiffness)


def springs_in_series(*, stiffnesses_n_m: Sequence[ArrayLike]) -> Array:
    """Stiffness of springs that carry the same force, 1/k = sum of 1/k_i.

    Parameters
    ----------
    stiffnesses_n_m : sequence of float or array
        Main line, leader, rod and whatever else gives; infinity for what does not. [N/m]

    Returns
    -------
    array
        Stiffness of the whole, shape of the inputs broadcast together. [N/m]

    Raises
    ------
    ImpossibleInput
        No spring at all, or a stiffness that is not positive.

    References
    ----------
    COMPUTED: equal force, added extensions.
    """
    require(quantity="number of springs", value=float(len(stiffnesses_n_m)), at_least=1.0)
    compliance: Array = np.zeros(())
    for stiffness in stiffnesses_n_m:
        values = array(stiffness)
        require(quantity="spring stiffness in N/m", value=np.where(values == np.inf, 1.0, values), above=0.0)
        compliance = compliance + 1.0 / values
    with np.errstate(divide="ignore"):
        return array(1.0 / compliance)


def stretch(*, force_n: ArrayLike, stiffness_n_m: ArrayLike) -> Array:
    """Extension of a spring under a force, x = F / k.

    Parameters
    ----------
    force_n : float or array
        Pull. [N]
    stiffness_n_m : float or array
        Stiffness. [N/m]

    Returns
    -------
    array
        Extension, shape of the inputs broadcast together. [m]

    Raises
    ------
    ImpossibleInput
        A negative force or a stiffness that is not positive.

    References
    ----------
    COMPUTED: Hooke's law.
    """
    require(quantity="pull in N", value=force_n, at_least=0.0)
    require(quantity="spring stiffness in N/m", value=stiffness_n_m, above=0.0)
    return array(np.divide(force_n, stiffness_n_m))


def rod_stiffness(
    *, reference_stiffness_n_m: ArrayLike, reference_length_m: ArrayLike, length_m: ArrayLike
) -> Array:
    """Tip stiffness of a rod scaled from one of the same power and action, k = k0 (L0 / L)³.

    Parameters
    ----------
    reference_stiffness_n_m : float or array
        Tip stiffness of the known rod of that power and action. [N/m]
    reference_length_m : float or array
        Length of the known rod. [m]
    length_m : float or array
        Length of this rod. [m]

    Returns
    -------
    array
        Tip stiffness, shape of the inputs broadcast together. [N/m]

    Raises
    ------
    ImpossibleInput
        A value that is not positive.

    References
    ----------
    COMPUTED: end-loaded cantilever of equal section (a real rod tapers, so this is a trend).
    """
    require(quantity="rod stiffness in N/m", value=reference_stiffness_n_m, above=0.0)
    require(quantity="length of the known rod in m", value=reference_length_m, above=0.0)
    require(quantity="rod length in m", value=length_m, above=0.0)
    shorter = np.divide(reference_length_m, length_m)
    return array(np.multiply(reference_stiffness_n_m, shorter**3))


def wave_speed(*, modulus_pa: ArrayLike, density_kg_m3: ArrayLike) -> Array:
    """Speed at which a jerk travels along the line, c = sqrt(E / rho).

    Parameters
    ----------
    modulus_pa : float or array
        Tensile modulus. [Pa]
    density_kg_m3 : float or array
        Density of the line material. [kg/m3]

    Returns
    -------
    array
        Wave speed, shape of the inputs broadcast together. [m/s]

    Raises
    ------
    ImpossibleInput
        A modulus or density that is not positive.

    Notes
    -----
    Every line carries a tug over a long cast in a few hundredths of a second:
    what differs from line to line is how much arrives, not when.

    References
    ----------
    COMPUTED: longitudinal wave in a thin bar.
    """
    require(quantity="modulus in Pa", value=modulus_pa, above=0.0)
    require(quantity="density in kg/m³", value=density_kg_m3, above=0.0)
    return array(np.sqrt(np.divide(modulus_pa, density_kg_m3)))
