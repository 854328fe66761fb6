"""How deep a lure runs when it is wound in, how far it lies behind the tip, how long it takes to sink.

The depth itself comes from the integrated shape of the line. Its range is carried over from
the closed form for a light line (``mechanics.limits``), which answers to speed, diameter,
weight and drag as the full model does and costs next to nothing.
"""

from collections.abc import Callable
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from rigbuilder.mechanics import cylinder, limits, sinking
from rigbuilder.mechanics.arrays import STANDARD_GRAVITY_M_S2, Array
from rigbuilder.mechanics.diving import dive_force
from rigbuilder.mechanics.loads import viscous_load
from rigbuilder.mechanics.tow import form_drag, towed
from rigbuilder.review.figuring.group import Column, Group, Known, missing
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.spread import Triples, alike, spread
from rigbuilder.review.figuring.usual import usual_rig

STEPS = 8  # depth within 0.1 % of a fine solution over usual rigs [1]
STRUMMING = (
    0.9,
    1.0,
    1.5,
)  # drag across the line, high where it hums; published effect, size from memory [1]
PRINTED_DEPTH = (0.85, 1.0, 1.15)  # running depth against what the box says, from memory [1]
SIDEWAYS = (1.0, 1.5, 3.0)  # drag of a lure that sinks sideways over that of one pulled, from memory [1]
SPOOL_N = (0.0, 0.003, 0.01)  # pull that draws line from an open reel, from memory [N]
_LEAST_PULL_N = 1e-3
_LEAST_SPEED_MPS = 0.01
_PLACES, _WEIGHTS = np.polynomial.legendre.leggauss(4)

_Rows = NDArray[np.int_]


def towing(rows: Rows, known: Known) -> Group:
    """Return running depth and layback of the rows whose lure is wound in below the surface."""
    chosen = np.flatnonzero(rows.given.towed)
    found = missing(("depth_m", "layback_m"), rows.count)
    if chosen.size:
        for name, value in _towed(rows, chosen).items():
            found[name].triple[:, chosen] = value
            found[name].there[chosen] = True
    return found


def pulls(rows: Rows, chosen: _Rows) -> tuple[Array, Array]:
    """Return what pulls lures down [N] and back [N] at the typical speed of their retrieve."""
    given = {
        name: rows.given[name][1, chosen] for name in ("lure_kg", "submerged", "speed_mps", "drag_area_m2")
    }
    density = rows.water_density[chosen]
    back = form_drag(speed_m_s=given["speed_mps"], drag_area_m2=given["drag_area_m2"], density_kg_m3=density)
    down = given["lure_kg"] * STANDARD_GRAVITY_M_S2 * given["submerged"]
    dives = np.flatnonzero(rows.given.dives[chosen])
    if dives.size:
        # Rigs of one setting that are held against one usual rig dive alike.
        alike_as = rows.given.index[chosen[dives]] * rows.count + rows.usual[chosen[dives]]
        _, first, of = np.unique(alike_as, return_index=True, return_inverse=True)
        found = [_dive(rows, int(chosen[place]), float(back[place])) for place in dives[first]]
        down[dives] = np.array(found)[of]
    return np.maximum(down, _LEAST_PULL_N), back


def _towed(rows: Rows, chosen: _Rows) -> Triples:
    given, down_back = rows.given, pulls(rows, chosen)
    down, back = down_back
    tip = given["tip_height_m"][1, chosen]
    length = np.maximum(given["cast_m"][1, chosen], tip + 1.0)
    found = towed(
        load=viscous_load(
            diameter_m=rows.main.diameter_m[1, chosen], speed_m_s=given["speed_mps"][1, chosen],
            density_kg_m3=rows.water_density[chosen], viscosity_pa_s=rows.water_viscosity[chosen],
        ),
        wet_weight_n_m=rows.wet_weight_n_m[1, chosen],
        dry_weight_n_m=rows.main.mass_kg_m[1, chosen] * STANDARD_GRAVITY_M_S2,
        pull_down_n=down, drag_n=back, length_m=length, tip_height_m=tip, steps=STEPS,
    )  # fmt: skip
    depth = _range_around(found.depth_m, rows, chosen, down, length)
    across = np.sqrt(np.maximum(length**2 - (depth + tip) ** 2, 0.0))
    factor = found.layback_m / np.maximum(across[1], 1e-9)
    return {"depth_m": depth, "layback_m": np.minimum(np.sort(across * factor, axis=0), length)}


def _range_around(depth: Array, rows: Rows, chosen: _Rows, down: Array, length: Array) -> Array:
    given = rows.given
    other = rows.usual[chosen]
    inputs = {
        "speed_mps": given["speed_mps"][:, chosen],
        "submerged": given["submerged"][:, chosen],
        "area_m2": given["drag_area_m2"][:, chosen],
        "diameter_m": rows.main.diameter_m[:, chosen],
        "calibrated_m": rows.main.diameter_m[:, other],
        "strumming": alike(*STRUMMING, chosen.size),
        "tip_m": given["tip_height_m"][:, chosen],
        "running_m": given["running_depth_m"][:, chosen],
        "printed": alike(*PRINTED_DEPTH, chosen.size),
    }
    same = (inputs["diameter_m"] == inputs["calibrated_m"]).all(axis=0)
    inputs["calibrated_m"] = np.where(same, inputs["calibrated_m"][1], inputs["calibrated_m"])
    shaped = spread(_light(rows, chosen, down, length, same), inputs)["depth_m"]
    share = shaped / np.maximum(shaped[1], 1e-9)
    return np.asarray(np.maximum(depth * share, 0.0))


