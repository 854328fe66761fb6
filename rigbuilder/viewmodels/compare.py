"""Two or three cards side by side: what differs on them, in their figures and in their reasons."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from rigbuilder.model.document import Document, get, leaves
from rigbuilder.model.fields import FIELDS
from rigbuilder.model.reading import Reading
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import Range
from rigbuilder.review.engine import Report
from rigbuilder.review.explain import verdict_words
from rigbuilder.review.facts import Facts
from rigbuilder.review.figuring.table import FACTS, FactRow
from rigbuilder.review.many import UNFINISHED, review_documents
from rigbuilder.review.speak import Speaker
from rigbuilder.viewmodels.reasons import capital
from rigbuilder.viewmodels.scene import RigScene, scene_of
from rigbuilder.viewmodels.slate import field_words

MOST = 3
TELLING = 0.10  # a figure that differs by more than this share is pointed out

NONE, UNSAID, SILENT, NO_FIGURE = "none", "not said", "—", "—"
_HIDDEN = ("format", "version", "id", "name")
_ROOM = "m3"  # room on a spool means nothing to a person
_MANY, _SMALL = 100, 0.01


@dataclass(frozen=True, slots=True)
class Side:
    """One of the cards that are compared."""

    name: str
    verdict: str
    words: str
    reading: Reading
    report: Report | None
    scene: RigScene | None


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the comparison; ``told`` marks the columns that stand out from the first, in words."""

    what: str
    values: tuple[str, ...]
    told: tuple[str, ...]

    @property
    def stands_out(self) -> bool:
        """Whether anything in it is pointed out."""
        return any(self.told)

    @property
    def spoken(self) -> str:
        """Return the line as read aloud."""
        said = [f"{value} {mark}".strip() for value, mark in zip(self.values, self.told, strict=True)]
        return f"{self.what}: {'; '.join(said)}"


@dataclass(frozen=True, slots=True)
class Comparison:
    """Everything that differs; ``alike`` says how much does not."""

    sides: tuple[Side, ...]
    card: tuple[Row, ...]
    figures: tuple[Row, ...]
    reasons: tuple[Row, ...]
    alike: str


def compare(
    documents: Sequence[Document], reference: Reference, house: House, speaker: Speaker
) -> Comparison:
    """Compare cards with the first of them.

    Raises:
        ValueError: there are not two or three.
    """
    if not 2 <= len(documents) <= MOST:
        raise ValueError(f"two or three cards can be compared, not {len(documents)}")
    sides = tuple(
        _side(reading, report, speaker) for reading, report in review_documents(documents, reference, house)
    )
    card, same_fields = _card_rows(sides)
    figures, same_figures = _figure_rows(sides, speaker)
    alike = f"{_count(same_fields, 'field')} and {_count(same_figures, 'figure')} are alike and not shown."
    return Comparison(sides, card, figures, _reason_rows(sides, speaker), alike)


def _side(reading: Reading, report: Report | None, speaker: Speaker) -> Side:
    name = str(reading.document.get("name") or "Rig without a name")
    if report is None:
        return Side(name, UNFINISHED, "unfinished", reading, None, None)
    words = verdict_words([finding.severity for finding in report.findings])
    return Side(name, report.verdict.word, words, reading, report, scene_of(report, speaker))


def _card_rows(sides: Sequence[Side]) -> tuple[tuple[Row, ...], int]:
    fields = (field.path for field in FIELDS)
    others = (path for side in sides for path, _ in leaves(side.reading.document))
    paths = dict.fromkeys([*fields, *others])
    rows, alike = [], 0
    for path in paths:
        if path in _HIDDEN or _is_group(path, sides):
            continue
        values = tuple(said(side.reading, path) for side in sides)
        if len(set(values)) > 1:
            rows.append(Row(capital(field_words(path)), values, _others(values)))
        elif values[0] != UNSAID:
            alike += 1
    return tuple(rows), alike


