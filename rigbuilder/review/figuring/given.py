"""What the rigs of a batch say and what the tables add: everything but the lines, as triples.

Rigs of one line chart share rod, reel, lure and water, so every distinct setting is read
once and laid out over the rigs. What a card leaves unsaid and the reader did not assume
(a rig built by hand) is taken from practice or from the tables' defaults.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from rigbuilder.mechanics.arrays import Array
from rigbuilder.model.rig import Capacity, Line, Reel, Rig
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import LBF_N, Range
from rigbuilder.reference.tackle import ReelData
from rigbuilder.reference.techniques import Technique
from rigbuilder.reference.words import Action, LineType, Presentation, ReelKind, RetrieveLoad
from rigbuilder.review.figuring.sections import MEASURED
from rigbuilder.review.figuring.spread import Triples

FISH = (0.8, 1.0, 1.25)  # a fish guessed at the bench, share of its mass, from memory
CLARITY = (0.8, 1.0, 1.25)  # clarity judged by eye, share of it, from memory
PRINTED_RETRIEVE = (0.95, 1.0, 1.05)  # retrieve per turn as reels print it, from memory
LABEL_CAPACITY = (0.85, 1.0, 1.15)  # capacity on reel labels, common practice
ROD_TIP_M = (0.3, 1.0, 2.0)  # height of the rod tip over the water while a lure is wound in, from memory
ROD_BEARS = (0.33, 0.5, 0.67)  # drag that a rod bears, share of the top of its line label, common practice
SHALLOWEST_M = 0.1  # least running depth that a diver is held to [m]
SLOWEST_MPS = 0.05  # a lure that rests is not wound in: the slowest retrieve that has a depth, from memory
_STEADY = (RetrieveLoad.STEADY, RetrieveLoad.STOP_GO)

_Rows = dict[str, tuple[float, ...]]


@dataclass(frozen=True, slots=True)
class Given:
    """Settings of a batch: triples by name, plain yes-or-no arrays, and the line of each reel's label."""

    triples: Triples
    surface: NDArray[np.bool_]
    treble: NDArray[np.bool_]
    dives: NDArray[np.bool_]
    towed: NDArray[np.bool_]
    spool_line: tuple[Line, ...]
    index: NDArray[np.int_]

    def __getitem__(self, name: str) -> Array:
        return self.triples[name]


def given(rigs: Sequence[Rig], techniques: Sequence[Technique], reference: Reference) -> Given:
    """Return the settings of many rigs."""
    places: dict[tuple[object, ...], int] = {}
    index: list[int] = []
    chosen: list[tuple[Rig, Technique]] = []
    for rig, technique in zip(rigs, techniques, strict=True):
        key = (technique.id, id(rig.rod), id(rig.reel), id(rig.lure), id(rig.water), id(rig.fish), rig.cast_m)
        if key not in places:
            places[key] = len(chosen)
            chosen.append((rig, technique))
        index.append(places[key])
    rows = [_Setting(rig, technique, reference) for rig, technique in chosen]
    at = np.array(index, dtype=int)
    table = np.array([list(row.values.values()) for row in rows])[at].transpose(1, 2, 0)
    return Given(
        dict(zip(rows[0].values, np.ascontiguousarray(table), strict=True)),
        surface=np.array([row.is_surface for row in rows])[at],
        treble=np.array([row.technique.hook_class.is_treble for row in rows])[at],
        dives=np.array([row.lure.dives for row in rows])[at],
        towed=np.array([row.is_towed for row in rows])[at],
        spool_line=tuple(row.spool_line for row in rows),
        index=at,
    )


