"""The library: every card of a folder, found at once, with all that can be done with it."""

from pathlib import Path

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QLabel, QSplitter, QStackedWidget, QVBoxLayout, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.desk import Desk
from rigbuilder.viewmodels.library import CardLibrary
from rigbuilder.viewmodels.library_done import Deed
from rigbuilder.viewmodels.library_look import look_at_card
from rigbuilder.viewmodels.library_sketch import Sketcher
from rigbuilder.viewmodels.library_table import SORTING, LibraryTable
from rigbuilder.viewmodels.library_versions import deleted_cards, earlier_versions
from rigbuilder.viewmodels.library_words import CardWords
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.dropped import cards_dropped
from rigbuilder.views.library_actions import LibraryActions
from rigbuilder.views.library_bar import SEARCH_HELP, LibraryBar
from rigbuilder.views.library_list import CardList
from rigbuilder.views.library_side import LibrarySide
from rigbuilder.views.library_verbs import LibraryVerbs
from rigbuilder.views.library_work import Asking, LibraryWork, window_asking
from rigbuilder.views.preview_toast import toast_of
from rigbuilder.views.theme_look import Look

_LOOK_AFTER_MS = 120
_AFTER_WRITING_MS = 300
_NO_CARDS = "No cards yet.\nSave the rig on the bench and it appears here, or import a set."
_NO_MATCH = "No card says all of that.\nPress Esc in the search field to see all cards again."


