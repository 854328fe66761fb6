"""Paints a chart: curves with their ranges, limits, marked points, words where they belong."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QPainter

from rigbuilder.views.paint.clutter import Clutter
from rigbuilder.views.paint.heading import paint_foot, paint_head
from rigbuilder.views.paint.layout import EndLabel, chart_plot, end_labels
from rigbuilder.views.paint.pencil import LEFT, RIGHT, Pencil
from rigbuilder.views.paint.plot import Plot, band_path, curve_path, paint_axes, thinned
from rigbuilder.views.paint.signs import placed
from rigbuilder.views.paint.spec import ChartSpec, Limit, Mark, Series
from rigbuilder.views.theme import Theme


def paint_chart(painter: QPainter, rect: QRectF, spec: ChartSpec, theme: Theme) -> Plot:
    """Paint ``spec`` into ``rect`` and return where things lie, for pointers and cursors."""
    painter.save()
    pencil = Pencil(painter, theme)
    room = paint_foot(pencil, paint_head(pencil, rect, spec.title, spec.answer), spec.note)
    plot = chart_plot(pencil, room, spec)
    _paint_axis_titles(pencil, plot, room)
    paint_axes(pencil, plot)
    clutter = Clutter(plot.area)
    for limit in spec.limits:
        _paint_limit_line(pencil, plot, limit)
    for series in sorted(spec.series, key=_is_strong):
        _paint_series(pencil, plot, series, clutter)
    for limit in spec.limits:
        _paint_limit_words(pencil, plot, limit, clutter)
    for mark in spec.marks:
        _paint_mark(pencil, plot, mark, clutter)
    for label in end_labels(pencil, plot, room, spec):
        _paint_end_label(pencil, label, plot)
    painter.restore()
    return plot


def _is_strong(series: Series) -> bool:
    return series.strong


def _paint_axis_titles(pencil: Pencil, plot: Plot, room: QRectF) -> None:
    height, soft = pencil.line_height("caption"), pencil.theme.colour("soft")
    above = QRectF(room.left(), room.top(), room.width(), height)
    pencil.write(above, plot.y.axis.title, "caption", soft, LEFT)
    below = QRectF(plot.area.left(), room.bottom() - height, plot.area.width(), height)
    pencil.write(below, plot.x.axis.title, "caption", soft, RIGHT)


def _paint_series(pencil: Pencil, plot: Plot, series: Series, clutter: Clutter) -> None:
    stroke, painter, u = pencil.theme.stroke(series.role), pencil.painter, pencil.u
    painter.save()
    painter.setClipRect(plot.area.adjusted(-4 * u, -4 * u, 4 * u, 4 * u))
    if series.band:
        wash = QColor(stroke.colour)
        wash.setAlphaF(0.20 if series.strong else 0.11)
        edge = band_path(series.band, plot)
        painter.fillPath(edge, wash)
        clutter.add_curve(edge)
    path = curve_path(thinned(series.points, round(plot.area.width() / u)), plot)
    painter.strokePath(path, pencil.stroke_pen(stroke, 2.5 if series.strong else 1.6))
    painter.restore()
    if series.markers:
        for x, y in series.points:
            _paint_dot(pencil, plot.point(x, y), stroke.marker, stroke.colour, 7)
    clutter.add_curve(path)


def _paint_dot(pencil: Pencil, at: QPointF, marker: str, colour: str, side: float) -> None:
    half = side * pencil.u / 2
    box = QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half)
    ground = QRectF(box).adjusted(-pencil.u, -pencil.u, pencil.u, pencil.u)
    pencil.painter.fillPath(placed("disc", ground), pencil.theme.colour("card"))
    pencil.painter.fillPath(placed(marker or "disc", box), QColor(colour))


def _paint_limit_line(pencil: Pencil, plot: Plot, limit: Limit) -> None:
    pencil.painter.setPen(pencil.pen(_limit_ink(pencil, limit), 1.25, (5, 4)))
    if limit.axis == "x":
        x = plot.x.at(limit.value)
        pencil.painter.drawLine(QPointF(x, plot.area.top()), QPointF(x, plot.area.bottom()))
    else:
        y = plot.y.at(limit.value)
        pencil.painter.drawLine(QPointF(plot.area.left(), y), QPointF(plot.area.right(), y))


def _limit_ink(pencil: Pencil, limit: Limit) -> QColor:
    return pencil.theme.colour(limit.severity or "ink")


def _paint_limit_words(pencil: Pencil, plot: Plot, limit: Limit, clutter: Clutter) -> None:
    u, height = pencil.u, pencil.line_height("caption")
    sign = 16 * u if limit.severity else 0.0
    width = pencil.text_width(limit.label, "caption") + sign + 6 * u
    area = plot.area
    if limit.axis == "x":
        x = plot.x.at(limit.value)
        tops = [area.top() + share * (area.height() - height) for share in (0.0, 0.2, 0.4, 0.6, 0.8)]
        spots = [QRectF(left, top, width, height) for top in tops for left in (x + 4 * u, x - width - 4 * u)]
    else:
        y = plot.y.at(limit.value)
        lefts = [area.left() + 4 * u + share * (area.width() - width) for share in (0, 0.25, 0.5, 0.75, 0.95)]
        spots = [QRectF(left, top, width, height) for left in lefts for top in (y - height - u, y + 2 * u)]
    _paint_words(pencil, clutter.place(spots), limit.label, limit.severity)


def _paint_mark(pencil: Pencil, plot: Plot, mark: Mark, clutter: Clutter) -> None:
    u, at = pencil.u, plot.point(mark.x, mark.y)
    ink = pencil.theme.colour(mark.severity or "ink")
    _paint_dot(pencil, at, "ring", ink.name(), 11)
    clutter.take(QRectF(at.x() - 8 * u, at.y() - 8 * u, 16 * u, 16 * u))
    if not mark.label:
        return
    height = pencil.line_height("caption")
    width = pencil.text_width(mark.label, "caption") + (22 if mark.severity else 6) * u
    gap = 9 * u
    spots = [
        QRectF(left, top, width, height)
        for top in (
            at.y() - height - gap / 2,
            at.y() + gap / 2,
            at.y() - 2 * height - gap,
            at.y() + height + gap,
        )
        for left in (at.x() + gap, at.x() - width - gap, at.x() - width / 2)
    ]
    box = clutter.place(spots)
    nearest = box.bottom() if box.bottom() < at.y() else box.top()
    beside = QPointF(min(max(at.x(), box.left()), box.right()), nearest)
    pencil.painter.setPen(pencil.pen(ink, 1))
    pencil.painter.drawLine(at + (beside - at) * 0.3, beside)
    _paint_words(pencil, box, mark.label, mark.severity)


def _paint_words(pencil: Pencil, box: QRectF, text: str, severity: str) -> None:
    """Write words with the sign of their severity on a thin veil of the card."""
    u = pencil.u
    veil = pencil.theme.colour("card")
    veil.setAlphaF(0.85)
    pencil.painter.fillRect(box, veil)
    ink = pencil.theme.colour(severity or "ink")
    left = box.left() + 3 * u
    if severity:
        side = 12 * u
        spot = QRectF(left, box.center().y() - side / 2, side, side)
        pencil.painter.fillPath(placed(severity, spot), ink)
        left += side + 4 * u
    pencil.write(QRectF(left, box.top(), box.width() + 40 * u, box.height()), text, "caption", ink)


def _paint_end_label(pencil: Pencil, label: EndLabel, plot: Plot) -> None:
    stroke, u = pencil.theme.stroke(label.series.role), pencil.u
    start = label.end + QPointF(3 * u, 0)
    target = QPointF(label.rect.left() - 3 * u, label.rect.center().y())
    pencil.painter.setPen(pencil.pen(stroke.colour, 1))
    if label.end.x() < plot.area.right() - 6 * u or abs(target.y() - start.y()) > 2 * u:
        pencil.painter.drawLine(start, target)
    _paint_dot(pencil, label.end, stroke.marker, stroke.colour, 9 if label.series.strong else 7)
    line = pencil.line_height(label.role)
    for index, text in enumerate(label.lines):
        box = QRectF(label.rect.left(), label.rect.top() + index * line, label.rect.width() + 20 * u, line)
        pencil.write(box, text, label.role, stroke.colour, LEFT)
