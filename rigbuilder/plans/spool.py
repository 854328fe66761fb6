"""The spool that is to be filled: by its label, by caliper, or usual for its size; said openly which."""

from dataclasses import dataclass

import numpy as np

from rigbuilder.mechanics.arrays import Array
from rigbuilder.mechanics.fillbalance import SpoolShape, shape_from_label
from rigbuilder.mechanics.spool import PACKING_NESTED, PACKING_RANGE, geometric_room
from rigbuilder.model.rig import Capacity, Line, Spool
from rigbuilder.plans.known import Known, Taken, range_of, spread_one
from rigbuilder.reference.ranges import Range
from rigbuilder.reference.words import LineType
from rigbuilder.review.case import Case
from rigbuilder.review.figuring.given import LABEL_GAP_M
from rigbuilder.review.figuring.sections import MEASURED, sections
from rigbuilder.review.figuring.working import working
from rigbuilder.sources import COMMON_PRACTICE, FROM_MEMORY, Kind, Source
from rigbuilder.units.dimensions import Dimension

LOOSEST = 0.45  # a label that leaves more than half of the spool to air does not fit it [1], from memory
LEAST_DEPTH_M = 0.002  # a spool must be deeper than its lip gap [m]
_GEOMETRY = Source(Kind.COMPUTED, "volume between arbor and lip gap, times the share of it that is line")
_PACKED = Source(Kind.PUBLISHED, "share of wound line in its room", "coil-winding glossaries")
_MEASURED = Source(Kind.MEMORY, "measured with a calliper at the bench, to a fiftieth")


@dataclass(frozen=True, slots=True)
class KnownSpool:
    """A spool: dimensions [m], its room up to the label's lip gap as length times diameter squared [m³]."""

    arbor_m: Range
    rim_m: Range
    width_m: Range
    label_gap_m: Range
    room: Known
    taken: tuple[Taken, ...]
    remarks: tuple[str, ...]

    @property
    def is_labelled(self) -> bool:
        """Return whether the room is known from a capacity, printed or usual, and not from a caliper."""
        return _GEOMETRY not in self.room.sources

    @property
    def deepest_gap_m(self) -> float:
        """Return the largest lip gap that leaves room for line at all."""
        return 0.98 * (self.rim_m.low - self.arbor_m.high) / 2.0

    def inputs(self) -> dict[str, Range]:
        """Return what a formula of the spool is fed with, by the names of :func:`shape`."""
        return {
            "room_m3": self.room.value,
            "arbor_m": self.arbor_m,
            "rim_m": self.rim_m,
            "label_gap_m": self.label_gap_m,
        }

    def typical_shape(self) -> SpoolShape:
        """Return the spool as it typically is."""
        typical = {name: np.asarray(value.typical) for name, value in self.inputs().items()}
        return shape(**typical, width_m=self.width_m.typical)


def shape(*, room_m3: Array, arbor_m: Array, rim_m: Array, label_gap_m: Array, width_m: float) -> SpoolShape:
    """Return the spool whose packing makes the room fit its dimensions."""
    return shape_from_label(
        label_length_m=room_m3,
        label_diameter_m=1.0,  # the room is length times diameter squared already
        label_lip_gap_m=label_gap_m,
        arbor_diameter_m=arbor_m,
        rim_diameter_m=rim_m,
        width_m=width_m,
    )


def known_spool(case: Case) -> KnownSpool:
    """Return what is known of a rig's spool, and what had to be taken for granted."""
    said, remarks = _sensible(case.rig.reel.spool)
    columns, row = case.facts.columns, case.facts.row
    usual = {"arbor": columns.value("barrel_m", row), "rim": columns.value("flange_m", row)}
    arbor, rim = (
        _measured(value) if value else _needed(usual[name])
        for name, value in (("arbor", said.arbor_m), ("rim", said.rim_m))
    )
    if rim.low - arbor.high < 2 * LEAST_DEPTH_M + 2 * LABEL_GAP_M[2]:
        # One was measured and does not go with the other as it is usual: keep the usual depth.
        depth = _needed(usual["rim"]).typical - _needed(usual["arbor"]).typical
        if said.arbor_m:
            rim = Range(*(value + depth for value in arbor))
        elif said.rim_m:
            arbor = Range(*(max(value - depth, 0.3 * value) for value in rim))
    width = _measured(said.width_m) if said.width_m else _usual_width(case)
    gap = Range(*LABEL_GAP_M)
    room, more = _room(case, said, arbor, rim, width, gap)
    taken = _taken(case, said, arbor, rim, gap)
    return KnownSpool(arbor, rim, width, gap, room, taken, (*remarks, *more))


def _needed(value: Range | None) -> Range:
    if value is None:
        raise LookupError("every reel has a usual spool")
    return value


def _sensible(spool: Spool) -> tuple[Spool, tuple[str, ...]]:
    """Return the measured dimensions, or none of them where they cannot belong to one spool."""
    if spool.arbor_m is None or spool.rim_m is None:
        return spool, ()
    if spool.rim_m - spool.arbor_m > 2 * (LEAST_DEPTH_M + LABEL_GAP_M[2]):
        return spool, ()
    words = "The rim measured is hardly above the bare spool: both are left aside. Measure them again."
    return Spool(width_m=spool.width_m), (words,)


