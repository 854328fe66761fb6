"""The line seen from the side: from the rod tip through air and water to the lure.

Horizontal distances [m] count from the rod tip outwards, heights [m] from the surface of
the water upwards. Each shape is one of three: towed (a lure that is wound in below the
surface), resting (a lure that lies still on the surface), held (a lure on or near the
bottom with the line held lightly). All come from the same inputs as the review's figures.
"""

from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from rigbuilder.mechanics.arrays import STANDARD_GRAVITY_M_S2, Array
from rigbuilder.mechanics.loads import viscous_load
from rigbuilder.mechanics.shape import steady_shape
from rigbuilder.mechanics.tow import towed
from rigbuilder.reference.words import Rest
from rigbuilder.review.case import Case
from rigbuilder.review.figuring.resting import ON_WATER, PAUSE_S, SLACK_N, sinking_speed
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.striking import TENSION_N
from rigbuilder.review.figuring.towing import STEPS, pulls
from rigbuilder.review.questions.catenary import held_line, hung_line, rising_line
from rigbuilder.review.questions.rows import batch_of

WET, AIR = 33, 16
"""Points of a shape in water and in air, the same for every shape so that one can turn into another [1]."""

RAISED_TIP_M = 2.0  # height of the tip over the water while a bottom lure is fished, from memory
_LEAST_WEIGHT_N_M = 1e-7

Point = tuple[float, float]
Points = tuple[Point, ...]


class Way(StrEnum):
    """How the line lies."""

    TOWED = "towed"
    RESTING = "resting"
    HELD = "held"


@dataclass(frozen=True, slots=True)
class Profile:
    """Shapes from the tip to the lure as (distance [m], height [m]); ``shallow`` and ``deep`` bound them."""

    way: Way
    typical: Points
    shallow: Points
    deep: Points
    pull_n: float
    speed_m_s: float

    @property
    def tip_m(self) -> float:
        """Height of the rod tip over the water [m]."""
        return self.typical[0][1]

    @property
    def lure(self) -> Point:
        """Where the lure is (distance, height) [m]."""
        return self.typical[-1]

    @property
    def depth_m(self) -> float:
        """Depth of the lure below the surface [m]."""
        return max(0.0, -self.lure[1])


def profile(case: Case) -> Profile:
    """Return how the line of a rig lies while the lure is fished."""
    batch, row = batch_of(case)
    rows = batch.rows
    if rows.given.towed[row]:
        return _towed(case, rows, row)
    if rows.given.surface[row]:
        return _resting(rows, row)
    return _held(case, rows, row)


def _points(x: Array, z: Array) -> Points:
    return tuple(zip(x.tolist(), z.tolist(), strict=True))


def _towed(case: Case, rows: Rows, row: int) -> Profile:
    given, here = rows.given, np.array([row])
    down, back = pulls(rows, here)
    tip = float(given["tip_height_m"][1, row])
    speed = float(given["speed_mps"][1, row])
    wet, dry = float(rows.wet_weight_n_m[1, row]), float(rows.main.mass_kg_m[1, row]) * STANDARD_GRAVITY_M_S2
    load = viscous_load(
        diameter_m=rows.main.diameter_m[1, here], speed_m_s=given["speed_mps"][1, here],
        density_kg_m3=rows.water_density[here], viscosity_pa_s=rows.water_viscosity[here],
    )  # fmt: skip
    length = max(float(given["cast_m"][1, row]), tip + 1.0)
    run = towed(
        load=load, wet_weight_n_m=wet, dry_weight_n_m=dry, pull_down_n=down, drag_n=back,
        length_m=length, tip_height_m=tip, steps=STEPS,
    )  # fmt: skip
    shape = steady_shape(
        load=load, wet_weight_n_m=wet, pull_down_n=down, drag_n=back,
        length_m=np.maximum(run.wet_length_m, 1e-3), steps=WET - 1,
    )  # fmt: skip
    nodes, end = shape.nodes(), shape.end()
    reach, rise = rising_line(
        horizontal_n=float(end.horizontal_n[0]), vertical_n=float(end.vertical_n[0]),
        weight_n_m=dry, rise_m=tip, points=AIR + 1,
    )  # fmt: skip
    # From the lure outwards to the tip: turn round, so that distance counts from the tip.
    x = np.concatenate([nodes.layback_m[:, 0], nodes.layback_m[-1, 0] + reach[1:]])
    z = np.concatenate([np.minimum(nodes.height_m[:, 0] - nodes.height_m[-1, 0], 0.0), rise[1:]])
    x, z = (x[-1] - x)[::-1], z[::-1]
    depth = case.facts.depth_m
    typical = max(float(run.depth_m[0]), 1e-6)
    low, high = (depth.low / typical, depth.high / typical) if depth else (1.0, 1.0)
    bottom = float(given["water_depth_m"][1, row])
    shapes = [_points(x, np.where(z < 0.0, np.maximum(z * share, -bottom), z)) for share in (1.0, low, high)]
    typical_shape, shallow, deep = shapes
    return Profile(Way.TOWED, typical_shape, shallow, deep, float(run.tension_n[0]), speed)