def _light(
    rows: Rows, chosen: _Rows, down: Array, length: Array, same: NDArray[np.bool_]
) -> Callable[..., Triples]:
    """The closed form, for lures that sink by their weight and for divers held to their printed depth."""
    given, density = rows.given, rows.water_density[chosen]
    dives, viscosity = rows.given.dives[chosen], rows.water_viscosity[chosen]
    speed, weight = given["speed_mps"][1, chosen], given["lure_kg"][1, chosen] * STANDARD_GRAVITY_M_S2
    typical, calibrated = rows.main.diameter_m[1, chosen], rows.main.diameter_m[1, rows.usual[chosen]]

    def depth(
        *, speed_mps: Array, submerged: Array, area_m2: Array, diameter_m: Array, calibrated_m: Array,
        strumming: Array, tip_m: Array, running_m: Array, printed: Array,
    ) -> Triples:  # fmt: skip
        pull = np.where(dives, down * (speed_mps / speed) ** 2, np.maximum(weight * submerged, _LEAST_PULL_N))
        back = 0.5 * density * area_m2 * speed_mps**2

        def runs(thick: Array) -> Array:
            number = density * speed_mps * thick / viscosity
            force = 0.5 * density * speed_mps**2 * thick * strumming * (1.2 + 10.0 / number)
            return limits.light_line_depth(
                pull_down_n=pull, drag_n=back, broadside_n_m=force, length_m=np.maximum(length - tip_m, 0.5)
            )

        own = runs(diameter_m)
        held = np.where(same, calibrated * diameter_m / typical, calibrated_m)
        return {"depth_m": np.where(dives, own / runs(held) * running_m * printed, own)}

    return depth


def _dive(rows: Rows, row: int, drag_n: float) -> float:
    """Downward pull of a diver, from its printed depth on the usual line at the usual cast."""
    twin, technique = int(rows.usual[row]), rows.techniques[row]
    usual = usual_rig(technique.id, rows.reference)
    tip = float(rows.given["tip_height_m"][1, row])
    printed = max(float(rows.given["running_depth_m"][1, row]), 0.2)
    length = max(usual.cast_m or technique.distance_m.middle, tip + 1.25 * printed + 1.0)
    return _calibrated(
        printed, float(rows.main.diameter_m[1, twin]), float(rows.wet_weight_n_m[1, twin]),
        float(rows.main.mass_kg_m[1, twin]), drag_n, length, tip, float(rows.given["speed_mps"][1, row]),
        float(rows.water_density[row]), float(rows.water_viscosity[row]),
    )  # fmt: skip


@lru_cache(maxsize=512)
def _calibrated(
    printed: float, diameter: float, wet: float, mass: float, drag: float, length: float, tip: float,
    speed: float, density: float, viscosity: float,
) -> float:  # fmt: skip
    load = viscous_load(diameter_m=diameter, speed_m_s=speed, density_kg_m3=density, viscosity_pa_s=viscosity)
    pull = dive_force(
        running_depth_m=printed, load=load, wet_weight_n_m=wet, dry_weight_n_m=mass * STANDARD_GRAVITY_M_S2,
        drag_n=drag, length_m=length, tip_height_m=tip, steps=STEPS,
    )  # fmt: skip
    return float(pull)


def dropping(rows: Rows, known: Known) -> Group:
    """Return the time that a sinking lure takes to the bottom on free line."""
    given, weight = rows.given, rows.given["lure_kg"][1] * STANDARD_GRAVITY_M_S2
    depth = given["water_depth_m"][1]
    density, viscosity = rows.water_density, rows.water_viscosity
    sinks = (given["submerged"][1] > 0.0) & ~given.dives & ~given.surface
    moves = weight * given["submerged"][1] + rows.wet_weight_n_m[1] * depth - SPOOL_N[1] > 0.0
    if not (sinks & moves).any():
        return missing(("drop_s",), rows.count)

    def drop(
        *, submerged: Array, area_m2: Array, sideways: Array, line_n_m: Array, spool_n: Array
    ) -> Triples:
        inverse = np.zeros_like(submerged * depth)
        for place, share in zip(_PLACES, _WEIGHTS, strict=True):
            speed = sinking.drop_speed(
                depth_m=depth * (0.5 + 0.5 * place), pull_down_n=weight * submerged,
                drag_area_m2=area_m2 * sideways, wet_weight_n_m=line_n_m, density_kg_m3=density,
                viscosity_pa_s=viscosity, spool_tension_n=spool_n,
            )  # fmt: skip
            inverse = inverse + 0.5 * share / np.maximum(speed, _LEAST_SPEED_MPS)
        return {"drop_s": depth * inverse}

    found = spread(
        drop,
        {
            "submerged": np.maximum(given["submerged"], 1e-3),
            "area_m2": given["drag_area_m2"],
            "sideways": alike(*SIDEWAYS, rows.count),
            "line_n_m": rows.wet_weight_n_m,
            "spool_n": alike(*SPOOL_N, rows.count),
        },
    )
    return {"drop_s": Column(found["drop_s"], sinks & moves)}


def across_reynolds(rows: Rows) -> Array:
    """Return the Reynolds number of the retrieve square to the main line, for remarks. [1]"""
    return cylinder.reynolds(
        speed_m_s=rows.given["speed_mps"][1], diameter_m=rows.main.diameter_m[1],
        density_kg_m3=rows.water_density, viscosity_pa_s=rows.water_viscosity,
    )  # fmt: skip