class _Setting:
    """One distinct setting: its values by name as (low, typical, high)."""

    def __init__(self, rig: Rig, technique: Technique, reference: Reference) -> None:
        self.rig, self.technique, self.reference = rig, technique, reference
        self.lure = reference.lure(technique)
        reel_row = _reel_row(rig.reel, technique, reference)
        self.spool_line, room_length = _label(rig.reel, reel_row)
        self.values: _Rows = {
            **self._day(),
            **self._rod(),
            **self._lure(),
            **_reel(rig.reel, reel_row),
            "label_length_m": room_length,
        }

    @property
    def is_surface(self) -> bool:
        """Whether the lure is worked on the surface."""
        return self.technique.is_surface or self.rig.presentation is Presentation.FLOATING

    @property
    def is_towed(self) -> bool:
        """Whether the lure is wound in below the surface, so that it has a running depth."""
        steady = any(load in _STEADY for load in self.technique.retrieve_load)
        return steady and not self.is_surface

    def _day(self) -> _Rows:
        rig, water, table = self.rig, self.rig.water, self.reference.water
        unsaid = table.defaults
        wind = next(row for row in table.wind if row.id == (water.wind or unsaid.wind))
        salt = next(row for row in table.salt if row.id == (water.kind or unsaid.water_kind))
        warm = unsaid.temperature_c if water.temperature_c is None else water.temperature_c
        return {
            "cast_m": _known(rig.cast_m or self.technique.distance_m.middle),
            "water_depth_m": _known(water.depth_m or unsaid.depth_m),
            "temperature_c": _known(min(max(warm, 0.0), 35.0)),
            "salinity_g_kg": _known(salt.salinity_g_kg.typical),
            "clarity_m": _times(water.clarity_m or unsaid.clarity_m, CLARITY),
            "wind_mps": tuple(wind.speed_m_s),
            "current_mps": _known(water.current_mps or unsaid.current_m_s),
            "fish_kg": _times(rig.fish.mass_kg or self.technique.fish_kg.middle, FISH),
            "tip_height_m": ROD_TIP_M,
        }

    def _rod(self) -> _Rows:
        rod, practice = self.rig.rod, self.technique.rod
        length = rod.length_m or practice.length_m.middle
        power = rod.power or practice.powers[len(practice.powers) // 2]
        action = rod.action or (practice.actions[0] if practice.actions else Action.FAST)
        stiffness = self.reference.rods.stiffness_n_m(power=power, length_m=length, action=action)
        label = (rod.line_n or practice.line_n).high
        return {
            "rod_length_m": _known(length),
            "rod_stiffness_n_m": tuple(stiffness),
            "rod_label_n": _known(label),
            "rod_limit_n": _times(label, ROD_BEARS),
        }

    def _lure(self) -> _Rows:
        mass, data = self.rig.lure.total_kg, self.lure
        printed = self.rig.lure.depth_m or self.technique.depth_m
        return {
            "lure_kg": _known(mass),
            "submerged": tuple(data.submerged),
            "drag_area_m2": tuple(data.drag_area_m2(mass)),
            "air_area_m2": tuple(data.air_area_m2(mass)),
            "speed_mps": tuple(max(speed, SLOWEST_MPS) for speed in data.speed_m_s),
            "running_depth_m": tuple(
                max(depth, SHALLOWEST_M) for depth in (printed.low, printed.middle, printed.high)
            ),
        }


def _known(value: float) -> tuple[float, ...]:
    return (value, value, value)


def _times(value: float, by: tuple[float, ...]) -> tuple[float, ...]:
    return (value * by[0], value * by[1], value * by[2])


def _reel_row(reel: Reel, technique: Technique, reference: Reference) -> ReelData:
    digits = "".join(letter for letter in reel.size or "" if letter.isdigit())
    usual = technique.reel.sizes.get(reel.kind)
    if digits:
        return reference.reel(reel.kind, float(digits))
    return reference.reel(reel.kind, usual.middle if usual else _MIDDLE[reel.kind])


_MIDDLE = {ReelKind.BAITCASTING: 150.0, ReelKind.SPINNING: 2500.0, ReelKind.SPINCAST: 10.0}


def _reel(reel: Reel, row: ReelData) -> _Rows:
    limit = row.drag_n if reel.drag_n is None else Range.exactly(reel.drag_n)
    barrel, flange = _spool(reel, row)
    across = flange[1] - 2 * LABEL_GAP_M[1]
    ratio: tuple[float, ...] = tuple(row.ratio)
    if reel.ratio is not None:
        ratio = _known(reel.ratio)
    elif reel.retrieve_m is not None:
        ratio = _times(reel.retrieve_m / (np.pi * across), PRINTED_RETRIEVE)
    return {
        "barrel_m": barrel,
        "flange_m": flange,
        "gear_ratio": ratio,
        "reel_limit_n": tuple(limit),
        "printed_retrieve_m": _times(reel.retrieve_m or 0.0, PRINTED_RETRIEVE),
    }


def _spool(reel: Reel, row: ReelData) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Return the diameters of bare spool and lip [m]: measured ones, unless they make no spool together."""
    said = reel.spool
    barrel = _times(said.arbor_m, MEASURED) if said.arbor_m else tuple(row.barrel_m)
    flange = _times(said.rim_m, MEASURED) if said.rim_m else tuple(row.flange_m)
    if flange[0] - barrel[2] < SHALLOWEST_SPOOL_M:
        return tuple(row.barrel_m), tuple(row.flange_m)
    return barrel, flange


SHALLOWEST_SPOOL_M = 0.01
"""A spool is at least twice its lip gap and some line deep, measured across [m], from memory."""

LABEL_GAP_M = (0.0015, 0.002, 0.003)
"""Lip gap that a spool filled to its label leaves [m], common practice."""


def _label(reel: Reel, row: ReelData) -> tuple[Line, tuple[float, ...]]:
    """Return the line and the length [m] that fill the spool: by the label, else by the size of the reel."""
    best = _best(reel.capacity)
    if best is None:
        return Line(type=LineType.NYLON, test_n=12 * LBF_N), tuple(row.capacity_nylon_12lb_m)
    line = Line(
        type=best.line or _sized_type(best), test_n=best.test_n, diameter_m=best.diameter_m, size=best.size
    )
    return line, _times(best.length_m, LABEL_CAPACITY)


def _best(capacity: Sequence[Capacity]) -> Capacity | None:
    """Return the entry to trust: with a diameter, else a size number, else a test; the middle of several."""
    by_size = [entry for entry in capacity if entry.size is not None]
    by_diameter = [entry for entry in capacity if entry.diameter_m is not None]
    by_test = [entry for entry in capacity if entry.line in (None, LineType.NYLON, LineType.COPOLYMER)]
    for entries in (by_diameter, by_size, by_test, list(capacity)):
        if entries:
            return entries[len(entries) // 2]
    return None


def _sized_type(entry: Capacity) -> LineType:
    braid = entry.size is not None and entry.size.scale == "PE"
    return LineType.BRAID if braid else LineType.NYLON
