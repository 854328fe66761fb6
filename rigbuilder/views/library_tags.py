"""Asking for tags: what to put on the chosen cards and what to take away."""

from collections.abc import Sequence
from typing import Protocol

from PySide6.QtCore import QStringListModel, Qt
from PySide6.QtWidgets import QCompleter, QDialog, QFormLayout, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from rigbuilder.viewmodels.library_deeds import tags_in
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label

Tags = tuple[str, ...]


class AskTags(Protocol):
    """Asks for tags; a test answers without a dialog."""

    def __call__(self, count: int, present: Sequence[str], known: Sequence[str]) -> tuple[Tags, Tags] | None:
        """Return the tags to add and to take away, None if the person thought better of it."""


class TagsDialog(QDialog):
    """Two lines: add these, take these away."""

    def __init__(
        self, count: int, present: Sequence[str], known: Sequence[str], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Tags")
        self.add, self.take = QLineEdit(self), QLineEdit(self)
        self.add.setPlaceholderText("e.g. larkmere, loan")
        for field, words in ((self.add, known), (self.take, present)):
            completer = QCompleter(QStringListModel(list(words), self), self)
            completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
            completer.setFilterMode(Qt.MatchFlag.MatchContains)
            field.setCompleter(completer)
        self.take.setPlaceholderText(", ".join(present) or "there are none")
        self.take.setEnabled(bool(present))
        form = QFormLayout()
        form.addRow("&Add", self.add)
        form.addRow("&Take away", self.take)
        change = ActionButton("Change tags", weight="first", parent=self)
        cancel = ActionButton("Cancel", parent=self)
        change.setDefault(True)
        change.clicked.connect(self.accept)
        cancel.clicked.connect(self.reject)
        row = QHBoxLayout()
        row.addStretch(1)
        row.addWidget(cancel)
        row.addWidget(change)
        column = QVBoxLayout(self)
        column.addWidget(
            text_label("Tags of 1 card" if count == 1 else f"Tags of {count:,} cards", "heading")
        )
        column.addWidget(text_label("Several are separated by commas.", "label"))
        column.addLayout(form)
        column.addLayout(row)
        self.resize(self.fontMetrics().averageCharWidth() * 60, self.sizeHint().height())

    def tags(self) -> tuple[Tags, Tags]:
        """Return the tags to add and to take away."""
        return tags_in(self.add.text()), tags_in(self.take.text())


class WindowAskTags:
    """Asks with the dialog over a window."""

    def __init__(self, over: QWidget) -> None:
        self._over = over

    def __call__(self, count: int, present: Sequence[str], known: Sequence[str]) -> tuple[Tags, Tags] | None:
        """Return the tags to add and to take away, None if the person thought better of it."""
        dialog = TagsDialog(count, present, known, self._over)
        accepted = dialog.exec() == QDialog.DialogCode.Accepted
        tags = dialog.tags()
        dialog.deleteLater()
        return tags if accepted else None
