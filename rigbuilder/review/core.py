"""What a review is made of: severities, rules, hits, findings, remedies."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from enum import Enum, IntEnum
from typing import Any

from rigbuilder.model.fields import BY_PATH, Part
from rigbuilder.reference.ranges import Range, Span
from rigbuilder.review.case import Case
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import Source
from rigbuilder.units.dimensions import Dimension


class Severity(IntEnum):
    """How bad a reason is, mildest first."""

    RIGHT = 0
    NOTE = 1
    RISK = 2
    FAULT = 3

    @property
    def word(self) -> str:
        """Return the word that people read."""
        return self.name.lower()


class Safety(Enum):
    """How a remedy may be offered: just done, chosen among others, or only said."""

    SAFE = "safe"
    CHOICE = "choice"
    ADVICE = "advice"


@dataclass(frozen=True, slots=True)
class Number:
    """One figure of a reason in SI units; ``kind`` chooses the unit and rounding for people.

    ``ends`` marks a printed or usual range, of which no value is more typical than another.
    """

    name: str
    low: float
    typical: float
    high: float
    dimension: Dimension | None = None
    kind: str = ""
    ends: bool = False

    @classmethod
    def between(cls, name: str, span: Span, dimension: Dimension, kind: str = "") -> "Number":
        """Make a figure from a printed or usual range."""
        return cls(name, span.low, span.middle, span.high, dimension, kind, ends=True)

    @classmethod
    def of(
        cls, name: str, value: Range | float, dimension: Dimension | None = None, kind: str = ""
    ) -> "Number":
        """Make a figure from a range, or from a value known exactly."""
        low, typical, high = value if isinstance(value, Range) else (value, value, value)
        return cls(name, low, typical, high, dimension, kind)


@dataclass(frozen=True, slots=True)
class Remedy:
    """One change of the card: ``set`` maps card paths to text, or to ``None`` for "there is none"."""

    say: str
    set: Mapping[str, str | None] = field(default_factory=dict)
    safety: Safety = Safety.CHOICE


Words = Callable[[Speaker], str]
Numbers = Callable[[], tuple[Number, ...]]
Mend = Callable[[Case], "tuple[Remedy, ...]"]


def _no_words(_: Speaker) -> str:
    return ""


def _no_numbers() -> tuple[Number, ...]:
    return ()


@dataclass(frozen=True, slots=True)
class Hit:
    """What a check found: cheap to make, put into words only when somebody looks.

    ``headline`` says the fact with both figures and units; ``detail`` what it
    does to this very rig; ``part`` overrides the part of the rule, ``rests_on``
    adds to the card paths that the rule rests on.
    """

    severity: Severity
    headline: Words
    detail: Words = _no_words
    numbers: Numbers = _no_numbers
    part: Part | None = None
    sources: tuple[Source, ...] = ()
    rests_on: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Example:
    """A rig for showing a rule: the usual rig of ``technique`` with ``changes`` made on the card.

    A change sets a card path to text, to ``None`` for "there is none", or to a list where
    the card holds one. ``says`` stands for the changes where they do not read well.
    """

    technique: str
    changes: Mapping[str, Any] = field(default_factory=dict)
    says: str = ""


def _finds_nothing(_: Case) -> Hit | None:
    return None


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule of the rule book, whole: the window, the tests and the lessons are made from it.

    ``what`` states the limit, ``why`` the mechanism in the water or at the
    bench, in plain words. ``wrong`` rigs make it speak, ``right`` ones differ in
    as little as possible and keep it silent. ``replaces`` names the rules that
    are superfluous once this one has spoken. ``settled`` says what is right
    where the rule has looked and found nothing, or an empty text. ``reads``
    names the part of the technique (lines, leader, drag) whose range the limit
    is; ``differ`` the question on which anglers differ, by its id. A rule about
    what the others said has ``after`` in place of ``check``: it is asked last,
    with the names of the rules that spoke. ``rests_on`` names the card paths without
    which the rule has no case: where one of them was assumed, not said, the reason is
    a note at most. What only means "as the technique is usually fished" is not among them.
    """

    name: str
    part: Part
    severity: Severity
    what: str
    why: str
    sources: tuple[Source, ...]
    wrong: tuple[Example, ...]
    right: tuple[Example, ...]
    check: Callable[[Case], Hit | None] = _finds_nothing
    after: Callable[[Case, frozenset[str]], Hit | None] | None = None
    mends: tuple[Mend, ...] = ()
    replaces: tuple[str, ...] = ()
    mistakes: tuple[str, ...] = ()
    reads: str = ""
    differ: str = ""
    settled: Callable[[Case, Speaker], str] | None = None
    rests_on: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Finding:
    """One reason: a rule that has spoken on one rig.

    ``house`` says what the coach has changed in it; ``assumed`` names the card paths it rests
    on that were not said, which is why it is no more than a note.
    """

    rule: Rule
    hit: Hit
    severity: Severity
    case: Case = field(repr=False, compare=False)
    house: tuple[str, ...] = ()
    assumed: tuple[str, ...] = ()

    @property
    def part(self) -> Part:
        """Return the part of the rig that the reason is pinned to."""
        return self.hit.part or self.rule.part

    @property
    def sources(self) -> tuple[Source, ...]:
        """Return how the reason is known."""
        return self.rule.sources + self.hit.sources

    @property
    def disagreement(self) -> str:
        """Return the positions where anglers differ, and which stands here; empty where they do not."""
        if not self.rule.differ:
            return ""
        row = self.case.reference.disagreements[self.rule.differ]
        ruled = row.id in self.case.house.file.disagreements
        chosen = self.case.house.choice(row.id, self.case.reference)
        sides = " Or: ".join(position.says for position in row.positions)
        takes = " ".join(row.position(name).says for name in chosen)
        stands = f"The coach's house takes: {takes}" if ruled else f"Here: {row.house_says}"
        return f"Anglers differ. {sides} {stands}"

    def headline(self, speaker: Speaker) -> str:
        """Return the fact in one line."""
        return self.hit.headline(speaker)

    def why(self, speaker: Speaker) -> str:
        """Return the mechanism, with this rig's own figures first where there are any."""
        parts = (self.hit.detail(speaker), self.rule.why, self._assumed_words())
        return " ".join(part for part in parts if part)

    def _assumed_words(self) -> str:
        named = [BY_PATH[path] for path in self.assumed]
        words = ", ".join(f"{field.label.lower()} ({field.part})" for field in named)
        return f"No more than a note, since the card leaves this open: {words}." if words else ""
