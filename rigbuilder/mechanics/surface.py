"""Line and lure at the surface: the film that holds line up, and line that pulls a nose down."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import STANDARD_GRAVITY_M_S2, Array, array
from rigbuilder.mechanics.errors import require


def film_ratio(*, surface_tension_n_m: ArrayLike, wet_weight_n_m: ArrayLike) -> Array:
    """How many times over the surface film can carry a dry line.

    Parameters
    ----------
    surface_tension_n_m : float or array
        Surface tension of the water, more than 0. [N/m]
    wet_weight_n_m : float or array
        Weight of a metre of line in water. [N/m]

    Returns
    -------
    array
        Largest upward pull of the film over weight; infinite for a line that floats anyway. [1]

    Raises
    ------
    ImpossibleInput
        For a surface tension that is not positive.

    Notes
    -----
    Far above 1 for any thin line: "sinking" holds only for line that is wetted
    and has broken the film.

    References
    ----------
    DERIVED: two contact lines that pull straight up, 2γ per metre.
    """
    require(quantity="surface tension in N/m", value=surface_tension_n_m, above=0.0)
    require(quantity="weight of the line in water in N/m", value=wet_weight_n_m)
    weight = array(wet_weight_n_m)
    sinks = weight > 0.0
    return array(np.where(sinks, 2.0 * array(surface_tension_n_m) / np.where(sinks, weight, 1.0), np.inf))


def hanging_length(
    *, wet_weight_n_m: ArrayLike, span_m: ArrayLike, tension_n: ArrayLike, depth_m: ArrayLike
) -> Array:
    """Line that hangs from the nose of a resting, floating lure.

    The line sags between the nose and the place where it leaves the water; the
    nose carries it as far as the lowest point. That is half of the line for a
    shallow sag, and less when the sag reaches the depth to which the line has
    had time to sink, or the bottom.

    Parameters
    ----------
    wet_weight_n_m : float or array
        Weight of a metre of wetted line in water; a line that floats hangs nowhere. [N/m]
    span_m : float or array
        Distance from the nose to where the line leaves the water, more than 0. [m]
    tension_n : float or array
        Horizontal tension of the line, 0 for slack line. [N]
    depth_m : float or array
        Depth that the line can sink to: the bottom, or sinking speed × pause. [m]

    Returns
    -------
    array
        Length carried by the nose, broadcast shape. [m]

    Raises
    ------
    ImpossibleInput
        For a span that is not positive, or negative tension or depth.

    Notes
    -----
    The tension of slack line is never known well: show the figure for a low
    and a high tension beside it, and 0 for line still held by the film.

    References
    ----------
    DERIVED: catenary from its lowest point, length √(z² + 2zH/w) for a sag z
    and (H/w) sinh(wL/2H) for the whole half.
    """
    require(quantity="weight of the line in water in N/m", value=wet_weight_n_m)
    require(quantity="span in m", value=span_m, above=0.0)
    require(quantity="tension in N", value=tension_n, at_least=0.0)
    require(quantity="depth in m", value=depth_m, at_least=0.0)
    weight, span, depth = array(wet_weight_n_m), array(span_m), array(depth_m)
    sinks = weight > 0.0
    scale = np.maximum(array(tension_n), 1e-12) / np.where(sinks, weight, 1.0)
    half = scale * np.sinh(np.minimum(span / (2.0 * scale), 300.0))
    deep = np.sqrt(depth**2 + 2.0 * scale * depth)
    return array(np.where(sinks, np.minimum(half, deep), 0.0))


def nose_pull(*, wet_weight_n_m: ArrayLike, hanging_length_m: ArrayLike) -> Array:
    """Downward pull of wetted, sinking line on the nose of a floating lure.

    Parameters
    ----------
    wet_weight_n_m : float or array
        Weight of a metre of line in water; line that floats does not pull down. [N/m]
    hanging_length_m : float or array
        Line that the nose carries, see :func:`hanging_length`. [m]

    Returns
    -------
    array
        Pull, broadcast shape. [N]

    Raises
    ------
    ImpossibleInput
        For a negative length.

    References
    ----------
    DERIVED: weight per metre × length.
    """
    require(quantity="weight of the line in water in N/m", value=wet_weight_n_m)
    require(quantity="hanging length in m", value=hanging_length_m, at_least=0.0)
    return array(np.maximum(array(wet_weight_n_m), 0.0) * array(hanging_length_m))


def tilt(
    *,
    pull_n: ArrayLike,
    body_length_m: ArrayLike,
    body_width_m: ArrayLike,
    mass_kg: ArrayLike,
    water_density_kg_m3: ArrayLike,
    gravity_above_buoyancy_m: ArrayLike = 0.0,
) -> Array:
    """Nose-down angle of a level-floating lure under a pull at its nose.

    Parameters
    ----------
    pull_n : float or array
        Downward pull at the nose, 0 or more. [N]
    body_length_m : float or array
        Length of the body at the waterline, more than 0. [m]
    body_width_m : float or array
        Mean width of the body at the waterline, more than 0. [m]
    mass_kg : float or array
        Mass of the lure with hooks, more than 0. [kg]
    water_density_kg_m3 : float or array
        Density of the water. [kg/m³]
    gravity_above_buoyancy_m : float or array
        Height of the centre of gravity over that of buoyancy; ballast makes it negative. [m]

    Returns
    -------
    array
        Angle, broadcast shape. [rad]

    Raises
    ------
    ImpossibleInput
        For a size or mass that is not positive, or a lure that would not float level at all.

    Notes
    -----
    Box-shaped waterline, small angle (to about 10°), lure at rest, pull small
    against the weight: an order of magnitude.

    References
    ----------
    DERIVED: hydrostatic stability, longitudinal metacentric height.
    """
    require(quantity="pull in N", value=pull_n, at_least=0.0)
    require(quantity="body length in m", value=body_length_m, above=0.0)
    require(quantity="body width in m", value=body_width_m, above=0.0)
    require(quantity="mass of the lure in kg", value=mass_kg, above=0.0)
    require(quantity="water density in kg/m³", value=water_density_kg_m3, above=0.0)
    length, mass = array(body_length_m), array(mass_kg)
    radius = array(water_density_kg_m3) * array(body_width_m) * length**3 / (12.0 * mass)
    height = radius - array(gravity_above_buoyancy_m)
    require(quantity="metacentric height of the lure in m", value=height, above=0.0)
    return array(np.arctan(array(pull_n) * length / (2.0 * mass * STANDARD_GRAVITY_M_S2 * height)))


def nose_drop(
    *,
    pull_n: ArrayLike,
    tilt_rad: ArrayLike,
    body_length_m: ArrayLike,
    body_width_m: ArrayLike,
    water_density_kg_m3: ArrayLike,
) -> Array:
    """How far a pull sinks the nose of a floating lure.

    Parameters
    ----------
    pull_n : float or array
        Downward pull at the nose, 0 or more. [N]
    tilt_rad : float or array
        Nose-down angle, see :func:`tilt`. [rad]
    body_length_m : float or array
        Length of the body at the waterline, more than 0. [m]
    body_width_m : float or array
        Mean width of the body at the waterline, more than 0. [m]
    water_density_kg_m3 : float or array
        Density of the water, more than 0. [kg/m³]

    Returns
    -------
    array
        Distance, broadcast shape. [m]

    Raises
    ------
    ImpossibleInput
        For a size or density that is not positive, or a negative pull.

    References
    ----------
    DERIVED: hydrostatics of a box-shaped waterline: parallel sinkage plus tilt over half the length.
    """
    require(quantity="pull in N", value=pull_n, at_least=0.0)
    require(quantity="body length in m", value=body_length_m, above=0.0)
    require(quantity="body width in m", value=body_width_m, above=0.0)
    require(quantity="water density in kg/m³", value=water_density_kg_m3, above=0.0)
    length = array(body_length_m)
    waterplane = array(body_width_m) * length
    sinkage = array(pull_n) / (array(water_density_kg_m3) * STANDARD_GRAVITY_M_S2 * waterplane)
    return array(sinkage + 0.5 * length * np.tan(array(tilt_rad)))
