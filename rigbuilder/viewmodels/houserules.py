"""The house rules as a form shows them: severities, positions where anglers differ, ranges."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference as Reference
from rigbuilder.reference.ranges import Span
from rigbuilder.reference.techniques import Technique
from rigbuilder.reference.words import Rank
from rigbuilder.review.rules.book import RULES

RANKS = tuple(str(rank) for rank in Rank)
SHIPPED = ""
SEVERITIES = ("fault", "risk", "note", "right")
_OFF = {"right": "off"}


@dataclass(frozen=True, slots=True)
class RuleRow:
    """One rule: its name for people, what it says, and the severity that ships."""

    name: str
    title: str
    what: str
    shipped: str

    @property
    def options(self) -> list[tuple[str, str]]:
        """Return the choices as (value, text); the empty value leaves the rule as it ships."""
        others = [(word, _OFF.get(word, word)) for word in SEVERITIES]
        return [(SHIPPED, f"as shipped: {self.shipped}"), *others]


@dataclass(frozen=True, slots=True)
class Side:
    """One position on which anglers differ."""

    id: str
    says: str
    shipped: bool


@dataclass(frozen=True, slots=True)
class Question:
    """A question on which anglers differ."""

    id: str
    topic: str
    sides: tuple[Side, ...]


@dataclass(frozen=True, slots=True)
class RangeRow:
    """One range of a technique: where it stands in the house file, its unit, and what ships."""

    key: tuple[str, ...]
    title: str
    unit: str
    shipped: str


def rule_rows() -> tuple[RuleRow, ...]:
    """Return every rule, in the order of their names."""
    rows = [
        RuleRow(rule.name, rule.name.replace("-", " ").capitalize(), rule.what, rule.severity.word)
        for rule in RULES
    ]
    return tuple(sorted(rows, key=lambda row: row.name))


def questions(reference: Reference) -> tuple[Question, ...]:
    """Return the questions on which anglers differ, with the positions that ship."""
    return tuple(
        Question(
            row.id,
            row.topic,
            tuple(Side(side.id, side.says, side.id in row.house) for side in row.positions),
        )
        for row in reference.disagreements.values()
    )


def range_rows(technique: Technique) -> tuple[RangeRow, ...]:
    """Return the ranges of a technique that a house may move."""
    rows = [
        RangeRow(
            ("lines", str(kind), "test_lb"), f"{str(kind).capitalize()}, test", "lb", _text(line.test_lb)
        )
        for kind, line in technique.lines.items()
    ]
    rows.append(RangeRow(("leader", "test_lb"), "Leader, test", "lb", _text(technique.leader.test_lb)))
    rows.append(RangeRow(("leader", "length_m"), "Leader, length", "m", _text(technique.leader.length_m)))
    rows.append(
        RangeRow(("drag", "percent"), "Drag, share of the weakest label", "%", _text(technique.drag.percent))
    )
    return tuple(rows)


def rank_rows(technique: Technique) -> tuple[tuple[str, str], ...]:
    """Return (line type, rank that ships) for a technique."""
    return tuple((str(kind), str(line.rank)) for kind, line in technique.lines.items())


def span_of(text: str) -> list[float] | None:
    """Return what a range as typed means, ``None`` for an empty text.

    Raises:
        ValueError: in plain words, for anything but ``12-20`` or a single number.
    """
    if not text.strip():
        return None
    parts = text.replace("–", "-").replace(",", ".").split("-")
    try:
        numbers = [float(part) for part in parts]
        if len(numbers) > 2:
            raise ValueError
        span = Span(numbers[0], numbers[-1])
    except ValueError:
        raise ValueError(
            f"“{text}” is not a range. Write the lower and the upper end, such as 12-20."
        ) from None
    if span.low <= 0:
        raise ValueError(f"“{text}” begins at nothing. Write a range above zero, such as 12-20.")
    return [span.low, span.high]


class HouseSheet:
    """The house rules being edited: read from a house, given back as the entries of its file."""

    def __init__(self, house: House, reference: Reference) -> None:
        self._entries: dict[str, Any] = house.entries()
        self._reference = reference

    @property
    def entries(self) -> dict[str, Any]:
        """What the house file is to hold."""
        return {key: value for key, value in self._entries.items() if value}

    def severity(self, rule: str) -> str:
        """Return the severity the house gave a rule, empty for as shipped."""
        return str(self._entries.get("severity", {}).get(rule, SHIPPED))

    def set_severity(self, rule: str, severity: str) -> None:
        """Give a rule a severity; an empty one leaves it as shipped."""
        self._put(("severity", rule), severity or None)

    def sides(self, question: Question) -> frozenset[str]:
        """Return the positions that the house takes."""
        taken = self._entries.get("disagreements", {}).get(question.id)
        return frozenset(taken or [side.id for side in question.sides if side.shipped])

    def set_sides(self, question: Question, taken: Sequence[str]) -> None:
        """Take positions; the shipped ones are not written down, and none at all counts as those."""
        shipped = {side.id for side in question.sides if side.shipped}
        wanted = [] if set(taken) == shipped else list(taken)
        self._put(("disagreements", question.id), wanted or None)

    def rank(self, technique: Technique, kind: str) -> str:
        """Return the rank that the house gives a line type, empty for as shipped."""
        return str(self._of(technique, ("lines", kind, "rank")) or SHIPPED)

    def set_rank(self, technique: Technique, kind: str, rank: str) -> None:
        """Give a line type a rank; an empty one leaves it as shipped."""
        self._put(("techniques", self._key(technique), "lines", kind, "rank"), rank or None)

    def range(self, technique: Technique, row: RangeRow) -> str:
        """Return the range of the house as text, empty for as shipped."""
        found = self._of(technique, row.key)
        return "" if found is None else _text(Span(*found))

    def set_range(self, technique: Technique, row: RangeRow, text: str) -> None:
        """Move a range; an empty text leaves it as shipped.

        Raises:
            ValueError: in plain words, if the text is no range.
        """
        self._put(("techniques", self._key(technique), *row.key), span_of(text))

    def changed_rules(self) -> int:
        """Return how many entries stand above the shipped practice."""
        return _leaves({key: value for key, value in self._entries.items() if key != "note"})

    def clear(self) -> None:
        """Put the shipped practice back."""
        self._entries = {}

    def _key(self, technique: Technique) -> str:
        names = self._entries.get("techniques", {})
        return next(
            (name for name in names if self._reference.technique(name).id == technique.id), technique.name
        )

    def _of(self, technique: Technique, key: Sequence[str]) -> Any:
        found: Any = self._entries.get("techniques", {}).get(self._key(technique), {})
        for step in key:
            found = found.get(step) if isinstance(found, Mapping) else None
        return found

    def _put(self, path: Sequence[str], value: Any) -> None:
        self._entries = _with(self._entries, path, value)


def _with(tree: Mapping[str, Any], path: Sequence[str], value: Any) -> dict[str, Any]:
    """Return a tree with a value at a path; ``None`` takes it away, and branches that become empty."""
    step, *rest = path
    inner = _with(tree.get(step, {}), rest, value) if rest else value
    kept = {key: branch for key, branch in tree.items() if key != step}
    return kept if inner in (None, {}) else {**kept, step: inner}


def _leaves(tree: Any) -> int:
    return sum(_leaves(branch) for branch in tree.values()) if isinstance(tree, Mapping) else 1


def _text(span: Span | None) -> str:
    return (
        "" if span is None else (f"{span.low:g}" if span.low == span.high else f"{span.low:g}-{span.high:g}")
    )
