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

    def show_lines(self, lines: list[Line], *, keep_place: bool = False) -> None:
        """Show these lines; what was selected stays so where it is still among them.

        With ``keep_place`` a neighbour takes the place of a card that is gone, else the first one does.
        """
        kept = {card.file_name for card in self.cards()}
        current, near = self._current(), self.currentIndex().row() if keep_place else -1
        self.clearSpans()
        self._table.show(lines)
        theme, headings = self._look.theme, self._table.headings()
        for place in set(self._headings) - set(headings):  # heights outlive what stood there
            self.setRowHeight(place, theme.px(CARD_HEIGHT))
        for place in headings:
            self.setSpan(place, 0, 1, len(Column))
            self.setRowHeight(place, theme.px(HEADING_HEIGHT))
        self._headings = headings
        self._select(kept, current, near)

    @property
    def is_writing(self) -> bool:
        """Whether a name or tags are being written over."""
        return self.state() is QAbstractItemView.State.EditingState

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
            if not self.is_writing:  # else it only ends the writing
                self._open(self.currentIndex())
        elif plain and event.key() == Qt.Key.Key_Up and self.currentIndex().row() <= 0:
            self.left_upwards.emit()
        elif plain and event.key() in (Qt.Key.Key_Home, Qt.Key.Key_End):
            self._go_to_end(last=event.key() == Qt.Key.Key_End)
        elif plain and event.key() == Qt.Key.Key_F2:
            self.rename()
        else:
            super().keyPressEvent(event)

    def currentChanged(self, current: Index, previous: Index) -> None:  # noqa: N802 (Qt's name)
        """Tell that another card is looked at."""
        super().currentChanged(current, previous)
        self.chosen.emit()

    def _select(self, names: set[str], current: str, near: int = -1) -> None:
        """Select cards and go to the current one; where it is gone, to the nearest place or the first."""
        table, model, flags = self._table, self.selectionModel(), QItemSelectionModel.SelectionFlag
        places: dict[int, str] = {}
        for place in range(table.rowCount()):
            line = table.line(place)
            if not isinstance(line, Heading):
                places[place] = line.file_name
        model.clearSelection()
        chosen = [place for place, name in places.items() if name in names]
        at = next((place for place, name in places.items() if name == current), None)
        if at is None and places:
            at = min(places, key=lambda place: abs(place - near)) if near >= 0 else next(iter(places))
        for place in chosen or ([] if at is None else [at]):
            model.select(table.index(place, Column.NAME), flags.Select | flags.Rows)
        if at is not None:
            model.setCurrentIndex(table.index(at, Column.NAME), flags.NoUpdate)
            if at == next(iter(places)):
                self.scrollToTop()
            else:
                self.scrollTo(table.index(at, Column.NAME))
        self.chosen.emit()

    def _go_to_end(self, *, last: bool) -> None:
        rows = [row for row in range(self._table.rowCount()) if row not in self._headings]
        if rows:
            self.setCurrentIndex(self._table.index(rows[-1 if last else 0], Column.NAME))
            if not last:
                self.scrollToTop()

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
