"""The library: all cards of a folder, kept up to date while the person looks at them."""

import contextlib
import time
from collections.abc import Iterable
from pathlib import Path

from PySide6.QtCore import QFileSystemWatcher, QObject, QTimer, Signal

from rigbuilder.store.listing import read_entry
from rigbuilder.store.rows import Row, Sorting, row_of, stamp_of
from rigbuilder.store.search import search
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.library_lines import Grouping, Line, grouped, in_order, verdict_of
from rigbuilder.viewmodels.library_verdicts import Verdicts
from rigbuilder.viewmodels.library_worker import Failed, Found, Judged, LibraryWorker, Listed

_POLL_MS = 10
_SETTLE_MS = 250  # after the folder changed: editors and sync programs write more than once
_SHOW_EVERY_S = 0.3  # while thousands of cards come in


class CardLibrary(QObject):
    """The rows of one folder with their verdicts; reading and reviewing happen in a thread beside."""

    rows_changed = Signal()
    verdicts_changed = Signal()
    progress = Signal(int, int)  # cards still to be reviewed, of how many
    told = Signal(str)  # why the folder cannot be listed; empty when it can

    def __init__(
        self, folder: Path, bench: Bench, cache: Path | None = None, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self.folder = folder
        self.rows: dict[str, Row] = {}
        self.conflicts: dict[str, str] = {}
        self.twins: frozenset[str] = frozenset()
        self._bench, self._cache = bench, cache
        self.verdicts = Verdicts(cache, bench.house)
        self._worker = LibraryWorker(folder)
        self._ordered: dict[str, Row] | None = None
        self._order = (Sorting.CHANGED, True)
        self._shown_at = 0.0
        self._total = 0
        self.paused = False  # the person wants no reviewing now
        self._poll = QTimer(self)
        self._poll.setInterval(_POLL_MS)
        self._poll.timeout.connect(self.take)
        self._settle = QTimer(self)
        self._settle.setSingleShot(True)
        self._settle.setInterval(_SETTLE_MS)
        self._settle.timeout.connect(self.look)
        self._watcher = QFileSystemWatcher(self)
        self._watcher.directoryChanged.connect(lambda _: self._settle.start())

    def look(self) -> None:
        """Bring the rows up to date; returns at once."""
        if self.verdicts.house != self._bench.house:
            self.verdicts = Verdicts(self._cache, self._bench.house)
            self.verdicts_changed.emit()
        if str(self.folder) not in self._watcher.directories() and self.folder.is_dir():
            self._watcher.addPath(str(self.folder))
        self._worker.look()
        self._poll.start()

    def touch(self, paths: Iterable[Path]) -> None:
        """Look at once at a few files of which it is known that they were made, changed or taken away."""
        for path in paths:
            if path.parent == self.folder:
                self.rows.pop(path.name, None)
                with contextlib.suppress(OSError):
                    self.rows[path.name] = row_of(read_entry(path), stamp_of(path.stat()))
        self._show()

    def turn_to(self, folder: Path) -> None:
        """Show the cards of another folder."""
        if folder == self.folder:
            return
        if watched := self._watcher.directories():
            self._watcher.removePaths(watched)
        self._worker.stop()
        self.folder, self._worker = folder, LibraryWorker(folder)
        self.rows, self.conflicts, self.twins = {}, {}, frozenset()
        self._show()
        self.look()

    def lines(self, query: str, by: Sorting, group: Grouping, *, descending: bool) -> list[Line]:
        """Return what a search means, in order, under headings if wanted."""
        if self._ordered is None or self._order != (by, descending):
            self._order = (by, descending)
            self._ordered = in_order(self.rows.values(), by, self.verdicts.known, descending=descending)
        return grouped(search(self._ordered, query, self.verdicts.known), group, self.verdicts.known)

    def verdict(self, row: Row) -> str:
        """Return a severity, ``unfinished``, ``broken``, or nothing while it is not known."""
        return verdict_of(row, self.verdicts.known)

    def stop_reviewing(self) -> None:
        """Leave the cards that are not yet reviewed as they are, until asked again."""
        self.paused = True
        self._worker.judge((), self._bench.reference, self.verdicts.house)
        self.progress.emit(0, 0)

    def review_missing(self) -> None:
        """Review every card of which no verdict is known."""
        self.paused = False
        missing = self.verdicts.missing(self.rows.values())
        self._total = len(missing)
        if missing:
            self._worker.judge(missing, self._bench.reference, self.verdicts.house)
            self.progress.emit(len(missing), self._total)
            self._poll.start()

    def unreviewed(self) -> int:
        """Return of how many cards no verdict is known."""
        return len(self.verdicts.missing(self.rows.values()))

    def close(self) -> None:
        """End the thread beside, and keep the verdicts for the next time."""
        self._poll.stop()
        self._settle.stop()
        self._worker.stop()
        self.verdicts.keep(self.rows)

    def take(self) -> None:
        """Take over what the thread beside has ready."""
        busy = self._worker.is_busy
        for result in self._worker.take():
            match result:
                case Found(rows):
                    self._found(rows)
                case Listed(names, conflicts, twins):
                    self._listed(names, conflicts, twins)
                case Judged(verdicts, left):
                    self._judged(verdicts, left)
                case Failed(says):
                    new = not self.rows and not self.folder.exists()  # made when the first card is saved
                    self.rows = {}
                    self._show()
                    self.told.emit("" if new else says)
        if not busy:
            self._poll.stop()

    def _found(self, rows: tuple[Row, ...]) -> None:
        first = not self.rows
        self.rows.update((row.file_name, row) for row in rows)
        if first or time.monotonic() - self._shown_at > _SHOW_EVERY_S:
            self._show()

    def _listed(self, names: frozenset[str], conflicts: dict[str, str], twins: frozenset[str]) -> None:
        self.rows = {name: row for name, row in self.rows.items() if name in names}
        self.conflicts, self.twins = conflicts, twins
        self._show()
        self.told.emit("")
        if not self.paused:
            self.review_missing()

    def _judged(self, verdicts: dict[str, str], left: int) -> None:
        self.verdicts.learn(verdicts)
        if self._order[0] is Sorting.VERDICT:
            self._ordered = None
        if not left:
            self.verdicts.keep(self.rows)
        self.progress.emit(left, self._total)
        self.verdicts_changed.emit()

    def _show(self) -> None:
        self._shown_at = time.monotonic()
        self._ordered = None
        self.rows_changed.emit()
