"""The jerk of a fish that surges at short range, where line and rod have little length to give."""

from collections.abc import Callable

import numpy as np

from rigbuilder.mechanics import fish, hookset, shock
from rigbuilder.mechanics.arrays import Array
from rigbuilder.review.figuring.group import Group, Known, columns, missing
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.spread import alike, spread
from rigbuilder.review.figuring.twins import Twins

SHORT_M = (3.0, 5.0, 8.0)  # line out when a fish surges at the bank or boat [m]
SURGE_MPS = (1.0, 2.0, 3.0)  # speed at which it surges [m/s]


def surging(rows: Rows, known: Known) -> Group:
    """Return the jerk of a fish at short range, before the drag gives, of rigs that fish trebles."""
    if not rows.given.treble.any():
        return missing(("peak_force_n", "peak_share"), rows.count)
    twins = Twins(rows, {"axial_n": rows.main.axial_n, "end_axial_n": rows.end.axial_n})
    found = spread(
        _surge(np.minimum(rows.leader_m[1], 1.0), rows.usual, twins),
        {
            "short_m": alike(*SHORT_M, rows.count),
            "surge_mps": alike(*SURGE_MPS, rows.count),
            "fish_kg": rows.given["fish_kg"],
            "axial_n": rows.main.axial_n,
            "end_axial_n": rows.end.axial_n,
            "rod_n_m": rows.given["rod_stiffness_n_m"],
            **twins.inputs,
        },
    )
    return columns(found, rows.given.treble)


def _surge(leader: Array, usual: Array, twins: Twins) -> Callable[..., dict[str, Array]]:
    def stiffness(short: Array, axial: Array, end: Array, end_m: Array, rod: Array) -> Array:
        return hookset.rig_stiffness(
            main_axial_stiffness_n=axial, main_length_m=np.maximum(short - end_m, 0.5),
            leader_axial_stiffness_n=end, leader_length_m=end_m, rod_stiffness_n_m=rod,
        )  # fmt: skip

    def surge(
        *, short_m: Array, surge_mps: Array, fish_kg: Array, axial_n: Array, end_axial_n: Array,
        rod_n_m: Array, usual_axial_n: Array, usual_end_axial_n: Array,
    ) -> dict[str, Array]:  # fmt: skip
        own = stiffness(short_m, axial_n, end_axial_n, leader, rod_n_m)
        twin = stiffness(
            short_m,
            twins.follow("axial_n", axial_n, usual_axial_n),
            twins.follow("end_axial_n", end_axial_n, usual_end_axial_n),
            leader[usual],
            rod_n_m[..., usual],
        )
        mass = fish_kg * fish.WATER_CARRIED
        peak = shock.sudden_stop_force(mass_kg=mass, speed_m_s=surge_mps, stiffness_n_m=own)
        return {"peak_force_n": peak, "peak_share": np.sqrt(own / twin)}

    return surge
