"""A card: one sheet with a margin, as in a field book; the sign stands in the margin."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from rigbuilder.views.controls.texts import restyle
from rigbuilder.views.paint.signs import paint_pin, paint_sign
from rigbuilder.views.theme_look import Look

MARGIN = 34  # logical pixels from the left edge to the margin rule


class Card(QFrame):
    """A sheet with a content column; with a severity it shows margin rule and sign or pin."""

    def __init__(
        self,
        look: Look,
        *,
        severity: str = "",
        number: int | None = None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._look = look
        self._severity = str(severity)
        self._number = number
        self.setProperty("sheet", "card")
        self.column = QVBoxLayout(self)
        look.changed.connect(self._refresh)
        self._refresh()

    def set_sign(self, severity: str, number: int | None = None) -> None:
        """Show a severity in the margin, with the number of its pin if it has one; empty for none."""
        self._severity, self._number = str(severity), number
        self._refresh()

    def severity(self) -> str:
        """Return the severity in the margin, empty if there is none."""
        return self._severity

    def set_chosen(self, chosen: bool) -> None:
        """Frame the card as the one that is looked at."""
        restyle(self, "chosen", chosen)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint the sheet, then the margin."""
        super().paintEvent(event)
        if not self._severity:
            return
        theme = self._look.theme
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        x = theme.px(MARGIN) + 0.5
        ink = theme.colour(self._severity)
        painter.setPen(QPen(ink, theme.px(1)))
        painter.drawLine(QPointF(x, 1), QPointF(x, self.height() - 1))
        middle = QPointF(theme.px(MARGIN) / 2 + 0.5, theme.px(23))
        if self._number is None:
            side = theme.px(theme.spacing.sign + 2)
            box = QRectF(middle.x() - side / 2, middle.y() - side / 2, side, side)
            paint_sign(painter, box, self._severity, ink)
        else:
            paint_pin(painter, middle, self._number, self._severity, theme)
        painter.end()

    def _refresh(self, *_: object) -> None:
        theme = self._look.theme
        left = theme.px(MARGIN + 12) if self._severity else theme.px(14)
        self.column.setContentsMargins(left, theme.px(12), theme.px(12), theme.px(12))
        self.column.setSpacing(theme.px(6))
        self.update()
