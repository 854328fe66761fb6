"""Paints rows of bars: how much, how sure, and where the limit lies."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from rigbuilder.views.paint.heading import paint_foot, paint_head
from rigbuilder.views.paint.pencil import LEFT, RIGHT, Pencil
from rigbuilder.views.paint.plot import Plot, Ruler, ticks_of
from rigbuilder.views.paint.spec import Axis, Bar, BarSpec, Limit
from rigbuilder.views.paint.ticks import bounds, number, tick_texts
from rigbuilder.views.theme import FontRole, Theme

_ROW = 30  # logical pixels a row would like to have
_BAR = 12  # thickness of a bar


def paint_bars(painter: QPainter, rect: QRectF, spec: BarSpec, theme: Theme) -> Plot:
    """Paint ``spec`` into ``rect`` and return where things lie; rows are numbered on the y ruler."""
    painter.save()
    pencil = Pencil(painter, theme)
    room = paint_foot(pencil, paint_head(pencil, rect, spec.title, spec.answer), spec.note)
    plot = bar_plot(pencil, room, spec)
    _paint_grid(pencil, plot, room)
    for limit in spec.limits:
        _paint_limit(pencil, plot, limit, room)
    for index, bar in enumerate(spec.bars):
        _paint_row(pencil, plot, index, bar, room)
    painter.restore()
    return plot


def bar_text(bar: Bar, axis: Axis) -> str:
    """Return the words at the end of a bar: its own, else typical with low and high."""
    if bar.text:
        return bar.text
    typical = f"{number(bar.typical)} {axis.unit}".strip()
    if bar.low == bar.high:
        return typical
    return f"{typical} ({number(bar.low)}\u2013{number(bar.high)})"


def bar_plot(pencil: Pencil, room: QRectF, spec: BarSpec) -> Plot:
    """Return the plot area inside ``room``, with space for labels, values and the axis."""
    u, line = pencil.u, pencil.line_height("caption")
    names = max((pencil.text_width(bar.label, _role(bar)) for bar in spec.bars), default=0)
    words = max((pencil.text_width(bar_text(bar, spec.axis), _role(bar)) for bar in spec.bars), default=0)
    left = room.left() + min(names, 0.36 * room.width()) + 10 * u
    right = max(left + 10 * u, room.right() - min(words, 0.36 * room.width()) - 14 * u)
    top = room.top() + (line + 4 * u if spec.limits else 4 * u)
    most = max(1, len(spec.bars)) * _ROW * 1.4 * u
    bottom = max(top + 10 * u, min(top + most, room.bottom() - 2 * line - 10 * u))
    values = [value for bar in spec.bars for value in (bar.low, bar.typical, bar.high)]
    values += [limit.value for limit in spec.limits]
    axis = Axis(
        spec.axis.label,
        spec.axis.unit,
        spec.axis.scale,
        0.0 if spec.axis.low is None else spec.axis.low,
        spec.axis.high,
        spec.axis.ticks,
    )
    low, high = bounds(axis, values)
    rows = Ruler(Axis("row"), -0.5, max(1, len(spec.bars)) - 0.5, top, bottom)
    return Plot(QRectF(QPointF(left, top), QPointF(right, bottom)), Ruler(axis, low, high, left, right), rows)


def _role(bar: Bar) -> FontRole:
    return "strong" if bar.strong else "caption"


def _paint_grid(pencil: Pencil, plot: Plot, room: QRectF) -> None:
    u, line = pencil.u, pencil.line_height("caption")
    soft, area = pencil.theme.colour("soft"), plot.area
    middle = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop
    ticks = ticks_of(plot.x, pencil, 64)
    for value, text in zip(ticks, tick_texts(plot.x.axis, ticks), strict=True):
        x = plot.x.at(value)
        pencil.painter.setPen(pencil.pen(pencil.theme.colour("rule"), 1, flat=True))
        pencil.painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom() + 3 * u))
        pencil.write(QRectF(x - 60 * u, area.bottom() + 4 * u, 120 * u, line), text, "caption", soft, middle)
    pencil.painter.setPen(pencil.pen(pencil.theme.colour("edge"), 1.25, flat=True))
    pencil.painter.drawLine(area.topLeft(), area.bottomLeft())
    below = QRectF(room.left(), area.bottom() + 4 * u + line, area.right() - room.left(), line)
    pencil.write(below, plot.x.axis.title, "caption", soft, RIGHT)


def _paint_limit(pencil: Pencil, plot: Plot, limit: Limit, room: QRectF) -> None:
    u, line = pencil.u, pencil.line_height("caption")
    ink = pencil.theme.colour(limit.severity or "ink")
    x = plot.x.at(limit.value)
    pencil.painter.setPen(pencil.pen(ink, 1.25, (5, 4)))
    pencil.painter.drawLine(QPointF(x, plot.area.top() - 3 * u), QPointF(x, plot.area.bottom()))
    width = pencil.text_width(limit.label, "caption") + u
    left = min(max(room.left(), x - width / 2), room.right() - width)
    pencil.write(QRectF(left, room.top(), width + 20 * u, line), limit.label, "caption", ink)


def _paint_row(pencil: Pencil, plot: Plot, index: int, bar: Bar, room: QRectF) -> None:
    u, stroke = pencil.u, pencil.theme.stroke(bar.role)
    y, ink = plot.y.at(index), QColor(stroke.colour)
    names = QRectF(room.left(), y - _ROW * u / 2, plot.area.left() - room.left() - 10 * u, _ROW * u)
    pencil.write(names, bar.label, _role(bar), pencil.theme.colour("ink"), RIGHT)
    end = _paint_range(pencil, plot, bar, y, ink)
    text = bar_text(bar, plot.x.axis)
    words = QRectF(end + 7 * u, y - _ROW * u / 2, pencil.text_width(text, _role(bar)) + 3 * u, _ROW * u)
    veil = QRectF(words.left() - 2 * u, y - 9 * u, words.width() + 2 * u, 18 * u)
    pencil.painter.fillRect(veil, pencil.theme.colour("card"))
    pencil.write(words.adjusted(0, 0, 20 * u, 0), text, _role(bar), ink if bar.strong else "", LEFT)


def _paint_range(pencil: Pencil, plot: Plot, bar: Bar, y: float, ink: QColor) -> float:
    """Draw a bar: solid as far as it is sure, paler up to high, a stroke at typical; return its end."""
    u, left = pencil.u, plot.area.left()
    low, typical, high = (plot.x.at(value) for value in (bar.low, bar.typical, bar.high))
    half = (_BAR + (2 if bar.strong else 0)) * u / 2
    for start, end, share in ((left, low, 1.0), (low, typical, 0.62), (typical, high, 0.24)):
        wash = QColor(ink)
        wash.setAlphaF(share)
        pencil.painter.fillRect(QRectF(start, y - half, max(0.0, end - start), 2 * half), wash)
    pencil.painter.setPen(pencil.pen(ink, 1, flat=True))
    pencil.painter.setBrush(Qt.BrushStyle.NoBrush)
    pencil.painter.drawRect(QRectF(left, y - half, max(high, typical) - left, 2 * half))
    pencil.painter.setPen(pencil.pen(pencil.theme.colour("ink"), 2.5, flat=True))
    pencil.painter.drawLine(QPointF(typical, y - half - 3 * u), QPointF(typical, y + half + 3 * u))
    return max(high, typical)
