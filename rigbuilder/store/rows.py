"""What the library shows and searches of one card: a small row instead of the whole document."""

import os
import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from typing import Any

from rigbuilder.store.cardfile import id_of
from rigbuilder.store.codec import Document
from rigbuilder.store.errors import shown
from rigbuilder.store.listing import Entry

# Letters that Unicode does not take apart, though people type them without their stroke.
_STROKES = str.maketrans({"ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th", "æ": "ae", "œ": "oe", "ı": "i"})


def fold(text: str) -> str:
    """Return text for comparing: small letters without accents, as people type when they search."""
    if text.isascii():
        return text.lower()
    apart = unicodedata.normalize("NFKD", unicodedata.normalize("NFKD", text).casefold())
    return "".join(letter for letter in apart if not unicodedata.combining(letter)).translate(_STROKES)


#: Size, times and number of a file on its disk: what tells without reading that it is another.
Stamp = tuple[int, int, int, int]


def stamp_of(facts: os.stat_result) -> Stamp:
    """Return the stamp of a file; a swapped file has another number even with size and time alike."""
    return (facts.st_size, facts.st_mtime_ns, facts.st_ctime_ns, facts.st_ino)


@dataclass(frozen=True, slots=True)
class Row:
    """One card in the library. ``trouble`` is the reason why it cannot be read, "" if it can."""

    folder: Path
    file_name: str
    stamp: Stamp
    sha256: str
    id: str | None
    name: str
    technique: str
    line: str
    tags: tuple[str, ...]
    trouble: str
    words: str
    line_words: str

    @property
    def path(self) -> Path:
        """The card's file."""
        return self.folder / self.file_name

    @property
    def changed_ns(self) -> int:
        """When the file was last changed, in nanoseconds since 1970."""
        return self.stamp[1]


def row_of(entry: Entry, stamp: Stamp) -> Row:
    """Return the row of a card as it was read, or of what could be read of it."""
    document = entry.document or dict(entry.salvaged)
    name = _text(document.get("name")) or shown(entry.path.stem)
    main = _part(document, "main")
    tags = document.get("tags")
    lines = [main, _part(document, "leader"), _part(document, "backing")]
    return Row(
        folder=entry.path.parent,
        file_name=entry.path.name,
        stamp=stamp,
        sha256=entry.fingerprint.sha256 if entry.fingerprint else "",
        id=id_of(document),
        name=name,
        technique=_text(_part(document, "lure").get("technique")),
        line=" ".join(filter(None, (_text(main.get("type")), _text(main.get("test"))))),
        tags=tuple(tag for tag in tags if isinstance(tag, str)) if isinstance(tags, list) else (),
        trouble=str(entry.trouble) if entry.trouble else "",
        words=fold("\n".join([name, entry.path.stem, *_texts(document)])),
        line_words=fold(
            "\n".join(_text(line.get(key)) for line in lines for key in ("type", "test", "diameter", "label"))
        ),
    )


def _text(value: Any) -> str:
    return value.strip() if isinstance(value, str) else ""


def _part(document: Document, key: str) -> Document:
    part = document.get(key)
    return part if isinstance(part, dict) else {}


def _texts(value: Any) -> Iterator[str]:
    """Yield every text in a document, keys and the envelope left out."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for key, inner in value.items():
            if key not in ("format", "id"):
                yield from _texts(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from _texts(inner)


class Sorting(StrEnum):
    """The columns by which rows can be put in order."""

    NAME = "name"
    TECHNIQUE = "technique"
    LINE = "line"
    VERDICT = "verdict"
    CHANGED = "changed"


_GRAVITY = {"fault": 0, "risk": 1, "note": 2, "right": 3, "unfinished": 4, "": 5}


def sort_rows(
    rows: list[Row], by: Sorting, verdicts: dict[str, str], *, descending: bool = False
) -> list[Row]:
    """Return rows in order, numbers in names by their value; equal ones stay in order of name."""
    ordered = sorted(rows, key=lambda row: natural(row.name))
    if by is Sorting.CHANGED:
        return sorted(ordered, key=lambda row: row.changed_ns, reverse=descending)
    if by is Sorting.VERDICT:
        return sorted(ordered, key=lambda row: _GRAVITY[verdicts.get(row.sha256, "")], reverse=descending)
    return sorted(ordered, key=lambda row: natural(getattr(row, by.value)), reverse=descending)


def natural(text: str) -> list[tuple[int, int, str]]:
    """Return a sorting key under which ``rod 2`` comes before ``rod 10``."""
    pieces = re.findall(r"[0-9]{1,15}|[^0-9]+", fold(text))
    return [(0, int(piece), "") if piece[0] in "0123456789" else (1, 0, piece) for piece in pieces]
