"""The figures of a reason as small bars on a common scale: low, typical, high."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from rigbuilder.viewmodels.literal import literal
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
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self._refresh)
        self.hide()

    def set_figures(self, figures: Sequence[Figure], severity: str) -> None:
        """Show these figures; without any the widget takes no room."""
        if (tuple(figures), severity) == (self._figures, self._severity):
            return
        self._figures, self._severity = tuple(figures), severity
        spoken = [f"{figure.name}: {figure.text}" for figure in self._figures]
        self.setAccessibleName("; ".join(spoken))
        self.setToolTip(literal("\n".join(spoken)))
        self.setVisible(bool(self._figures))
        self._refresh()

    def hasHeightForWidth(self) -> bool:  # noqa: N802 (Qt's name)
        """Return True: a name and words that do not fit beside each other take two lines."""
        return True

    def heightForWidth(self, width: int) -> int:  # noqa: N802 (Qt's name)
        """Return room for all rows at ``width``."""
        return round(sum(self._row(figure, width) for figure in self._figures))

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return room for all rows."""
        width = max(self.width(), self._look.theme.px(160))
        return QSize(self._look.theme.px(160), self.heightForWidth(width))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return a small width."""
        return QSize(self._look.theme.px(80), 0)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint words and bars."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        top = 0.0
        for figure in self._figures:
            row = self._row(figure, self.width())
            self._paint_row(painter, QRectF(0, top, self.width(), row), figure)
            top += row
        painter.end()

    def _metrics(self) -> QFontMetrics:
        return QFontMetrics(self._look.theme.font("caption"))

    def _in_one_line(self, figure: Figure, width: int) -> bool:
        metrics = self._metrics()
        both = metrics.horizontalAdvance(figure.name) + metrics.horizontalAdvance(figure.text)
        return both + self._look.theme.px(10) <= width

    def _row(self, figure: Figure, width: int) -> float:
        lines = 1 if self._in_one_line(figure, width) else 2
        return lines * self._metrics().height() + self._look.theme.px(_BAR + _GAP + 2)

    def _top(self, unit: str) -> float:
        return max((abs(figure.high) for figure in self._figures if figure.unit == unit), default=1.0) or 1.0

    def _paint_row(self, painter: QPainter, row: QRectF, figure: Figure) -> None:
        theme, metrics = self._look.theme, self._metrics()
        line = QRectF(row.left(), row.top(), row.width(), metrics.height())
        painter.setFont(theme.font("caption"))
        painter.setPen(theme.colour("soft"))
        name = metrics.elidedText(figure.name, Qt.TextElideMode.ElideRight, round(row.width()))
        painter.drawText(line, int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter), name)
        if not self._in_one_line(figure, round(row.width())):
            line.translate(0, metrics.height())
        painter.setPen(theme.colour("ink"))
        painter.drawText(line, int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter), figure.text)
        bar = QRectF(0, line.bottom() + theme.px(2), row.width(), theme.px(_BAR))
        self._paint_bar(painter, bar, figure)

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
        self.updateGeometry()
        self.update()
