"""The deleted cards, the last deleted first, and how they come back."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from rigbuilder.viewmodels.library_versions import Deleted
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label

_EDGE, _GAP = 8, 3  # pixels: as far from the edge as the card beside it; between two entries


class BinPane(QWidget):
    """A list of deleted cards; ``wanted`` carries those to bring back."""

    wanted = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._deleted: Sequence[Deleted] = ()
        self.says = text_label("", "label", wrap=True, parent=self)
        self.list = QListWidget(self)
        self.list.setAccessibleName("Deleted cards")
        self.list.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.list.setWordWrap(True)
        self.list.setSpacing(_GAP)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.button = ActionButton("Bring back", tip="Puts the card back where it was", parent=self)
        column = QVBoxLayout(self)
        column.setContentsMargins(_EDGE, _EDGE, _EDGE, 0)
        column.addWidget(self.says)
        column.addWidget(self.list, 1)
        column.addWidget(self.button, 0, Qt.AlignmentFlag.AlignLeft)
        self.button.clicked.connect(self._want)
        self.list.itemActivated.connect(lambda _: self._want())
        self.show_deleted(())

    def show_deleted(self, deleted: Sequence[Deleted]) -> None:
        """Show what is in the bin."""
        self._deleted = deleted
        self.list.clear()
        for card in deleted:
            broken = "" if card.readable else "\ncannot be read, kept as it was"
            QListWidgetItem(f"{card.name}\ndeleted {card.when}, from {card.origin}{broken}", self.list)
        for widget in (self.list, self.button):
            widget.setVisible(bool(deleted))
        self.says.setText("Deleted cards stay here." if deleted else "No card was deleted.")
        self.list.setCurrentRow(0 if deleted else -1)

    def _want(self) -> None:
        rows = sorted({index.row() for index in self.list.selectedIndexes()})
        chosen = [self._deleted[row].binned for row in rows]
        if chosen:
            self.wanted.emit(chosen)
