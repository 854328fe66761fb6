"""Silhouettes of jigs, wires, worms, spoons and bait rigs."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath, QTransform

from rigbuilder.views.drawing.lure_parts import Silhouette, fish, hook, oval, treble


def spinnerbait() -> Silhouette:
    """Skirt and hook below, blades on the upper arm."""
    body = _skirted(-0.22, 0.12)
    wire = QPainterPath(QPointF(-0.22, 0.12))
    wire.lineTo(-0.5, -0.02)
    wire.lineTo(0.12, -0.3)
    hook(wire, -0.15, 0.12, 0.36, 0.17)
    accent = oval(0.24, -0.27, 0.26, 0.13)
    accent.addPath(oval(-0.06, -0.2, 0.15, 0.09))
    return Silhouette(body, accent=accent, wire=wire, eye=(-0.5, -0.02))


def buzzbait() -> Silhouette:
    """A spinnerbait with one turning blade."""
    shape = spinnerbait()
    blade = QPainterPath()
    for side in (-1, 1):
        blade.addEllipse(QRectF(0.06, -0.3 + (side - 1) * 0.07, 0.24, 0.13))
    return Silhouette(shape.body, accent=blade, wire=shape.wire, eye=(-0.5, -0.02))


def _skirted(x: float, z: float) -> QPainterPath:
    """A head with a skirt that streams to the right."""
    body = oval(x, z, 0.16, 0.15)
    skirt = QPainterPath(QPointF(x, z - 0.07))
    skirt.cubicTo(QPointF(x + 0.2, z - 0.14), QPointF(x + 0.45, z - 0.10), QPointF(x + 0.66, z - 0.14))
    skirt.lineTo(x + 0.52, z - 0.03)
    skirt.lineTo(x + 0.70, z + 0.0)
    skirt.lineTo(x + 0.52, z + 0.06)
    skirt.lineTo(x + 0.64, z + 0.15)
    skirt.cubicTo(QPointF(x + 0.45, z + 0.12), QPointF(x + 0.2, z + 0.14), QPointF(x, z + 0.07))
    skirt.closeSubpath()
    return body.united(skirt)


def jig() -> Silhouette:
    """A head with a skirt."""
    wire = QPainterPath(QPointF(-0.34, 0.0))
    wire.lineTo(-0.30, -0.16)
    hook(wire, -0.28, 0.02, 0.42, 0.24)
    return Silhouette(
        _skirted(-0.32, 0.03), accent=oval(-0.34, 0.0, 0.045, 0.045), wire=wire, eye=(-0.30, -0.17)
    )


def bladed() -> Silhouette:
    """A jig with a plate before its head."""
    shape = jig()
    plate = QPainterPath(QPointF(-0.5, -0.06))
    plate.lineTo(-0.38, -0.13)
    plate.lineTo(-0.34, 0.06)
    plate.lineTo(-0.46, 0.10)
    plate.closeSubpath()
    return Silhouette(shape.body, accent=plate, wire=shape.wire, eye=(-0.5, 0.0))


def _worm_path() -> QPainterPath:
    body = QPainterPath(QPointF(-0.36, -0.05))
    body.cubicTo(QPointF(-0.1, -0.10), QPointF(0.1, 0.0), QPointF(0.32, -0.10))
    body.cubicTo(QPointF(0.44, -0.15), QPointF(0.5, -0.08), QPointF(0.5, -0.02))
    body.cubicTo(QPointF(0.42, -0.07), QPointF(0.36, -0.01), QPointF(0.28, 0.03))
    body.cubicTo(QPointF(0.1, 0.10), QPointF(-0.1, 0.02), QPointF(-0.36, 0.06))
    body.closeSubpath()
    return body


def worm() -> Silhouette:
    """A worm on a hook."""
    wire = QPainterPath()
    hook(wire, -0.36, 0.0, 0.34, 0.16)
    return Silhouette(_worm_path(), wire=wire, eye=(-0.38, 0.0))


def weighted() -> Silhouette:
    """A worm behind a cone."""
    shape = worm()
    cone = QPainterPath(QPointF(-0.52, 0.0))
    cone.lineTo(-0.36, -0.09)
    cone.lineTo(-0.36, 0.09)
    cone.closeSubpath()
    return Silhouette(shape.body, accent=cone, wire=shape.wire, eye=(-0.52, 0.0))


def headed() -> Silhouette:
    """A worm on a round head."""
    shape = worm()
    shape.wire.moveTo(-0.40, 0.0)
    shape.wire.lineTo(-0.38, -0.15)
    return Silhouette(shape.body, accent=oval(-0.40, 0.02, 0.18, 0.17), wire=shape.wire, eye=(-0.38, -0.16))


def swimbait() -> Silhouette:
    """A soft fish with a paddle."""
    body = fish(0.14)
    tail = QPainterPath(QPointF(0.36, 0.0))
    tail.quadTo(QPointF(0.46, 0.02), QPointF(0.48, 0.15))
    tail.quadTo(QPointF(0.56, 0.02), QPointF(0.46, -0.06))
    tail.closeSubpath()
    wire = QPainterPath()
    hook(wire, -0.32, -0.06, 0.3, 0.17)
    return Silhouette(body.united(tail), accent=oval(-0.34, -0.03, 0.05, 0.05), wire=wire)


def spoon() -> Silhouette:
    """A bent plate."""
    body = QPainterPath(QPointF(-0.44, 0.0))
    body.cubicTo(QPointF(-0.2, -0.16), QPointF(0.25, -0.2), QPointF(0.36, 0.0))
    body.cubicTo(QPointF(0.25, 0.15), QPointF(-0.2, 0.10), QPointF(-0.44, 0.0))
    wire = QPainterPath()
    treble(wire, 0.40, -0.02)
    return Silhouette(body, accent=oval(0.02, -0.03, 0.42, 0.07), wire=wire, eye=(-0.45, 0.0))


def spinner() -> Silhouette:
    """A blade round a wire."""
    wire = QPainterPath(QPointF(-0.5, 0.0))
    wire.lineTo(0.3, 0.0)
    treble(wire, 0.32, 0.0)
    return Silhouette(oval(0.02, 0.0, 0.26, 0.10), accent=oval(-0.16, -0.13, 0.36, 0.15), wire=wire)


def drop_shot() -> Silhouette:
    """A worm over a weight."""
    wire = QPainterPath(QPointF(-0.34, -0.7))
    wire.lineTo(-0.34, 0.46)
    hook(wire, -0.34, -0.16, 0.14, 0.10)
    body = QTransform.fromTranslate(0.06, -0.20).scale(0.82, 0.82).map(_worm_path())
    return Silhouette(body, accent=oval(-0.34, 0.5, 0.12, 0.18), wire=wire, eye=(-0.34, -0.7))


def float_rig() -> Silhouette:
    """A float with the hook below."""
    body = oval(0.0, -0.16, 0.24, 0.34)
    stick = QPainterPath(QPointF(0.0, -0.5))
    stick.lineTo(0.0, 0.5)
    hook(stick, 0.0, 0.5, 0.05, 0.12)
    top = QPainterPath()
    top.addRect(QRectF(-0.11, -0.24, 0.22, 0.07))
    return Silhouette(body, accent=top, wire=stick, eye=(0.0, 0.04))


def bottom_rig() -> Silhouette:
    """A weight and a bait on the bottom."""
    wire = QPainterPath(QPointF(-0.5, 0.0))
    wire.lineTo(0.2, 0.02)
    hook(wire, 0.2, 0.02, 0.14, 0.16)
    return Silhouette(oval(-0.34, 0.03, 0.22, 0.17), accent=oval(0.30, 0.0, 0.22, 0.08), wire=wire)


def umbrella() -> Silhouette:
    """Five small fish on arms."""
    wire, body = QPainterPath(), QPainterPath()
    for z in (-0.3, -0.15, 0.0, 0.15, 0.3):
        wire.moveTo(-0.4, 0.0)
        wire.lineTo(0.1, z)
        body.addPath(QTransform.fromTranslate(0.26, z).scale(0.34, 0.34).map(fish(0.14, 0.03)))
    body.addPath(oval(-0.42, 0.0, 0.14, 0.09))
    return Silhouette(body, wire=wire)
