"""Sky, water, how far things can be seen in it, and the bottom."""

from math import sin

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QLinearGradient, QPainterPath, QRadialGradient

from rigbuilder.viewmodels.scene import RigScene
from rigbuilder.views.drawing.frame import Frame
from rigbuilder.views.paint.pencil import Pencil

_VEIL = 0.62  # how much of the water's far end is veiled
_VEIL_ON_PAPER = 0.3  # the same in print, where it costs ink


def paint_water(pencil: Pencil, frame: Frame, scene: RigScene) -> None:
    """Paint sky, water, veil, surface and bottom."""
    theme, rect, painter = pencil.theme, frame.rect, pencil.painter
    painter.fillRect(rect, theme.colour("sky"))
    water = QRectF(rect.left(), frame.surface_y, rect.width(), rect.bottom() - frame.surface_y)
    shade = QLinearGradient(water.topLeft(), QPointF(water.left(), frame.bottom_y))
    shade.setColorAt(0.0, theme.colour("water_top"))
    shade.setColorAt(1.0, theme.colour("water_deep"))
    painter.fillRect(water, shade)
    _paint_veil(pencil, frame, scene, water)
    _paint_bottom(pencil, frame)
    painter.setPen(pencil.pen(theme.colour("surface"), 1.4, flat=True))
    painter.drawPath(_ripples(frame))


def _paint_veil(pencil: Pencil, frame: Frame, scene: RigScene, water: QRectF) -> None:
    """Veil what a fish at the lure could not see: clear near the lure, dim beyond the clarity."""
    painter, ink = pencil.painter, pencil.theme.colour("clarity")
    strongest = _VEIL_ON_PAPER if pencil.theme.name == "print" else _VEIL
    centre = frame.at(*scene.typical[-1])
    reach = max(scene.water.clarity_m, 0.05) * frame.along
    squash = frame.under / frame.along
    veil = QRadialGradient(QPointF(0, 0), reach * 2.2)
    for place, share in ((0.0, 0.0), (0.28, 0.12), (0.455, 0.55), (1.0, 1.0)):
        tint = QColor(ink)
        tint.setAlphaF(strongest * share)
        veil.setColorAt(place, tint)
    painter.save()
    painter.setClipRect(water)
    painter.translate(centre)
    painter.scale(1.0, squash)
    far = 4.0 * (water.width() + water.height()) + reach
    painter.fillRect(QRectF(-far, -far, 2 * far, 2 * far), veil)
    painter.restore()


def _ripples(frame: Frame) -> QPainterPath:
    step, u = 7.0 * frame.u, frame.u
    path = QPainterPath(QPointF(frame.rect.left(), frame.surface_y))
    count = int(frame.rect.width() / step) + 1
    for k in range(1, count + 1):
        x = min(frame.rect.left() + k * step, frame.rect.right())
        path.lineTo(x, frame.surface_y + 0.7 * u * sin(k * 1.7))
    return path


def _paint_bottom(pencil: Pencil, frame: Frame) -> None:
    theme, painter, rect, u = pencil.theme, pencil.painter, frame.rect, frame.u
    edge = QPainterPath(QPointF(rect.left(), frame.bottom_y))
    step, count = 16.0 * u, int(rect.width() / (16.0 * u)) + 2
    for k in range(1, count):
        x = min(rect.left() + k * step, rect.right())
        edge.lineTo(x, frame.bottom_y + 1.6 * u * (1.0 + sin(k * 2.3) * sin(k * 0.7)))
    ground = QPainterPath(edge)
    ground.lineTo(rect.bottomRight())
    ground.lineTo(rect.bottomLeft())
    ground.closeSubpath()
    painter.fillPath(ground, theme.colour("bottom"))
    painter.setPen(pencil.pen(theme.colour("bottom_edge"), 1.3))
    painter.drawPath(edge)
