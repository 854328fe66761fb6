"""A lipped lure, calibrated from the running depth printed on its box."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.crossing import crossing
from rigbuilder.mechanics.errors import require
from rigbuilder.mechanics.loads import Load
from rigbuilder.mechanics.tow import towed

LEAST_PULL_N = 1e-4
"""Lower bound of the search for a dive force: less than the weight of a drop of water [N]."""


def dive_force(
    *,
    running_depth_m: ArrayLike,
    load: Load,
    wet_weight_n_m: ArrayLike,
    dry_weight_n_m: ArrayLike,
    drag_n: ArrayLike,
    length_m: ArrayLike,
    tip_height_m: ArrayLike = 0.0,
    steps: int | None = None,
) -> Array:
    """Downward pull of a diving lure, found from the running depth printed on its box.

    Take the line, the length and the speed that the printed depth is meant
    for; the pull then gives the depth on any other line, see :func:`tow.towed`.

    Parameters
    ----------
    running_depth_m : float or array
        Printed depth, less than the length of line below the rod tip. [m]
    load : Load
        Force of the water on a metre of the reference line. [N/m]
    wet_weight_n_m : float or array
        Weight of the reference line in water. [N/m]
    dry_weight_n_m : float or array
        Weight of the reference line in air. [N/m]
    drag_n : float or array
        Drag of the lure at that speed. [N]
    length_m : float or array
        Reference line from the lure to the rod tip. [m]
    tip_height_m : float or array
        Height of the rod tip above the water. [m]
    steps : int, optional
        Integration steps; as many as needed when left out. [1]

    Returns
    -------
    array
        Pull, inputs broadcast together. [N]

    Raises
    ------
    ImpossibleInput
        For a printed depth that is not positive or that the reference line cannot reach.

    Notes
    -----
    The printed depth is a trade figure without a standard; the reference line
    and speed are assumptions that the caller must show. Change of the dive
    with the angle of the line at the nose is left out.

    References
    ----------
    DERIVED: :func:`tow.towed` solved for the pull.
    """
    reach = array(length_m) - array(tip_height_m)
    require(quantity="running depth in m", value=running_depth_m, above=0.0)
    require(
        quantity="line length beyond running depth and rod tip in m",
        value=reach - array(running_depth_m),
        above=0.0,
    )
    strongest = array(load.broadside_n_m + np.abs(array(wet_weight_n_m))) * array(length_m) + array(drag_n)
    depth, upper = np.broadcast_arrays(array(running_depth_m), np.log(1e3 * strongest + 1.0))
    outline = np.broadcast_shapes(depth.shape, np.shape(dry_weight_n_m), np.shape(tip_height_m))
    depth, upper = np.broadcast_to(depth, outline).ravel(), np.broadcast_to(upper, outline).ravel()

    def excess(log_pull: Array) -> Array:
        found = towed(
            load=load,
            wet_weight_n_m=wet_weight_n_m,
            dry_weight_n_m=dry_weight_n_m,
            pull_down_n=np.exp(log_pull).reshape(-1, *outline),
            drag_n=drag_n,
            length_m=length_m,
            tip_height_m=tip_height_m,
            steps=steps,
        )
        return array(found.depth_m.reshape(log_pull.shape) - depth)

    low = np.full_like(upper, np.log(LEAST_PULL_N))
    log_pull = crossing(function=excess, low=low, high=upper, points=49, passes=2)
    return array(np.exp(log_pull)).reshape(outline)


def dive_area(
    *,
    pull_down_n: ArrayLike,
    weight_in_water_n: ArrayLike,
    speed_m_s: ArrayLike,
    density_kg_m3: ArrayLike,
) -> Array:
    """Area of downward lift of a lipped lure, from its pull at one speed.

    Parameters
    ----------
    pull_down_n : float or array
        Downward pull while it runs, as :func:`dive_force` finds it. [N]
    weight_in_water_n : float or array
        Weight in water; negative for a lure that floats at rest. [N]
    speed_m_s : float or array
        Speed at which it was found, more than 0. [m/s]
    density_kg_m3 : float or array
        Density of the water. [kg/m³]

    Returns
    -------
    array
        Lift coefficient × area: the dive at another speed is :func:`tow.form_drag` of it. [m²]

    Raises
    ------
    ImpossibleInput
        For a speed that is not positive.

    References
    ----------
    DERIVED: pull = weight in water + ½ρAV².
    """
    require(quantity="speed in m/s", value=speed_m_s, above=0.0)
    dive = array(pull_down_n) - array(weight_in_water_n)
    return array(dive / (0.5 * array(density_kg_m3) * array(speed_m_s) ** 2))
