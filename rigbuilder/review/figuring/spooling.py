"""What fills the spool: room, lengths, level, turns of the handle, grams of line."""

import numpy as np
from numpy.typing import NDArray

from rigbuilder.mechanics import spool, winding
from rigbuilder.mechanics.arrays import Array
from rigbuilder.review.figuring.given import LABEL_GAP_M
from rigbuilder.review.figuring.group import Group, Known, columns
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.spread import alike, spread

_OF_BACKING = ("backing_m", "backing_turns", "backing_mass_kg")


def spooling(rows: Rows, known: Known) -> Group:
    """Return the figures of the spool of every row."""
    given = rows.given
    found = spread(
        _Fill(rows),
        {
            "label_length_m": given["label_length_m"],
            "label_diameter_m": rows.label_diameter_m,
            "main_diameter_m": rows.main.diameter_m,
            "backing_diameter_m": rows.backing.diameter_m,
            "barrel_m": given["barrel_m"],
            "flange_m": given["flange_m"],
            "label_gap_m": alike(*LABEL_GAP_M, rows.count),
            "gear_ratio": given["gear_ratio"],
            "trim_m": _trim(rows),
            "main_mass_kg_m": rows.main.mass_kg_m / rows.main.diameter_m**2,
            "backing_mass_kg_m": rows.backing.mass_kg_m / rows.backing.diameter_m**2,
        },
    )
    for name in _OF_BACKING:
        found[name] = np.maximum(found[name], 0.0)
    backed = {name: found.pop(name) for name in _OF_BACKING}
    return columns(found) | columns(backed, rows.has_backing)


def _trim(rows: Rows) -> Array:
    """Line that is cut off over a season [m], common practice."""
    span = rows.reference.filling.limits.trimming_m
    return alike(span.low, span.middle, span.high, rows.count)


class _Fill:
    """The balance of a spool, in room: length times diameter squared [m³]."""

    def __init__(self, rows: Rows) -> None:
        limits = rows.reference.filling.limits
        self._cast = rows.given["cast_m"][1]
        self._past_cast = np.maximum(
            limits.backing_cast_factor * self._cast, self._cast + limits.backing_margin_m
        )
        self._length = _or_nan([rig.main.length_m for rig in rows.rigs])
        self._backing = _or_nan([rig.backing.length_m if rig.backing else None for rig in rows.rigs])
        self._backed: NDArray[np.bool_] = rows.has_backing
        self._printed = rows.given["printed_retrieve_m"][1]

    def __call__(
        self, *, label_length_m: Array, label_diameter_m: Array, main_diameter_m: Array,
        backing_diameter_m: Array, barrel_m: Array, flange_m: Array, label_gap_m: Array, gear_ratio: Array,
        trim_m: Array, main_mass_kg_m: Array, backing_mass_kg_m: Array,
    ) -> dict[str, Array]:  # fmt: skip
        room = spool.label_room(length_m=label_length_m, diameter_m=label_diameter_m)
        holds = spool.length_in_room(room_m3=room, diameter_m=main_diameter_m)
        reach = self._past_cast + trim_m
        wish = np.where(self._backed, reach, holds)
        wound = np.where(np.isnan(self._length), np.minimum(wish, holds), self._length)
        main_area, backing_area = main_diameter_m**2, backing_diameter_m**2
        fills = (room - wound * main_area) / backing_area
        backing = np.where(self._backed, np.where(np.isnan(self._backing), fills, self._backing), 0.0)
        under = np.maximum(backing, 0.0) * backing_area
        used = wound * main_area + under
        full = flange_m - 2.0 * label_gap_m
        deep = full**2 - barrel_m**2
        core = np.sqrt(barrel_m**2 + under / room * deep)
        across = np.sqrt(barrel_m**2 + used / room * deep)
        per_turn = winding.retrieve_per_turn(fill_diameter_m=across, gear_ratio=gear_ratio)
        return {
            "room_m3": room,
            "used_m3": used,
            "spool_holds_m": holds,
            "reach_m": np.broadcast_to(reach, room.shape),
            "main_wound_m": wound,
            "backing_m": fills,
            "lip_gap_m": (flange_m - across) / 2.0,
            "fill_share": used / room,
            "main_turns": _turns(core, across, wound, gear_ratio),
            "backing_turns": _turns(barrel_m, core, np.maximum(backing, 0.0), gear_ratio),
            "main_mass_kg": wound * main_mass_kg_m * main_area,
            "backing_mass_kg": np.maximum(backing, 0.0) * backing_mass_kg_m * backing_area,
            "retrieve_m": np.where(self._printed > 0.0, self._printed * across / full, per_turn),
            "fill_diameter_m": across,
            "core_diameter_m": core,
            "barrel_diameter_m": barrel_m,
        }


def _turns(start: Array, end: Array, length: Array, ratio: Array) -> Array:
    return winding.handle_turns(start_diameter_m=start, end_diameter_m=end, length_m=length, gear_ratio=ratio)


def _or_nan(values: list[float | None]) -> Array:
    return np.array([np.nan if value is None else value for value in values], dtype=float)
