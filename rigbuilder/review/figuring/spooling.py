"""What fills the spool: room, lengths, level, turns of the handle, grams of line."""

import numpy as np
from numpy.typing import NDArray

from rigbuilder.mechanics import spool, winding
from rigbuilder.mechanics.arrays import Array
from rigbuilder.review.figuring.given import LABEL_GAP_M
from rigbuilder.review.figuring.group import Group, Known, columns
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.spread import alike, ordered, product, spread

SHALLOWEST_M2 = 1e-5  # a spool is never without depth, however its table's ends meet [m²]


def spooling(rows: Rows, known: Known) -> Group:
    """Return the figures of the spool of every row."""
    given, main, backing, on_spool = rows.given, rows.main, rows.backing, rows.on_spool
    # Room as length times diameter squared, see mechanics.spool.label_room.
    room = {"room_m3": product(given["label_length_m"], on_spool.label_m**2)}
    found = spread(
        _Fill(rows),
        {
            "room_m3": room["room_m3"],
            "main_diameter_m": on_spool.main_m,
            "backing_diameter_m": on_spool.backing_m,
            "barrel_m": given["barrel_m"],
            "flange_m": given["flange_m"],
            "label_gap_m": alike(*LABEL_GAP_M, rows.count),
            "gear_ratio": given["gear_ratio"],
        },
    )
    # Backing fills up what the main line leaves; only the main line can overfill the spool then.
    fills_up = rows.has_backing & np.isnan(_backing_lengths(rows))
    main_share = found.pop("main_share")
    found["fill_share"] = np.where(fills_up, np.maximum(main_share, 1.0), found["fill_share"])
    for name in ("backing_m", "backing_turns"):
        found[name] = np.maximum(found[name], 0.0)
    masses = spread(
        _masses,
        {
            "main_m3": found.pop("main_m3"),
            "backing_m3": found.pop("backing_m3"),
            "main_kg_m3": ordered(main.mass_kg_m / on_spool.main_m**2),
            "backing_kg_m3": ordered(backing.mass_kg_m / on_spool.backing_m**2),
        },
    )
    reach = {"reach_m": _past_cast(rows) + _trim(rows)}
    backed = {name: found.pop(name) for name in ("backing_m", "backing_turns")}
    backed["backing_mass_kg"] = masses.pop("backing_mass_kg")
    return columns(room | found | masses | reach) | columns(backed, rows.has_backing)


def _masses(
    *, main_m3: Array, backing_m3: Array, main_kg_m3: Array, backing_kg_m3: Array
) -> dict[str, Array]:
    return {"main_mass_kg": main_m3 * main_kg_m3, "backing_mass_kg": backing_m3 * backing_kg_m3}


def _backing_lengths(rows: Rows) -> Array:
    """Length of backing that cards state [m], not-a-number where they state none."""
    return _or_nan([rig.backing.length_m if rig.backing else None for rig in rows.rigs])


def _past_cast(rows: Rows) -> Array:
    """Line that a cast and a run take [m], common practice."""
    limits, cast = rows.reference.filling.limits, rows.given["cast_m"][1]
    return np.asarray(np.maximum(limits.backing_cast_factor * cast, cast + limits.backing_margin_m))


def _trim(rows: Rows) -> Array:
    """Line that is cut off over a season [m], common practice."""
    span = rows.reference.filling.limits.trimming_m
    return alike(span.low, span.middle, span.high, rows.count)


class _Fill:
    """The balance of a spool, in room: length times diameter squared [m³]."""

    def __init__(self, rows: Rows) -> None:
        self._reach = (_past_cast(rows) + _trim(rows))[1]
        self._length = _or_nan([rig.main.length_m for rig in rows.rigs])
        self._backing = _backing_lengths(rows)
        self._backed: NDArray[np.bool_] = rows.has_backing
        self._printed = rows.given["printed_retrieve_m"][1]

    def __call__(
        self, *, room_m3: Array, main_diameter_m: Array, backing_diameter_m: Array, barrel_m: Array,
        flange_m: Array, label_gap_m: Array, gear_ratio: Array,
    ) -> dict[str, Array]:  # fmt: skip
        holds = spool.length_in_room(room_m3=room_m3, diameter_m=main_diameter_m)
        wish = np.where(self._backed, np.minimum(self._reach, holds), holds)
        wound = np.where(np.isnan(self._length), wish, self._length)
        main = wound * main_diameter_m**2
        fills = (room_m3 - main) / backing_diameter_m**2
        said = np.where(np.isnan(self._backing), np.maximum(fills, 0.0), self._backing)
        backing = np.where(self._backed, said, 0.0)
        under = backing * backing_diameter_m**2
        full = flange_m - 2.0 * label_gap_m
        deep = np.maximum(full**2 - barrel_m**2, SHALLOWEST_M2) / room_m3
        core = np.sqrt(barrel_m**2 + under * deep)
        across = np.sqrt(core**2 + main * deep)
        per_turn = winding.retrieve_per_turn(fill_diameter_m=across, gear_ratio=gear_ratio)
        return {
            "main_m3": main,
            "backing_m3": under,
            "used_m3": main + under,
            "main_share": main / room_m3,
            "fill_share": (main + under) / room_m3,
            "spool_holds_m": holds,
            "main_wound_m": wound,
            "backing_m": fills,
            "fill_diameter_m": across,
            "core_diameter_m": core,
            "lip_gap_m": (flange_m - across) / 2.0,
            "main_turns": _turns(core, across, wound, gear_ratio),
            "backing_turns": _turns(barrel_m, core, backing, gear_ratio),
            "retrieve_m": np.where(self._printed > 0.0, self._printed * across / full, per_turn),
        }


def _turns(start: Array, end: Array, length: Array, ratio: Array) -> Array:
    return winding.handle_turns(start_diameter_m=start, end_diameter_m=end, length_m=length, gear_ratio=ratio)


def _or_nan(values: list[float | None]) -> Array:
    return np.array([np.nan if value is None else value for value in values], dtype=float)
