"""The lines of the library: cards in order, under headings if wanted."""

import time
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from rigbuilder.store.rows import Row, Sorting, fold, natural, sort_rows

#: What a verdict is called in the library; nothing where none is known yet.
VERDICTS = {
    "fault": "fault",
    "risk": "risk",
    "note": "note",
    "right": "right",
    "unfinished": "unfinished",
    "broken": "unreadable",
    "": "not yet reviewed",
}
_UNTAGGED, _NO_TECHNIQUE = "without a tag", "without a technique"


class Grouping(StrEnum):
    """By what cards may stand together."""

    NONE = "none"
    TECHNIQUE = "technique"
    TAG = "tag"
    VERDICT = "verdict"


@dataclass(frozen=True, slots=True)
class Heading:
    """The head of a group."""

    text: str
    count: int

    @property
    def spoken(self) -> str:
        """Return the heading as read aloud."""
        return f"{self.text}, {self.count:,} card{'s' if self.count != 1 else ''}"


Card = Row
Line = Row | Heading


def verdict_of(row: Row, verdicts: Mapping[str, str]) -> str:
    """Return the key of a card's verdict: a severity, ``unfinished``, ``broken`` or nothing."""
    return "broken" if row.trouble else verdicts.get(row.sha256, "")


def in_order(
    rows: Iterable[Row], by: Sorting, verdicts: dict[str, str], *, descending: bool = False
) -> dict[str, Row]:
    """Return rows by file name, in order."""
    return {row.file_name: row for row in sort_rows(list(rows), by, verdicts, descending=descending)}


def grouped(rows: Sequence[Row], by: Grouping, verdicts: Mapping[str, str]) -> list[Line]:
    """Return rows with a heading before each group; a card with two tags stands under both."""
    if by is Grouping.NONE:
        return list(rows)
    groups: dict[str, list[Row]] = {}
    for row in rows:
        for name in _groups_of(row, by, verdicts):
            groups.setdefault(name, []).append(row)
    lines: list[Line] = []
    for name in sorted(groups, key=lambda name: _place(name, by)):
        lines.append(Heading(name, len(groups[name])))
        lines += groups[name]
    return lines


def _groups_of(row: Row, by: Grouping, verdicts: Mapping[str, str]) -> Sequence[str]:
    if by is Grouping.TECHNIQUE:
        return (fold(row.technique) or _NO_TECHNIQUE,)
    if by is Grouping.TAG:
        return tuple(dict.fromkeys(row.tags)) or (_UNTAGGED,)
    return (VERDICTS[verdict_of(row, verdicts)],)


def _place(name: str, by: Grouping) -> tuple[int, list[tuple[int, int, str]]]:
    if by is Grouping.VERDICT:
        return list(VERDICTS.values()).index(name), []
    return int(name in (_UNTAGGED, _NO_TECHNIQUE)), natural(name)


def changed_words(row: Row, now_s: float | None = None) -> str:
    """Return when a card was changed, as people say it: today with the time, other years with the year."""
    then = time.localtime(row.changed_ns / 1e9)
    now = time.localtime(now_s)
    if row.changed_ns <= 0:
        return ""
    if then[:3] == now[:3]:
        return time.strftime("today %H:%M", then)
    day = f"{then.tm_mday} {_MONTHS[then.tm_mon - 1]}"
    return day if then.tm_year == now.tm_year else f"{day} {then.tm_year}"


_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
