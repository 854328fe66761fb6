"""What fills the spool: backing, main line and lip gap in balance, any two pinned and the third following.

The balance is ``mechanics.fillbalance``; every range comes from moving one uncertain input
after another to its ends (``review.figuring.spread``).
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from rigbuilder.mechanics.arrays import Array
from rigbuilder.mechanics.fillbalance import Fill, SpoolShape, balance, nearest_fill
from rigbuilder.mechanics.winding import handle_turns
from rigbuilder.model.rig import Line
from rigbuilder.plans.known import Known, at_least, spread_one
from rigbuilder.plans.lines import Thickness, beside_label, thickness
from rigbuilder.plans.pins import Origin, Pin, Quantity, gap_bounds, pins
from rigbuilder.plans.spool import KnownSpool, known_spool, shape
from rigbuilder.reference.ranges import Range, Span
from rigbuilder.review.case import Case
from rigbuilder.review.questions.rows import batch_of
from rigbuilder.sources import FROM_MEMORY, Kind, Source

_BALANCE = Source(Kind.COMPUTED, "equal volume: length times diameter squared of all line fills the room")
_TURNS = Source(Kind.COMPUTED, "length over the growing circumference, times the gear ratio")
_MASS = Source(Kind.COMPUTED, "length times mass per metre")
_MATERIAL = Source(Kind.MEMORY, "thickness and density from the line's label and the table of line types")


@dataclass(frozen=True, slots=True)
class Winding:
    """One line on the spool: how much, in metres, turns of the handle and mass; under and over it."""

    line: Line
    diameter_m: Range
    length_m: Range
    turns: Range
    mass_kg: Range
    under_m: Range
    over_m: Range


@dataclass(frozen=True, slots=True)
class FillPlan:
    """One way to fill the spool. Lengths and diameters [m]; ``held`` are the two quantities that were pinned.

    ``follows`` is the third, with ``wanted_m`` as the balance has it: negative where the wish
    cannot be met, and then ``nearest`` is what can be had instead.
    """

    spool: KnownSpool
    held: Mapping[Quantity, Pin]
    dropped: tuple[Quantity, ...]
    follows: Quantity
    wanted_m: float
    backing: Winding | None
    main: Winding
    lip_gap_m: Range
    gap_bounds: Span
    cast_m: float
    past_cast_m: float
    needed_m: Range
    taped: bool
    nearest: "FillPlan | None" = None

    @property
    def possible(self) -> bool:
        """Return whether the spool can meet the wish."""
        return self.nearest is None

    @property
    def feasible(self) -> "FillPlan":
        """Return the plan itself, or the nearest one that the spool can meet."""
        return self.nearest or self

    def known(self) -> tuple[Known, ...]:
        """Return the figures of the plan with their working."""
        return tuple(_known(self))


def fill_plan(case: Case) -> FillPlan:
    """Return how to fill the spool of a rig: by what is pinned, by the card, and by practice."""
    held, dropped = pins(case)
    solver = _Solver(case)
    if solver.is_too_deep(held):
        usual = {**held, Quantity.LIP_GAP: Pin(gap_bounds(case).middle, Origin.PRACTICE)}
        deepest = {**held, Quantity.LIP_GAP: Pin(solver.deepest_gap_m, Origin.PINNED)}
        return solver.plan(deepest, dropped, solver.settled(usual, ()).feasible)
    return solver.settled(held, dropped)


class _Solver:
    """Solves the balance for one rig, for one choice of pins after another."""

    def __init__(self, case: Case) -> None:
        self._case = case
        self._spool = known_spool(case)
        self._main = thickness(case.rig.main, case.reference)
        backing = case.rig.backing
        self._backing = None if backing is None else thickness(backing, case.reference)
        if self._spool.is_labelled:
            batch, row = batch_of(case)
            self._main = beside_label(self._main, batch.rows.on_spool.main_m, row)
            if self._backing is not None:
                self._backing = beside_label(self._backing, batch.rows.on_spool.backing_m, row)
        self._bounds = gap_bounds(case)
        limits = case.reference.filling.limits
        self._cast = case.rig.cast_m or case.technique.distance_m.middle
        self._past = max(limits.backing_cast_factor * self._cast, self._cast + limits.backing_margin_m)

    @property
    def deepest_gap_m(self) -> float:
        return self._spool.deepest_gap_m

    def is_too_deep(self, held: Mapping[Quantity, Pin]) -> bool:
        """Tell whether the lip gap asked for is as deep as the spool."""
        gap = held.get(Quantity.LIP_GAP)
        return gap is not None and gap.value_m > self.deepest_gap_m

    def settled(self, held: Mapping[Quantity, Pin], dropped: tuple[Quantity, ...]) -> FillPlan:
        plan = self.plan(held, dropped)
        if plan.wanted_m >= -1e-9 and plan.lip_gap_m.typical >= -1e-9:
            return plan
        return self.plan(held, dropped, self.plan(self.nearest(plan), ()))

    def plan(
        self,
        held: Mapping[Quantity, Pin],
        dropped: tuple[Quantity, ...],
        nearest: FillPlan | None = None,
    ) -> FillPlan:
        follows = next(name for name in Quantity if name not in held)
        found = spread_one(self._balanced(held), self._inputs())
        case = self._case
        backing = None
        if self._backing is not None and case.rig.backing is not None:
            backing = _winding(case.rig.backing, self._backing, found, Quantity.BACKING)
        return FillPlan(
            spool=self._spool,
            held=held,
            dropped=dropped,
            follows=follows,
            wanted_m=found[f"{follows}_wanted_m"].typical,
            backing=backing,
            main=_winding(case.rig.main, self._main, found, Quantity.MAIN),
            lip_gap_m=found["lip_gap_wanted_m"],
            gap_bounds=self._bounds,
            cast_m=self._cast,
            past_cast_m=self._past,
            needed_m=case.facts.reach_m,
            taped=case.rig.fill.taped,
            nearest=nearest,
        )

    def nearest(self, plan: FillPlan) -> dict[Quantity, Pin]:
        """Return the pins of the nearest fill: backing gives way first, then the main line."""
        backing = self._backing or self._main
        fill = Fill(*(np.asarray(value) for value in self._wish(plan)))
        pinned = plan.held.get(Quantity.LIP_GAP)
        asked = pinned is not None and pinned.origin is Origin.PINNED
        least = pinned.value_m if pinned is not None and asked else self._bounds.low
        found = nearest_fill(
            spool=self._spool.typical_shape(),
            fill=Fill(fill.backing_length_m, fill.top_length_m, np.asarray(least)),
            backing_diameter_m=backing.diameter_m.typical,
            top_diameter_m=self._main.diameter_m.typical,
            smallest_lip_gap_m=least,
        )
        gap = Pin(least, Origin.PINNED if asked else Origin.PRACTICE)
        kept = Pin(float(found.backing_length_m), Origin.PRACTICE)
        if float(found.backing_length_m) <= 1e-6:
            return {Quantity.BACKING: Pin(0.0, Origin.NONE), Quantity.LIP_GAP: gap}
        return {Quantity.BACKING: kept, Quantity.LIP_GAP: gap}

    def _wish(self, plan: FillPlan) -> tuple[float, float, float]:
        """Return backing and main line as wished for; a main line below 0 becomes what is needed."""
        wish = {name: pin.value_m for name, pin in plan.held.items()}
        wish[plan.follows] = plan.wanted_m
        main = wish[Quantity.MAIN] if wish[Quantity.MAIN] > 0.0 else plan.needed_m.typical
        backing = max(wish[Quantity.BACKING], 0.0)
        return backing, main, wish[Quantity.LIP_GAP]

    def _inputs(self) -> dict[str, Range]:
        columns, row = self._case.facts.columns, self._case.facts.row
        ratio = columns.value("gear_ratio", row)
        if ratio is None:
            raise LookupError("every reel has a gear ratio, printed or usual")
        lines = {"main": self._main} | ({"backing": self._backing} if self._backing else {})
        found = self._spool.inputs() | {"gear_ratio": ratio}
        for name, line in lines.items():
            found[f"{name}_d_m"] = line.diameter_m
            found[f"{name}_kg_m3"] = line.kg_per_room_m3
        return found

    def _balanced(self, held: Mapping[Quantity, Pin]) -> "_Balanced":
        wish = {name: pin.value_m for name, pin in held.items()}
        return _Balanced(wish, self._spool.width_m.typical)


class _Balanced:
    """The balance as a formula of its uncertain inputs, for two pinned quantities."""

    def __init__(self, wish: Mapping[Quantity, float], width_m: float) -> None:
        self._wish, self._width = wish, width_m

    def __call__(
        self, *, room_m3: Array, arbor_m: Array, rim_m: Array, label_gap_m: Array, gear_ratio: Array,
        main_d_m: Array, main_kg_m3: Array, backing_d_m: Array | None = None,
        backing_kg_m3: Array | None = None,
    ) -> dict[str, Array]:  # fmt: skip
        spool = shape(
            room_m3=room_m3, arbor_m=arbor_m, rim_m=rim_m, label_gap_m=label_gap_m, width_m=self._width
        )
        under_d = main_d_m if backing_d_m is None else backing_d_m
        fill = balance(
            spool=spool,
            backing_diameter_m=under_d,
            top_diameter_m=main_d_m,
            backing_length_m=self._wish.get(Quantity.BACKING),
            top_length_m=self._wish.get(Quantity.MAIN),
            lip_gap_m=self._wish.get(Quantity.LIP_GAP),
        )
        rooms = {
            Quantity.BACKING: np.maximum(fill.backing_length_m, 0.0) * under_d**2,
            Quantity.MAIN: np.maximum(fill.top_length_m, 0.0) * main_d_m**2,
        }
        core = _over(spool, rooms[Quantity.BACKING])
        across = _over(spool, rooms[Quantity.BACKING] + rooms[Quantity.MAIN])
        return {
            "backing_wanted_m": fill.backing_length_m,
            "main_wanted_m": fill.top_length_m,
            "lip_gap_wanted_m": fill.lip_gap_m,
            "backing_turns": _turns(arbor_m, core, fill.backing_length_m, gear_ratio),
            "main_turns": _turns(core, across, fill.top_length_m, gear_ratio),
            "backing_kg": rooms[Quantity.BACKING] * (main_kg_m3 if backing_kg_m3 is None else backing_kg_m3),
            "main_kg": rooms[Quantity.MAIN] * main_kg_m3,
            "bare_m": arbor_m,
            "core_m": core,
            "across_m": across,
        }


def _over(spool: SpoolShape, room_m3: Array) -> Array:
    """Return the diameter over the line once a room is taken [m]."""
    return spool.across_m(spool.lip_gap_m(room_m3=room_m3))


def _turns(start: Array, end: Array, length: Array, ratio: Array) -> Array:
    return handle_turns(
        start_diameter_m=start,
        end_diameter_m=np.maximum(end, start),
        length_m=np.maximum(length, 0.0),
        gear_ratio=ratio,
    )


def _winding(line: Line, thick: Thickness, found: Mapping[str, Range], name: Quantity) -> Winding:
    under, over = ("bare_m", "core_m") if name is Quantity.BACKING else ("core_m", "across_m")
    return Winding(
        line=line,
        diameter_m=thick.diameter_m,
        length_m=at_least(found[f"{name}_wanted_m"], 0.0),
        turns=at_least(found[f"{name}_turns"], 0.0),
        mass_kg=at_least(found[f"{name}_kg"], 0.0),
        under_m=found[under],
        over_m=found[over],
    )


def _known(plan: FillPlan) -> list[Known]:
    room = plan.spool.room
    parts = [("main line", plan.main)] + ([("backing", plan.backing)] if plan.backing else [])
    found = [room]
    for name, part in parts:
        found += [
            Known(
                f"{name} length", f"length of {name}", part.length_m, "m",
                "pinned, or what the other two leave: room − length × diameter² of the other line, "
                "over this diameter²",
                ((room.label, room.value), (f"diameter of the {name}", part.diameter_m)),
                (_BALANCE, *room.sources, _MATERIAL),
            ),
            Known(
                f"{name} turns", f"turns of the handle for {name}", part.turns, "turns",
                "length / (pi × gear ratio × mean of the diameters before and after)",
                (("length", part.length_m), ("diameter before", part.under_m), ("after", part.over_m)),
                (_TURNS, FROM_MEMORY),
            ),
            Known(
                f"{name} weight", f"weight of {name}", part.mass_kg, "kg", "length × mass per metre",
                (("length", part.length_m),), (_MASS, _MATERIAL),
            ),
        ]  # fmt: skip
    gap = Known(
        "lip gap", "lip gap", plan.lip_gap_m, "m",
        "(rim − sqrt(bare spool² + line / room × (full² − bare spool²))) / 2",
        (("rim", plan.spool.rim_m), ("bare spool", plan.spool.arbor_m)), (_BALANCE, FROM_MEMORY),
    )  # fmt: skip
    return [*found, gap]
