"""Paints the line chart: grades as signs on washes, ranges as brackets."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPen, QPixmap, QPolygonF

from rigbuilder.viewmodels.linechart import Row, Span, Square
from rigbuilder.views.linechart_layout import ChartLayout
from rigbuilder.views.paint.signs import placed
from rigbuilder.views.theme import Theme

_RIGHT = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
_MIDDLE = int(Qt.AlignmentFlag.AlignCenter)
_STALE = 0.45  # how strongly a chart is shown that waits to be made anew


@dataclass(frozen=True, slots=True)
class Marks:
    """What is marked on the chart: the cell with the focus, the one under the pointer, the row in view."""

    current: Square | None = None
    hovered: Square | None = None
    row: int | None = None
    focused: bool = False
    stale: bool = False


class ChartPainter:
    """Paints one chart at one layout in one theme."""

    def __init__(self, painter: QPainter, layout: ChartLayout, theme: Theme) -> None:
        self._painter, self._layout, self._theme = painter, layout, theme
        self._tiles: dict[str, QPixmap] = {}
        self._caption = theme.font("caption")
        self._body = theme.font("body")
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)

    def paint(self, marks: Marks) -> None:
        """Paint everything."""
        if marks.stale:
            self._painter.setOpacity(_STALE)
        chart = self._layout.chart
        present = chart.present()
        self._heads(present)
        for index, row in enumerate(chart.rows):
            self._label(index, row, marks.row == index)
            for square in row.squares:
                self._square(square)
            if row.usual is not None:
                self._range_mark(index, row.usual, strong=marks.row == index)
        self._brackets(marks.row)
        if present is not None:
            self._frame(present, "ink", 2.0)
        if marks.hovered is not None and marks.hovered is not marks.current:
            self._frame(marks.hovered, "accent", 1.5)
        if marks.current is not None and marks.focused:
            self._frame(marks.current, "focus", 2.5, out=2.0)

    def _px(self, distance: float) -> float:
        return distance * self._theme.zoom

    def _write(self, rect: QRectF, text: str, colour: str, align: int, font: QFont) -> None:
        self._painter.setFont(font)
        self._painter.setPen(self._theme.colour(colour))
        self._painter.drawText(rect, align, text)

    def _heads(self, present: Square | None) -> None:
        layout, chart = self._layout, self._layout.chart
        unit = QRectF(0, 0, layout.left - self._px(8), layout.head(0).height())
        self._write(unit, f"test, {chart.unit}", "soft", _RIGHT, self._caption)
        strong = QFont(self._caption)
        strong.setBold(True)
        for column, head in enumerate(chart.heads):
            here = present is not None and present.column == column
            font, colour = (strong, "ink") if here else (self._caption, "soft")
            self._write(layout.head(column), head, colour, _MIDDLE, font)

    def _label(self, index: int, row: Row, looked_at: bool) -> None:
        font = QFont(self._body)
        font.setUnderline(looked_at)
        present = any(square.present for square in row.squares)
        font.setWeight(QFont.Weight.DemiBold if present else QFont.Weight.Normal)
        self._write(self._layout.label(index), row.type, "ink", _RIGHT, font)

    def _square(self, square: Square) -> None:
        box = self._layout.cell(square.row, square.column)
        if square.grade not in self._tiles:
            self._tiles[square.grade] = self._tile(square.grade, box.size().toSize())
        self._painter.drawPixmap(box.topLeft(), self._tiles[square.grade])

    def _tile(self, grade: str, size: QSize) -> QPixmap:
        """Return the square of one grade: painted once, stamped as often as it occurs."""
        ratio = self._painter.device().devicePixelRatio()
        tile = QPixmap(size * ratio)
        tile.setDevicePixelRatio(ratio)
        tile.fill(Qt.GlobalColor.transparent)
        tone, radius = self._theme.grade(grade), self._px(3)
        box = QRectF(0, 0, size.width(), size.height())
        side = self._px(8 if grade == "never" else 13)
        sign = QRectF(box.center().x() - side / 2, box.center().y() - side / 2, side, side)
        painter = QPainter(tile)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(tone.wash))
        painter.drawRoundedRect(box, radius, radius)
        painter.fillPath(placed(grade, sign), QColor(tone.on))
        painter.end()
        return tile

    def _range_mark(self, index: int, span: Span, *, strong: bool) -> None:
        """Underline the technique's range in its row; a notch marks the aim."""
        left, right = self._layout.span(span)
        y = self._layout.cell(index, 0).bottom() + self._px(2.5)
        ink = self._theme.colour("accent")
        if not strong:
            ink.setAlphaF(0.55)
        pen = QPen(ink, self._px(2.0))
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        self._painter.setPen(pen)
        inset = self._px(2)
        self._painter.drawLine(QPointF(left + inset, y), QPointF(right - inset, y))
        if span.aim_lb is not None:
            x, reach = self._layout.at(span.aim_lb), self._px(4)
            self._painter.setPen(Qt.PenStyle.NoPen)
            self._painter.setBrush(ink)
            top = y - self._px(3)
            self._painter.drawPolygon(
                QPolygonF([QPointF(x - reach, y + 1), QPointF(x, top - 1), QPointF(x + reach, y + 1)])
            )

    def _brackets(self, row: int | None) -> None:
        chart = self._layout.chart
        if chart.rod is not None:
            self._bracket(0, chart.rod, "ink")
        if row is None:
            return
        usual = chart.rows[row].usual
        if usual is not None:
            self._bracket(1, usual, "accent")
        else:
            strip = self._layout.bracket(1)
            self._write(strip, chart.rows[row].without, "soft", _MIDDLE, self._caption)

    def _bracket(self, line: int, span: Span, colour: str) -> None:
        strip = self._layout.bracket(line)
        left, right = self._layout.span(span)
        right = max(right, left + self._px(6))
        top, arm = strip.top() + self._px(3), self._px(5)
        self._painter.setPen(QPen(self._theme.colour(colour), self._px(1.5)))
        self._painter.drawPolyline(
            QPolygonF(
                [QPointF(left + 1, top), QPointF(left + 1, top + arm), QPointF(right - 1, top + arm),
                 QPointF(right - 1, top)]
            )
        )  # fmt: skip
        if span.aim_lb is not None:
            x = self._layout.at(span.aim_lb)
            self._painter.drawLine(QPointF(x, top - self._px(1)), QPointF(x, top + arm))
        self._painter.setFont(self._caption)
        metrics = self._painter.fontMetrics()
        width = float(min(metrics.horizontalAdvance(span.text) + 4, round(self._layout.right)))
        text = metrics.elidedText(span.text, Qt.TextElideMode.ElideRight, round(width))
        start = min(max(0.0, (left + right - width) / 2), self._layout.right - width)
        room = QRectF(start, top + arm + self._px(1), width, metrics.height())
        self._painter.setPen(self._theme.colour(colour))
        self._painter.drawText(room, _MIDDLE, text)

    def _frame(self, square: Square, colour: str, width: float, *, out: float = 0.5) -> None:
        box = self._layout.cell(square.row, square.column)
        reach = self._px(out)
        self._painter.setBrush(Qt.BrushStyle.NoBrush)
        self._painter.setPen(QPen(self._theme.colour(colour), self._px(width)))
        radius = self._px(4)
        self._painter.drawRoundedRect(box.adjusted(-reach, -reach, reach, reach), radius, radius)
