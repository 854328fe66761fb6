"""The drag as the spool empties: the brake's torque stays, the lever shrinks."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require


def radius_after(
    *,
    full_radius_m: ArrayLike,
    line_out_m: ArrayLike,
    diameter_m: ArrayLike,
    packing: ArrayLike,
    width_m: ArrayLike,
) -> Array:
    """Radius of the line on the spool after line has run out, r² = R² - L d² / (4 phi W).

    Parameters
    ----------
    full_radius_m : float or array
        Radius at which the drag was set. [m]
    line_out_m : float or array
        Line taken since. [m]
    diameter_m : float or array
        Line diameter. [m]
    packing : float or array
        Share of the winding that is line. [1]
    width_m : float or array
        Width between the flanges. [m]

    Returns
    -------
    array
        Radius, shape of the inputs broadcast together. [m]

    Raises
    ------
    ImpossibleInput
        A dimension or packing that is not positive, a negative length, or more line out than
        a winding down to the axis would hold.

    References
    ----------
    COMPUTED: volume of the winding.
    """
    require(quantity="radius of the full spool in m", value=full_radius_m, above=0.0)
    require(quantity="line out in m", value=line_out_m, at_least=0.0)
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    require(quantity="packing of the line", value=packing, above=0.0)
    require(quantity="spool width in m", value=width_m, above=0.0)
    taken = np.multiply(line_out_m, np.square(diameter_m, dtype=float)) / (
        4.0 * np.multiply(packing, width_m)
    )
    square = np.square(full_radius_m, dtype=float) - taken
    require(quantity="square of the radius left in m²", value=square, above=0.0)
    return array(np.sqrt(square))


def drag_torque(*, drag_n: ArrayLike, radius_m: ArrayLike) -> Array:
    """Torque of the brake from a pull measured at a known fill, M = T r.

    Parameters
    ----------
    drag_n : float or array
        Pull that takes line, measured straight off the reel. [N]
    radius_m : float or array
        Radius of the line on the spool while measuring. [m]

    Returns
    -------
    array
        Torque, shape of the inputs broadcast together. [N m]

    Raises
    ------
    ImpossibleInput
        A negative pull or a radius that is not positive.

    References
    ----------
    COMPUTED: lever arm.
    """
    require(quantity="drag in N", value=drag_n, at_least=0.0)
    require(quantity="radius of the line on the spool in m", value=radius_m, above=0.0)
    return array(np.multiply(drag_n, radius_m))


def drag_at(*, torque_nm: ArrayLike, radius_m: ArrayLike) -> Array:
    """Pull that takes line at a fill, T = M / r.

    Parameters
    ----------
    torque_nm : float or array
        Torque of the brake. [N m]
    radius_m : float or array
        Radius of the line on the spool. [m]

    Returns
    -------
    array
        Pull straight off the reel, shape of the inputs broadcast together. [N]

    Raises
    ------
    ImpossibleInput
        A negative torque or a radius that is not positive.

    Notes
    -----
    Exact for a constant torque; that of real brakes wanders by about 20 %.

    References
    ----------
    COMPUTED: lever arm.
    """
    require(quantity="torque of the drag in N m", value=torque_nm, at_least=0.0)
    require(quantity="radius of the line on the spool in m", value=radius_m, above=0.0)
    return array(np.divide(torque_nm, radius_m))


def drag_growth(*, set_radius_m: ArrayLike, radius_m: ArrayLike) -> Array:
    """How many times the set drag the reel now asks for, R / r.

    Parameters
    ----------
    set_radius_m : float or array
        Radius at which the drag was set. [m]
    radius_m : float or array
        Radius now. [m]

    Returns
    -------
    array
        Ratio, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        A radius that is not positive.

    References
    ----------
    COMPUTED: constant torque.
    """
    require(quantity="radius at which the drag was set in m", value=set_radius_m, above=0.0)
    require(quantity="radius of the line on the spool in m", value=radius_m, above=0.0)
    return array(np.divide(set_radius_m, radius_m))
