"""The drag: what is set, what a fish feels over the bent rod, what it becomes as the spool empties."""

from collections.abc import Callable

import numpy as np

from rigbuilder.mechanics import guides
from rigbuilder.mechanics.arrays import Array
from rigbuilder.review.figuring.group import Column, Group, Known, columns
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.spread import alike, spread, triple

SET = (0.8, 1.0, 1.2)  # brakes wander by a fifth, and scales are read by hand, from memory
ROD_ANGLE_RAD = (np.pi / 6, np.pi / 3, np.pi / 2)  # line over the bent rod in a fight, from memory
RUN_M = (5.0, 15.0, 30.0)  # line that a fish takes beyond the cast, from memory


def dragging(rows: Rows, known: Known) -> Group:
    """Return the figures of the drag of every row."""
    drag = np.array([rig.drag_n or 0.0 for rig in rows.rigs])
    weakest = np.array([_weakest_label(rows, row) for row in range(rows.count)])
    chain = known("chain_n")
    found = spread(
        _drags(drag, weakest, rows.given["cast_m"][1]),
        {
            "set_share": alike(*SET, rows.count),
            "friction": rows.main.guide_friction,
            "turning_rad": alike(*ROD_ANGLE_RAD, rows.count),
            "run_m": alike(*RUN_M, rows.count),
            "main_diameter_m": rows.main.diameter_m,
            "used_m3": known("used_m3"),
            "wound_m": known("main_wound_m"),
            "fill_m": known("fill_diameter_m"),
            "barrel_m": rows.given["barrel_m"],
            "chain_n": chain,
        },
    )
    # A chain that may bear nothing allows no drag; ranges added up from its zero would go below it.
    ceiling = np.maximum(found.pop("drag_ceiling_n"), 0.0)
    advised = _recommended(rows, weakest, ceiling)
    limits = {name: rows.given[name] for name in ("rod_limit_n", "reel_limit_n")}
    sure = {"drag_ceiling_n": ceiling, "drag_recommended_n": advised} | limits
    return columns(found, rows.has_drag) | columns(sure)


def _weakest_label(rows: Rows, row: int) -> float:
    rig = rows.rigs[row]
    tests = [line.test_n for line in (rig.main, rig.leader) if line is not None and line.test_n]
    return min(tests) if tests else float(rows.main.wet_break_n[1, row])


def _drags(drag: Array, weakest: Array, cast: Array) -> Callable[..., dict[str, Array]]:
    def drags(
        *, set_share: Array, friction: Array, turning_rad: Array, run_m: Array, main_diameter_m: Array,
        used_m3: Array, wound_m: Array, fill_m: Array, barrel_m: Array, chain_n: Array,
    ) -> dict[str, Array]:  # fmt: skip
        straight = drag * set_share
        over = guides.guide_ratio(friction=friction, turning_rad=turning_rad)
        # Never more line out than is wound, never a radius below the bare spool.
        out = np.minimum(cast + run_m, wound_m)
        left = fill_m**2 - (fill_m**2 - barrel_m**2) * np.minimum(out * main_diameter_m**2 / used_m3, 1.0)
        growth = np.maximum(fill_m / np.sqrt(np.maximum(left, barrel_m**2)), 1.0)
        return {
            "drag_n": straight,
            "drag_on_scale_n": straight * over,
            "drag_worst_n": straight * over * growth,
            "drag_share": straight / weakest,
            "drag_ceiling_n": chain_n / (over * growth),
        }

    return drags


def _recommended(rows: Rows, weakest: Array, ceiling: Array) -> Array:
    """Practice's share of the weakest label, kept below what the chain bears at its worst.

    A locked drag has no share; there the technique's usual setting stands.
    """
    kinds = list(dict.fromkeys(technique.id for technique in rows.techniques))
    place = [kinds.index(technique.id) for technique in rows.techniques]
    practice = [rows.reference.techniques[kind].drag for kind in kinds]
    usual = triple([(d.drag_n.low, d.drag_n.middle, d.drag_n.high) for d in practice])
    percent = triple([(p.low, p.middle, p.high) if (p := d.percent) else (np.nan,) * 3 for d in practice])
    by_share = percent[:, place] / 100.0 * weakest
    wish = np.where(np.isnan(by_share), usual[:, place], by_share)
    return np.asarray(np.minimum(wish, ceiling[0]))


def strength(rows: Rows, known: Known) -> Group:
    """Return the figures of lines and chain of every row."""
    lines = {
        "main_diameter_m": rows.main.diameter_m,
        "main_straight_n": rows.main.wet_break_n,
        "chain_n": rows.chain.chain_n,
    }
    ends = {"leader_diameter_m": rows.end.diameter_m, "leader_straight_n": rows.end.wet_break_n}
    backing = {"backing_diameter_m": Column(rows.backing.diameter_m, rows.has_backing)}
    return columns(lines) | {name: Column(value, rows.has_leader) for name, value in ends.items()} | backing
