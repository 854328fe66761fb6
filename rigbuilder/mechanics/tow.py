"""How deep a lure runs on a line, and how much line a depth takes.

The wet part of the line is integrated; from the surface up to the rod tip the
line hangs in air as a catenary.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.crossing import crossing
from rigbuilder.mechanics.errors import require
from rigbuilder.mechanics.loads import Load
from rigbuilder.mechanics.shape import LinePoint, Shape, steady_shape


@dataclass(frozen=True, slots=True)
class Towed:
    """Where lures run; all arrays of the shape of the inputs broadcast together."""

    depth_m: Array  # of the lure below the surface
    layback_m: Array  # of the lure behind the rod tip, horizontally
    tension_n: Array  # at the rod tip
    angle_rad: Array  # of the line above the horizontal where it leaves the water
    wet_length_m: Array  # line in the water


def form_drag(*, speed_m_s: ArrayLike, drag_area_m2: ArrayLike, density_kg_m3: ArrayLike) -> Array:
    """Drag, lift or dive force of a lure that grows with the square of speed.

    Parameters
    ----------
    speed_m_s : float or array
        Speed through the water. [m/s]
    drag_area_m2 : float or array
        Drag (or lift) coefficient × area. [m²]
    density_kg_m3 : float or array
        Density of the water. [kg/m³]

    Returns
    -------
    array
        Force, broadcast shape. [N]

    References
    ----------
    PUBLISHED: definition of the drag coefficient, any textbook of fluid mechanics.
    """
    return 0.5 * array(density_kg_m3) * array(drag_area_m2) * array(speed_m_s) ** 2


def _air_length(point: LinePoint, tip_height: Array, dry_weight: Array) -> Array:
    """Line that hangs in air between the surface and the rod tip [m].

    In a catenary the tension grows by weight per metre × height gained, which
    gives the vertical pull at the tip and so the length, without a search.
    """
    tension = point.tension_n
    gained = dry_weight * tip_height
    at_tip = np.sqrt(point.vertical_n**2 + gained * (2.0 * tension + gained))
    return array(tip_height * (2.0 * tension + gained) / (at_tip + point.vertical_n + 1e-12))


def _air_layback(point: LinePoint, air: Array, tip_height: Array, dry_weight: Array) -> Array:
    """Horizontal reach of the line in air [m]; straight where its weight does not count."""
    tension = np.maximum(point.tension_n, 1e-12)
    lift = point.vertical_n + dry_weight * air + tension + dry_weight * tip_height
    lean = np.log(lift / (point.vertical_n + tension + 1e-12))
    hanging = point.horizontal_n * lean / np.maximum(dry_weight, 1e-12)
    return np.where(dry_weight * air > 1e-6 * tension, hanging, air * point.horizontal_n / tension)


def _first_where(
    shape: Shape, nodes: LinePoint, excess: Callable[[LinePoint], Array]
) -> tuple[LinePoint, NDArray[np.bool_]]:
    """First point of each line where ``excess`` rises through zero, and whether it does."""
    reached = excess(nodes) >= 0.0
    found = np.asarray(reached.any(axis=0))
    upper = np.where(found, reached.argmax(axis=0), len(reached) - 1).clip(1)
    at = shape.between(upper - 1)
    high = upper.astype(float)
    place = crossing(
        function=lambda places: excess(at(places)), low=high - 1.0, high=high, points=6, passes=3
    )
    return at(place), found


def towed(
    *,
    load: Load,
    wet_weight_n_m: ArrayLike,
    dry_weight_n_m: ArrayLike,
    pull_down_n: ArrayLike,
    drag_n: ArrayLike,
    length_m: ArrayLike,
    tip_height_m: ArrayLike = 0.0,
    steps: int | None = None,
) -> Towed:
    """Depth of a lure behind a moving rod tip or in a current.

    Parameters
    ----------
    load : Load
        Force of the water on a metre of each line. [N/m]
    wet_weight_n_m : float or array
        Weight of the line in water; negative floats. [N/m]
    dry_weight_n_m : float or array
        Weight of the line in air. [N/m]
    pull_down_n : float or array
        Downward pull of the lure: weight in water, plus the dive of a lipped lure. [N]
    drag_n : float or array
        Drag of the lure. [N]
    length_m : float or array
        Line from the lure to the rod tip. [m]
    tip_height_m : float or array
        Height of the rod tip above the water, less than the line's length. [m]
    steps : int, optional
        Integration steps; as many as needed when left out. [1]

    Returns
    -------
    Towed
        Depth, layback, tension and angle, inputs broadcast together. [m, N, rad]

    Raises
    ------
    ImpossibleInput
        For line not longer than the rod tip is high, or as :func:`shape.steady_shape`.

    Notes
    -----
    Show −40 to +30 % around a light lure on long line, −20 to +10 % around a
    heavy or diving one. Wind on the part in air is left out: see
    :func:`still.cross_flow_bow`. A lure too light to hold the line down runs
    at depth 0.

    References
    ----------
    DERIVED: :func:`shape.steady_shape` in water joined to a catenary in air.
    """
    require(quantity="height of the rod tip in m", value=tip_height_m, at_least=0.0)
    require(quantity="weight of the line in N/m", value=dry_weight_n_m, at_least=0.0)
    require(
        quantity="line length beyond the height of the rod tip in m",
        value=array(length_m) - array(tip_height_m),
        above=0.0,
    )
    length, tip, dry = np.broadcast_arrays(array(length_m), array(tip_height_m), array(dry_weight_n_m))
    shape = steady_shape(
        load=load,
        wet_weight_n_m=wet_weight_n_m,
        pull_down_n=pull_down_n,
        drag_n=drag_n,
        length_m=length,
        steps=steps,
    )
    length, tip, dry = (np.broadcast_to(part, shape.outline).ravel() for part in (length, tip, dry))
    nodes = shape.nodes()
    surface, _ = _first_where(shape, nodes, lambda point: point.arc_m + _air_length(point, tip, dry) - length)
    # Floating line that would stream above the surface lies on it instead.
    highest = np.where(nodes.arc_m <= surface.arc_m, nodes.height_m, 0.0).max(axis=0)
    layback = surface.layback_m + _air_layback(surface, _air_length(surface, tip, dry), tip, dry)
    return Towed(
        depth_m=np.maximum(surface.height_m, highest).reshape(shape.outline),
        layback_m=layback.reshape(shape.outline),
        tension_n=(surface.tension_n + dry * tip).reshape(shape.outline),
        angle_rad=surface.angle_rad.reshape(shape.outline),
        wet_length_m=surface.arc_m.reshape(shape.outline),
    )


def line_needed(
    *,
    depth_m: ArrayLike,
    load: Load,
    wet_weight_n_m: ArrayLike,
    dry_weight_n_m: ArrayLike,
    pull_down_n: ArrayLike,
    drag_n: ArrayLike,
    tip_height_m: ArrayLike = 0.0,
    longest_m: float = 300.0,
    steps: int | None = None,
) -> Array:
    """Line from lure to rod tip that a depth takes, in a current or at a trolling speed.

    Parameters
    ----------
    depth_m : float or array
        Depth of the lure, more than 0. [m]
    load : Load
        Force of the water on a metre of each line. [N/m]
    wet_weight_n_m : float or array
        Weight of the line in water; negative floats. [N/m]
    dry_weight_n_m : float or array
        Weight of the line in air. [N/m]
    pull_down_n : float or array
        Downward pull of the lure. [N]
    drag_n : float or array
        Drag of the lure. [N]
    tip_height_m : float or array
        Height of the rod tip above the water. [m]
    longest_m : float
        Longest line in the water that is tried. [m]
    steps : int, optional
        Integration steps; as many as needed when left out. [1]

    Returns
    -------
    array
        Length; infinite where no line up to ``longest_m`` takes the lure so deep. [m]

    Raises
    ------
    ImpossibleInput
        For a depth that is not positive, or as :func:`shape.steady_shape`.

    References
    ----------
    DERIVED: :func:`shape.steady_shape` in water joined to a catenary in air.
    """
    require(quantity="depth in m", value=depth_m, above=0.0)
    require(quantity="height of the rod tip in m", value=tip_height_m, at_least=0.0)
    depth, tip, dry = np.broadcast_arrays(array(depth_m), array(tip_height_m), array(dry_weight_n_m))
    shape = steady_shape(
        load=load,
        wet_weight_n_m=wet_weight_n_m,
        pull_down_n=pull_down_n,
        drag_n=drag_n,
        length_m=np.full(depth.shape, longest_m),
        steps=steps,
    )
    depth, tip, dry = (np.broadcast_to(part, shape.outline).ravel() for part in (depth, tip, dry))
    surface, found = _first_where(shape, shape.nodes(), lambda point: point.height_m - depth)
    length = surface.arc_m + _air_length(surface, tip, dry)
    return array(np.where(found, length, np.inf)).reshape(shape.outline)
