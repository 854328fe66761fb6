"""The windows of library and comparison, opened from the bench, and what the menu "Cards" does."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QByteArray, QEvent, QObject
from PySide6.QtGui import QCloseEvent, QGuiApplication

from rigbuilder.viewmodels.compare import Comparison
from rigbuilder.viewmodels.compare_cards import compare_cards
from rigbuilder.viewmodels.library_deeds import text_of
from rigbuilder.views.compare import CompareView
from rigbuilder.views.desk_talk import PATTERN
from rigbuilder.views.library import LibraryPanel
from rigbuilder.views.library_work import Asking
from rigbuilder.views.side_window import SideWindow
from rigbuilder.views.window import MainWindow


class LibraryWindow(SideWindow):
    """The library in a window; it looks at the folder again whenever the person comes back to it."""

    def __init__(self, bench: MainWindow, asking: Asking | None, cache: Path | None) -> None:
        self.panel = LibraryPanel(bench.desk, bench.bench, bench.look, asking=asking, cache=cache)
        super().__init__("Library — Rigbuilder", self.panel, bench, bench.look)
        self.setObjectName("library-window")
        self._preferences = bench.preferences
        self.restoreGeometry(QByteArray.fromBase64(self._preferences.recall("library").encode()))

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 (Qt's name)
        """Look at the folder again."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.ActivationChange and self.isActiveWindow():
            self.panel.look()

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 (Qt's name)
        """Remember where the window stood."""
        self._preferences.remember("library", bytes(self.saveGeometry().toBase64().data()).decode())
        super().closeEvent(event)


class CardsMenu(QObject):
    """What the menu "Cards" of the bench does; the library is made when it is first wanted."""

    def __init__(self, bench: MainWindow, cache: Path | None = None, asking: Asking | None = None) -> None:
        super().__init__(bench)
        self._bench, self._cache = bench, cache
        self._asking = asking
        self._library: LibraryWindow | None = None
        self.comparison: SideWindow | None = None
        verbs: dict[str, Callable[[], object]] = {
            "library": self.show_library,
            "versions": self.show_versions,
            "compare": self.compare_with,
            "import": lambda: self.library.panel.acts["import"].trigger(),
            "copy-card": self.copy_card,
            "paste-card": lambda: self.library.panel.work.paste(),
        }
        for name, verb in verbs.items():
            bench.actions_[name].triggered.connect(lambda _=False, verb=verb: verb())
        bench.set_dropped.connect(lambda path: self.library.panel.work.take_in([path]))

    @property
    def library(self) -> LibraryWindow:
        """The library's window, shown."""
        if self._library is None:
            self._library = LibraryWindow(self._bench, self._asking, self._cache)
            self._library.panel.open_wanted.connect(self._open)
            self._library.panel.compared.connect(self.show_comparison)
        self._library.bring_up()
        return self._library

    def show_library(self) -> None:
        """Show the library, ready to be searched."""
        self.library.panel.look()
        self.library.panel.start_search()

    def show_versions(self) -> None:
        """Show the earlier versions of the card on the bench."""
        path = self._bench.desk.path
        if path is None:
            self._bench.say("This rig was never saved: earlier versions are kept from the first save on.")
            return
        panel = self.library.panel
        panel.show_versions_of(path)

    def compare_with(self) -> None:
        """Ask for a card and put it beside the one on the bench."""
        path = self._bench.ask.open_path("Compare with a card", self._bench.desk.store.folder, PATTERN)
        if path is None:
            return
        found = compare_cards([path], self._bench.desk, self._bench.bench, with_bench=True)
        if isinstance(found, str):
            self._bench.say(found)
        else:
            self.show_comparison(found)

    def show_comparison(self, comparison: Comparison) -> None:
        """Show a comparison in a window of its own."""
        if self.comparison is None:
            view = CompareView(self._bench.look)
            self.comparison = SideWindow("Comparison — Rigbuilder", view, self._bench, self._bench.look)
            self.comparison.setObjectName("compare-window")
            view.closed.connect(self.comparison.close)
        self.comparison.findChildren(CompareView)[0].show_comparison(comparison)
        self.comparison.bring_up()

    def copy_card(self) -> None:
        """Put the card on the bench on the clipboard as text."""
        self._bench.form.commit()
        text, deed = text_of(self._bench.desk.document)
        if text:
            QGuiApplication.clipboard().setText(text)
        self._bench.say(deed.text)

    def close(self) -> None:
        """End what works for the library beside the window."""
        if self._library is not None:
            self._library.panel.close_down()

    def _open(self, path: Path) -> None:
        if self._bench.talk.open(path):
            self._bench.activateWindow()