def _resting(rows: Rows, row: int) -> Profile:
    """The lure lies still: sinking line has had a pause to sink in, floating line lies on the water."""
    given = rows.given
    cast, tip = max(float(given["cast_m"][1, row]), 1.0), float(given["tip_height_m"][1, row])
    leader, bottom = float(rows.leader_m[1, row]), float(given["water_depth_m"][1, row])
    main_w, end_w = float(rows.wet_weight_n_m[1, row]), float(rows.end_wet_weight_n_m[1, row])
    span = cast * ON_WATER[1]
    # A floating main line holds the far end of a leader up; else everything wetted sags as one.
    sags = span if main_w > 0.0 or leader == 0.0 else min(leader, span)
    weight = end_w if leader > 0.0 else main_w
    speed = float(
        sinking_speed(
            np.array(weight), rows.end.diameter_m[1, row], rows.water_density[row], rows.water_viscosity[row]
        )
    )
    dry = float(rows.main.mass_kg_m[1, row]) * STANDARD_GRAVITY_M_S2
    over, height = held_line(
        wet_n_m=dry, dry_n_m=dry, tension_n=TENSION_N[0], start_m=0.0, end_m=tip,
        span_m=cast - span, points=AIR + 1,
    )  # fmt: skip
    # From the tip down through the air, then over line that floats to where it hangs from the lure.
    air_x, air_z = (cast - span) - over[:0:-1], height[:0:-1]
    shapes = []
    for pause, slack in ((PAUSE_S[1], SLACK_N[1]), (PAUSE_S[0], SLACK_N[2]), (PAUSE_S[2], SLACK_N[0])):
        x, z = hung_line(
            weight_n_m=weight, span_m=sags, tension_n=slack, depth_m=min(speed * pause, bottom), points=WET
        )
        shapes.append(_points(np.concatenate([air_x, cast - sags + x]), np.concatenate([air_z, z])))
    typical_shape, shallow, deep = shapes
    return Profile(Way.RESTING, typical_shape, shallow, deep, SLACK_N[1], 0.0)


def _held(case: Case, rows: Rows, row: int) -> Profile:
    given = rows.given
    cast, depth = max(float(given["cast_m"][1, row]), 1.0), _lure_depth(case, rows, row)
    tip = min(RAISED_TIP_M, 0.5 * cast)
    span = np.sqrt(max(cast**2 - (depth + tip) ** 2, (0.15 * cast) ** 2))
    wet = float(rows.wet_weight_n_m[1, row])
    dry = float(rows.main.mass_kg_m[1, row]) * STANDARD_GRAVITY_M_S2
    bottom = float(given["water_depth_m"][1, row])
    x, heights = held_line(
        wet_n_m=_not_nothing(wet), dry_n_m=dry, tension_n=(TENSION_N[1], TENSION_N[2], TENSION_N[0]),
        start_m=-depth, end_m=tip, span_m=float(span), points=WET + AIR,
    )  # fmt: skip
    shapes = [_points((span - x)[::-1], np.maximum(z, -bottom)[::-1]) for z in heights]
    typical_shape, shallow, deep = shapes
    return Profile(Way.HELD, typical_shape, shallow, deep, TENSION_N[1], 0.0)


def _not_nothing(weight: float) -> float:
    return weight if abs(weight) > _LEAST_WEIGHT_N_M else _LEAST_WEIGHT_N_M


def _lure_depth(case: Case, rows: Rows, row: int) -> float:
    """What sinks lies on the bottom; what does not is fished at its usual depth."""
    bottom = float(rows.given["water_depth_m"][1, row])
    if case.technique.rest is Rest.SINKS and case.technique.lure_class != "float":
        return bottom
    printed = case.rig.lure.depth_m or case.technique.depth_m
    return min(printed.middle, bottom)
