"""Cover, each kind in its own calm hand; it stands where the lure goes."""

from collections.abc import Callable, Mapping
from math import sin

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainterPath, QPolygonF

from rigbuilder.viewmodels.scene import RigScene
from rigbuilder.views.drawing.frame import Frame
from rigbuilder.views.paint.pencil import Pencil

Span = tuple[float, float]


def _hash(k: float) -> float:
    """A number from 0 to 1 that looks like chance and is always the same."""
    value = sin(k * 12.9898 + 4.1) * 43758.5453
    return value - int(value) if value >= 0 else value - int(value) + 1


def paint_cover(pencil: Pencil, frame: Frame, scene: RigScene) -> None:
    """Paint the cover around and beyond the lure."""
    painter = _PAINTERS.get(scene.water.cover)
    if painter is None:
        return
    start = max(frame.tip_x + 24 * frame.u, frame.lure_x - 0.30 * frame.rect.width())
    pencil.painter.save()
    pencil.painter.setClipRect(frame.rect)
    painter(pencil, frame, (start, frame.rect.right() - 2 * frame.u))
    pencil.painter.restore()


def _stems(pencil: Pencil, frame: Frame, span: Span, gap: float, height: float, width: float = 1.5) -> None:
    u, depth = frame.u, frame.bottom_y - frame.surface_y
    ink = pencil.theme.colour("weed")
    ink.setAlphaF(0.72)
    count = max(2, int((span[1] - span[0]) / (gap * u)))
    for k in range(count):
        x = span[0] + (k + 0.2 + 0.6 * _hash(k)) * (span[1] - span[0]) / count
        tall = depth * height * (0.72 + 0.28 * _hash(k + 0.5))
        lean = (_hash(k + 0.25) - 0.5) * 14 * u
        path = QPainterPath(QPointF(x, frame.bottom_y + 3 * u))
        top = QPointF(x + lean, frame.bottom_y - tall)
        path.cubicTo(
            QPointF(x - lean, frame.bottom_y - tall * 0.35),
            QPointF(x + lean * 1.6, frame.bottom_y - tall * 0.7),
            top,
        )
        pencil.painter.strokePath(path, pencil.pen(ink, width))
        for share in (0.35, 0.55, 0.75):
            at = path.pointAtPercent(share)
            side = 1 if (k + int(share * 20)) % 2 else -1
            leaf = QPainterPath(at)
            leaf.quadTo(at + QPointF(side * 4 * u, -1 * u), at + QPointF(side * 6 * u, -5 * u))
            pencil.painter.strokePath(leaf, pencil.pen(ink, width * 0.8))


def _sparse(pencil: Pencil, frame: Frame, span: Span) -> None:
    _stems(pencil, frame, span, 34, 0.55)


def _thick(pencil: Pencil, frame: Frame, span: Span) -> None:
    _stems(pencil, frame, span, 13, 0.82)


def _matted(pencil: Pencil, frame: Frame, span: Span) -> None:
    _stems(pencil, frame, span, 15, 0.96)
    u, ink = frame.u, pencil.theme.colour("weed")
    ink.setAlphaF(0.55)
    mat = QPainterPath(QPointF(span[0], frame.surface_y + 1 * u))
    step = 9 * u
    count = int((span[1] - span[0]) / step) + 1
    for k in range(1, count + 1):
        mat.lineTo(min(span[0] + k * step, span[1]), frame.surface_y - u * (0.6 + 2.4 * _hash(k)))
    for k in range(count, -1, -1):
        mat.lineTo(min(span[0] + k * step, span[1]), frame.surface_y + u * (3.5 + 5.0 * _hash(k + 0.7)))
    mat.closeSubpath()
    pencil.painter.fillPath(mat, ink)


