"""Friction over the guides: what a bent rod adds between reel and fish."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require


def guide_ratio(*, friction: ArrayLike, turning_rad: ArrayLike) -> Array:
    """Pull on the side that moves away over the pull on the other side, exp(mu theta).

    Parameters
    ----------
    friction : float or array
        Friction coefficient of wet line on guide rings; 0.08 / 0.15 / 0.35 is an honest range. [1]
    turning_rad : float or array
        Sum of the turning angles at all guides: the angle between the line at the reel and
        the line that leaves the tip. [rad]

    Returns
    -------
    array
        Ratio, at least 1, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        A negative friction or angle.

    Notes
    -----
    Only the sum of the angles matters, not the number of guides. Sliding line; a line
    that does not move may carry anything between this ratio and its inverse.

    References
    ----------
    PUBLISHED: Euler-Eytelwein (capstan) equation; nylon and acetal friction in the CRC
    Materials Science & Engineering Handbook 2001, Table 399. No value for line on rings was found.
    """
    require(quantity="friction coefficient of the guides", value=friction, at_least=0.0)
    require(quantity="angle of the line over the rod in rad", value=turning_rad, at_least=0.0)
    return np.exp(np.multiply(friction, turning_rad, dtype=float))


def pull_at_fish(*, drag_n: ArrayLike, friction: ArrayLike, turning_rad: ArrayLike) -> Array:
    """Pull that a fish must make to take line off the reel over the bent rod.

    Parameters
    ----------
    drag_n : float or array
        Pull at which line leaves the spool. [N]
    friction : float or array
        Friction coefficient of line on guide rings. [1]
    turning_rad : float or array
        Angle of the line over the rod. [rad]

    Returns
    -------
    array
        Pull outside the tip, shape of the inputs broadcast together. [N]

    Raises
    ------
    ImpossibleInput
        A negative drag, friction or angle.

    References
    ----------
    PUBLISHED: capstan equation, line running outward.
    """
    require(quantity="drag in N", value=drag_n, at_least=0.0)
    return array(drag_n) * guide_ratio(friction=friction, turning_rad=turning_rad)


def drag_for_pull(*, pull_n: ArrayLike, friction: ArrayLike, turning_rad: ArrayLike) -> Array:
    """What to set on a scale pulled straight off the reel, so that a fish feels no more than a given pull.

    Pulled over the bent rod instead, at the same angle, the scale must show the pull itself.

    Parameters
    ----------
    pull_n : float or array
        Largest pull wanted outside the tip of the bent rod. [N]
    friction : float or array
        Friction coefficient of line on guide rings. [1]
    turning_rad : float or array
        Angle of the line over the rod in the fight. [rad]

    Returns
    -------
    array
        Reading of the scale with the rod pointing at it, shape of the inputs broadcast together. [N]

    Raises
    ------
    ImpossibleInput
        A negative pull, friction or angle.

    References
    ----------
    PUBLISHED: capstan equation, solved for the side of the reel.
    """
    require(quantity="pull on the fish in N", value=pull_n, at_least=0.0)
    return array(pull_n) / guide_ratio(friction=friction, turning_rad=turning_rad)


def pull_when_winding(*, load_n: ArrayLike, friction: ArrayLike, turning_rad: ArrayLike) -> Array:
    """Pull at the reel needed to wind in a load over the bent rod, load times exp(mu theta).

    Parameters
    ----------
    load_n : float or array
        Pull of fish or lure outside the tip. [N]
    friction : float or array
        Friction coefficient of line on guide rings. [1]
    turning_rad : float or array
        Angle of the line over the rod. [rad]

    Returns
    -------
    array
        Pull at the reel, shape of the inputs broadcast together. [N]

    Raises
    ------
    ImpossibleInput
        A negative load, friction or angle.

    References
    ----------
    PUBLISHED: capstan equation, line running inward: friction opposes the motion here too.
    """
    require(quantity="load in N", value=load_n, at_least=0.0)
    return array(load_n) * guide_ratio(friction=friction, turning_rad=turning_rad)
