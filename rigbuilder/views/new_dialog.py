"""Choosing what a new card starts from: the usual rig of a technique, or nothing."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label


class NewDialog(QDialog):
    """A list of techniques that shortens as part of a name is typed."""

    def __init__(self, techniques: Sequence[tuple[str, str]], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("New card")
        self.choice: str | None = None
        self.search = QLineEdit(self)
        self.search.setPlaceholderText("Type part of a name, e.g. frog or drop")
        self.search.setAccessibleName("Find a technique")
        self.list = QListWidget(self)
        self.list.setAccessibleName("Techniques")
        for identity, title in techniques:
            item = QListWidgetItem(title, self.list)
            item.setData(Qt.ItemDataRole.UserRole, identity)
        self.list.setCurrentRow(0)
        self.begin = ActionButton("Start from the usual rig", weight="first", parent=self)
        self.empty = ActionButton("Start empty", parent=self)
        self.cancel = ActionButton("Cancel", parent=self)
        self.begin.setDefault(True)
        self._lay_out()
        self.search.textChanged.connect(self._narrow)
        self.search.installEventFilter(self)
        self.list.itemActivated.connect(lambda _: self._begin())
        self.begin.clicked.connect(self._begin)
        self.empty.clicked.connect(lambda: self._take(""))
        self.cancel.clicked.connect(self.reject)
        self.resize(self.fontMetrics().averageCharWidth() * 72, self.fontMetrics().lineSpacing() * 28)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 (Qt's name)
        """Let the arrow keys walk the list while the name is typed."""
        if watched is self.search and isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            step = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}.get(Qt.Key(event.key()), 0)
            shown = [row for row in range(self.list.count()) if not self.list.item(row).isHidden()]
            if step and shown:
                at = shown.index(self.list.currentRow()) if self.list.currentRow() in shown else -step
                self.list.setCurrentRow(shown[max(0, min(len(shown) - 1, at + step))])
                return True
        return super().eventFilter(watched, event)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.addWidget(text_label("What will you fish?", "heading"))
        column.addWidget(
            text_label(
                "Every technique comes with its usual rig, complete. Change what is different on yours.",
                "label",
                wrap=True,
            )
        )
        column.addWidget(self.search)
        column.addWidget(self.list, 1)
        row = QHBoxLayout()
        row.addWidget(self.empty)
        row.addStretch(1)
        row.addWidget(self.cancel)
        row.addWidget(self.begin)
        column.addLayout(row)

    def _narrow(self, text: str) -> None:
        wanted = text.strip().casefold()
        first = None
        for row in range(self.list.count()):
            item = self.list.item(row)
            item.setHidden(wanted not in item.text().casefold())
            if first is None and not item.isHidden():
                first = row
        self.list.setCurrentRow(-1 if first is None else first)
        self.begin.setEnabled(first is not None)

    def _begin(self) -> None:
        item = self.list.currentItem()
        if item is not None:
            self._take(str(item.data(Qt.ItemDataRole.UserRole)))

    def _take(self, choice: str) -> None:
        self.choice = choice
        self.accept()


def pick_technique(techniques: Sequence[tuple[str, str]], parent: QWidget | None = None) -> str | None:
    """Return the technique to start from, "" for an empty card, None if the person thought better of it."""
    dialog = NewDialog(techniques, parent)
    dialog.exec()
    choice = dialog.choice
    dialog.deleteLater()
    return choice
