"""What the commands know of each card: whether it can be read, what it is, what the review says."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from rigbuilder.commands.house import practice
from rigbuilder.commands.progress import Progress, Stopped
from rigbuilder.model.reading import Reading
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.review.engine import Report
from rigbuilder.review.many import UNFINISHED, review_documents, verdict_word
from rigbuilder.review.speak import Speaker
from rigbuilder.store.codec import Document
from rigbuilder.store.listing import Entry, read_entry
from rigbuilder.store.rows import Row, row_of

UNREADABLE = "unreadable"
_AT_ONCE = 25  # cards whose figures are computed together


@dataclass(frozen=True, slots=True)
class Looked:
    """One card as it was found; ``trouble`` is empty where the file could be read."""

    row: Row
    document: Document | None
    verdict: str
    reasons: tuple[str, ...]
    findings: tuple[dict[str, str], ...] = ()

    @property
    def path(self) -> Path:
        """The card's file."""
        return self.row.path

    @property
    def name(self) -> str:
        """The card's name."""
        return self.row.name

    @property
    def technique(self) -> str:
        """The technique as the card has it."""
        return self.row.technique

    @property
    def line(self) -> str:
        """Type and test of the main line."""
        return self.row.line

    @property
    def trouble(self) -> str:
        """Why the file cannot be read."""
        return self.row.trouble

    @property
    def readable(self) -> bool:
        """Whether the card makes a rig that can be reviewed."""
        return self.verdict not in (UNREADABLE, UNFINISHED)

    def as_data(self, *, whole: bool = False) -> dict[str, Any]:
        """Return the card as plain data, with ``whole`` also what the review found."""
        data: dict[str, Any] = {
            "file": str(self.path),
            "name": self.name,
            "technique": self.technique,
            "line": self.line,
            "tags": list(self.row.tags),
            "verdict": self.verdict,
            "readable": self.readable,
        }
        if not self.readable:
            data["trouble"] = list(self.reasons)
        if whole:
            data["findings"] = list(self.findings)
        return data


def look_at_all(paths: Sequence[Path], *, review: bool = True) -> list[Looked]:
    """Read all cards, and review them if asked.

    Raises:
        Stopped: by Ctrl+C.
    """
    progress = Progress(len(paths))
    found: list[Looked] = []
    try:
        reference, house = practice()
        for start in range(0, len(paths), _AT_ONCE):
            entries = [read_entry(path) for path in paths[start : start + _AT_ONCE]]
            found += _looked(entries, reference, house) if review else map(_unreviewed, entries)
            progress.at(len(found))
    except KeyboardInterrupt:
        progress.cut_off()
        raise Stopped(len(found), len(paths)) from None
    return found


def _looked(entries: Sequence[Entry], reference: Reference, house: House) -> Iterator[Looked]:
    whole = [entry.document for entry in entries if entry.document is not None]
    reviewed = iter(review_documents(whole, reference, house))
    for entry in entries:
        if entry.document is None:
            yield _unreviewed(entry)
        else:
            yield _reviewed(entry, *next(reviewed))


def _row(entry: Entry) -> Row:
    return row_of(entry, (0, 0, 0, 0))


def _unreviewed(entry: Entry) -> Looked:
    row = _row(entry)
    if entry.document is None:
        return Looked(row, None, UNREADABLE, (row.trouble,))
    return Looked(row, entry.document, "", ())


def _reviewed(entry: Entry, reading: Reading, report: Report | None) -> Looked:
    word = verdict_word(report)
    if report is None:
        troubles = tuple(str(problem) for problem in reading.problems)
        return Looked(_row(entry), entry.document, word, troubles)
    speaker = Speaker()
    findings = tuple(
        {
            "rule": finding.rule.name,
            "severity": finding.severity.word,
            "part": str(finding.part),
            "headline": finding.headline(speaker),
        }
        for finding in report.findings
    )
    reasons = tuple(f"{found['severity']}: {found['headline']}" for found in findings)
    return Looked(_row(entry), entry.document, word, reasons, findings)
