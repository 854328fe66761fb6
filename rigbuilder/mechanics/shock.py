"""Sudden loads: a dropped weight, and a moving mass brought up short."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import STANDARD_GRAVITY_M_S2, Array, array
from rigbuilder.mechanics.errors import require


def fall_force(*, mass_kg: ArrayLike, drop_m: ArrayLike, stiffness_n_m: ArrayLike) -> Array:
    """Peak pull of a weight that falls freely and is caught by a spring.

    F = m g [1 + sqrt(1 + 2 h k / (m g))]

    Parameters
    ----------
    mass_kg : float or array
        Falling mass. [kg]
    drop_m : float or array
        Free fall before the line comes tight; 0 still doubles the weight. [m]
    stiffness_n_m : float or array
        Stiffness of line and rod. [N/m]

    Returns
    -------
    array
        Peak force, shape of the inputs broadcast together. [N]

    Raises
    ------
    ImpossibleInput
        A mass or stiffness that is not positive, or a negative drop.

    References
    ----------
    PUBLISHED: fall-factor formula of climbing ropes, without damping (an upper bound).
    """
    require(quantity="mass in kg", value=mass_kg, above=0.0)
    require(quantity="drop in m", value=drop_m, at_least=0.0)
    require(quantity="stiffness of line and rod in N/m", value=stiffness_n_m, above=0.0)
    weight_n = array(mass_kg) * STANDARD_GRAVITY_M_S2
    return array(weight_n * (1.0 + np.sqrt(1.0 + 2.0 * np.multiply(drop_m, stiffness_n_m) / weight_n)))


def sudden_stop_force(*, mass_kg: ArrayLike, speed_m_s: ArrayLike, stiffness_n_m: ArrayLike) -> Array:
    """Peak pull when a moving mass is brought up short, F = v sqrt(k m).

    Serves for a fish that turns at the boat, for a lure that snags on the cast and
    for the short-range peak of a hook-set, where the stiff short line meets a moving fish.

    Parameters
    ----------
    mass_kg : float or array
        Moving mass (a fish drags about a fifth of its mass of water along). [kg]
    speed_m_s : float or array
        Speed at which line and mass part. [m/s]
    stiffness_n_m : float or array
        Stiffness of line and rod. [N/m]

    Returns
    -------
    array
        Peak force, shape of the inputs broadcast together. [N]

    Raises
    ------
    ImpossibleInput
        A negative mass or speed, or a stiffness that is not positive.

    Notes
    -----
    Without damping and without drag slip, so an upper bound.

    References
    ----------
    COMPUTED: kinetic energy into a spring.
    """
    require(quantity="moving mass in kg", value=mass_kg, at_least=0.0)
    require(quantity="speed in m/s", value=speed_m_s, at_least=0.0)
    require(quantity="stiffness of line and rod in N/m", value=stiffness_n_m, above=0.0)
    return array(np.multiply(speed_m_s, np.sqrt(np.multiply(stiffness_n_m, mass_kg))))
