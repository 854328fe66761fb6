"""The verdict in the head of the window: sign and counts, pressed to see the first reason."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from rigbuilder.views.paint.signs import paint_sign
from rigbuilder.views.theme_look import Look


class VerdictButton(QAbstractButton):
    """A pill with the sign of the worst severity and the counts in words."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look, self._kind = look, "right"
        self.setObjectName("verdict")
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setToolTip("Go to the first reason")
        look.changed.connect(lambda _: self._refresh())

    def set_verdict(self, kind: str, text: str) -> None:
        """Show a severity and the words beside it."""
        self._kind = kind
        self.setText(text)
        self.setAccessibleName(f"Verdict: {kind}. {text}")
        self.setAccessibleDescription("Press to go to the first reason.")
        self._refresh()

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return room for sign and words."""
        theme = self._look.theme
        words = self.fontMetrics().horizontalAdvance(self.text())
        return QSize(words + theme.px(14 + 6 + 26), theme.px(30))

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint pill, sign, words and the focus frame."""
        theme = self._look.theme
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        focus = self.hasFocus()
        ink = theme.colour(self._kind)
        painter.setPen(QPen(theme.colour("focus") if focus else ink, theme.px(2) if focus else 1))
        painter.setBrush(theme.colour("hover" if self.underMouse() else "card"))
        radius = self.height() / 2 - 1
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), radius, radius)
        side = theme.px(14)
        paint_sign(painter, QRectF(theme.px(12), (self.height() - side) / 2, side, side), self._kind, ink)
        painter.setPen(ink)
        room = self.rect().adjusted(theme.px(32), 0, 0, 0)
        painter.drawText(room, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), self.text())
        painter.end()

    def _refresh(self) -> None:
        self.setFont(self._look.theme.font("strong"))
        self.updateGeometry()
        self.update()
