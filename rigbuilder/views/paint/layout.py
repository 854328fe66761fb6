"""Shares the room of a chart among plot, numbers and the words at the ends of lines."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF

from rigbuilder.views.paint.labels import spread
from rigbuilder.views.paint.pencil import Pencil
from rigbuilder.views.paint.plot import Plot, Ruler, ticks_of
from rigbuilder.views.paint.spec import Axis, ChartSpec, Scale, Series
from rigbuilder.views.paint.ticks import bounds, tick_texts
from rigbuilder.views.theme import FontRole

_LABEL_SHARE = 0.34  # of the width, at most, for the words at the ends of lines
_LABEL_GAP = 14  # logical pixels between plot and words


@dataclass(frozen=True, slots=True)
class EndLabel:
    """Words at the end of one line: where they stand and where the line ends."""

    series: Series
    lines: tuple[str, ...]
    end: QPointF
    rect: QRectF

    @property
    def role(self) -> FontRole:
        """The type role of the words."""
        return label_role(self.series)


def label_role(series: Series) -> FontRole:
    """Return the type role of a line's words."""
    return "strong" if series.strong else "caption"


def chart_plot(pencil: Pencil, room: QRectF, spec: ChartSpec) -> Plot:
    """Return the plot area inside ``room``, with space left for all words around it."""
    u, line = pencil.u, pencil.line_height("caption")
    top = room.top() + line + 8 * u
    bottom = max(top + 10 * u, room.bottom() - 2 * line - 8 * u)
    ends = (top, bottom) if spec.y.downwards else (bottom, top)
    y = Ruler(spec.y, *bounds(spec.y, _y_values(spec)), *ends)
    texts = tick_texts(spec.y, ticks_of(y, pencil, 30))
    left = room.left() + max((pencil.text_width(text, "caption") for text in texts), default=0) + 8 * u
    right = max(left + 10 * u, room.right() - _label_width(pencil, room, spec))
    area = QRectF(QPointF(left, top), QPointF(right, bottom))
    x = Ruler(spec.x, *_x_bounds(spec.x, _x_values(spec)), left, right)
    return Plot(area, x, y)


def end_labels(pencil: Pencil, plot: Plot, room: QRectF, spec: ChartSpec) -> tuple[EndLabel, ...]:
    """Return the words of all named lines, moved apart so that none covers another."""
    left = plot.area.right() + _LABEL_GAP * pencil.u
    width = max(room.right() - left, 1.0)
    named = [series for series in spec.series if series.label and series.points]
    texts = [tuple(pencil.wrapped(series.label, label_role(series), width + 1)) for series in named]
    ends = [plot.point(*series.points[-1]) for series in named]
    heights = [
        len(lines) * pencil.line_height(label_role(series))
        for series, lines in zip(named, texts, strict=True)
    ]
    centres = spread([end.y() for end in ends], heights, room.top(), room.bottom())
    return tuple(
        EndLabel(series, lines, end, QRectF(left, centre - height / 2, width, height))
        for series, lines, end, centre, height in zip(named, texts, ends, centres, heights, strict=True)
    )


def _label_width(pencil: Pencil, room: QRectF, spec: ChartSpec) -> float:
    """Return the room for the words at the ends of lines, no wider than the widest of their lines."""
    most = _LABEL_SHARE * room.width()
    widths = [
        pencil.text_width(line, label_role(series))
        for series in spec.series
        for line in pencil.wrapped(series.label, label_role(series), most)
    ]
    return max(widths) + (_LABEL_GAP + 1) * pencil.u if widths else 16 * pencil.u


def _x_values(spec: ChartSpec) -> list[float]:
    values = [x for series in spec.series for x, _ in series.points]
    values += [mark.x for mark in spec.marks]
    return values + [limit.value for limit in spec.limits if limit.axis == "x"]


def _y_values(spec: ChartSpec) -> list[float]:
    values = [y for series in spec.series for _, y in series.points]
    values += [edge for series in spec.series for _, low, high in series.band for edge in (low, high)]
    values += [mark.y for mark in spec.marks]
    return values + [limit.value for limit in spec.limits if limit.axis == "y"]


def _x_bounds(axis: Axis, values: list[float]) -> tuple[float, float]:
    """Return the ends of the data themselves, so that lines reach their words."""
    usable = [value for value in values if value > 0 or axis.scale is Scale.LINEAR]
    low = axis.low if axis.low is not None else min(usable, default=None)
    high = axis.high if axis.high is not None else max(usable, default=None)
    if low is None or high is None or high <= low:
        return bounds(axis, values)
    return low, high
