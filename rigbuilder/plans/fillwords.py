"""A fill in words: what it amounts to, what follows from it, its table."""

from rigbuilder.plans.fill import FillPlan, Winding
from rigbuilder.plans.known import Remark, Taken
from rigbuilder.plans.pins import Origin, Quantity
from rigbuilder.plans.sheet import Sheet
from rigbuilder.reference.ranges import YARD_M, Range
from rigbuilder.review.speak import Speaker
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.systems import UnitSystem

SCRAP_M = 4.0  # less backing than this is hardly worth a knot [m], from memory
SCALE_KG = 0.005  # a kitchen scale that shows whole grams tells no less than this apart [kg], from memory

NAMES = {Quantity.BACKING: "backing", Quantity.MAIN: "main line", Quantity.LIP_GAP: "lip gap"}


def gap_words(gap_m: float, speaker: Speaker) -> str:
    """Return a lip gap: millimetres, in the imperial system with inches beside them."""
    millimetres = f"{gap_m * 1000:.1f} mm"
    if speaker.system is UnitSystem.METRIC:
        return millimetres
    return f"{gap_m / 0.0254:.2f} in ({millimetres})"


def count_words(value: Range) -> str:
    """Return a number of turns with its range, as rough as it is known."""
    low, typical, high = (round(one) if one < 100 else 5 * round(one / 5) for one in value)
    return f"{typical}" if low == high else f"{typical} ({low}–{high})"


def gram_words(value: Range) -> str:
    """Return a mass on a kitchen scale with its range."""
    low, typical, high = (f"{one * 1000:.1f}" if one < 0.01 else f"{one * 1000:.0f}" for one in value)
    return f"{typical} g" if low == high else f"{typical} g ({low}–{high})"


def length_words(value: Range, speaker: Speaker) -> str:
    """Return a length of line with its range."""
    return speaker.spread(value, Dimension.LENGTH, "line")


def headline(plan: FillPlan, speaker: Speaker) -> str:
    """Return the fill in one sentence; where the wish is impossible, the nearest one."""
    shown = plan.feasible
    main = f"{speaker.line(shown.main.length_m.typical)} of {_line(shown.main, speaker)}"
    gap = f"lip gap {gap_words(shown.lip_gap_m.typical, speaker)}"
    under = shown.backing
    if under is None or under.length_m.typical <= 0.0:
        words = f"{main} alone, {gap}"
    else:
        words = f"{speaker.line(under.length_m.typical)} of {_line(under, speaker)}, then {main}, {gap}"
    return words if plan.possible else f"nearest that fits: {words}"


def _line(part: Winding, speaker: Speaker) -> str:
    test = f" {speaker.test(part.line.test_n)}" if part.line.test_n else ""
    return f"{part.line.type}{test}"


def consequences(plan: FillPlan, speaker: Speaker) -> tuple[Remark, ...]:
    """Return what follows from a fill, worst first."""
    found = [*_impossible(plan, speaker), *_knot(plan, speaker), *_gap(plan, speaker), *_arbor(plan, speaker)]
    found += [Remark("note", words) for words in plan.spool.remarks]
    found += [
        Remark("note", f"Only two of the three can be pinned: the {NAMES[name]} follows from the others.")
        for name in plan.dropped
    ]
    order = ("fault", "risk", "note", "right")
    return tuple(sorted(found, key=lambda remark: order.index(remark.severity)))


def _impossible(plan: FillPlan, speaker: Speaker) -> list[Remark]:
    if plan.nearest is None:
        return []
    wished = {name: pin.value_m for name, pin in plan.held.items()}
    main = speaker.line(plan.main.length_m.typical)
    if wished.get(Quantity.LIP_GAP, 0.0) >= plan.spool.deepest_gap_m:
        over = "That lip gap is as deep as the spool: no line would be left on it."
    elif plan.follows is Quantity.BACKING:
        over = f"{main} of main line is more than the spool holds at that lip gap."
    elif plan.follows is Quantity.MAIN:
        backing = speaker.line(wished.get(Quantity.BACKING, 0.0))
        over = f"{backing} of backing fills the spool already; there is no room for main line."
    else:
        over = "Backing and main line together would stand above the rim."
    nearest = headline(plan, speaker)
    return [Remark("fault", f"{over} {nearest[0].upper()}{nearest[1:]}.")]


