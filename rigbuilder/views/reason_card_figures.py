"""The figures of a reason as small bars on a common scale: low, typical, high."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from rigbuilder.viewmodels.reasons import Figure
from rigbuilder.views.theme_look import Look

_BAR = 7  # thickness of a bar
_GAP = 8  # below a bar


class FigureBars(QWidget):
    """Name and words of each figure, and under them where it lies; figures of one unit share a scale."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._figures: tuple[Figure, ...] = ()
        self._severity = "note"
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._refresh)
        self.hide()

    def set_figures(self, figures: Sequence[Figure], severity: str) -> None:
        """Show these figures; without any the widget takes no room."""
        if (tuple(figures), severity) == (self._figures, self._severity):
            return
        self._figures, self._severity = tuple(figures), severity
        spoken = [f"{figure.name}: {figure.text}" for figure in self._figures]
        self.setAccessibleName("; ".join(spoken))
        self.setToolTip("\n".join(spoken))
        self.setVisible(bool(self._figures))
        self._refresh()

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return room for all rows."""
        return QSize(self._look.theme.px(160), round(len(self._figures) * self._row()))

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint words and bars."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for index, figure in enumerate(self._figures):
            self._paint_row(painter, index * self._row(), figure)
        painter.end()

    def _row(self) -> float:
        return self.fontMetrics().height() + self._look.theme.px(_BAR + _GAP + 2)

    def _top(self, unit: str) -> float:
        return max((abs(figure.high) for figure in self._figures if figure.unit == unit), default=1.0) or 1.0

    def _paint_row(self, painter: QPainter, top: float, figure: Figure) -> None:
        theme, width = self._look.theme, float(self.width())
        height = self.fontMetrics().height()
        line = QRectF(0, top, width, height)
        words = self.fontMetrics().horizontalAdvance(figure.text)
        painter.setFont(self.font())
        painter.setPen(theme.colour("ink"))
        painter.drawText(line, int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter), figure.text)
        painter.setPen(theme.colour("soft"))
        room = round(width - words - theme.px(8))
        name = self.fontMetrics().elidedText(figure.name, Qt.TextElideMode.ElideRight, room)
        painter.drawText(line, int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter), name)
        self._paint_bar(painter, QRectF(0, top + height + theme.px(2), width, theme.px(_BAR)), figure)

    def _paint_bar(self, painter: QPainter, box: QRectF, figure: Figure) -> None:
        theme = self._look.theme
        scale = (box.width() - theme.px(2)) / self._top(figure.unit)
        low, typical, high = (max(0.0, value) * scale for value in (figure.low, figure.typical, figure.high))
        middle = box.center().y()
        painter.setPen(QPen(theme.colour("rule"), theme.px(2)))
        painter.drawLine(QPointF(0, middle), QPointF(box.width(), middle))
        ink = theme.colour(self._severity)
        painter.setPen(Qt.PenStyle.NoPen)
        if high - low > theme.px(2):
            painter.setBrush(theme.colour("edge"))
            radius = box.height() / 2
            painter.drawRoundedRect(QRectF(low, box.top(), high - low, box.height()), radius, radius)
            painter.setBrush(theme.colour("ink"))
        else:
            painter.setBrush(ink)
        painter.drawRect(QRectF(typical - theme.px(1), box.top() - 1, theme.px(3), box.height() + 2))

    def _refresh(self, *_: object) -> None:
        self.setFont(self._look.theme.font("caption"))
        self.updateGeometry()
        self.update()
