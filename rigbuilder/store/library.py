"""All cards of a folder, kept in memory as rows and brought up to date by looking only at what changed."""

import contextlib
import os
from collections.abc import Iterator
from pathlib import Path

from rigbuilder.store import atomic, listing
from rigbuilder.store.codec import Limits, decode, encode
from rigbuilder.store.errors import StoreError
from rigbuilder.store.reading import read_file
from rigbuilder.store.rows import Row, row_of, stamp_of
from rigbuilder.store.search import search

#: The first rows are for the eye, the later ones for speed.
_FIRST, _LATER = 50, 400


class Library:
    """The cards of one folder. To be used by one thread at a time."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.rows: dict[str, Row] = {}

    def scan(self) -> Iterator[list[Row]]:
        """Bring the rows up to date; yield new and changed ones in batches, the last changed first.

        Cards that are gone leave :attr:`rows` before the first batch. A file
        that cannot be read is a row with its trouble, and hides no other.

        Raises:
            StoreError: the folder cannot be listed.
        """
        stamped = []
        place = os.fspath(self.folder)  # plain text: a third faster than paths over thousands
        for name in listing.card_names(self.folder):
            try:
                stamped.append((stamp_of(os.stat(f"{place}{os.sep}{name}")), name))  # noqa: PTH116
            except OSError:
                stamped.append(((0, 0, 0, 0), name))
        there = {name for _, name in stamped}
        self.rows = {name: row for name, row in self.rows.items() if name in there}
        waiting = [(stamp, name) for stamp, name in stamped if not self._knows(name, stamp)]
        waiting.sort(key=lambda pair: pair[0][1], reverse=True)
        size = _FIRST
        while waiting:
            batch = [row_of(listing.read_entry(self.folder / name), stamp) for stamp, name in waiting[:size]]
            self.rows.update((row.file_name, row) for row in batch)
            del waiting[:size]
            size = _LATER
            yield batch

    def refresh(self) -> int:
        """Bring all rows up to date at once; return how many were new or changed."""
        return sum(map(len, self.scan()))

    def search(self, query: str, verdicts: "VerdictCache") -> list[Row]:
        """Return the rows that a query means (see :func:`rigbuilder.store.search.parse_query`)."""
        return search(self.rows, query, verdicts.known)

    def conflicts(self) -> dict[Path, Path]:
        """Return which cards are a synced folder's conflict copies, and of which other card."""
        return listing.conflicts((row.path, row.id) for row in self.rows.values())

    def twins(self) -> list[list[Path]]:
        """Return the groups of cards that carry one identity, as a copied file does."""
        return listing.twins((row.path, row.id) for row in self.rows.values())

    def _knows(self, name: str, stamp: tuple[int, int, int, int]) -> bool:
        row = self.rows.get(name)
        return row is not None and row.stamp == stamp and stamp[3] != 0


_VERDICTS = ("fault", "risk", "note", "right", "unfinished")
_LIMITS = Limits(size=10_000_000, depth=4, entries=200_000)
_MOST = 50_000


class VerdictCache:
    """Verdicts by the hash of a card's bytes, on a file that may be thrown away at any time.

    ``rules`` is any text that changes with the rules and the house ranges: under
    another text the old verdicts are worth nothing.
    """

    def __init__(self, path: Path, rules: str) -> None:
        self._path = path
        self._rules = rules
        self.known: dict[str, str] = {}
        with contextlib.suppress(StoreError):
            data, _ = read_file(path, limit=_LIMITS.size)
            told = decode(data, path, _LIMITS)
            verdicts = told.get("verdicts")
            if told.get("rules") == rules and isinstance(verdicts, dict):
                self.known = {sha: word for sha, word in verdicts.items() if word in _VERDICTS}

    def put(self, sha256: str, verdict: str) -> None:
        """Remember a verdict for the bytes of a card."""
        self.known[sha256] = verdict

    def save(self, rows: dict[str, Row]) -> None:
        """Write the verdicts of the cards that exist; nothing is lost if that fails."""
        there = {row.sha256 for row in rows.values()}
        kept = {sha: word for sha, word in self.known.items() if sha in there}
        with contextlib.suppress(StoreError):
            atomic.make_folder(self._path.parent)
            newest = dict(list(kept.items())[-_MOST:])
            atomic.write(self._path, encode({"rules": self._rules, "verdicts": newest}, _LIMITS))