def _pads(pencil: Pencil, frame: Frame, span: Span) -> None:
    u, painter = frame.u, pencil.painter
    ink = pencil.theme.colour("pad")
    stem = QColor(ink)
    stem.setAlphaF(0.6)
    count = max(2, int((span[1] - span[0]) / (30 * u)))
    for k in range(count):
        x = span[0] + (k + 0.5) * (span[1] - span[0]) / count
        foot = QPointF(x + (_hash(k) - 0.5) * 30 * u, frame.bottom_y + 3 * u)
        path = QPainterPath(foot)
        path.cubicTo(
            QPointF(foot.x(), frame.bottom_y - 20 * u),
            QPointF(x, frame.surface_y + 30 * u),
            QPointF(x, frame.surface_y),
        )
        painter.strokePath(path, pencil.pen(stem, 1.3))
        half = (9 + 5 * _hash(k + 0.3)) * u
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(ink)
        painter.drawPie(QRectF(x - half, frame.surface_y - 2.6 * u, 2 * half, 5.2 * u), 12 * 16, 336 * 16)
    painter.setBrush(Qt.BrushStyle.NoBrush)


def _wood(pencil: Pencil, frame: Frame, span: Span) -> None:
    u, ink = frame.u, pencil.theme.colour("wood")
    depth, width = frame.bottom_y - frame.surface_y, span[1] - span[0]
    left = span[0] + 0.22 * width
    trunk = [
        QPointF(left, frame.bottom_y + 2 * u),
        QPointF(left + 0.62 * width, frame.bottom_y - 0.42 * depth),
    ]
    painter = pencil.painter
    painter.setPen(pencil.pen(ink, 8))
    painter.drawLine(*trunk)
    for share, lean, tall in ((0.3, -0.06, 0.40), (0.52, 0.07, 0.46), (0.74, -0.05, 0.34), (0.9, 0.09, 0.36)):
        foot = trunk[0] + (trunk[1] - trunk[0]) * share
        tip = foot + QPointF(lean * width, -tall * depth)
        branch = QPainterPath(foot)
        branch.quadTo(foot + QPointF(0, -0.6 * tall * depth), tip)
        painter.strokePath(branch, pencil.pen(ink, 2.6))
        twig = branch.pointAtPercent(0.6)
        painter.setPen(pencil.pen(ink, 1.5))
        painter.drawLine(twig, twig + QPointF((0.05 if lean < 0 else -0.05) * width, -0.12 * depth))


def _rock(pencil: Pencil, frame: Frame, span: Span) -> None:
    u, ink = frame.u, pencil.theme.colour("rock")
    fill = QColor(ink)
    fill.setAlphaF(0.5)
    tall = min(30 * u, 0.35 * (frame.bottom_y - frame.surface_y))
    count = max(3, int((span[1] - span[0]) / (26 * u)))
    for k in range(count):
        x = span[0] + (k + 0.5) * (span[1] - span[0]) / count
        w, h = (12 + 9 * _hash(k)) * u, tall * (0.45 + 0.55 * _hash(k + 0.4))
        base = frame.bottom_y + 4 * u
        corners = [
            (-w, 0),
            (-0.8 * w, -0.6 * h),
            (-0.2 * w, -h),
            (0.5 * w, -0.85 * h),
            (0.95 * w, -0.4 * h),
            (w, 0),
        ]
        shape = QPainterPath()
        shape.addPolygon(QPolygonF([QPointF(x + dx, base + dy) for dx, dy in corners]))
        shape.closeSubpath()
        pencil.painter.fillPath(shape, fill)
        pencil.painter.strokePath(shape, pencil.pen(ink, 1.2))


def _docks(pencil: Pencil, frame: Frame, span: Span) -> None:
    u, painter, ink = frame.u, pencil.painter, pencil.theme.colour("dock")
    left = span[0] + 0.35 * (span[1] - span[0])
    deck = frame.surface_y - 16 * u
    for k in range(4):
        x = left + k * (span[1] - left) / 3.3 + 6 * u
        painter.fillRect(QRectF(x, deck, 5 * u, frame.bottom_y + 4 * u - deck), ink)
    painter.fillRect(QRectF(left, deck - 5 * u, span[1] - left, 6 * u), ink)
    shade = QColor(ink)
    shade.setAlphaF(0.16)
    painter.fillRect(QRectF(left, frame.surface_y, span[1] - left, frame.bottom_y - frame.surface_y), shade)


_PAINTERS: Mapping[str, Callable[[Pencil, Frame, Span], None]] = {
    "sparse grass": _sparse,
    "thick grass": _thick,
    "matted grass": _matted,
    "lily pads": _pads,
    "wood": _wood,
    "rock": _rock,
    "docks": _docks,
}
