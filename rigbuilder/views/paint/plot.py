"""Where things lie in a plot: data to device, frame, grid, axes."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import log10

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainterPath

from rigbuilder.views.paint.pencil import RIGHT, Pencil
from rigbuilder.views.paint.spec import Axis, Band, Point, Scale
from rigbuilder.views.paint.ticks import axis_ticks, tick_texts


@dataclass(frozen=True, slots=True)
class Ruler:
    """Maps values of one axis to device units; ``start`` belongs to ``low``."""

    axis: Axis
    low: float
    high: float
    start: float
    end: float

    def at(self, value: float) -> float:
        """Return the device coordinate of a value; a logarithmic axis stops at its lower end."""
        if self.axis.scale is Scale.LOG:
            low, high, value = log10(self.low), log10(self.high), log10(max(value, self.low * 1e-3))
        else:
            low, high = self.low, self.high
        return self.start + (value - low) / (high - low) * (self.end - self.start)

    def value(self, place: float) -> float:
        """Return the value at a device coordinate, the inverse of ``at``."""
        share = (place - self.start) / (self.end - self.start)
        if self.axis.scale is Scale.LOG:
            low, high = log10(self.low), log10(self.high)
            return float(10.0 ** (low + share * (high - low)))
        return self.low + share * (self.high - self.low)


@dataclass(frozen=True, slots=True)
class Plot:
    """The area between the axes and the rulers along it."""

    area: QRectF
    x: Ruler
    y: Ruler

    def point(self, x: float, y: float) -> QPointF:
        """Return where a pair of values lies."""
        return QPointF(self.x.at(x), self.y.at(y))


def curve_path(points: Iterable[Point], plot: Plot) -> QPainterPath:
    """Return the curve through every point given, as straight pieces."""
    path = QPainterPath()
    for index, (x, y) in enumerate(points):
        if index:
            path.lineTo(plot.point(x, y))
        else:
            path.moveTo(plot.point(x, y))
    return path


def band_path(band: Iterable[Band], plot: Plot) -> QPainterPath:
    """Return the closed outline between the low and high values."""
    rows = tuple(band)
    path = curve_path([(x, high) for x, _, high in rows], plot)
    for x, low, _ in reversed(rows):
        path.lineTo(plot.point(x, low))
    path.closeSubpath()
    return path


def thinned(points: tuple[Point, ...], columns: int) -> tuple[Point, ...]:
    """Return at most about two points a pixel column, keeping each column's least and greatest.

    Curves with no more points than that are returned as they are.
    """
    if columns < 1 or len(points) <= 2 * columns:
        return points
    size = -(-len(points) // columns)
    kept: list[Point] = [points[0]]
    for start in range(0, len(points), size):
        chunk = points[start : start + size]
        ends = sorted({chunk.index(min(chunk, key=_y)), chunk.index(max(chunk, key=_y))})
        kept.extend(chunk[index] for index in ends)
    kept.append(points[-1])
    return tuple(kept)


def paint_axes(pencil: Pencil, plot: Plot) -> None:
    """Draw the grid, the base line and the numbers of both axes."""
    _paint_y(pencil, plot)
    _paint_x(pencil, plot)


def ticks_of(ruler: Ruler, pencil: Pencil, spacing: float) -> tuple[float, ...]:
    """Return as many ticks as stand clear of each other at ``spacing`` logical pixels."""
    most = max(1, int(abs(ruler.end - ruler.start) / (spacing * pencil.u)))
    return axis_ticks(ruler.axis, ruler.low, ruler.high, min(8, most))


def _paint_y(pencil: Pencil, plot: Plot) -> None:
    ticks = ticks_of(plot.y, pencil, 30)
    soft, u = pencil.theme.colour("soft"), pencil.u
    height = pencil.line_height("caption")
    for value, text in zip(ticks, tick_texts(plot.y.axis, ticks), strict=True):
        y = plot.y.at(value)
        pencil.painter.setPen(pencil.pen(pencil.theme.colour("rule"), 1, flat=True))
        pencil.painter.drawLine(QPointF(plot.area.left(), y), QPointF(plot.area.right(), y))
        room = QRectF(plot.area.left() - 200 * u, y - height / 2, 194 * u, height)
        pencil.write(room, text, "caption", soft, RIGHT)


def _paint_x(pencil: Pencil, plot: Plot) -> None:
    ticks = ticks_of(plot.x, pencil, 64)
    soft, u = pencil.theme.colour("soft"), pencil.u
    base = plot.area.bottom()
    pencil.painter.setPen(pencil.pen(pencil.theme.colour("edge"), 1.25, flat=True))
    pencil.painter.drawLine(QPointF(plot.area.left(), base), QPointF(plot.area.right(), base))
    height = pencil.line_height("caption")
    middle = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop
    for value, text in zip(ticks, tick_texts(plot.x.axis, ticks), strict=True):
        x = plot.x.at(value)
        pencil.painter.setPen(pencil.pen(pencil.theme.colour("edge"), 1.25, flat=True))
        pencil.painter.drawLine(QPointF(x, base), QPointF(x, base + 4 * u))
        pencil.write(QRectF(x - 60 * u, base + 6 * u, 120 * u, height), text, "caption", soft, middle)


def _y(point: Point) -> float:
    return point[1]
