"""The line in the water as points to draw, on demand: from the lure to the rod tip, low / typical / high."""

from dataclasses import dataclass

import numpy as np

from rigbuilder.mechanics import still
from rigbuilder.mechanics.arrays import STANDARD_GRAVITY_M_S2, Array
from rigbuilder.mechanics.loads import viscous_load
from rigbuilder.mechanics.shape import steady_shape
from rigbuilder.mechanics.tow import towed
from rigbuilder.review.facts import Facts
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.striking import TENSION_N
from rigbuilder.review.figuring.towing import pulls

_WET, _AIR = 40, 8  # points in the water and above it


@dataclass(frozen=True, slots=True, eq=False)
class Curve:
    """Points of a line from lure to rod tip: level distance from below the tip, height over the water."""

    x_m: Array
    z_m: Array


def shape_points(facts: Facts, rows: Rows) -> tuple[Curve, Curve, Curve]:
    """Return the line as it hangs: shallowest, typical and deepest.

    A lure that is wound in hangs on the integrated shape; the two ends are that shape
    stretched to the low and the high of depth and layback. A lure that rests on the water
    or on the bottom hangs on a line that sags by its weight, under more or less pull.
    """
    depth, behind = facts.depth_m, facts.layback_m
    if depth is None or behind is None:
        return _resting(rows, facts.row)
    typical = _towed(rows, facts.row)
    scales = zip(depth, reversed(tuple(behind)), strict=True)
    curves = [
        _stretched(typical, deep / max(depth.typical, 1e-9), far / behind.typical) for deep, far in scales
    ]
    return (curves[0], typical, curves[2])


def _stretched(curve: Curve, deeper: float, farther: float) -> Curve:
    return Curve(curve.x_m * farther, np.where(curve.z_m < 0.0, curve.z_m * deeper, curve.z_m))


def _towed(rows: Rows, row: int) -> Curve:
    chosen, given = np.array([row]), rows.given
    down, back = pulls(rows, chosen)
    tip = float(given["tip_height_m"][1, row])
    load = viscous_load(
        diameter_m=rows.main.diameter_m[1, chosen], speed_m_s=given["speed_mps"][1, chosen],
        density_kg_m3=rows.water_density[chosen], viscosity_pa_s=rows.water_viscosity[chosen],
    )  # fmt: skip
    wet = rows.wet_weight_n_m[1, chosen]
    dry = rows.main.mass_kg_m[1, chosen] * STANDARD_GRAVITY_M_S2
    length = np.maximum(given["cast_m"][1, chosen], tip + 1.0)
    found = towed(
        load=load, wet_weight_n_m=wet, dry_weight_n_m=dry, pull_down_n=down, drag_n=back,
        length_m=length, tip_height_m=tip,
    )  # fmt: skip
    points = steady_shape(
        load=load, wet_weight_n_m=wet, pull_down_n=down, drag_n=back,
        length_m=np.maximum(found.wet_length_m, 0.1), steps=_WET,
    ).nodes()  # fmt: skip
    far, surface = float(found.layback_m[0]), float(points.layback_m[-1, 0])
    x = far - points.layback_m[:, 0]
    z = points.height_m[:, 0] - float(found.depth_m[0])
    sag = float(points.horizontal_n[-1, 0] / dry[0])
    air_x, air_z = _hanging(
        far - surface, tip, sag, float(points.vertical_n[-1, 0] / points.horizontal_n[-1, 0])
    )
    return Curve(np.concatenate([x, air_x]), np.concatenate([np.minimum(z, 0.0), air_z]))


def _hanging(span: float, tip: float, scale: float, slope: float) -> tuple[Array, Array]:
    """Catenary from the surface to the rod tip, without its first point."""
    along = np.linspace(0.0, span, _AIR + 1)[1:]
    start = np.arcsinh(slope)
    with np.errstate(over="ignore", invalid="ignore"):
        height = scale * (np.cosh(start + along / scale) - np.cosh(start))
    straight = tip * along / max(span, 1e-9)
    height = np.where(np.isfinite(height), height, straight)
    # The last bit between integrated end and rod tip is shared out along the curve.
    return span - along, height + (tip - height[-1]) * along / max(span, 1e-9)


def _resting(rows: Rows, row: int) -> tuple[Curve, Curve, Curve]:
    given = rows.given
    cast, tip = max(float(given["cast_m"][1, row]), 1.0), float(given["tip_height_m"][1, row])
    floats = given["submerged"][1, row] <= 0.0 or rows.given.surface[row]
    down = 0.0 if floats else min(float(given["water_depth_m"][1, row]), 0.9 * cast)
    far = np.sqrt(cast**2 - down**2)
    share = np.linspace(0.0, 1.0, _WET + _AIR)
    curves = []
    for tension in reversed(TENSION_N):
        weight = rows.main.mass_kg_m[1, row] * STANDARD_GRAVITY_M_S2
        sag = float(still.sag(weight_n_m=weight, span_m=far, tension_n=tension))
        straight = -down + (down + tip) * share
        hung = np.maximum(straight - 4.0 * sag * share * (1.0 - share), np.minimum(straight, -down))
        curves.append(Curve(far * (1.0 - share), np.where(floats, np.maximum(hung, 0.0), hung)))
    return (curves[0], curves[1], curves[2])
