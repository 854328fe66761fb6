"""The small button beside a field: put the assumed value on the card, or take a said one off."""

from PySide6.QtCore import QPointF, QSize, Qt
from PySide6.QtGui import QEnterEvent, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget


class ActButton(QAbstractButton):
    """A plus or a cross, 24 pixels wide at the usual type.

    It takes no focus: the Edit menu of the window does the same by key.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.clears = False
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        policy = QSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        policy.setRetainSizeWhenHidden(True)
        self.setSizePolicy(policy)

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return a place as high as a field, at least 24 pixels wide."""
        side = max(24, round(self.fontMetrics().height() * 1.5))
        return QSize(side, side + 6)

    def enterEvent(self, event: QEnterEvent) -> None:  # noqa: N802 (Qt's name)
        """Show that it can be pressed."""
        super().enterEvent(event)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint the sign, on a ground while the pointer is over it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette = self.palette()
        if self.underMouse():
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(palette.color(QPalette.ColorRole.Midlight))
            painter.drawEllipse(
                QPointF(self.rect().center()) + QPointF(0.5, 0.5), self.width() / 2, self.width() / 2
            )
        role = QPalette.ColorRole.PlaceholderText if self.clears else QPalette.ColorRole.Link
        painter.setPen(QPen(palette.color(role), self.width() / 15, c=Qt.PenCapStyle.RoundCap))
        middle, arm = QPointF(self.width() / 2, self.height() / 2), self.width() / 6
        if self.clears:
            arm *= 0.85
            ends = (QPointF(arm, arm), QPointF(arm, -arm))
        else:
            ends = (QPointF(arm, 0), QPointF(0, arm))
        for end in ends:
            painter.drawLine(middle - end, middle + end)
        painter.end()
