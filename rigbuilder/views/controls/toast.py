"""A passing word at the lower edge, with the way back for as long as it is there."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QWidget

from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label

SECONDS = 12.0  # at least ten, so that nobody has to hurry


class Toast(QFrame):
    """One message over the lower edge of its parent; stays while pointer or focus is on it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._around = parent
        self.setProperty("sheet", "toast")
        self.setAccessibleName("Message")
        self._undo: Callable[[], None] | None = None
        self.message = text_label("", parent=self)
        self.undo_button = ActionButton("Undo", parent=self)
        self.close_button = ActionButton("Hide", parent=self)
        self.undo_button.clicked.connect(self._undone)
        self.close_button.clicked.connect(self.hide)
        row = QHBoxLayout(self)
        row.addWidget(self.message, 1)
        row.addWidget(self.undo_button)
        row.addWidget(self.close_button)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._expire)
        parent.installEventFilter(self)
        self.hide()

    def show_message(
        self, text: str, *, undo: Callable[[], None] | None = None, seconds: float = SECONDS
    ) -> None:
        """Show ``text`` and, with ``undo``, a button that takes the change back."""
        self._undo = undo
        self.message.setText(text)
        self.undo_button.setVisible(undo is not None)
        self._timer.start(round(seconds * 1000))
        self.show()
        self._place()
        self.raise_()
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, text))

    def seconds_left(self) -> float:
        """Return how long the message will stay [s]."""
        return max(0, self._timer.remainingTime()) / 1000

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 (Qt's name)
        """Stay at the lower edge when the parent changes its size."""
        if watched is self.parent() and event.type() == QEvent.Type.Resize and self.isVisible():
            self._place()
        return super().eventFilter(watched, event)

    def _expire(self) -> None:
        focus = self.focusWidget()
        if self.underMouse() or (focus is not None and focus.hasFocus()):
            self._timer.start(2000)
        else:
            self.hide()

    def _undone(self) -> None:
        undo, self._undo = self._undo, None
        self.hide()
        if undo is not None:
            undo()

    def _place(self) -> None:
        self.adjustSize()
        around = self._around.rect()
        width = min(self.sizeHint().width(), around.width() - 24)
        self.resize(
            width, self.heightForWidth(width) if self.hasHeightForWidth() else self.sizeHint().height()
        )
        self.move((around.width() - self.width()) // 2, around.height() - self.height() - 16)
