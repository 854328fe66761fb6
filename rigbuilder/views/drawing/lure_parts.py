"""What silhouettes are made of: bodies, hooks and the place where the line is tied."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath


class Silhouette:
    """Body, accent and wire of a lure in unit lengths; the line is tied at ``eye``."""

    def __init__(
        self,
        body: QPainterPath,
        *,
        accent: QPainterPath | None = None,
        wire: QPainterPath | None = None,
        eye: tuple[float, float] = (-0.5, 0.0),
    ) -> None:
        self.body, self.eye = body, QPointF(*eye)
        self.accent = accent or QPainterPath()
        self.wire = wire or QPainterPath()


def oval(x: float, z: float, width: float, height: float) -> QPainterPath:
    """Return an oval by its middle and its sides."""
    path = QPainterPath()
    path.addEllipse(QRectF(x - width / 2, z - height / 2, width, height))
    return path


def treble(path: QPainterPath, x: float, z: float, size: float = 0.15) -> None:
    """Add a treble below a point."""
    path.moveTo(x, z)
    path.lineTo(x, z + size * 0.7)
    for side in (-1, 1):
        path.moveTo(x, z + size * 0.7)
        path.cubicTo(
            QPointF(x, z + size * 1.25),
            QPointF(x + side * size * 0.7, z + size * 1.25),
            QPointF(x + side * size * 0.62, z + size * 0.62),
        )


def hook(path: QPainterPath, x: float, z: float, length: float, gap: float) -> None:
    """Add a single hook whose shank runs to the right from a point, its point up."""
    path.moveTo(x, z)
    path.lineTo(x + length, z)
    path.cubicTo(
        QPointF(x + length + gap * 0.75, z),
        QPointF(x + length + gap * 0.75, z - gap),
        QPointF(x + length - gap * 0.1, z - gap),
    )
    path.lineTo(x + length - gap * 0.32, z - gap * 0.72)


def fish(height: float, tail: float = 0.0) -> QPainterPath:
    """Return a fish by half its height; a tail may be set on."""
    path = QPainterPath(QPointF(-0.5, 0.0))
    path.cubicTo(QPointF(-0.35, -height), QPointF(0.1, -height), QPointF(0.42, -0.015))
    if tail:
        path.lineTo(0.5 + tail, -0.10)
        path.lineTo(0.47 + tail, 0.10)
    path.lineTo(0.42, 0.03)
    path.cubicTo(QPointF(0.1, height), QPointF(-0.35, height), QPointF(-0.5, 0.0))
    return path
