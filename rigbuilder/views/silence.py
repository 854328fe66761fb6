"""Silencing: a written why before a reason is put aside, and the list of what is not heard."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from rigbuilder.viewmodels.reasons import Silenced
from rigbuilder.views.controls.buttons import ActionButton, LinkButton
from rigbuilder.views.controls.foldable import Foldable
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.theme_look import Look

LONGEST_WHY = 300


class SilenceForm(QWidget):
    """Asks why a reason does not count on this card; without a why nothing is silenced."""

    written = Signal(str)
    dropped = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 4, 0, 0)
        column.setSpacing(4)
        self.edit = QLineEdit(self)
        self.edit.setMaxLength(LONGEST_WHY)
        self.edit.setPlaceholderText("e.g. the spool is taped")
        self.edit.setAccessibleName("Why it does not count on this card")
        column.addWidget(text_label("Why it does not count on this card:", "label", wrap=True, parent=self))
        column.addWidget(self.edit)
        row = QHBoxLayout()
        self.commit = ActionButton("Silence", parent=self)
        self.cancel = ActionButton("Cancel", weight="quiet", parent=self)
        self.commit.setEnabled(False)
        row.addWidget(self.commit)
        row.addWidget(self.cancel)
        row.addStretch(1)
        column.addLayout(row)
        self.edit.textChanged.connect(lambda text: self.commit.setEnabled(bool(text.strip())))
        self.edit.returnPressed.connect(self._commit)
        self.commit.clicked.connect(self._commit)
        self.cancel.clicked.connect(self.dropped)
        self.hide()

    def open(self) -> None:
        """Show the form and wait for the why."""
        self.edit.clear()
        self.show()
        self.edit.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 (Qt's name)
        """Esc drops it."""
        if event.key() == Qt.Key.Key_Escape:
            self.dropped.emit()
        else:
            super().keyPressEvent(event)

    def _commit(self) -> None:
        why = self.edit.text().strip()
        if why:
            self.hide()
            self.written.emit(why)


class SilencedList(Foldable):
    """What this card silences, folded away, each with its why and the way back."""

    wanted_again = Signal(str)  # the rule to hear again

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, "Silenced on this card", open_at_first=False, parent=parent)
        self._look = look
        self._shown: tuple[Silenced, ...] = ()
        self._rows: list[QWidget] = []
        self.hide()

    def set_entries(self, entries: Sequence[Silenced]) -> None:
        """Show these; the list is hidden while there are none."""
        if tuple(entries) == self._shown:
            return
        self._shown = tuple(entries)
        for row in self._rows:
            row.hide()
            row.deleteLater()
        self._rows = [self._row(entry) for entry in entries]
        self.head.setText(f"Silenced on this card ({len(entries)})")
        self.setVisible(bool(entries))

    def _row(self, entry: Silenced) -> QWidget:
        row = QWidget(self.body)
        column = QVBoxLayout(row)
        column.setContentsMargins(self._look.theme.px(22), 2, 0, 4)
        column.setSpacing(2)
        name = entry.rule.replace("-", " ")
        title = f"{entry.headline} ({entry.severity})" if entry.headline else f"Nothing to hear now: {name}"
        column.addWidget(text_label(title, "body", wrap=True, parent=row))
        column.addWidget(text_label(f"Silenced because: {entry.why}", "caption", wrap=True, parent=row))
        again = LinkButton("Hear it again", parent=row)
        again.setAccessibleName(f"Hear it again: {entry.headline or name}")
        again.clicked.connect(lambda: self.wanted_again.emit(entry.rule))
        column.addWidget(again)
        self.column.addWidget(row)
        row.show()
        return row
