"""How far it casts: against the usual rig first, in metres second.

The speed at which the lure leaves is the angler's: it is taken as that which sends the
technique's usual rig as far as it is usually cast, and is the same for every line.
"""

from functools import lru_cache

import numpy as np

from rigbuilder.mechanics import cast
from rigbuilder.mechanics.arrays import Array
from rigbuilder.review.figuring.group import Group, Known, columns
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.usual import usual_rig

STEPS = 8  # distances within 0.2 % of a fine solution, ratios within 0.05 % [1]
ANGLE_RAD = 0.6  # angle of release, from memory [rad]
HEIGHT_M = 2.0  # height of release, from memory [m]
HEAVIEST_LINE = (
    1.0  # metres of line that weigh as much as the lure, at least: past it nothing is thrown [1/m]
)
METRES = 0.3  # metres of a cast are known within so much of them, see mechanics.cast [1]
COMPARED = 0.15  # and differences between casts within so much of the difference [1]
_SPEEDS = np.geomspace(2.0, 80.0, 40)  # [m/s]
_FAR, _SHORT = 0, 2


def throwing(rows: Rows, known: Known) -> Group:
    """Return the cast of every row: share of the usual rig's, and metres."""
    given = rows.given
    twins, of_twin = np.unique(rows.usual, return_inverse=True)
    speed = np.array([_speed(rows, int(twin)) for twin in twins])[of_twin]
    flown = cast.fly(
        mass_kg=given["lure_kg"][1], drag_area_m2=given["air_area_m2"][1], speed_m_s=speed,
        angle_rad=ANGLE_RAD, height_m=HEIGHT_M, line_density_kg_m=_line_density(rows),
        line_diameter_m=rows.main.diameter_m[1], pickup=np.array(cast.PICKUP)[:, None],
        line_friction=np.array(cast.LINE_FRICTION)[:, None], steps=STEPS,
    ).distance_m  # fmt: skip
    share = flown / flown[:, rows.usual]
    apart = COMPARED * np.abs(share[1] - 1.0)
    ends = np.sort(share, axis=0)
    low, high = np.minimum(ends[0], share[1] - apart), np.maximum(ends[2], share[1] + apart)
    metres = np.stack([flown[_SHORT] * (1.0 - METRES), flown[1], flown[_FAR] * (1.0 + METRES)])
    return columns({"cast_distance_m": metres, "cast_share": np.stack([low, share[1], high])})


def _line_density(rows: Rows) -> Array:
    """Mass per metre of the line that is thrown, no more than the model of a cast is meant for [kg/m]."""
    return np.asarray(np.minimum(rows.main.mass_kg_m[1], HEAVIEST_LINE * rows.given["lure_kg"][1]))


def _speed(rows: Rows, twin: int) -> float:
    """Speed that sends a usual rig as far as its technique is usually cast [m/s]."""
    technique = rows.techniques[twin]
    usual = usual_rig(technique.id, rows.reference)
    return _speed_for(
        usual.cast_m or technique.distance_m.middle, float(rows.given["lure_kg"][1, twin]),
        float(rows.given["air_area_m2"][1, twin]), float(_line_density(rows)[twin]),
        float(rows.main.diameter_m[1, twin]),
    )  # fmt: skip


@lru_cache(maxsize=512)
def _speed_for(distance: float, mass: float, area: float, line: float, diameter: float) -> float:
    flown: Array = cast.fly(
        mass_kg=mass, drag_area_m2=area, speed_m_s=_SPEEDS, angle_rad=ANGLE_RAD, height_m=HEIGHT_M,
        line_density_kg_m=line, line_diameter_m=diameter, steps=STEPS,
    ).distance_m  # fmt: skip
    return float(np.interp(distance, flown, _SPEEDS))
