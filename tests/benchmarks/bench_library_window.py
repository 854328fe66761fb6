"""The library's window over 10,000 cards: time to the first rows, per keystroke, and memory per card.

Run: python tests/benchmarks/bench_library_window.py [CARDS]

Times are taken at the window: from opening it until rows are painted, and from a letter typed into the
search field until the list has been painted anew. The verdicts come from a prepared file, as on any day but
the first; memory is what Python holds for the rows, their verdicts and the list. Each time is the best of
a few rounds, so that what else the machine does is not measured.
"""

import gc
import os
import statistics
import sys
import tempfile
import time
import tracemalloc
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from PySide6.QtCore import QEvent, QEventLoop
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore
from rigbuilder.store.drafts import Drafts
from rigbuilder.store.history import History
from rigbuilder.store.settings import SettingsFile
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.desk import Desk
from rigbuilder.viewmodels.draftkeeper import DraftKeeper
from rigbuilder.viewmodels.preferences import Preferences
from rigbuilder.views.library import LibraryPanel
from rigbuilder.views.theme_look import Look, Mode
from tests.benchmarks.bench_store_library import fill, milliseconds

QUERIES = ("frog", "line:braid 30", "larkm", "technique:jig -tag:loan", "rod 17", "zzz", "verdict:fault")
LIMITS = {"first rows, ms": 150, "a keystroke, median ms": 30, "memory per card, bytes": 5000}
ROUNDS = 5
_WORDS = ("fault", "risk", "note", "right")


class Place:
    """A desk over a folder of cards."""

    def __init__(self, application: QApplication, folder: Path) -> None:
        self.application = application
        self.folder = folder
        store = CardStore(folder / "cards", history=History(folder / "history"), bin_=Bin(folder / "bin"))
        self.bench = Bench({}, load(), House.shipped(), application)
        keeper = DraftKeeper(Drafts(folder / "drafts"), store, application)
        preferences = Preferences(SettingsFile(folder / "settings.toml"), application)
        self.desk = Desk(self.bench, store, keeper, preferences, application)
        self.look = Look(application, mode=Mode.LIGHT, parent=application)

    def open(self) -> LibraryPanel:
        """Return the library, shown; its rows are still to come."""
        panel = LibraryPanel(self.desk, self.bench, self.look, cache=self.folder / "verdicts.json")
        panel.library.paused = True  # what is reviewed beside is no matter of the window
        panel.resize(1240, 720)
        panel.show()
        panel.look()
        return panel

    def until(self, there: Callable[[], bool]) -> None:
        """Let the window work until something is so."""
        while not there():
            self.application.processEvents(QEventLoop.ProcessEventsFlag.WaitForMoreEvents)


def first_rows(place: Place) -> tuple[LibraryPanel, float]:
    """Return the library and the milliseconds from opening it to painted rows."""
    start = time.perf_counter()
    panel = place.open()
    place.until(lambda: panel.table.rowCount() > 0)
    panel.list.viewport().repaint()
    return panel, milliseconds(start)


def close(place: Place, panel: LibraryPanel) -> None:
    """Close the library as if it had never been open."""
    panel.close_down()
    panel.deleteLater()
    place.application.sendPostedEvents(panel, QEvent.Type.DeferredDelete)


def keystrokes(place: Place, panel: LibraryPanel) -> list[float]:
    """Return the milliseconds from each letter typed to the list painted anew."""
    times: list[float] = []
    searches: list[bool] = []
    wanted = panel.bar.wanted.connect(lambda: searches.append(True))
    for query in QUERIES:
        for letter in query:
            searches.clear()
            start = time.perf_counter()
            QTest.keyClick(panel.bar.search, letter)
            place.until(lambda: bool(searches))
            panel.list.viewport().repaint()
            times.append(milliseconds(start))
        searches.clear()
        panel.bar.search.clear()
        place.until(lambda: bool(searches))
    panel.bar.wanted.disconnect(wanted)
    return times


def all_rows(place: Place, panel: LibraryPanel, count: int) -> None:
    """Wait until every card is in the list."""
    place.until(lambda: len(panel.library.rows) == count and not panel.library._worker.is_busy)


def held_bytes(place: Place, count: int) -> int:
    """Return the bytes that an open library holds, by Python's own count."""
    gc.collect()
    tracemalloc.start()
    panel = place.open()
    all_rows(place, panel, count)
    gc.collect()
    held = tracemalloc.get_traced_memory()[0]
    tracemalloc.stop()
    close(place, panel)
    return held


def measure(place: Place, count: int) -> dict[str, float]:
    """Return the measured figures."""
    firsts = []
    for _ in range(ROUNDS):
        panel, first = first_rows(place)
        firsts.append(first)
        close(place, panel)
    start = time.perf_counter()
    panel = place.open()
    all_rows(place, panel, count)
    figures = {"first rows, ms": min(firsts), "all rows, ms": milliseconds(start)}
    rows = panel.library.rows.values()
    panel.library.verdicts.learn({row.sha256: _WORDS[at % 4] for at, row in enumerate(rows)})
    times = [min(letter) for letter in zip(*(keystrokes(place, panel) for _ in range(ROUNDS)), strict=True)]
    close(place, panel)
    figures["a keystroke, median ms"] = statistics.median(times)
    figures["a keystroke, worst ms"] = max(times)
    figures["memory per card, bytes"] = held_bytes(place, count) / count
    return figures


def main() -> int:
    """Print the figures; return 1 if one is over its limit."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    application = QApplication(sys.argv[:1])
    with tempfile.TemporaryDirectory() as name:
        (Path(name) / "cards").mkdir()
        fill(Path(name) / "cards", count)
        figures = measure(Place(application, Path(name)), count)
    print(f"{count:,} cards, {os.cpu_count()} processors")
    over = False
    for what, value in figures.items():
        limit = LIMITS.get(what)
        over |= limit is not None and value >= limit
        verdict = "" if limit is None else f"limit {limit:>5}  {'ok' if value < limit else 'MISSED'}"
        print(f"{what:<36}{value:>10,.1f}  {verdict}")
    return int(over)


if __name__ == "__main__":
    sys.exit(main())
