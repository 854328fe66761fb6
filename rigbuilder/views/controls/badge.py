"""A badge: the sign of a severity or grade, with a word or count beside it."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from rigbuilder.views.paint.signs import paint_sign
from rigbuilder.views.theme import SEVERITIES
from rigbuilder.views.theme_look import Look


class SeverityBadge(QWidget):
    """Sign and text in the ink of one severity or grade, on its wash when ``filled``."""

    def __init__(
        self,
        look: Look,
        kind: str = "right",
        text: str = "",
        *,
        filled: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._look = look
        self._filled = filled
        self._kind = kind
        self._text = text
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._refresh)
        self._refresh()

    def set_kind(self, kind: str, text: str) -> None:
        """Show another severity or grade with its text."""
        if (str(kind), text) != (self._kind, self._text):
            self._kind, self._text = str(kind), text
            self._refresh()

    def kind(self) -> str:
        """Return the severity or grade shown."""
        return self._kind

    def text(self) -> str:
        """Return the text shown."""
        return self._text

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return room for sign and text."""
        theme = self._look.theme
        metrics = QFontMetrics(theme.font("strong"))
        words = metrics.horizontalAdvance(self._text) + theme.px(6) if self._text else 0
        pad = theme.px(8) if self._filled else theme.px(2)
        return QSize(
            theme.px(theme.spacing.sign) + words + 2 * pad, max(metrics.height(), theme.px(16)) + theme.px(6)
        )

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint ground, sign and text."""
        theme = self._look.theme
        tone = theme.severity(self._kind) if self._kind in SEVERITIES else theme.grade(self._kind)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        pad = theme.px(2)
        if self._filled:
            pad = theme.px(8)
            painter.setPen(theme.colour(self._kind))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            radius = self.height() / 2 - 1
            painter.setBrush(theme.colour("card"))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), radius, radius)
        side = theme.px(theme.spacing.sign)
        paint_sign(painter, QRectF(pad, (self.height() - side) / 2, side, side), self._kind, tone.ink)
        painter.setFont(theme.font("strong"))
        painter.setPen(theme.colour(self._kind))
        room = QRectF(pad + side + theme.px(6), 0, self.width(), self.height())
        painter.drawText(room, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), self._text)
        painter.end()

    def _refresh(self, *_: object) -> None:
        self.setAccessibleName(f"{self._kind}: {self._text}" if self._text else self._kind)
        self.updateGeometry()
        self.update()
