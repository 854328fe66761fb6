"""The fill of the rig on the bench as a person reads it, and the pins that a person sets."""

import math
from dataclasses import dataclass, replace
from typing import Any

from PySide6.QtCore import QObject, Signal

from rigbuilder.model.document import get
from rigbuilder.plans.cost import cost_plan, cost_remarks, cost_sheet, usual_refills
from rigbuilder.plans.fill import FillPlan, Winding, fill_plan
from rigbuilder.plans.fillsteps import Step, fill_steps
from rigbuilder.plans.fillwords import (
    NAMES,
    consequences,
    count_words,
    fill_sheet,
    gap_words,
    gram_words,
    headline,
    length_words,
    taken_words,
)
from rigbuilder.plans.known import Remark
from rigbuilder.plans.pins import Origin, Quantity
from rigbuilder.plans.reverse import reverse_plan
from rigbuilder.plans.sheet import Sheet, as_csv
from rigbuilder.reference.ranges import Range
from rigbuilder.review.case import Case
from rigbuilder.review.explain import distinct, source_words
from rigbuilder.review.speak import Speaker
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.systems import in_system
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.fieldtext import card_text, reads
from rigbuilder.viewmodels.reasons import capital
from rigbuilder.viewmodels.spoolview import SpoolShown, WoundWords, spool_shown

MOST_REFILLS = 100  # times a year that a card may say [1]
PATHS = {name: f"fill.{name}" for name in Quantity}


@dataclass(frozen=True, slots=True)
class PinShown:
    """One of the three quantities: its text for the card, whether it is pinned, and where it comes from."""

    quantity: str
    path: str
    label: str
    text: str
    pinned: bool
    origin: str


@dataclass(frozen=True, slots=True)
class FillShown:
    """Everything that the pane of the spool shows."""

    headline: str
    possible: bool
    remarks: tuple[Remark, ...]
    pins: tuple[PinShown, ...]
    table: Sheet
    steps: tuple[Step, ...]
    reverse: tuple[Step, ...]
    reverse_worth: Remark
    cost: Sheet
    cost_remarks: tuple[Remark, ...]
    taken: tuple[str, ...]
    sources: tuple[str, ...]
    section: SpoolShown
    lengths: tuple[tuple[str, str], ...]


