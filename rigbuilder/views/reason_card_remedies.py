"""The remedies of one reason as buttons, and advice as words with a mark of its own."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import QEnterEvent, QFocusEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from rigbuilder.viewmodels.prospects import Option
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.reasons_flow import FlowRow
from rigbuilder.views.theme_look import Look

_BY_KEYBOARD = (
    Qt.FocusReason.TabFocusReason,
    Qt.FocusReason.BacktabFocusReason,
    Qt.FocusReason.ShortcutFocusReason,
)
_TIP = "Changes the card; one step back undoes it."


class RemedyButton(ActionButton):
    """One change of the card; tells when pointer or focus rests on it."""

    looked = Signal(bool)

    def __init__(self, option: Option, parent: QWidget | None = None) -> None:
        super().__init__("", weight="remedy", tip=_TIP, parent=parent)
        self.option = option
        self.setAccessibleName(option.say)
        self.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        self.setText(_plain(option.say))

    def fit(self, width: int) -> None:
        """Break the words into lines that fit into ``width``."""
        room = width - 2 * self.fontMetrics().averageCharWidth() - 12
        lines: list[str] = []
        for word in self.option.say.split():
            longer = f"{lines[-1]} {word}" if lines else word
            if lines and self.fontMetrics().horizontalAdvance(longer) <= room:
                lines[-1] = longer
            else:
                lines.append(word)
        text = _plain("\n".join(lines))
        if text != self.text():
            self.setText(text)

    def minimumSizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return a small width: the words take more lines where there is little room."""
        return QSize(12 * self.fontMetrics().averageCharWidth(), super().minimumSizeHint().height())

    def enterEvent(self, event: QEnterEvent) -> None:  # noqa: N802 (Qt's name)
        """Tell that the pointer came."""
        super().enterEvent(event)
        self.looked.emit(True)

    def leaveEvent(self, event: QEvent) -> None:  # noqa: N802 (Qt's name)
        """Tell that the pointer went."""
        super().leaveEvent(event)
        self.looked.emit(False)

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802 (Qt's name)
        """Tell that the focus came."""
        super().focusInEvent(event)
        if event.reason() in _BY_KEYBOARD:
            self.looked.emit(True)

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802 (Qt's name)
        """Tell that the focus went."""
        super().focusOutEvent(event)
        self.looked.emit(False)


class Remedies(QWidget):
    """All that can be done about one reason."""

    looked = Signal(object, object)  # the option and its button, or None twice
    taken = Signal(object)  # the option pressed

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._options: tuple[Option, ...] = ()
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(look.theme.px(4))
        self._row = FlowRow(look.theme.px(6), self)
        self._column.addWidget(self._row)
        self.buttons: list[RemedyButton] = []
        self.advice: list[QWidget] = []
        self.hide()

    def set_options(self, options: Sequence[Option]) -> None:
        """Offer these; equal ones stay as they are, so that focus is kept."""
        if tuple(options) == self._options:
            return
        focused = next((button.option.say for button in self.buttons if button.hasFocus()), "")
        self._options = tuple(options)
        for widget in (*self.buttons, *self.advice):
            widget.hide()
            widget.deleteLater()
        for button in self.buttons:
            self._row.remove(button)
        self.buttons = [self._button(option) for option in options if not option.advice]
        self.advice = [self._advice(option) for option in options if option.advice]
        self._row.setVisible(bool(self.buttons))
        self.setVisible(bool(options))
        for button in self.buttons:
            if button.option.say == focused:
                button.setFocus()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 (Qt's name)
        """Break long remedies anew."""
        super().resizeEvent(event)
        for button in self.buttons:
            button.fit(self.width())

    def _button(self, option: Option) -> RemedyButton:
        button = RemedyButton(option, self._row)
        button.looked.connect(
            lambda here: self.looked.emit(option if here else None, button if here else None)
        )
        button.clicked.connect(lambda: self.taken.emit(option))
        self._row.add(button)
        button.ensurePolished()
        button.fit(self.width())
        button.show()
        return button

    def _advice(self, option: Option) -> QWidget:
        label = text_label(f"➤ Advice: {option.say}", "body", wrap=True, parent=self)
        label.setAccessibleName(f"Advice, changes nothing on the card: {option.say}")
        self._column.addWidget(label)
        label.show()
        return label


def _plain(text: str) -> str:
    return text.replace("&", "&&")