def _is_group(path: str, sides: Sequence[Side]) -> bool:
    """Tell whether a path such as ``leader`` is spoken of field by field on one of the cards."""
    return any(isinstance(get(side.reading.document, path), Mapping) for side in sides)


def said(reading: Reading, path: str) -> str:
    """Return what a card has at a path, in words: as typed, none, assumed, or not said."""
    missing = object()
    found = get(reading.document, path, missing)
    if found is missing:
        group = path.rpartition(".")[0]
        if group and get(reading.document, group, missing) is None:
            return NONE
        entry = next((entry for entry in reading.assumed if entry.field == path), None)
        return UNSAID if entry is None else f"{entry.value} (assumed)"
    if found is None:
        return NONE
    if isinstance(found, list):
        return ", ".join(_item(item) for item in found) or NONE
    return " ".join(str(found).split())


def _item(item: object) -> str:
    return " ".join(map(str, item.values())) if isinstance(item, Mapping) else str(item)


def _others(values: Sequence[str]) -> tuple[str, ...]:
    return tuple("" if value == values[0] else "differs" for value in values)


def _figure_rows(sides: Sequence[Side], speaker: Speaker) -> tuple[tuple[Row, ...], int]:
    rows, alike = [], 0
    for name in Facts.names():
        row = FACTS.get(name)
        if row is None or row.unit == _ROOM:
            continue
        ranges = [_figure(side, name) for side in sides]
        values = tuple(figure_words(value, row, speaker) for value in ranges)
        if len(set(values)) == 1:
            alike += values[0] != NO_FIGURE
            continue
        told = tuple(_change(ranges[0], value) for value in ranges)
        rows.append(Row(capital(row.label), values, told))
    return tuple(rows), alike


def _figure(side: Side, name: str) -> Range | None:
    found: Range | None = None if side.report is None else getattr(side.report.case.facts, name)
    return found


def figure_words(value: Range | None, row: FactRow, speaker: Speaker) -> str:
    """Return a figure as ``typical (low–high)`` in the units of the speaker."""
    if value is None:
        return NO_FIGURE
    if row.dimension is not None:
        return speaker.spread(value, row.dimension, row.kind)
    factor, unit = (100.0, " %") if row.kind == "share" else (1.0, f" {row.unit}" if row.unit != "1" else "")
    low, typical, high = (_plain(factor * part) for part in value)
    return f"{typical}{unit}" if low == high else f"{typical}{unit} ({low}–{high})"


def _plain(number: float) -> str:
    if abs(number) >= _MANY:
        return f"{number:,.0f}"
    return f"{number:.2g}" if abs(number) >= _SMALL or number == 0 else "under 0.01"


def _change(first: Range | None, other: Range | None) -> str:
    """Return by how much a figure is above or below the first card's, where that is worth pointing out."""
    if first is None or other is None or first is other or not first.typical:
        return ""
    change = other.typical / first.typical - 1
    if abs(change) <= TELLING:
        return ""
    return f"{change:+.0%}".replace("%", " %").replace("-", "−")


def _reason_rows(sides: Sequence[Side], speaker: Speaker) -> tuple[Row, ...]:
    order: dict[str, str] = {}
    heard: list[dict[str, str]] = []
    for side in sides:
        findings = side.report.findings if side.report is not None else ()
        heard.append(
            {found.rule.name: f"{found.severity.word}: {found.headline(speaker)}" for found in findings}
        )
        for found in findings:
            order.setdefault(found.rule.name, found.rule.name.replace("-", " "))
    rows = []
    for rule, words in order.items():
        values = tuple(told.get(rule, SILENT) for told in heard)
        rows.append(Row(capital(words), values, _others([value.partition(":")[0] for value in values])))
    return tuple(rows)


def _count(count: int, word: str) -> str:
    return f"{count} {word}{'' if count == 1 else 's'}"