class FillModel(QObject):
    """The fill, worked out when it is asked for; every pin is one undoable edit of the card."""

    changed = Signal()

    def __init__(self, bench: Bench, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self._shown: FillShown | None = None
        bench.report_changed.connect(self._forget)
        bench.units_changed.connect(self._forget)

    def shown(self) -> FillShown | None:
        """Return the fill of the present rig, ``None`` while the card cannot be read."""
        report = self.bench.report
        if self._shown is None and report is not None:
            self._shown = _shown(report.case, self.bench.speaker, spool_shown(report, self.bench.speaker))
        return self._shown

    def pin(self, quantity: str, typed: str) -> str:
        """Pin a quantity to what was typed; return why that cannot be, empty if it was done.

        Of three pins one has to give way: the lip gap, or the backing where the lip gap is pinned.
        """
        path = PATHS[Quantity(quantity)]
        text = card_text(path, typed, self.bench.speaker.system)
        if not text:
            self.release(quantity)
            return ""
        if not reads(path, text, self.bench.reference):
            return "A length is wanted, such as 80 yd, 75 m or, for the lip gap, 2 mm."
        others = [name for name in Quantity if str(name) != quantity and self.is_pinned(name)]
        along: dict[str, Any] = {}
        if len(others) == 2:
            gives_way = Quantity.LIP_GAP if Quantity.LIP_GAP in others else Quantity.BACKING
            along = {"fill": {key: value for key, value in self._wishes().items() if key != gives_way}}
        self.bench.edit(path, text, along=along)
        return ""

    def release(self, quantity: str) -> None:
        """Let a quantity follow again."""
        if self.is_pinned(Quantity(quantity)):
            self.bench.clear(PATHS[Quantity(quantity)])
            self.bench.settle()

    def is_pinned(self, quantity: Quantity) -> bool:
        """Tell whether the card pins a quantity."""
        return isinstance(self._wishes().get(str(quantity)), str)

    @property
    def taped(self) -> bool:
        """Return whether the card says that the spool is taped."""
        return self._wishes().get("taped") is True

    def tape(self, taped: bool) -> None:
        """Say on the card whether tape grips the line."""
        if taped != self.taped:
            if taped:
                self.bench.edit("fill.taped", True)
            else:
                self.bench.clear("fill.taped")
            self.bench.settle()

    def refills(self) -> str:
        """Return how often a year the card renews the main line, empty if it does not say."""
        found = self._wishes().get("season_refills")
        return f"{found:g}" if isinstance(found, int | float) else str(found or "")

    def usual_refills(self) -> str:
        """Return practice's number for this line, empty while the card cannot be read."""
        report = self.bench.report
        return "" if report is None else f"{usual_refills(report.case):.2g}"

    def set_refills(self, typed: str) -> str:
        """Say how often a year the main line is renewed; return why that cannot be, empty if it was done."""
        text = typed.strip().replace(",", ".")
        if not text:
            self.bench.clear("fill.season_refills")
            return ""
        try:
            times = float(text)
        except ValueError:
            times = math.nan
        if not 0.0 < times <= MOST_REFILLS:
            return f"A number above 0 and up to {MOST_REFILLS} is wanted, such as 1 or 2.5."
        self.bench.edit("fill.season_refills", int(times) if times.is_integer() else times)
        return ""

    def note_fill(self) -> bool:
        """Write the lengths of this fill onto the card as one undoable edit; tell whether it changed."""
        shown = self.shown()
        before = self.bench.document
        if shown is not None and shown.lengths:
            self.bench.apply(dict(shown.lengths), "note the fill")
        return self.bench.document != before

    def csv(self) -> str:
        """Return fill and cost as comma-separated values."""
        shown = self.shown()
        if shown is None:
            return ""
        tables = [shown.table, shown.cost] if shown.cost.rows else [shown.table]
        return "\r\n".join(as_csv(table) for table in tables)

    def _wishes(self) -> dict[str, Any]:
        found = get(self.bench.document, "fill")
        return dict(found) if isinstance(found, dict) else {}

    def _forget(self, *_: object) -> None:
        self._shown = None
        self.changed.emit()


def _shown(case: Case, speaker: Speaker, section: SpoolShown) -> FillShown:
    plan = fill_plan(case)
    cost, turned = cost_plan(plan, case), reverse_plan(plan, case, speaker)
    sources = distinct(source for known in plan.known() for source in known.sources)
    return FillShown(
        headline=capital(headline(plan, speaker)),
        possible=plan.possible,
        remarks=consequences(plan, speaker),
        pins=tuple(_pin(name, plan, speaker) for name in (Quantity.MAIN, Quantity.BACKING, Quantity.LIP_GAP)),
        table=fill_sheet(plan, speaker),
        steps=fill_steps(plan, case, speaker),
        reverse=turned.steps,
        reverse_worth=turned.worth,
        cost=cost_sheet(cost, speaker),
        cost_remarks=cost_remarks(cost, speaker),
        taken=tuple(capital(taken_words(taken, speaker)) for taken in plan.spool.taken),
        sources=tuple(capital(source_words(source)) for source in sources),
        section=_section(plan, speaker, section),
        lengths=_lengths(plan, case, speaker),
    )


def _lengths(plan: FillPlan, case: Case, speaker: Speaker) -> tuple[tuple[str, str], ...]:
    """Return the lengths of the fill as the card would have them; backing only where the card gives it."""
    shown = plan.feasible
    found = [("main.length", _card_words(Quantity.MAIN, shown.main.length_m.typical, speaker))]
    under = shown.backing
    if under is not None and case.rig.says("backing.type") and under.length_m.typical >= 1.0:
        found.append(("backing.length", _card_words(Quantity.BACKING, under.length_m.typical, speaker)))
    return tuple(found)


def _pin(name: Quantity, plan: FillPlan, speaker: Speaker) -> PinShown:
    shown = plan.feasible
    pin = plan.held.get(name)
    pinned = pin is not None and pin.origin is Origin.PINNED
    value = {
        Quantity.MAIN: shown.main.length_m,
        Quantity.BACKING: shown.backing.length_m if shown.backing is not None else None,
        Quantity.LIP_GAP: shown.lip_gap_m,
    }[name]
    if value is None:
        text, origin = "", "none on this card"
    elif pinned and pin is not None:
        text, origin = _card_words(name, pin.value_m, speaker), "pinned"
    else:
        text = _card_words(name, value.typical, speaker)
        origin = str(pin.origin) if pin is not None else f"follows: {_range(name, plan, speaker)}"
    return PinShown(str(name), PATHS[name], capital(NAMES[name]), text, pinned, origin)


def _range(name: Quantity, plan: FillPlan, speaker: Speaker) -> str:
    shown = plan.feasible
    if name is Quantity.LIP_GAP:
        low, high = shown.lip_gap_m.low * 1000, shown.lip_gap_m.high * 1000
        return f"{low:.1f} to {high:.1f} mm"
    part = shown.main if name is Quantity.MAIN else shown.backing
    return "" if part is None else length_words(part.length_m, speaker)


def _card_words(name: Quantity, value_m: float, speaker: Speaker) -> str:
    """Return a value as the card would have it, in the units of the speaker."""
    if name is Quantity.LIP_GAP:
        return f"{value_m * 1000:.2g} mm"
    number, symbol = in_system(value_m, Dimension.LENGTH, speaker.system, kind="line")
    return f"{number:.0f} {symbol}"


def _section(plan: FillPlan, speaker: Speaker, section: SpoolShown) -> SpoolShown:
    """Return the section of the spool as this plan fills it, to scale."""
    shown, spool = plan.feasible, plan.spool
    fill, core = shown.main.over_m.typical, shown.main.under_m.typical
    share = min(plan.cast_m / max(shown.main.length_m.typical, 1e-6), 1.0)
    under = shown.backing
    backing = None
    if under is not None and under.length_m.typical > 0.0:
        backing = _words("backing", under, speaker)
    gap = shown.lip_gap_m.typical
    return replace(
        section,
        width_m=spool.width_m.typical,
        barrel_m=spool.arbor_m.typical,
        core_m=core,
        fill_m=fill,
        lip_m=spool.rim_m.typical,
        after_cast_m=(fill**2 - (fill**2 - core**2) * share) ** 0.5,
        gap=f"lip gap {gap_words(gap, speaker)}",
        main=_words(str(shown.main.line.type), shown.main, speaker),
        backing=backing,
    )


def _words(kind: str, part: Winding, speaker: Speaker) -> WoundWords:
    """Return what stands beside the section; the ranges stand in the table."""
    return WoundWords(
        name=kind,
        type=kind,
        length=speaker.line(part.length_m.typical),
        turns=f"{count_words(Range.exactly(part.turns.typical))} turns of the handle",
        grams=gram_words(Range.exactly(part.mass_kg.typical)),
    )