def _measured(value: float) -> Range:
    return Range(*(value * factor for factor in MEASURED))


def _usual_width(case: Case) -> Range:
    reel = case.rig.reel
    rows = [row for row in case.reference.reels if row.reel is reel.kind]
    rim = _needed(case.facts.columns.value("flange_m", case.facts.row)).typical
    return min(rows, key=lambda row: abs(row.flange_m.typical - rim)).width_m


def _room(
    case: Case, said: Spool, arbor: Range, rim: Range, width: Range, gap: Range
) -> tuple[Known, tuple[str, ...]]:
    by_label = _label_room(case)
    whole = None not in (said.arbor_m, said.rim_m, said.width_m)
    if not whole:
        return _reconciled(case, by_label)
    by_caliper = _geometric(arbor, rim, width, gap)
    if not case.rig.reel.capacity:
        return by_caliper, ()
    packing = by_label.value.typical / (by_caliper.value.typical / PACKING_RANGE[1])
    if packing > PACKING_NESTED:
        words = "No line lies as densely as the label would need on this spool: the calliper is believed."
        return by_caliper, (words,)
    known, remarks = _reconciled(case, by_label)
    if packing < LOOSEST:
        remarks = (*remarks, "The label holds far less than this spool has room for: check the dimensions.")
    return known, remarks


def _label_room(case: Case) -> Known:
    facts = case.facts
    row = working("room_m3", facts)
    inputs = tuple((one.label, one.value) for one in row.inputs if one.value is not None)
    return Known("room", row.label, facts.room_m3, row.unit, row.formula, inputs, row.sources)


def _geometric(arbor: Range, rim: Range, width: Range, gap: Range) -> Known:
    inputs = {"arbor": arbor, "rim": rim, "width": width, "gap": gap, "packing": Range(*PACKING_RANGE)}

    def room(*, arbor: Array, rim: Array, width: Array, gap: Array, packing: Array) -> dict[str, Array]:
        found = geometric_room(
            arbor_diameter_m=arbor, fill_diameter_m=rim - 2.0 * gap, width_m=width, packing=packing
        )
        return {"room_m3": found}

    labels = ("bare spool across", "rim across", "width inside", "lip gap", "share of it that is line")
    return Known(
        "room",
        "room on the spool, as length times diameter squared",
        spread_one(room, inputs)["room_m3"],
        "m3",
        "((rim − 2 × lip gap)² − bare spool²) × width × share of it that is line",
        tuple(zip(labels, inputs.values(), strict=True)),
        (_GEOMETRY, _PACKED, _MEASURED),
    )


def _reconciled(case: Case, known: Known) -> tuple[Known, tuple[str, ...]]:
    """Hold the other capacities of the label against the one that is used, and widen the range to them."""
    rooms = [_entry_room(entry, case) for entry in case.rig.reel.capacity]
    stray = [room for room in rooms if room not in known.value]
    if not stray:
        return known, ()
    value = Range(min(known.value.low, *stray), known.value.typical, max(known.value.high, *stray))
    words = "The capacities printed on the reel do not agree with each other; the range takes them all in."
    widened = Known(known.name, known.label, value, known.unit, known.formula, known.inputs, known.sources)
    return widened, (words,)


def _entry_room(entry: Capacity, case: Case) -> float:
    line = entry_line(entry)
    diameter = range_of(sections([line], case.reference).diameter_m).typical
    return entry.length_m * diameter**2


def entry_line(entry: Capacity) -> Line:
    """Return the line in which a capacity on a label is counted: nylon unless it says otherwise."""
    pe = entry.size is not None and entry.size.scale == "PE"
    kind = entry.line or (LineType.BRAID if pe else LineType.NYLON)
    return Line(type=kind, test_n=entry.test_n, diameter_m=entry.diameter_m, size=entry.size)


def _taken(case: Case, said: Spool, arbor: Range, rim: Range, gap: Range) -> tuple[Taken, ...]:
    found: list[Taken] = []
    length, size = Dimension.LENGTH, case.rig.reel.size or "usual size"
    for name, label, value, known in (
        ("arbor", "bare spool across", arbor, said.arbor_m),
        ("rim", "rim across", rim, said.rim_m),
    ):
        if known is None:
            why = f"no label carries it; usual for a {case.rig.reel.kind} reel of size {size}"
            field = f"reel.spool.{name}"
            found.append(Taken(field, label, value, length, "diameter", why, FROM_MEMORY))
    if not case.rig.reel.capacity and None in (said.arbor_m, said.rim_m, said.width_m):
        holds = case.facts.columns.value("label_length_m", case.facts.row)
        why = "the label names no capacity; usual for a reel of this size, in nylon 12 lb"
        found.append(Taken("reel.capacity", "holds", _needed(holds), length, "line", why, FROM_MEMORY))
    else:
        why = "labels are read as a spool filled to its usual level"
        found.append(Taken("", "lip gap of the label", gap, length, "diameter", why, COMMON_PRACTICE))
    if case.rig.reel.ratio is None:
        ratio = case.facts.columns.value("gear_ratio", case.facts.row)
        why = "no gear ratio is printed; usual for a reel of this size"
        if case.rig.reel.retrieve_m is not None:
            why = "from the line per turn that is printed"
        found.append(Taken("reel.ratio", "gear ratio", _needed(ratio), None, "", why, FROM_MEMORY))
    return tuple(found)