def _knot(plan: FillPlan, speaker: Speaker) -> list[Remark]:
    shown, cast = plan.feasible, plan.cast_m
    length = shown.main.length_m
    if shown.backing is None or shown.backing.length_m.typical <= 0.0:
        short = length.typical < cast + (plan.past_cast_m - cast) / 2
        words = f"{speaker.line(length.typical)} is little for casts of {speaker.cast(cast)} and a run."
        return [Remark("risk", words)] if short else []
    if length.typical < cast:
        words = (
            f"The backing knot lies inside the cast: only {speaker.line(length.typical)} of main line for "
            f"casts of {speaker.line(cast)}. Coils catch on it in every long cast."
        )
        return [Remark("fault", words)]
    needed, trim = plan.past_cast_m, plan.needed_m.typical - plan.past_cast_m
    if length.typical < needed:
        words = (
            f"The backing knot lies close under the cast. Practice wants {speaker.line(needed)} over it, "
            f"and about {speaker.line(trim)} more for what is trimmed off in a season."
        )
        return [Remark("risk", words)]
    if length.typical < plan.needed_m.low:
        words = "Deep enough today; what is trimmed off in a season will bring the knot close to the cast."
        return [Remark("note", words)]
    spare = speaker.line(length.typical - cast)
    return [Remark("right", f"The backing knot lies {spare} below the longest cast: deep enough.")]


def _gap(plan: FillPlan, speaker: Speaker) -> list[Remark]:
    gap, bounds = plan.feasible.lip_gap_m.typical, plan.gap_bounds
    wanted = f"{bounds.low * 1000:.1f} to {bounds.high * 1000:.1f} mm"
    if gap < bounds.low - 1e-6:
        words = (
            f"The lip gap comes to {gap_words(gap, speaker)}, below {wanted}: loops spring off, or it rubs."
        )
        return [Remark("risk", words)]
    if gap > bounds.high + 1e-6:
        words = (
            f"The lip gap comes to {gap_words(gap, speaker)}, above {wanted}: the cast shortens and each "
            "turn of the handle brings in less."
        )
        return [Remark("note", words)]
    return [Remark("right", f"The line ends {gap_words(gap, speaker)} below the lip, as it should.")]


def _arbor(plan: FillPlan, speaker: Speaker) -> list[Remark]:
    shown = plan.feasible
    under = shown.backing
    bare = under is None or under.length_m.typical <= 0.0
    if bare and shown.main.line.type.is_braided and not plan.taped:
        words = "Braid alone slips round a bare spool: one turn of thin tape under it, or a little backing."
        return [Remark("fault", words)]
    if under is not None and 0.0 < under.length_m.typical < SCRAP_M:
        words = f"Only about {speaker.line(under.length_m.typical)} of backing: a turn of tape does the same."
        return [Remark("note", words)]
    return []


def fill_sheet(plan: FillPlan, speaker: Speaker) -> Sheet:
    """Return the fill as a table: metres, yards, turns and grams of each part, and how sure they are."""
    shown = plan.feasible
    parts = [("backing", shown.backing), ("main line", shown.main)]
    rows = [
        (
            name,
            _line(part, speaker),
            _number(part.length_m, 1.0),
            _number(part.length_m, 1 / YARD_M),
            count_words(part.turns),
            gram_words(part.mass_kg),
            _how(shown, Quantity.BACKING if name == "backing" else Quantity.MAIN),
        )
        for name, part in parts
        if part is not None
    ]
    gap = ("lip gap", "", "", "", "", "", _how(shown, Quantity.LIP_GAP))
    note = ""
    if any(part is not None and 0.0 < part.mass_kg.typical < SCALE_KG for _, part in parts):
        note = "A scale that shows whole grams cannot tell the lighter part; count turns."
    head = ("part", "line", "metres", "yards", "turns of the handle", "on a scale", "how")
    return Sheet("What fills the spool?", head, (*rows, (gap[0], gap_words(shown.lip_gap_m.typical, speaker),
                                                        *gap[2:])), note)  # fmt: skip


def _number(value: Range, factor: float) -> str:
    low, typical, high = (f"{one * factor:.0f}" for one in value)
    return typical if low == high else f"{typical} ({low}–{high})"


def _how(plan: FillPlan, name: Quantity) -> str:
    pin = plan.held.get(name)
    if pin is None:
        return "follows"
    return str(pin.origin) if pin.origin is not Origin.PINNED else "pinned"


def taken_words(taken: Taken, speaker: Speaker) -> str:
    """Return one thing taken for granted, with its range and reason."""
    if taken.dimension is None:
        low, typical, high = (f"{one:.1f}" for one in taken.value)
        shown = typical if low == high else f"{typical} ({low}–{high})"
    elif taken.kind == "diameter":
        low, typical, high = (f"{one * 1000:.1f}" for one in taken.value)
        shown = f"{typical} mm" if low == high else f"{typical} mm ({low}–{high})"
    else:
        shown = speaker.spread(taken.value, taken.dimension, taken.kind)
    return f"{taken.label}: {shown} ({taken.why})"