class LibraryPanel(QWidget):
    """Search, list, and beside it the card that is looked at."""

    open_wanted = Signal(object)  # the path of a card
    compared = Signal(object)

    def __init__(
        self,
        desk: Desk,
        bench: Bench,
        look: Look,
        parent: QWidget | None = None,
        *,
        asking: Asking | None = None,
        cache: Path | None = None,
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName("Library")
        self._desk, self._bench = desk, bench
        self.library = CardLibrary(desk.store.folder, bench, cache, self)
        self.words = CardWords(self.library, Sketcher(bench.reference))
        self.table = LibraryTable(self.library, self.words, self)
        self.asking = asking or window_asking(self)
        self.work = LibraryWork(desk, bench, self.asking, lambda: self.library.folder, self)
        self.acts = LibraryActions(look, self)
        self.bar, self.list, self.side = (
            LibraryBar(look, self),
            CardList(self.table, look, self),
            LibrarySide(look, self),
        )
        self.verbs = LibraryVerbs(self.library, self.list, self.acts, self.work, self.asking)
        self.trouble = text_label("", "problem", wrap=True, parent=self)
        self.empty = text_label("", "label", wrap=True, parent=self)
        self._to_select: tuple[Path, ...] = ()
        self._settle = QTimer(self)
        self._settle.setSingleShot(True)
        self._settle.setInterval(_LOOK_AFTER_MS)
        self._settle.timeout.connect(self.show_card)
        self.setAcceptDrops(True)
        self._lay_out(look)
        self._wire()
        self.refresh()

    def look(self) -> None:
        """Bring everything up to date with the disk."""
        self.library.look()
        self.side.bin.show_deleted(deleted_cards(self._desk.store))

    def start_search(self) -> None:
        """Put the focus into the search field."""
        self.bar.search.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.bar.search.selectAll()

    def show_versions_of(self, path: Path) -> None:
        """Choose one card and show its earlier versions."""
        self.bar.search.clear()
        self._to_select = (path,)
        self.side.setCurrentWidget(self.side.history)
        self.look()
        self.refresh()

    def refresh(self, *, keep_place: bool = False) -> None:
        """Show what the search means now; later, while somebody is writing in the list."""
        if self.list.is_writing:
            QTimer.singleShot(_AFTER_WRITING_MS, self, lambda: self.refresh(keep_place=True))
            return
        bar = self.bar
        descending = bar.descending.isChecked()
        lines = self.library.lines(
            bar.search.text(), SORTING[bar.column], bar.grouping, descending=descending
        )
        self.list.show_lines(lines, keep_place=keep_place)
        self.list.show_order(bar.column, descending=descending)
        names = {card.file_name for card in self.table.cards()}
        if self._to_select and names.issuperset(path.name for path in self._to_select):
            self.list.select_paths(self._to_select)
            self._to_select = ()
        shown, total = len(names), len(self.library.rows)
        cards = f"{total:,} card{'' if total == 1 else 's'}"
        bar.counted.setText(cards if shown == total else f"{shown:,} of {cards}")
        self.empty.setText(_NO_MATCH if total else _NO_CARDS)
        self.stack.setCurrentIndex(0 if lines else 1)
        self._chosen()

    def show_card(self) -> None:
        """Show the chosen card beside the list."""
        cards = self.list.cards()
        if len(cards) != 1:
            self.side.card.show_none(f"{len(cards):,} cards are chosen." if cards else "No card is chosen.")
            self.side.history.show_versions(())
            return
        self.side.card.show_card(look_at_card(cards[0].path, self._bench), self.words.remark(cards[0]))
        self.side.history.show_versions(earlier_versions(self._desk.store, cards[0].path))

    def close_down(self) -> None:
        """End what works beside the window."""
        self._settle.stop()
        self.library.close()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:  # noqa: N802 (Qt's name)
        """Take whatever looks like files; which ones, the drop says."""
        if event.mimeData().hasUrls():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:  # noqa: N802 (Qt's name)
        """Bring in the cards and sets that were dropped, or say why not."""
        found = cards_dropped(event.mimeData().urls())
        if isinstance(found, str):
            toast_of(self).show_message(found)
        else:
            event.acceptProposedAction()
            self.work.take_in(found)

    def _lay_out(self, look: Look) -> None:
        theme = look.theme
        self.stack = QStackedWidget(self)
        self.stack.addWidget(self.list)
        self.empty.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.stack.addWidget(self.empty)
        split = QSplitter(Qt.Orientation.Horizontal, self)
        split.addWidget(self.stack)
        split.addWidget(self.side)
        split.setChildrenCollapsible(False)
        split.setStretchFactor(0, 1)
        split.setSizes([theme.px(880), theme.px(330)])
        self.trouble.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(*(theme.px(12),) * 4)
        column.addWidget(self.bar)
        column.addLayout(self.acts.buttons(self))
        column.addWidget(self.trouble)
        column.addWidget(split, 1)

    def _wire(self) -> None:
        library, work, bar = self.library, self.work, self.bar
        library.rows_changed.connect(lambda: self.refresh(keep_place=True))
        library.verdicts_changed.connect(self._settle.start)
        library.progress.connect(self._reviewed)
        library.told.connect(lambda words: _tell(self.trouble, words))
        bar.wanted.connect(lambda: self.refresh())
        bar.down.connect(lambda: self.list.setFocus(Qt.FocusReason.ShortcutFocusReason))
        bar.stop_wanted.connect(self._stop_or_go_on)
        bar.help_wanted.connect(lambda: self.asking.ask.tell("How to search", SEARCH_HELP))
        self.list.chosen.connect(self._chosen)
        self.list.selectionModel().selectionChanged.connect(lambda *_: self._chosen())
        self.list.opened.connect(lambda _: self.acts["open"].trigger())
        self.list.left_upwards.connect(self.start_search)
        self.list.sort_wanted.connect(bar.order_by)
        # Only when the field is closed: what is done then shows other lines.
        self.table.renamed.connect(work.rename, Qt.ConnectionType.QueuedConnection)
        self.table.retagged.connect(work.retag, Qt.ConnectionType.QueuedConnection)
        self.side.bin.wanted.connect(work.bring_back)
        self.side.history.wanted.connect(self.verbs.bring_version_back)
        work.done.connect(self._done)
        work.compared.connect(self.compared)
        self.verbs.opened.connect(self.open_wanted)
        self.verbs.find_wanted.connect(self.start_search)

    def _chosen(self) -> None:
        cards = self.list.cards()
        broken = sum(bool(card.trouble) for card in cards)
        trail = self.work.trail
        self.acts.allow(len(cards), broken, undo=trail.can_undo, redo=trail.can_redo)
        self._settle.start()

    def _done(self, deed: Deed) -> None:
        if deed.text:
            undo = self.acts["undo"].trigger if deed.back is not None else None
            toast_of(self).show_message(deed.text, undo=undo)
        self._to_select = deed.paths
        self.library.touch({*deed.paths, *(card.path for card in self.list.cards())})
        self.look()

    def _reviewed(self, left: int, total: int) -> None:
        """Put the cards in order anew once all verdicts are known on which it depends."""
        if self.library.paused:
            self.bar.show_paused(self.library.unreviewed())
        else:
            self.bar.show_progress(left, total)
        if not left and self.bar.depends_on_verdicts:
            self.refresh(keep_place=True)

    def _stop_or_go_on(self) -> None:
        if self.library.paused:
            self.library.review_missing()
        else:
            self.library.stop_reviewing()


def _tell(label: QLabel, words: str) -> None:
    label.setText(words)
    label.setVisible(bool(words))
