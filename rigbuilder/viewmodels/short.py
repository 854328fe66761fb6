"""The rig in short: the few figures that a person takes to the water, each with how it is known."""

from collections.abc import Callable
from dataclasses import dataclass

from rigbuilder.model.assume import Assumed
from rigbuilder.plans.fill import FillPlan, fill_plan
from rigbuilder.plans.fillwords import count_words
from rigbuilder.plans.known import Known as Planned
from rigbuilder.reference.ranges import Range
from rigbuilder.review.engine import Report
from rigbuilder.review.explain import distinct, source_words
from rigbuilder.review.facts import Facts
from rigbuilder.review.figuring.table import FACTS
from rigbuilder.review.figuring.working import working
from rigbuilder.review.speak import Speaker
from rigbuilder.units.dimensions import Dimension
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.reasons import capital
from rigbuilder.viewmodels.slate import field_words

Say = Callable[[Facts, Speaker], str]
FillSay = Callable[[FillPlan, Speaker], str]

_LEAST_BACKING_M = 3.0  # less is not worth a knot: a figure of ours
_DIMENSIONS = {"m": Dimension.LENGTH, "N": Dimension.FORCE, "kg": Dimension.MASS, "m/s": Dimension.SPEED}


@dataclass(frozen=True, slots=True)
class ShortRow:
    """One value: its name, its words, what it means, and the figures that lie behind it."""

    key: str
    name: str
    value: str
    meaning: str = ""
    figures: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Known:
    """How one figure is known: its result, formula, inputs and sources, in words."""

    title: str
    result: str
    formula: str
    inputs: tuple[str, ...]
    sources: tuple[str, ...]


def short_rows(bench: Bench) -> tuple[ShortRow, ...]:
    """Return the rows for the rig on the bench, none while the card cannot be read."""
    report = bench.report
    if report is None:
        return ()
    facts, speaker = report.case.facts, bench.speaker
    rows = [
        ShortRow(key, name, value, meaning, figures)
        for key, name, meaning, figures, say in _ROWS
        if (value := say(facts, speaker))
    ]
    plan = fill_plan(report.case).feasible
    filled = [
        ShortRow(key, name, say(plan, speaker), why, known) for key, name, why, known, say in _FILL_ROWS
    ]
    rows[_AFTER:_AFTER] = filled
    return (*rows, _assumed_row(bench))


def how_we_know(bench: Bench, row: ShortRow) -> tuple[Known, ...]:
    """Return the workings behind one row, figure by figure; of an assumption its reason."""
    report = bench.report
    if report is None:
        return ()
    if row.key == "assumed":
        return tuple(_assumption(entry) for entry in bench.reading.assumed)
    if row.key in ("line", "turns"):
        known = fill_plan(report.case).feasible.known()
        return tuple(_planned(each, bench.speaker) for each in known if each.name in row.figures)
    lead = (_chain(report, bench.speaker),) if row.key == "weakest" else ()
    facts = report.case.facts
    found = [_known(name, facts, bench.speaker) for name in row.figures]
    return (*lead, *(each for each in found if each.result))


def _weakest(facts: Facts, speaker: Speaker) -> str:
    return f"{facts.weakest.name}, {speaker.forces(facts.weakest.strength_n)}"


def _drag(facts: Facts, speaker: Speaker) -> str:
    return f"{speaker.forces(facts.drag_recommended_n)} on the scale"


def _line(plan: FillPlan, speaker: Speaker) -> str:
    main = f"{speaker.line(plan.main.length_m.typical)} main line"
    if plan.backing is None:
        return main
    if plan.backing.length_m.typical < _LEAST_BACKING_M:
        return f"{main}, hardly any room for backing"
    return f"{main} over {speaker.spread(plan.backing.length_m, Dimension.LENGTH, 'line')} backing"


def _turns(plan: FillPlan, speaker: Speaker) -> str:
    main, backing = count_words(plan.main.turns), plan.backing
    if backing is None or backing.length_m.typical < _LEAST_BACKING_M:
        return main
    return f"{count_words(backing.turns)} backing, then {main} main"


def _hook(facts: Facts, speaker: Speaker) -> str:
    return f"{_share(facts.hook_share)} of the usual rig's"


def _cast(facts: Facts, speaker: Speaker) -> str:
    return f"{_share(facts.cast_share)} of the usual rig's"


