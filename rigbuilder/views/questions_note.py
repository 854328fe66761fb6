"""A note over the window that says how an answer is known; Esc or going on takes it away."""

from collections.abc import Sequence

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.theme_look import Look

_WIDE = 460  # logical pixels


class HowNote(QFrame):
    """Working and sources of one answer, beside the link that asked for them."""

    def __init__(self, look: Look, working: Sequence[str], sources: Sequence[str], beside: QWidget) -> None:
        super().__init__(beside.window())
        self._look, self._beside = look, beside
        self.setProperty("sheet", "card")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAutoFillBackground(True)
        self.setAccessibleName("How we know")
        self.setAccessibleDescription(" ".join((*working, *sources)))
        self._column = column = QVBoxLayout(self)
        column.addWidget(text_label("How we know", "heading"))
        for text in working:
            column.addWidget(text_label(text, wrap=True))
        for text in sources:
            column.addWidget(text_label(text, "caption", wrap=True))

    def open(self) -> None:
        """Show the note above its link, within the window."""
        window, theme = self._beside.window(), self._look.theme
        self.setFixedWidth(min(theme.px(_WIDE), window.width() - theme.px(16)))
        self.setFixedHeight(self._column.heightForWidth(self.width()))
        corner = self._beside.mapTo(window, QPoint(0, 0))
        left = min(corner.x(), window.width() - self.width() - theme.px(8))
        self.move(max(left, 0), max(corner.y() - self.height() - theme.px(4), 0))
        self.show()
        self.raise_()
        self.setFocus(Qt.FocusReason.PopupFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 (Qt's name)
        """Go away on Esc, back to the link."""
        if event.key() in (Qt.Key.Key_Escape, Qt.Key.Key_Return, Qt.Key.Key_Space):
            self._beside.setFocus(Qt.FocusReason.PopupFocusReason)
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802 (Qt's name)
        """Go away when the person goes on."""
        super().focusOutEvent(event)
        self.close()
