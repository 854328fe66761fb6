"""Before → after: what a remedy would change on the card, and what the review would say then."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from rigbuilder.model.document import Document, get, put_all
from rigbuilder.model.fields import GROUPS
from rigbuilder.model.reading import Reading, read
from rigbuilder.review.core import Finding, Remedy, Safety
from rigbuilder.review.engine import Report, review
from rigbuilder.review.explain import verdict_words
from rigbuilder.review.speak import Speaker
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.fieldstate import place_of, words
from rigbuilder.viewmodels.fieldtext import MAY_BE_NONE
from rigbuilder.viewmodels.reasons import capital
from rigbuilder.viewmodels.slate import field_words

NONE, UNSAID, UNGIVEN = "none", "not said", "not given"
_SHORT = ("type", "test", "length")


@dataclass(frozen=True, slots=True)
class Change:
    """One field before and after, in words."""

    field: str
    what: str
    old: str
    new: str

    @property
    def spoken(self) -> str:
        """Return the change as read aloud."""
        return f"{self.what}: {self.old} becomes {self.new}"


@dataclass(frozen=True, slots=True)
class Verdict:
    """A verdict in words, with the severity whose sign stands for it."""

    severity: str
    text: str


@dataclass(frozen=True, slots=True)
class Option:
    """One remedy as it is offered; advice changes nothing on the card."""

    say: str
    changes: Mapping[str, str | None]
    advice: bool = False


@dataclass(frozen=True, slots=True)
class Prospect:
    """What would be if these changes were taken."""

    title: str
    changes: tuple[Change, ...]
    before: Verdict
    after: Verdict
    remains: tuple[str, ...]
    report: Report
    sets: Mapping[str, Any]

    @property
    def spoken(self) -> str:
        """Return the prospect as read aloud."""
        changed = "; ".join(change.spoken for change in self.changes)
        return f"{changed}. Review: {self.before.text} becomes {self.after.text}."


def verdict(report: Report | None) -> Verdict:
    """Return the verdict of a review; without one the card cannot be read yet."""
    if report is None:
        return Verdict("note", "not complete yet")
    return Verdict(report.verdict.word, verdict_words([finding.severity for finding in report.findings]))


def gaps(reading: Reading) -> tuple[tuple[str, str, str], ...]:
    """Return path, name and trouble of every field that keeps a card from being read."""
    return tuple(
        (place_of(problem), capital(field_words(place_of(problem))), words(problem))
        for problem in reading.problems
    )


def options(bench: Bench, finding: Finding) -> tuple[Option, ...]:
    """Return the proven remedies of one reason; no two read alike."""
    offered: dict[str, Option] = {}
    for remedy in bench.remedies(finding):
        say = _distinct_words(remedy, offered)
        if say not in offered:
            offered[say] = Option(say, remedy.set, remedy.safety is Safety.ADVICE)
    return tuple(offered.values())


def prospect(bench: Bench, option: Option) -> Prospect | None:
    """Return what taking a remedy would bring, ``None`` while there is no review to compare with."""
    now = bench.report
    if now is None:
        return None
    reading = read(put_all(bench.document, option.changes), bench.reference)
    if reading.rig is None:
        return None
    then = review(reading.rig, bench.reference, now.case.house)
    return _prospect(bench, option.say, option.changes, then)


def make_right_prospect(bench: Bench) -> Prospect | None:
    """Return what "Make it right" would bring, ``None`` where no change on the card helps."""
    made = bench.make_right()
    if made is None or not made.remedies:
        return None
    sets: dict[str, str | None] = {}
    for remedy in made.remedies:
        sets.update(remedy.set)
    return _prospect(bench, "; ".join(remedy.say for remedy in made.remedies), sets, made.after)


def changes_of(reading: Reading, sets: Mapping[str, Any]) -> tuple[Change, ...]:
    """Return the fields that changes of the card would alter, old and new in words."""
    found = []
    for path, value in sets.items():
        old, new = _old_words(reading, path), _new_words(path, value)
        if old != new and not (value is None and old == UNSAID):
            found.append(Change(path, field_words(path), old, new))
    return tuple(found)


def _prospect(bench: Bench, title: str, sets: Mapping[str, Any], then: Report) -> Prospect:
    return Prospect(
        title=title,
        changes=changes_of(bench.reading, sets),
        before=verdict(bench.report),
        after=verdict(then),
        remains=_remains(then, bench.speaker),
        report=then,
        sets=sets,
    )


def _remains(report: Report, speaker: Speaker) -> tuple[str, ...]:
    return tuple(f"{found.severity.word}: {found.headline(speaker)}" for found in report.findings)


def _distinct_words(remedy: Remedy, offered: Mapping[str, Option]) -> str:
    twin = offered.get(remedy.say)
    if twin is None:
        return remedy.say
    more = [
        f"{field_words(path)} {_new_words(path, value)}"
        for path, value in remedy.set.items()
        if twin.changes.get(path, "") != value
    ]
    return f"{remedy.say}, {', '.join(more)}" if more else remedy.say


def _old_words(reading: Reading, path: str) -> str:
    document: Document = reading.document
    missing = object()
    found = get(document, path, missing)
    if found is not missing:
        return _words(found)
    group = path.rpartition(".")[0]
    if group and get(document, group, missing) is None:
        return NONE
    entry = next((entry for entry in reading.assumed if entry.field == path), None)
    return UNSAID if entry is None else f"{_words(entry.value)} (assumed)"


def _new_words(path: str, value: Any) -> str:
    """Return what stands there afterwards; only what can be absent from a rig is said to be none."""
    may_be_none = path in GROUPS or path in MAY_BE_NONE
    return UNGIVEN if value is None and not may_be_none else _words(value)


def _words(value: Any) -> str:
    if value is None:
        return NONE
    if isinstance(value, Mapping):
        return " ".join(str(value[key]) for key in _SHORT if value.get(key)) or UNSAID
    return str(value)
