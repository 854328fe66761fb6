"""How fast bare line sinks or rises, and how long a lure takes to drop on it."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics import cylinder
from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require

_ROUNDS = 40
_PLACES, _WEIGHTS = np.polynomial.legendre.leggauss(32)


def sinking_speed(
    *,
    wet_weight_n_m: ArrayLike,
    diameter_m: ArrayLike,
    density_kg_m3: ArrayLike,
    viscosity_pa_s: ArrayLike,
) -> Array:
    """Steady speed at which straight, level, wetted line sinks or rises.

    Parameters
    ----------
    wet_weight_n_m : float or array
        Weight in water; negative floats. [N/m]
    diameter_m : float or array
        Outside diameter. [m]
    density_kg_m3 : float or array
        Density of the water. [kg/m³]
    viscosity_pa_s : float or array
        Dynamic viscosity of the water. [Pa s]

    Returns
    -------
    array
        Speed, positive downwards, negative where the line rises. [m/s]

    Raises
    ------
    ImpossibleInput
        For a diameter, density or viscosity that is not positive.

    Notes
    -----
    Show ×0.7 to ×1.15 as the range. Dry line is held up by the surface film
    instead: see :func:`surface.film_ratio`.

    The balance is Cd(Re) Re² = 2wρd/μ². Its logarithm rises with that of Re at
    a slope of 1 to 2, so that steps divided by 1.5 close in on the solution
    from anywhere.

    References
    ----------
    DERIVED: balance of wet weight and drag, with :func:`cylinder.drag_coefficient`.
    """
    require(quantity="weight of the line in water in N/m", value=wet_weight_n_m)
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    require(quantity="water density in kg/m³", value=density_kg_m3, above=0.0)
    require(quantity="viscosity in Pa s", value=viscosity_pa_s, above=0.0)
    weight, density, viscosity = array(wet_weight_n_m), array(density_kg_m3), array(viscosity_pa_s)
    target = np.log(np.maximum(2.0 * np.abs(weight) * density * array(diameter_m) / viscosity**2, 1e-12))
    log_reynolds = np.zeros_like(target)
    for _ in range(_ROUNDS):
        drag = cylinder.drag_coefficient(reynolds=np.exp(log_reynolds))
        log_reynolds = log_reynolds + (target - np.log(drag) - 2.0 * log_reynolds) / 1.5
    speed = np.exp(log_reynolds) * viscosity / (density * array(diameter_m))
    return array(np.sign(weight) * speed)


def drop_speed(
    *,
    depth_m: ArrayLike,
    pull_down_n: ArrayLike,
    drag_area_m2: ArrayLike,
    wet_weight_n_m: ArrayLike,
    density_kg_m3: ArrayLike,
    viscosity_pa_s: ArrayLike,
    spool_tension_n: ArrayLike = 0.0,
) -> Array:
    """Speed of a lure that sinks on free line when it has reached a depth.

    Parameters
    ----------
    depth_m : float or array
        Depth reached, which is the line pulled down. [m]
    pull_down_n : float or array
        Weight of the lure in water. [N]
    drag_area_m2 : float or array
        Drag coefficient × frontal area of the lure as it sinks, more than 0. [m²]
    wet_weight_n_m : float or array
        Weight of the line in water; negative floats and holds the lure back. [N/m]
    density_kg_m3 : float or array
        Density of the water. [kg/m³]
    viscosity_pa_s : float or array
        Dynamic viscosity of the water. [Pa s]
    spool_tension_n : float or array
        Pull needed to draw line from the reel and through the guides. [N]

    Returns
    -------
    array
        Speed; 0 where the lure hangs. [m/s]

    Raises
    ------
    ImpossibleInput
        For a negative depth or spool tension, or a drag area that is not positive.

    Notes
    -----
    The lure drops straight down and draws the line after it; the line slides
    along itself with the least axial friction of :data:`cylinder.LEAST_NUSSELT`.

    References
    ----------
    DERIVED: balance of wet weights with form drag of the lure and friction of the line.
    """
    require(quantity="depth in m", value=depth_m, at_least=0.0)
    require(quantity="drag area of the lure in m²", value=drag_area_m2, above=0.0)
    require(quantity="spool tension in N", value=spool_tension_n, at_least=0.0)
    depth = array(depth_m)
    pull = array(pull_down_n) + array(wet_weight_n_m) * depth - array(spool_tension_n)
    form = 0.5 * array(density_kg_m3) * array(drag_area_m2)
    friction = np.pi * array(viscosity_pa_s) * cylinder.LEAST_NUSSELT * depth
    available = np.maximum(pull, 0.0)
    # Positive root of form·v² + friction·v = pull, written so that nothing cancels.
    speed = 2.0 * available / (friction + np.sqrt(friction**2 + 4.0 * form * available) + 1e-300)
    return array(speed)


def drop_time(
    *,
    depth_m: ArrayLike,
    pull_down_n: ArrayLike,
    drag_area_m2: ArrayLike,
    wet_weight_n_m: ArrayLike,
    density_kg_m3: ArrayLike,
    viscosity_pa_s: ArrayLike,
    spool_tension_n: ArrayLike = 0.0,
) -> Array:
    """Time a lure takes to sink to a depth on free line.

    Parameters
    ----------
    depth_m : float or array
        Depth to reach. [m]
    pull_down_n : float or array
        Weight of the lure in water. [N]
    drag_area_m2 : float or array
        Drag coefficient × frontal area of the lure as it sinks, more than 0. [m²]
    wet_weight_n_m : float or array
        Weight of the line in water; negative floats and holds the lure back. [N/m]
    density_kg_m3 : float or array
        Density of the water. [kg/m³]
    viscosity_pa_s : float or array
        Dynamic viscosity of the water. [Pa s]
    spool_tension_n : float or array
        Pull needed to draw line from the reel and through the guides. [N]

    Returns
    -------
    array
        Time; infinite where the lure comes to hang before that depth. [s]

    Raises
    ------
    ImpossibleInput
        As :func:`drop_speed`.

    Notes
    -----
    The lure takes its steady speed at once; the start costs less than a second.

    References
    ----------
    DERIVED: Gauss–Legendre quadrature of the inverse of :func:`drop_speed` over depth.
    """
    depth = array(depth_m)
    places = depth[..., None] * (0.5 + 0.5 * _PLACES)

    def speed_at(places: Array) -> Array:
        return drop_speed(
            depth_m=places,
            pull_down_n=array(pull_down_n)[..., None],
            drag_area_m2=array(drag_area_m2)[..., None],
            wet_weight_n_m=array(wet_weight_n_m)[..., None],
            density_kg_m3=array(density_kg_m3)[..., None],
            viscosity_pa_s=array(viscosity_pa_s)[..., None],
            spool_tension_n=array(spool_tension_n)[..., None],
        )

    # The pull changes steadily with depth: a lure that moves at both ends moves in between.
    moves = (speed_at(depth[..., None])[..., 0] > 0.0) & (speed_at(np.zeros((1,)))[..., 0] > 0.0)
    speeds = np.maximum(speed_at(places), 1e-300)
    with np.errstate(over="ignore"):
        time = 0.5 * depth * np.sum(_WEIGHTS / speeds, axis=-1)
    return array(np.where(moves, time, np.inf))
