"""Reads cards and reviews them beside the window, in one thread of its own.

The thread has its own view of the folder and hands over finished values; the
window asks for them when it has time. Nothing is shared but the two queues.
"""

import contextlib
import threading
from collections import deque
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from rigbuilder.model.document import Document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.review.many import review_documents, verdict_word
from rigbuilder.store.errors import StoreError
from rigbuilder.store.importing import finish_imports
from rigbuilder.store.library import Library
from rigbuilder.store.listing import read_entry
from rigbuilder.store.rows import Row

_AT_ONCE = 8  # cards reviewed between two looks at what else is wanted
_STOP_S = 5.0


@dataclass(frozen=True, slots=True)
class Found:
    """Cards that are new or were changed."""

    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Listed:
    """The folder has been looked through: what is there, and which are conflict copies of which."""

    names: frozenset[str]
    conflicts: dict[str, str]
    twins: frozenset[str]


@dataclass(frozen=True, slots=True)
class Judged:
    """Verdicts by the hash of a card's bytes, and how many cards still wait."""

    verdicts: dict[str, str]
    left: int


@dataclass(frozen=True, slots=True)
class Failed:
    """The folder could not be listed."""

    says: str


Result = Found | Listed | Judged | Failed


class LibraryWorker:
    """Looks through one folder and reviews its cards when asked; ``take`` returns what is ready."""

    def __init__(self, folder: Path) -> None:
        self._library = Library(folder)
        self._wanted = threading.Condition()
        self._look = False
        self._stopping = False
        self._busy = False
        self._finished = False
        self._waiting: deque[Row] = deque()
        self._by: tuple[Reference, House] | None = None
        self._ready: deque[Result] = deque()
        self._thread: threading.Thread | None = None

    @property
    def is_busy(self) -> bool:
        """Whether something is being done, waits to be done, or is ready to be taken."""
        with self._wanted:
            return self._busy or self._look or bool(self._waiting) or bool(self._ready)

    def look(self) -> None:
        """Look through the folder."""
        self._ask(look=True)

    def judge(self, rows: Sequence[Row], reference: Reference, house: House) -> None:
        """Review these cards, in place of what still waits; none at all stops the reviewing."""
        with self._wanted:
            self._by = (reference, house)
            self._waiting = deque(rows)
        self._ask()

    def take(self) -> list[Result]:
        """Return what became ready since the last call."""
        taken = []
        while self._ready:
            taken.append(self._ready.popleft())
        return taken

    def stop(self) -> None:
        """End the thread; what it was doing is dropped."""
        with self._wanted:
            self._stopping = True
            self._waiting.clear()
            self._wanted.notify()
        if self._thread is not None:
            self._thread.join(_STOP_S)
            self._thread = None

    def _ask(self, *, look: bool = False) -> None:
        with self._wanted:
            self._look = self._look or look
            self._wanted.notify()
            if self._thread is None and not self._stopping:
                self._thread = threading.Thread(target=self._work, name="library", daemon=True)
                self._thread.start()

    def _work(self) -> None:
        while True:
            with self._wanted:
                self._busy = False
                while not (self._look or self._waiting or self._stopping):
                    self._wanted.wait()
                if self._stopping:
                    return
                self._busy = True
                looking, self._look = self._look, False
            if looking:
                self._scan()
            else:
                self._judge_some()

    def _scan(self) -> None:
        try:
            for batch in self._library.scan():
                self._ready.append(Found(tuple(batch)))
                if self._stopping:
                    return
        except StoreError as trouble:
            self._ready.append(Failed(str(trouble)))
            return
        copies = {copy.name: card.name for copy, card in self._library.conflicts().items()}
        twins = frozenset(path.name for group in self._library.twins() for path in group)
        self._ready.append(Listed(frozenset(self._library.rows), copies, twins))
        if not self._finished:  # what an import that was killed had decided
            self._finished = True
            if finish_imports(self._library.folder):
                self._scan()

    def _judge_some(self) -> None:
        with self._wanted:
            rows = [self._waiting.popleft() for _ in range(min(_AT_ONCE, len(self._waiting)))]
            left, by = len(self._waiting), self._by
        if by is not None and rows:
            self._ready.append(Judged(verdicts_of(rows, *by), left))


def verdicts_of(rows: Sequence[Row], reference: Reference, house: House) -> dict[str, str]:
    """Return the verdicts on cards as they are on the disk now, by the hash of their bytes.

    A card over which the review itself stumbles has none, and spoils no other's.
    """
    entries = [read_entry(row.path) for row in rows]
    pairs = [
        (entry.fingerprint.sha256, entry.document)
        for entry in entries
        if entry.document is not None and entry.fingerprint is not None
    ]
    try:
        return _reviewed(pairs, reference, house)
    except Exception:  # whatever it is, the thread goes on
        found: dict[str, str] = {}
        for pair in pairs:
            with contextlib.suppress(Exception):
                found |= _reviewed([pair], reference, house)
        return found


def _reviewed(pairs: Sequence[tuple[str, Document]], reference: Reference, house: House) -> dict[str, str]:
    reviewed = review_documents([document for _, document in pairs], reference, house)
    return {sha: verdict_word(report) for (sha, _), (_, report) in zip(pairs, reviewed, strict=True)}
