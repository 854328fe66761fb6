"""Answers as figures of the chart kit."""

from rigbuilder.viewmodels.answers import Shown, ShownScale
from rigbuilder.views.paint.spec import Axis, Bar, BarSpec, ChartSpec, Limit, Mark, Scale, Series


def figure_of(shown: Shown, *, titled: bool = False) -> ChartSpec | BarSpec | None:
    """Return the figure behind an answer, ``None`` where nothing can be drawn.

    ``titled`` writes question and answer over it.
    """
    title, answer = (shown.question, shown.sentence) if titled else ("", "")
    limits = tuple(Limit(limit.value, limit.label, limit.axis, limit.severity) for limit in shown.limits)
    if shown.curves and shown.x is not None:
        series = tuple(
            Series(curve.label, curve.points, curve.role, curve.band, curve.strong) for curve in shown.curves
        )
        marks = tuple(Mark(spot.x, spot.y, spot.label) for spot in shown.spots)
        return ChartSpec(title, _axis(shown.x), _axis(shown.y), series, limits, marks, answer)
    if shown.rows:
        bars = tuple(
            Bar(row.label, row.low, row.typical, row.high, row.role, row.text, row.strong)
            for row in shown.rows
        )
        return BarSpec(title, _axis(shown.y), bars, limits, answer)
    return None


def _axis(scale: ShownScale) -> Axis:
    kind = Scale.LOG if scale.log else Scale.LINEAR
    return Axis(scale.label, scale.unit, kind, low=scale.low, downwards=scale.downwards)
