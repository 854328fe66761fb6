"""The cursor in a chart: a hairline at one x, the values of all lines there."""

from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter

from rigbuilder.views.paint.pencil import LEFT, Pencil
from rigbuilder.views.paint.plot import Plot
from rigbuilder.views.paint.signs import placed
from rigbuilder.views.paint.spec import ChartSpec, Series
from rigbuilder.views.paint.ticks import number
from rigbuilder.views.theme import Theme


def samples(spec: ChartSpec) -> tuple[float, ...]:
    """Return every x at which some line was computed, in order."""
    return tuple(sorted({x for series in spec.series for x, _ in series.points}))


def value_at(series: Series, x: float) -> tuple[float, float, float] | None:
    """Return low, typical and high of a line at ``x``, straight between computed points; None outside."""
    points = series.points
    for (x0, y0), (x1, y1) in pairwise(points):
        if min(x0, x1) <= x <= max(x0, x1) and x0 != x1:
            y = y0 + (x - x0) / (x1 - x0) * (y1 - y0)
            break
    else:
        return None
    band = {edge: (low, high) for edge, low, high in series.band}
    low, high = band.get(x, (y, y))
    return low, y, high


def read_at(spec: ChartSpec, x: float) -> str:
    """Return one sentence with the values of all lines at ``x``."""
    head = f"{number(x)} {spec.x.unit}".strip()
    parts = [_said(spec, series, x) for series in spec.series]
    return f"{head}: " + "; ".join(part for part in parts if part)


def paint_cursor(painter: QPainter, plot: Plot, spec: ChartSpec, x: float, theme: Theme) -> None:
    """Paint hairline, dots and values at ``x``."""
    painter.save()
    pencil = Pencil(painter, theme)
    u, place = pencil.u, plot.x.at(x)
    painter.setPen(pencil.pen(theme.colour("ink"), 1, flat=True))
    painter.drawLine(QPointF(place, plot.area.top()), QPointF(place, plot.area.bottom()))
    rows = [(series, value_at(series, x)) for series in spec.series]
    lines = [(f"{number(x)} {spec.x.unit}".strip(), "ink")]
    for series, found in rows:
        if found is None:
            continue
        at = plot.point(x, found[1])
        stroke = theme.stroke(series.role)
        painter.fillPath(
            placed("disc", QRectF(at.x() - 5 * u, at.y() - 5 * u, 10 * u, 10 * u)), theme.colour("card")
        )
        painter.fillPath(
            placed("disc", QRectF(at.x() - 4 * u, at.y() - 4 * u, 8 * u, 8 * u)), theme.colour(series.role)
        )
        lines.append((f"{_figures(found)} {spec.y.unit}  {series.label}", stroke.colour))
    _paint_note(pencil, plot, place, lines)
    painter.restore()


def _paint_note(pencil: Pencil, plot: Plot, place: float, lines: list[tuple[str, str]]) -> None:
    u, height = pencil.u, pencil.line_height("caption")
    width = max(pencil.text_width(text, "caption") for text, _ in lines) + 16 * u
    left = place + 10 * u
    if left + width > plot.area.right() + 40 * u:
        left = max(0.0, place - 10 * u - width)
    box = QRectF(left, plot.area.top(), width, height * len(lines) + 10 * u)
    pencil.painter.setPen(pencil.pen(pencil.theme.colour("edge"), 1))
    pencil.painter.setBrush(pencil.theme.colour("field"))
    pencil.painter.drawRoundedRect(box, 4 * u, 4 * u)
    pencil.painter.setBrush(Qt.BrushStyle.NoBrush)
    for index, (text, ink) in enumerate(lines):
        row = QRectF(left + 8 * u, box.top() + 5 * u + index * height, width, height)
        colour = pencil.theme.colour("ink") if ink == "ink" else ink
        pencil.write(row, text, "caption", colour, LEFT)


def _said(spec: ChartSpec, series: Series, x: float) -> str:
    found = value_at(series, x)
    return "" if found is None else f"{series.label} {_figures(found)} {spec.y.unit}".rstrip()


def _figures(found: tuple[float, float, float]) -> str:
    low, typical, high = found
    if low == high:
        return number(typical)
    return f"{number(typical)} ({number(low)}\u2013{number(high)})"
