"""What a fill costs: now, in a season, and what backing saves; in whatever currency the card names."""

import math
from dataclasses import dataclass

from rigbuilder.model.rig import Line, Price
from rigbuilder.plans.fill import FillPlan
from rigbuilder.plans.fillwords import length_words
from rigbuilder.plans.known import Remark
from rigbuilder.plans.sheet import Sheet
from rigbuilder.reference.ranges import Range
from rigbuilder.review.case import Case
from rigbuilder.review.speak import Speaker


@dataclass(frozen=True, slots=True)
class LineCost:
    """One line of a fill: how much of it [m], what that costs, and how often the spool bought lasts.

    ``fills`` is how many fills one spool bought gives; below one, ``spools`` are needed.
    """

    name: str
    line: Line
    length_m: Range
    price: Price
    cost: Range
    fills: int
    spools: int


@dataclass(frozen=True, slots=True)
class CostPlan:
    """The cost of one fill and of a season. ``unpriced`` names lines without a price."""

    lines: tuple[LineCost, ...]
    unpriced: tuple[str, ...]
    refills: float
    refills_why: str
    season: tuple[tuple[str, Range], ...]
    saved: tuple[str, Range] | None

    @property
    def totals(self) -> tuple[tuple[str, Range], ...]:
        """Return the cost of this fill by currency."""
        return _by_currency([(one.price.currency, one.cost) for one in self.lines])


def cost_plan(plan: FillPlan, case: Case) -> CostPlan:
    """Return the cost of a fill (of the nearest one where the wish is impossible)."""
    shown = plan.feasible
    parts = [("main line", shown.main.line, shown.main.length_m)]
    if shown.backing is not None and shown.backing.length_m.high > 0.0:
        parts.append(("backing", shown.backing.line, shown.backing.length_m))
    if case.leader is not None and case.leader.length_m:
        parts.append(("leader", case.leader, Range.exactly(case.leader.length_m)))
    lines = tuple(
        line_cost(name, line, length, line.price) for name, line, length in parts if line.price is not None
    )
    refills, why = _refills(case)
    renewed = [(one.price.currency, one.cost.scaled(refills)) for one in lines if one.name == "main line"]
    return CostPlan(
        lines=lines,
        unpriced=tuple(name for name, line, _ in parts if line.price is None),
        refills=refills,
        refills_why=why,
        season=_by_currency(renewed),
        saved=_saved(plan, lines),
    )


def line_cost(name: str, line: Line, length_m: Range, price: Price) -> LineCost:
    """Return what a length of line costs by the price of the spool that it comes from."""
    cost = length_m.scaled(price.amount / price.length_m) if price.amount > 0 else Range.exactly(0.0)
    length = max(length_m.typical, 1e-9)
    fills = math.floor(price.length_m / length * (1 + 1e-9))
    return LineCost(name, line, length_m, price, cost, fills, math.ceil(length / price.length_m * (1 - 1e-9)))


def usual_refills(case: Case) -> float:
    """Return how often a year practice renews such a main line, at the least."""
    return 12.0 / case.reference.respool[str(case.main.type)].max_months


def _refills(case: Case) -> tuple[float, str]:
    said = case.rig.fill.season_refills
    if said is not None:
        return said, "as the card says"
    row = case.reference.respool[str(case.main.type)]
    return usual_refills(case), f"at the least; practice for a weekend angler: {row.weekend}"


def _saved(plan: FillPlan, lines: tuple[LineCost, ...]) -> tuple[str, Range] | None:
    """Return what the backing saves against filling the whole spool with main line."""
    shown = plan.feasible
    main = next((one for one in lines if one.name == "main line"), None)
    under = next((one for one in lines if one.name == "backing"), None)
    if main is None or shown.backing is None or shown.backing.length_m.typical <= 0.0:
        return None
    if under is not None and under.price.currency != main.price.currency:
        return None
    # The same room in main line: what backing takes goes by the square of the diameters.
    ratio = (shown.backing.diameter_m.typical / shown.main.diameter_m.typical) ** 2
    per_metre = main.price.amount / main.price.length_m
    spent = 0.0 if under is None else under.price.amount / under.price.length_m
    each = ratio * per_metre - spent
    ends = sorted(length * each for length in shown.backing.length_m)
    return main.price.currency, Range(ends[0], ends[1], ends[2])


