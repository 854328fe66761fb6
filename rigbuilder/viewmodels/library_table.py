"""The library as a table for the window: a plain list of lines, so that thousands are no wait."""

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt, Signal

from rigbuilder.store.rows import Row, Sorting
from rigbuilder.viewmodels.library import CardLibrary
from rigbuilder.viewmodels.library_lines import Heading, Line
from rigbuilder.viewmodels.library_words import TITLES, CardWords, Column
from rigbuilder.viewmodels.literal import literal

Index = QModelIndex | QPersistentModelIndex
_Role = Qt.ItemDataRole


SORTING = {
    Column.NAME: Sorting.NAME,
    Column.TECHNIQUE: Sorting.TECHNIQUE,
    Column.LINE: Sorting.LINE,
    Column.VERDICT: Sorting.VERDICT,
    Column.CHANGED: Sorting.CHANGED,
}

#: Roles beyond Qt's own: the line itself, the key of its verdict, a remark on the card, its sketch.
LINE_ROLE, VERDICT_ROLE, REMARK_ROLE, SKETCH_ROLE = (_Role.UserRole + number for number in range(1, 5))


class LibraryTable(QAbstractTableModel):
    """Shows lines of the library; names and tags can be written over."""

    renamed = Signal(object, str)  # the row and what was written
    retagged = Signal(object, str)

    def __init__(self, library: CardLibrary, words: CardWords, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._words = words
        self._lines: list[Line] = []
        library.verdicts_changed.connect(self._verdicts_changed)

    def show(self, lines: list[Line]) -> None:
        """Show these lines."""
        self.beginResetModel()
        self._lines = lines
        self.endResetModel()

    def line(self, row: int) -> Line:
        """Return the line at a place."""
        return self._lines[row]

    def cards(self) -> list[Row]:
        """Return the cards shown, in order; one that stands under two headings comes twice."""
        return [line for line in self._lines if isinstance(line, Row)]

    def headings(self) -> list[int]:
        """Return the places of the headings."""
        return [place for place, line in enumerate(self._lines) if isinstance(line, Heading)]

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008, N802 (Qt's own signature)
        """Return the number of lines."""
        return 0 if parent.isValid() else len(self._lines)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008, N802 (Qt's own signature)
        """Return the number of columns."""
        return 0 if parent.isValid() else len(Column)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = _Role.DisplayRole) -> Any:  # noqa: N802
        """Return the titles of the columns."""
        if orientation is Qt.Orientation.Horizontal and role == _Role.DisplayRole:
            return TITLES[section]
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Say which cells can be chosen and written over."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        line = self._lines[index.row()]
        if isinstance(line, Heading):
            return Qt.ItemFlag.ItemIsEnabled
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable | Qt.ItemFlag.ItemNeverHasChildren
        if not line.trouble and index.column() in (Column.NAME, Column.TAGS):
            flags |= Qt.ItemFlag.ItemIsEditable
        return flags

    def data(self, index: Index, role: int = _Role.DisplayRole) -> Any:
        """Return what a cell shows and says."""
        if not index.isValid():
            return None
        line, column = self._lines[index.row()], Column(index.column())
        if isinstance(line, Heading):
            return _of_heading(line, column, role)
        return self._of_card(line, column, role)

    def setData(self, index: Index, value: Any, role: int = _Role.EditRole) -> bool:  # noqa: N802 (Qt's name)
        """Hand on what was written; the change comes back when it is on the disk."""
        line = self._lines[index.row()] if index.isValid() else None
        if role != _Role.EditRole or not isinstance(line, Row):
            return False
        told = {Column.NAME: self.renamed, Column.TAGS: self.retagged}.get(Column(index.column()))
        if told is None:
            return False
        told.emit(line, str(value))
        return True

    def _of_card(self, row: Row, column: Column, role: int) -> Any:
        if role in (_Role.DisplayRole, _Role.EditRole):
            return self._words.text(row, column)
        if role == LINE_ROLE:
            return row
        if role == VERDICT_ROLE:
            return self._words.verdict(row)
        if role == REMARK_ROLE:
            return self._words.remark(row)
        if role == SKETCH_ROLE:
            return self._words.sketch(row)
        if role == _Role.AccessibleTextRole:
            return self._words.spoken(row, column)
        if role == _Role.ToolTipRole:
            tip = self._words.remark(row) or (str(row.path) if column is Column.NAME else "")
            return literal(tip) or None
        return None

    def _verdicts_changed(self) -> None:
        if self._lines:
            last = self.index(len(self._lines) - 1, Column.VERDICT)
            self.dataChanged.emit(self.index(0, Column.VERDICT), last)


def _of_heading(line: Heading, column: Column, role: int) -> Any:
    if role == LINE_ROLE:
        return line
    if role == _Role.DisplayRole and column is Column.DRAWING:
        return line.text
    return line.spoken if role == _Role.AccessibleTextRole else None
