"""A field for what a label says: free text, its unit inside, its problem below."""

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from rigbuilder.viewmodels.literal import literal
from rigbuilder.views.controls.patience import Patience
from rigbuilder.views.controls.texts import restyle, text_label


class UnitEdit(QLineEdit):
    """A line edit that shows a unit at its right end, inside the frame."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._unit = text_label("", "label", parent=self)
        self._unit.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def set_unit(self, unit: str) -> None:
        """Show ``unit``; empty shows none."""
        self._unit.setText(unit)
        self._place()

    def unit(self) -> str:
        """Return the unit shown."""
        return self._unit.text()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 (Qt's name)
        """Keep the unit at the right end."""
        super().resizeEvent(event)
        self._place()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 (Qt's name)
        """Make room again when the type changes."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange) and hasattr(self, "_unit"):
            self._place()

    def _place(self) -> None:
        self._unit.adjustSize()
        width = self._unit.width() if self._unit.text() else 0
        gap = self.fontMetrics().averageCharWidth()
        margins = (0, 0, width + gap if width else 0, 0)
        if self.textMargins().right() != margins[2]:
            self.setTextMargins(*margins)
        self._unit.setVisible(width > 0)
        self._unit.move(self.width() - width - gap, (self.height() - self._unit.height()) // 2)


class QuantityField(QWidget):
    """One quantity or label as text, e.g. ``3/8-1 oz`` or a whole rod label.

    The field only shows: whoever owns it parses what ``edited`` brings and
    answers with ``set_problem``.  When the problem appears is decided here.
    """

    edited = Signal(str)  # each keystroke of a person
    left = Signal()  # the person is done with the field

    def __init__(
        self, name: str, *, unit: str = "", placeholder: str = "", parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._name = name
        self._help = ""
        self.edit = UnitEdit(self)
        self.edit.setAccessibleName(name)
        self.edit.setPlaceholderText(placeholder)
        self.edit.setClearButtonEnabled(False)
        self.edit.installEventFilter(self)
        self.problem_label = text_label("", "problem", wrap=True, parent=self)
        self.problem_label.hide()
        self.patience = Patience(self)
        self.patience.shown.connect(self._show_problem)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(2)
        layout.addWidget(self.edit)
        layout.addWidget(self.problem_label)
        self.setFocusProxy(self.edit)
        self.edit.textEdited.connect(self._typed)
        self.set_unit(unit)

    def text(self) -> str:
        """Return what is written."""
        return self.edit.text()

    def set_text(self, text: str) -> None:
        """Write ``text`` without telling anyone; the caret stays where the text allows."""
        if text != self.edit.text():
            caret = self.edit.cursorPosition()
            self.edit.setText(text)
            self.edit.setCursorPosition(min(caret, len(text)))

    def set_unit(self, unit: str) -> None:
        """Show the unit that a bare number is taken in."""
        self.edit.set_unit(unit)
        self._describe()

    def set_help(self, text: str) -> None:
        """Set the tip of the field, which assistive technology reads too."""
        self._help = text
        self.edit.setToolTip(literal(text))
        self._describe()

    def set_problem(self, problem: str) -> None:
        """Take what is wrong with the text now, empty if nothing is."""
        self.patience.tell(problem)

    def problem(self) -> str:
        """Return the problem that is shown, empty if none is."""
        return self.problem_label.text()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 (Qt's name)
        """Notice when the field is left."""
        if watched is self.edit and event.type() == QEvent.Type.FocusOut:
            self.patience.left()
            self.left.emit()
        return super().eventFilter(watched, event)

    def _typed(self, text: str) -> None:
        self.patience.typed()
        self.edited.emit(text)

    def _show_problem(self, problem: str) -> None:
        self.problem_label.setText(problem)
        self.problem_label.setVisible(bool(problem))
        restyle(self.edit, "problem", bool(problem))
        self._describe()

    def _describe(self) -> None:
        parts = [self.problem_label.text(), self.edit.unit(), self._help]
        self.edit.setAccessibleDescription(". ".join(part for part in parts if part))
