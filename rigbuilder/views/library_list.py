"""The list of cards: rows to be walked, chosen and opened by keys as well as by pointer."""

from collections.abc import Iterable
from pathlib import Path

from PySide6.QtCore import QItemSelectionModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from rigbuilder.viewmodels.library_lines import Card, Heading, Line
from rigbuilder.viewmodels.library_table import SORTING, LibraryTable
from rigbuilder.viewmodels.library_words import Column
from rigbuilder.views.library_delegate import CARD_HEIGHT, DRAWING_WIDTH, HEADING_HEIGHT, CardDelegate
from rigbuilder.views.theme_look import Look

_WIDTHS = {
    Column.TECHNIQUE: 128,
    Column.LINE: 152,
    Column.VERDICT: 112,
    Column.TAGS: 104,
    Column.CHANGED: 104,
}
Index = QModelIndex | QPersistentModelIndex


class CardList(QTableView):
    """Cards in rows; Enter opens, F2 writes over the name, Up from the first row leaves upwards."""

    opened = Signal(object)
    chosen = Signal()  # other cards are selected
    sort_wanted = Signal(object)
    left_upwards = Signal()

    def __init__(self, table: LibraryTable, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._table, self._look = table, look
        self._headings: list[int] = []
        self.setAccessibleName("Cards")
        self.setModel(table)
        self.setItemDelegate(CardDelegate(look, self))
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.EditKeyPressed)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        head = self.horizontalHeader()
        head.setSectionsClickable(True)
        head.setHighlightSections(False)
        head.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        head.setSectionResizeMode(Column.NAME, QHeaderView.ResizeMode.Stretch)
        head.setMinimumSectionSize(60)
        head.sectionClicked.connect(self._sort)
        self.doubleClicked.connect(lambda index: self._open(index))
        look.changed.connect(lambda _: self._dress())
        self._dress()

    def show_lines(self, lines: list[Line]) -> None:
        """Show these lines; what was selected stays so where it is still among them."""
        kept = {card.file_name for card in self.cards()}
        current = self._current()
        self.clearSpans()
        self._table.show(lines)
        theme, headings = self._look.theme, self._table.headings()
        for place in set(self._headings) - set(headings):  # heights outlive what stood there
            self.setRowHeight(place, theme.px(CARD_HEIGHT))
        for place in headings:
            self.setSpan(place, 0, 1, len(Column))
            self.setRowHeight(place, theme.px(HEADING_HEIGHT))
        self._headings = headings
        self._select(kept, current)

    def cards(self) -> list[Card]:
        """Return the selected cards, in order, each once."""
        lines = [self._table.line(index.row()) for index in self.selectionModel().selectedRows()]
        return list({line.file_name: line for line in lines if not isinstance(line, Heading)}.values())

    def select_paths(self, paths: Iterable[Path]) -> None:
        """Select the cards of these files, as far as they are shown."""
        names = {path.name for path in paths}
        if names:
            self._select(names, next(iter(names)))

    def rename(self) -> None:
        """Write over the name of the current card."""
        self.edit(self.currentIndex().siblingAtColumn(Column.NAME))

    def show_order(self, column: Column, *, descending: bool) -> None:
        """Mark the column by which the cards are in order."""
        order = Qt.SortOrder.DescendingOrder if descending else Qt.SortOrder.AscendingOrder
        self.horizontalHeader().setSortIndicatorShown(True)
        self.horizontalHeader().setSortIndicator(column, order)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 (Qt's name)
        """Open with Enter; leave upwards from the first row."""
        plain = event.modifiers() in (Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.KeypadModifier)
        if plain and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._open(self.currentIndex())
        elif plain and event.key() == Qt.Key.Key_Up and self.currentIndex().row() <= 0:
            self.left_upwards.emit()
        elif plain and event.key() == Qt.Key.Key_F2:
            self.rename()
        else:
            super().keyPressEvent(event)

    def currentChanged(self, current: Index, previous: Index) -> None:  # noqa: N802 (Qt's name)
        """Tell that another card is looked at."""
        super().currentChanged(current, previous)
        self.chosen.emit()

    def _select(self, names: set[str], current: str) -> None:
        model, flags = self.selectionModel(), QItemSelectionModel.SelectionFlag
        first = None
        model.clearSelection()
        for place in range(self._table.rowCount()):
            line = self._table.line(place)
            if isinstance(line, Heading):
                continue
            if line.file_name in names:
                model.select(self._table.index(place, Column.NAME), flags.Select | flags.Rows)
            if line.file_name == current and first is None:
                first = place
        if first is None:
            self.scrollToTop()
            first = next(iter(set(range(min(2, self._table.rowCount()))) - set(self._table.headings())), None)
        if first is not None:
            model.setCurrentIndex(self._table.index(first, Column.NAME), flags.NoUpdate)
            if not names:
                model.select(self._table.index(first, Column.NAME), flags.Select | flags.Rows)
            if first <= 1:
                self.scrollToTop()
            else:
                self.scrollTo(self._table.index(first, Column.NAME))
        self.chosen.emit()

    def _current(self) -> str:
        row = self.currentIndex().row()
        line = self._table.line(row) if 0 <= row < self._table.rowCount() else None
        return "" if line is None or isinstance(line, Heading) else line.file_name

    def _open(self, index: QModelIndex) -> None:
        line = self._table.line(index.row()) if index.isValid() else None
        if line is not None and not isinstance(line, Heading):
            self.opened.emit(line)

    def _sort(self, section: int) -> None:
        if Column(section) in SORTING:
            self.sort_wanted.emit(Column(section))

    def _dress(self) -> None:
        theme = self._look.theme
        self.verticalHeader().setDefaultSectionSize(theme.px(CARD_HEIGHT))
        self.setColumnWidth(Column.DRAWING, theme.px(DRAWING_WIDTH))
        for column, width in _WIDTHS.items():
            self.setColumnWidth(column, theme.px(width))
        self.viewport().update()
