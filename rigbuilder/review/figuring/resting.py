"""The line at rest: what hangs from a floating lure's nose, and the coils that the spool leaves."""

from collections.abc import Callable

import numpy as np

from rigbuilder.mechanics import cylinder, memory, stiffness, surface
from rigbuilder.mechanics.arrays import STANDARD_GRAVITY_M_S2, Array
from rigbuilder.review.figuring.group import Group, Known, columns, missing
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.spread import alike, spread

# How a floating lure is rested, all from memory; low / typical / high.
PAUSE_S = (2.0, 5.0, 15.0)  # time that it lies still [s]
SLACK_N = (0.002, 0.01, 0.05)  # pull in the line meanwhile [N]
ON_WATER = (0.3, 0.6, 0.9)  # share of the cast that lies on or in the water [1]

_LOG_REYNOLDS = np.linspace(np.log(1e-3), np.log(1e4), 512)
_LOG_BALANCE = 2.0 * _LOG_REYNOLDS + np.log(cylinder.drag_coefficient(reynolds=np.exp(_LOG_REYNOLDS)))


def sinking_speed(weight_n_m: Array, diameter_m: Array, density: Array, viscosity: Array) -> Array:
    """Speed at which wetted line sinks [m/s], 0 where it floats: ``sinking.sinking_speed`` read from a table.

    The balance of weight and drag, Cd(Re) Re² = 2 w rho d / mu², has one Reynolds number for each
    right side, so that a table turned round gives it without a search; within 0.1 %.
    """
    balance = 2.0 * np.maximum(weight_n_m, 1e-12) * density * diameter_m / viscosity**2
    reynolds = np.exp(np.interp(np.log(balance), _LOG_BALANCE, _LOG_REYNOLDS))
    return np.where(weight_n_m > 0.0, reynolds * viscosity / (density * diameter_m), 0.0)


def hanging(rows: Rows, known: Known) -> Group:
    """Return the pull on the nose of lures that are worked on the surface, and its share of their weight."""
    if not rows.given.surface.any():
        return missing(("nose_pull_n", "nose_share"), rows.count)
    found = spread(
        _hang(rows),
        {
            "main_w_n_m": rows.wet_weight_n_m,
            "end_w_n_m": rows.end_wet_weight_n_m,
            "pause_s": alike(*PAUSE_S, rows.count),
            "slack_n": alike(*SLACK_N, rows.count),
            "on_water": alike(*ON_WATER, rows.count),
        },
    )
    return columns({name: np.maximum(value, 0.0) for name, value in found.items()}, rows.given.surface)


def _hang(rows: Rows) -> Callable[..., dict[str, Array]]:
    given, leader = rows.given, rows.leader_m[1]
    cast, bottom = np.maximum(given["cast_m"][1], 1.0), given["water_depth_m"][1]
    weight = given["lure_kg"][1] * STANDARD_GRAVITY_M_S2
    density, viscosity, diameter = rows.water_density, rows.water_viscosity, rows.end.diameter_m[1]

    def hang(
        *, main_w_n_m: Array, end_w_n_m: Array, pause_s: Array, slack_n: Array, on_water: Array
    ) -> dict[str, Array]:
        sunk = sinking_speed(end_w_n_m, diameter, density, viscosity) * pause_s
        length = surface.hanging_length(
            wet_weight_n_m=end_w_n_m,
            span_m=cast * on_water,
            tension_n=slack_n,
            depth_m=np.minimum(sunk, bottom),
        )
        near = np.where(leader > 0.0, np.minimum(length, leader), length)
        pull = surface.nose_pull(wet_weight_n_m=end_w_n_m, hanging_length_m=near)
        rest = surface.nose_pull(wet_weight_n_m=main_w_n_m, hanging_length_m=length - near)
        return {"nose_pull_n": pull + rest, "nose_share": (pull + rest) / weight}

    return hang


def coiling(rows: Rows, known: Known) -> Group:
    """Return the strain of the main line on its spool and the pull that draws its coils straight."""
    inner, outer = known("core_diameter_m"), known("fill_diameter_m")
    # Line lies between the core and the surface: the tightest coils are the innermost.
    within = np.sort(np.stack([inner[1], (inner[1] + outer[1]) / 2.0, outer[1]]), axis=0)
    solid = np.array([rig.main.type.is_single_strand for rig in rows.rigs])
    found = spread(
        _coil(solid),
        {
            "main_diameter_m": rows.main.diameter_m,
            "spool_diameter_m": within,
            "modulus_pa": rows.main.modulus_pa,
            "memory_share": rows.main.bend_memory,
        },
    )
    return columns(found)


def _coil(solid: Array) -> Callable[..., dict[str, Array]]:
    """Braid's fibres slide past each other: nothing is strained and nothing springs back."""

    def coil(
        *, main_diameter_m: Array, spool_diameter_m: Array, modulus_pa: Array, memory_share: Array
    ) -> dict[str, Array]:
        strain = memory.coil_strain(diameter_m=main_diameter_m, spool_diameter_m=spool_diameter_m)
        radius = memory.coil_radius(diameter_m=main_diameter_m, spool_diameter_m=spool_diameter_m)
        bending = stiffness.bending_stiffness(diameter_m=main_diameter_m, modulus_pa=modulus_pa)
        pull = memory.straightening_tension(bending_stiffness_n_m2=bending, coil_radius_m=radius)
        return {
            "coil_strain": np.where(solid, strain, 0.0),
            "straighten_n": np.where(solid, pull * memory_share, 0.0),
        }

    return coil