def _by_currency(found: list[tuple[str, Range]]) -> tuple[tuple[str, Range], ...]:
    sums: dict[str, Range] = {}
    for currency, cost in found:
        before = sums.get(currency, Range.exactly(0.0))
        # The length of one line follows from the other's, so their ends do not add up: typical ± root sum.
        low = before.typical + cost.typical - math.hypot(before.typical - before.low, cost.typical - cost.low)
        high = (
            before.typical + cost.typical + math.hypot(before.high - before.typical, cost.high - cost.typical)
        )
        sums[currency] = Range(max(low, 0.0), before.typical + cost.typical, high)
    return tuple(sums.items())


def money(currency: str, cost: Range) -> str:
    """Return a cost with its range, in its currency."""
    low, typical, high = (f"{one:.2f}" for one in cost)
    shown = typical if low == high else f"{typical} ({low}–{high})"
    return f"{shown} {currency}".strip()


def cost_sheet(plan: CostPlan, speaker: Speaker) -> Sheet:
    """Return the cost as a table."""
    head = ("line", "length", "spool bought", "one spool gives", "cost", "currency")
    rows = [
        (
            one.name,
            length_words(one.length_m, speaker),
            f"{one.price.amount:.2f} for {speaker.line(one.price.length_m)}",
            _gives(one),
            *_cells(one.price.currency, one.cost),
        )
        for one in plan.lines
    ]
    rows += [("this fill", "", "", "", *_cells(currency, cost)) for currency, cost in plan.totals]
    rows += [("a season", "", "", "", *_cells(currency, cost)) for currency, cost in plan.season]
    if plan.saved is not None:
        rows.append(("backing saves", "", "", "", *_cells(*plan.saved)))
    note = f"Main line renewed {_often(plan.refills)} ({plan.refills_why}); the backing stays on."
    return Sheet("What does it cost?", head, tuple(rows), note if plan.season else "")


def _often(refills: float) -> str:
    if refills < 1.0:
        return f"once in {1.0 / refills:.2g} years"
    return "once a year" if refills == 1.0 else f"{refills:g} times a year"


def _cells(currency: str, cost: Range) -> tuple[str, str]:
    return money("", cost), currency


def _gives(one: LineCost) -> str:
    if one.fills >= 1:
        return "1 fill" if one.fills == 1 else f"{one.fills} fills"
    return f"too short: {one.spools} spools"


def cost_remarks(plan: CostPlan, speaker: Speaker) -> tuple[Remark, ...]:
    """Return what is worth saying about the cost."""
    found = [
        Remark(
            "risk",
            f"One spool of {one.name} holds {speaker.line(one.price.length_m)}, less than the "
            f"{speaker.line(one.length_m.typical)} wanted in one piece: buy a longer one.",
        )
        for one in plan.lines
        if one.fills < 1
    ]
    if plan.unpriced:
        lines = " and ".join(f"the {name}" for name in plan.unpriced)
        count = "it is" if len(plan.unpriced) == 1 else "they are"
        found.append(Remark("note", f"The card names no price for {lines}, so {count} not counted."))
    if plan.saved is not None:
        currency, cost = plan.saved
        if cost.typical > 0:
            found.append(Remark("right", f"The backing saves about {cost.typical:.2f} {currency} each fill."))
        else:
            words = f"This backing costs {-cost.typical:.2f} {currency} more than main line in its place."
            found.append(Remark("note", words))
    return tuple(found)
