"""Making a lesson in the window: a draft of it, changed rig by rig, and checked as it will be taken."""

from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from rigbuilder.lessons.check import RigCheck, check_rigs
from rigbuilder.lessons.document import Lesson, LessonRig
from rigbuilder.lessons.making import from_card, spoilt
from rigbuilder.model.document import Document
from rigbuilder.review.rules.book import RULES
from rigbuilder.store.cardfile import new_id, parse_card
from rigbuilder.store.codec import CARD_LIMITS
from rigbuilder.store.errors import StoreError
from rigbuilder.store.reading import read_file
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.choices import technique_ids


@dataclass(frozen=True, slots=True)
class RigLine:
    """One rig in the editor's list: its name, and whether it is as meant, in words."""

    name: str
    words: str
    as_meant: bool


class LessonDraft(QObject):
    """A lesson being made. Everything that changes it makes a new value; nothing is written before saving."""

    changed = Signal()

    def __init__(self, bench: Bench, lesson: Lesson | None = None, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.identity = new_id() if lesson is None else lesson.id
        self.name = "" if lesson is None else lesson.name
        self.introduction = "" if lesson is None else lesson.introduction
        self.closing = "" if lesson is None else lesson.closing
        self.seed = 1 if lesson is None else lesson.seed
        self.rigs: tuple[LessonRig, ...] = () if lesson is None else lesson.rigs
        self._extra = {} if lesson is None else dict(lesson.model_extra or {})

    def copied(self) -> None:
        """Make the draft a lesson of its own, apart from the one it was made from."""
        self.identity = new_id()
        self.name = f"{self.name} (our own)"

    def lesson(self) -> Lesson | None:
        """Return the lesson as it stands, ``None`` while it has no name or no rig."""
        if not self.name.strip() or not self.rigs:
            return None
        return Lesson(
            id=self.identity,
            name=self.name.strip(),
            introduction=self.introduction,
            closing=self.closing,
            seed=self.seed,
            rigs=self.rigs,
            **self._extra,
        )

    def lines(self) -> tuple[RigLine, ...]:
        """Return the rigs with what the review says of each against what is meant."""
        checks = check_rigs(self.rigs, self._bench.reference, self._bench.house)
        return tuple(RigLine(check.rig.name, check_words(check), check.is_as_meant) for check in checks)

    def add_card(self, card: Document) -> str:
        """Add a card as it is, meaning whatever the review says of it; return what was done, in words."""
        rig = from_card(card, self._bench.reference, self._bench.house)
        if rig is None:
            return "This card makes no whole rig yet; complete it first."
        self._add(rig)
        return f"Added: {rig.name}. {_meant_words(rig)}"

    def add_file(self, path: Path) -> str:
        """Add a card from a file; return what was done, or why it cannot be read, in words."""
        try:
            data, _ = read_file(path, limit=CARD_LIMITS.size)
            card = parse_card(data, path)
        except StoreError as trouble:
            return str(trouble)
        return self.add_card(card)

    def add_spoilt(self, technique: str, rule: str, seed: int) -> str:
        """Add the usual rig of a technique spoilt in one way; return what was done, in words."""
        made = spoilt(technique, rule, seed, self._bench.reference, self._bench.house)
        if made is None:
            return (
                "This mistake cannot be made on the usual rig of this technique. Choose another of the two."
            )
        self._add(made.rig)
        return f"Added: {made.rig.name}. {check_words(made.check)}"

    def remove(self, at: int) -> None:
        """Take a rig out."""
        self._put(self.rigs[:at] + self.rigs[at + 1 :])

    def move(self, at: int, by: int) -> int:
        """Move a rig up or down; return its new place."""
        to = min(max(at + by, 0), len(self.rigs) - 1)
        rigs = list(self.rigs)
        rigs.insert(to, rigs.pop(at))
        self._put(tuple(rigs))
        return to

    def word(self, at: int, **texts: str) -> None:
        """Change question, hint or remark of a rig."""
        rigs = list(self.rigs)
        rigs[at] = rigs[at].with_(**texts)
        self.rigs = tuple(rigs)

    def techniques(self) -> tuple[tuple[str, str], ...]:
        """Return every technique as (id, title)."""
        return tuple(technique_ids(self._bench.reference))

    def _add(self, rig: LessonRig) -> None:
        self._put((*self.rigs, rig))

    def _put(self, rigs: tuple[LessonRig, ...]) -> None:
        self.rigs = rigs
        self.changed.emit()


def mistakes() -> tuple[tuple[str, str], ...]:
    """Return every kind of mistake as (rule, words), faults first."""
    rules = sorted(RULES, key=lambda rule: (-rule.severity, rule.name))
    return tuple((rule.name, f"{rule.name.replace('-', ' ')} ({rule.severity.word})") for rule in rules)


def check_words(check: RigCheck) -> str:
    """Return how a rig stands against what it is meant to show."""
    if check.silent:
        return f"Not as meant: {', '.join(check.silent)} does not speak here."
    if check.unmeant:
        return f"Not as meant: {', '.join(found.rule.name for found in check.unmeant)} speaks as well."
    return _meant_words(check.rig)


def _meant_words(rig: LessonRig) -> str:
    return (
        f"Meant and found: {', '.join(rig.meant)}." if rig.meant else "A right rig: nothing is wrong with it."
    )
