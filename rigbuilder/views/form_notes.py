"""The last section of the form: what a person writes beside the rig."""

from collections.abc import MutableMapping

from PySide6.QtCore import QEvent, QObject
from PySide6.QtWidgets import QPlainTextEdit

from rigbuilder.viewmodels.form import FormModel
from rigbuilder.views.controls.foldable import Foldable
from rigbuilder.views.form_rows import UndoPasser
from rigbuilder.views.theme_look import Look


class NotesSection(Foldable):
    """Free words about the rig; Tab goes on to the next control."""

    def __init__(self, model: FormModel, look: Look, memory: MutableMapping[str, bool]) -> None:
        super().__init__(look, "Notes", key="notes", memory=memory, open_at_first=False)
        self._model = model
        self.edit = QPlainTextEdit(self.body)
        self.edit.setObjectName("field:notes")
        self.edit.setAccessibleName("Notes on the rig")
        self.edit.setAccessibleDescription("Anything worth remembering; it is kept on the card.")
        self.edit.setPlaceholderText("Anything worth remembering about this rig")
        self.edit.setTabChangesFocus(True)
        self.edit.setFixedHeight(self.fontMetrics().lineSpacing() * 6)
        self.column.addWidget(self.edit)
        self._passer = UndoPasser(self)
        self.edit.installEventFilter(self._passer)
        self.edit.installEventFilter(self)
        self.edit.textChanged.connect(self._typed)

    def refresh(self) -> None:
        """Show what the card says."""
        text = self._model.bench.text("notes") or ""
        if text != self.edit.toPlainText():
            self.edit.blockSignals(True)
            self.edit.setPlainText(text)
            self.edit.blockSignals(False)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 (Qt's name)
        """End the run of typing when the field is left."""
        if watched is self.edit and event.type() == QEvent.Type.FocusOut:
            self._model.bench.settle()
        return super().eventFilter(watched, event)

    def _typed(self) -> None:
        self._model.bench.edit("notes", self.edit.toPlainText())