def _depth(facts: Facts, speaker: Speaker) -> str:
    return "" if facts.depth_m is None else speaker.spread(facts.depth_m, Dimension.LENGTH, "depth")


_ROWS: tuple[tuple[str, str, str, tuple[str, ...], Say], ...] = (
    ("weakest", "Weakest link", "What gives way first when the pull grows.", ("chain_n",), _weakest),
    ("drag", "Set the drag to", "Pulled straight off the reel with a scale.",
     ("drag_recommended_n", "drag_ceiling_n", "drag_on_scale_n"), _drag),
    ("hook", "Pull at the hook", "With the cast all out, against the technique's usual rig.",
     ("hook_share", "hook_force_n"), _hook),
    ("cast", "Length of cast", "Against the technique's usual rig.",
     ("cast_share", "cast_distance_m"), _cast),
    ("depth", "Runs at", "With the cast all out.", ("depth_m",), _depth),
)  # fmt: skip


_FILL_ROWS: tuple[tuple[str, str, str, tuple[str, ...], FillSay], ...] = (
    ("line", "Line needed", "Main line on top, backing under it.",
     ("main line length", "backing length"), _line),
    ("turns", "Handle turns", "Counted while the spool is filled.",
     ("backing turns", "main line turns"), _turns),
)  # fmt: skip
_AFTER = 2  # how many rows stand before those of the fill


def _assumed_row(bench: Bench) -> ShortRow:
    count = len(bench.reading.assumed)
    words = "nothing" if count == 0 else "1 value" if count == 1 else f"{count} values"
    return ShortRow("assumed", "Assumed", words, "What the card leaves unsaid and something stands for.")


def _assumption(entry: Assumed) -> Known:
    value = "none" if entry.value is None else entry.value
    return Known(capital(field_words(entry.field)), value, "", (), (capital(entry.why),))


def _chain(report: Report, speaker: Speaker) -> Known:
    links = tuple(
        f"{link.name}: {speaker.forces(link.strength_n)}, first in {100 * link.goes_first:.0f} % of pulls"
        for link in report.case.facts.links
    )
    weakest = report.case.facts.weakest
    return Known("Link by link", f"{weakest.name} goes first", "", links, ())


def _known(name: str, facts: Facts, speaker: Speaker) -> Known:
    found = working(name, facts)
    inputs = tuple(
        f"{each.label}: {_value(each.name, each.value, each.unit, speaker)}"
        for each in found.inputs
        if each.value is not None
    )
    sources = tuple(capital(source_words(source)) for source in distinct(found.sources))
    result = "" if found.result is None else _value(name, found.result, found.unit, speaker)
    return Known(capital(found.label), result, found.formula, inputs, sources)


def _planned(found: Planned, speaker: Speaker) -> Known:
    inputs = tuple(f"{label}: {_plan_value(value, label, speaker)}" for label, value in found.inputs)
    sources = tuple(capital(source_words(source)) for source in distinct(found.sources))
    result = (
        count_words(found.value)
        if found.unit == "turns"
        else speaker.spread(found.value, Dimension.LENGTH, "line")
    )
    return Known(capital(found.label), result, found.formula, inputs, sources)


def _plan_value(value: Range, label: str, speaker: Speaker) -> str:
    if label.startswith("room"):
        low, typical, high = (f"{part * 1e6:.2g}" for part in value)
        return f"{typical} ({low}–{high}) m·mm²"
    return speaker.spread(value, Dimension.LENGTH, "line" if label == "length" else "diameter")


def _value(name: str, value: Range, unit: str, speaker: Speaker) -> str:
    row, dimension = FACTS.get(name), _DIMENSIONS.get(unit)
    if row is not None and row.kind == "share":
        return _share(value)
    if dimension is not None:
        return speaker.spread(value, dimension, "" if row is None else row.kind)
    low, typical, high = (_plain(part) for part in value)
    words = typical if low == high else f"{typical} ({low}–{high})"
    return words if unit in ("", "1") else f"{words} {unit}"


def _plain(value: float) -> str:
    return f"{value:.0f}" if 100 <= abs(value) < 1e6 else f"{value:.2g}"


def _share(value: Range) -> str:
    low, typical, high = (f"{100 * part:.2g}" for part in value)
    return f"{_whole(typical)} %" if low == high else f"{_whole(typical)} % ({_whole(low)}–{_whole(high)})"


def _whole(text: str) -> str:
    return f"{float(text):g}"
