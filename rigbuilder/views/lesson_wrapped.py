"""A tick box whose text may be a whole sentence or two, set in lines."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QWidget

from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.theme_look import Look


class WrappedTick(QWidget):
    """The box, and beside it its text; a press on the text ticks the box, another takes the tick away."""

    def __init__(self, text: str, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.box = QCheckBox(self)
        self.box.setAccessibleName(text)
        self.text = text_label(text, wrap=True, parent=self)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, look.theme.px(2), 0, look.theme.px(2))
        row.setSpacing(look.theme.px(6))
        row.addWidget(self.box, 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self.text, 1)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 (Qt's name)
        """Tick by a press anywhere on the text."""
        if event.button() == Qt.MouseButton.LeftButton:
            self.box.setFocus(Qt.FocusReason.MouseFocusReason)
            self.box.click()
