"""The log of the rig on the bench, and what is due for its lines as of a day that is handed in."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from typing import Any

from PySide6.QtCore import QObject, Signal

from rigbuilder.model.document import get
from rigbuilder.plans.care import Due, advice, care_due
from rigbuilder.plans.known import Remark
from rigbuilder.reference.words import LogEvent
from rigbuilder.review.explain import distinct, source_words
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.reasons import capital

EVENTS = tuple(str(event) for event in LogEvent)
_SEVERITY = {"now": "risk", "soon": "note", "later": "right"}


@dataclass(frozen=True, slots=True)
class CareShown:
    """What is due, how to treat the lines, what the log says, on what it rests."""

    due: tuple[Remark, ...]
    advice: tuple[str, ...]
    log: tuple[str, ...]
    sources: tuple[str, ...]


class CareModel(QObject):
    """Care of one rig; ``today`` tells the day, so that nothing below reads the clock."""

    changed = Signal()

    def __init__(
        self, bench: Bench, today: Callable[[], date] = date.today, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self.bench, self._today = bench, today
        bench.report_changed.connect(lambda _: self.changed.emit())

    def shown(self) -> CareShown | None:
        """Return care and log of the present rig, ``None`` while the card cannot be read."""
        rig = self.bench.reading.rig
        if rig is None:
            return None
        due = care_due(rig, self._today(), self.bench.reference)
        found = advice(rig, self.bench.reference)
        sources = [source for one in due for source in one.sources]
        sources += [source for one in found for source in one.sources]
        return CareShown(
            due=tuple(_remark(one) for one in due),
            advice=tuple(f"{capital(one.line)}: {one.text}" for one in found),
            log=tuple(_words(entry) for entry in self._entries()),
            sources=tuple(capital(source_words(source)) for source in distinct(sources)),
        )

    @property
    def day(self) -> str:
        """Return today as it is written in the log."""
        return self._today().isoformat()

    def note(self, what: str, on: str) -> str:
        """Write an event into the card's log; return what is wrong with it, empty if it was written."""
        try:
            day = date.fromisoformat(on.strip()) if on.strip() else self._today()
        except ValueError:
            return f"“{on.strip()}” is no date; write one such as {self.day}."
        if what not in EVENTS:
            return "Choose first what was done."
        entries = sorted(
            [*self._entries(), {"on": day.isoformat(), "what": what}], key=lambda entry: str(entry.get("on"))
        )
        self.bench.apply({"log": entries}, f"note “{what}”")
        return ""

    def remove(self, place: int) -> None:
        """Take one entry out of the log."""
        entries = self._entries()
        if 0 <= place < len(entries):
            self.bench.apply({"log": [*entries[:place], *entries[place + 1 :]]}, "take out of the log")

    def _entries(self) -> list[dict[str, Any]]:
        found = get(self.bench.document, "log")
        return [entry for entry in found if isinstance(entry, dict)] if isinstance(found, list) else []


def _remark(due: Due) -> Remark:
    when = {"now": "Now", "soon": "Soon", "later": "Later"}[due.urgency]
    return Remark(_SEVERITY[due.urgency], f"{when}: {due.action}. {due.why}")


def _words(entry: dict[str, Any]) -> str:
    note = entry.get("note")
    return f"{entry.get('on')} · {entry.get('what')}" + (
        f" · {note}" if isinstance(note, str) and note else ""
    )
