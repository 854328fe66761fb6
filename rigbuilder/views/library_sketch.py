"""The small drawing of a card: its line and leader in their own strokes, its lure, on or below the water."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen

from rigbuilder.viewmodels.library_sketch import Sketch
from rigbuilder.views.drawing.lures import paint_lure
from rigbuilder.views.paint.pencil import Pencil
from rigbuilder.views.theme import Theme

_SURFACE = 0.52  # of the height
_LURE = 0.27  # of the width
_JOINT = 0.62  # of the way to the lure


def paint_sketch(painter: QPainter, rect: QRectF, sketch: Sketch, theme: Theme) -> None:
    """Paint the sketch of one card into ``rect``."""
    painter.save()
    pencil = Pencil(painter, theme)
    frame = QPainterPath()
    frame.addRoundedRect(rect, 3 * pencil.u, 3 * pencil.u)
    painter.setClipPath(frame)
    water = rect.top() + _SURFACE * rect.height()
    painter.fillRect(rect, theme.colour("sky"))
    painter.fillRect(
        QRectF(rect.left(), water, rect.width(), rect.bottom() - water), theme.colour("water_top")
    )
    painter.setPen(QPen(theme.colour("surface"), pencil.u))
    painter.drawLine(QPointF(rect.left(), water), QPointF(rect.right(), water))
    tip = QPointF(rect.left() + 0.04 * rect.width(), rect.top() + 0.1 * rect.height())
    eye = _paint_lure(pencil, rect, water, sketch)
    joint = tip + (eye - tip) * _JOINT if sketch.leader else eye
    _paint_line(pencil, tip, joint, sketch.main)
    if sketch.leader:
        _paint_line(pencil, joint, eye, sketch.leader)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.colour("knot"))
        painter.drawEllipse(joint, 2 * pencil.u, 2 * pencil.u)
    painter.setClipping(False)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(theme.colour("rule"), 1.0))
    painter.drawPath(frame)
    painter.restore()


def _paint_lure(pencil: Pencil, rect: QRectF, water: float, sketch: Sketch) -> QPointF:
    length = _LURE * rect.width()
    depth = 0.0 if sketch.surface else 0.62 * (rect.bottom() - water)
    centre = QPointF(rect.left() + 0.8 * rect.width(), water + depth)
    if not sketch.lure:
        return centre
    return paint_lure(pencil, centre, length, sketch.lure)


def _paint_line(pencil: Pencil, start: QPointF, end: QPointF, kind: str) -> None:
    theme = pencil.theme
    pen = QPen(theme.colour("soft"), 1.2 * pencil.u)
    if kind:
        stroke = theme.stroke(kind)
        pen = QPen(QColor(stroke.colour), 1.7 * pencil.u)
        if stroke.dash:
            pen.setDashPattern(list(stroke.dash))
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    pencil.painter.setBrush(Qt.BrushStyle.NoBrush)
    pencil.painter.setPen(pen)
    pencil.painter.drawLine(start, end)
