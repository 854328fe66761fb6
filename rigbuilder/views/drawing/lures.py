"""Lures as simple silhouettes of our own, nose to the left, in a box one unit long."""

from collections.abc import Callable, Mapping

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainterPath, QTransform

from rigbuilder.views.paint.pencil import Pencil

Maker = Callable[[], "Silhouette"]


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


def paint_lure(pencil: Pencil, centre: QPointF, length: float, kind: str, turn_deg: float = 0.0) -> QPointF:
    """Paint a lure and return where its eye is; nose to the left, turned nose-down by ``turn_deg``."""
    shape = _MAKERS.get(kind, _worm)()
    place = QTransform.fromTranslate(centre.x(), centre.y()).scale(length, length).rotate(-turn_deg)
    painter, theme = pencil.painter, pencil.theme
    pen = pencil.pen(theme.colour("lure"), 1.0)
    pen.setWidthF(max(0.022 * length, 0.8 * pencil.u))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.strokePath(place.map(shape.wire), pen)
    painter.fillPath(place.map(shape.body), theme.colour("lure"))
    painter.fillPath(place.map(shape.accent), theme.colour("lure_accent"))
    return place.map(shape.eye)


def _oval(x: float, z: float, width: float, height: float) -> QPainterPath:
    path = QPainterPath()
    path.addEllipse(QRectF(x - width / 2, z - height / 2, width, height))
    return path


def _treble(path: QPainterPath, x: float, z: float, size: float = 0.15) -> None:
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


def _hook(path: QPainterPath, x: float, z: float, length: float, gap: float) -> None:
    """Add a single hook whose shank runs to the right from a point, its point up."""
    path.moveTo(x, z)
    path.lineTo(x + length, z)
    path.cubicTo(
        QPointF(x + length + gap * 0.75, z),
        QPointF(x + length + gap * 0.75, z - gap),
        QPointF(x + length - gap * 0.1, z - gap),
    )
    path.lineTo(x + length - gap * 0.32, z - gap * 0.72)


def _fish(height: float, tail: float = 0.0) -> QPainterPath:
    path = QPainterPath(QPointF(-0.5, 0.0))
    path.cubicTo(QPointF(-0.35, -height), QPointF(0.1, -height), QPointF(0.42, -0.015))
    if tail:
        path.lineTo(0.5 + tail, -0.10)
        path.lineTo(0.47 + tail, 0.10)
    path.lineTo(0.42, 0.03)
    path.cubicTo(QPointF(0.1, height), QPointF(-0.35, height), QPointF(-0.5, 0.0))
    return path


def _walker() -> Silhouette:
    wire = QPainterPath()
    _treble(wire, -0.12, 0.09)
    _treble(wire, 0.42, 0.03)
    return Silhouette(_fish(0.15), accent=_oval(-0.34, -0.035, 0.055, 0.055), wire=wire)


def _popper() -> Silhouette:
    body = QPainterPath(QPointF(-0.5, -0.17))
    body.quadTo(QPointF(-0.40, 0.0), QPointF(-0.5, 0.17))
    body.cubicTo(QPointF(-0.1, 0.16), QPointF(0.15, 0.09), QPointF(0.42, 0.02))
    body.lineTo(0.42, -0.02)
    body.cubicTo(QPointF(0.15, -0.09), QPointF(-0.1, -0.16), QPointF(-0.5, -0.17))
    wire = QPainterPath()
    _treble(wire, -0.10, 0.13)
    _treble(wire, 0.42, 0.02)
    return Silhouette(body, accent=_oval(-0.30, -0.05, 0.06, 0.06), wire=wire, eye=(-0.44, 0.0))


def _propped() -> Silhouette:
    shape = _walker()
    for x in (-0.5, 0.46):
        shape.wire.moveTo(x, -0.13)
        shape.wire.lineTo(x + 0.03, 0.13)
    return shape


def _frog() -> Silhouette:
    body = QPainterPath(QPointF(-0.5, 0.01))
    body.cubicTo(QPointF(-0.42, -0.22), QPointF(-0.02, -0.27), QPointF(0.18, -0.06))
    body.cubicTo(QPointF(0.22, 0.05), QPointF(0.08, 0.16), QPointF(-0.12, 0.16))
    body.cubicTo(QPointF(-0.34, 0.16), QPointF(-0.46, 0.10), QPointF(-0.5, 0.01))
    wire = QPainterPath()
    for height in (-0.02, 0.05, 0.11):
        wire.moveTo(0.15, 0.0)
        wire.cubicTo(QPointF(0.28, height), QPointF(0.4, height + 0.06), QPointF(0.5, height + 0.02))
    wire.moveTo(0.02, -0.05)
    wire.cubicTo(QPointF(0.2, -0.06), QPointF(0.26, -0.26), QPointF(0.06, -0.25))
    return Silhouette(body, accent=_oval(-0.28, -0.10, 0.09, 0.09), wire=wire)


def _bait(lip: float, height: float = 0.16) -> Silhouette:
    body = _fish(height)
    plate = QPainterPath(QPointF(-0.46, 0.02))
    plate.lineTo(-0.5 - lip, 0.10 + 0.5 * lip)
    plate.lineTo(-0.44 - lip * 0.7, 0.16 + 0.5 * lip)
    plate.lineTo(-0.36, 0.07)
    plate.closeSubpath()
    wire = QPainterPath()
    _treble(wire, -0.08, 0.8 * height)
    _treble(wire, 0.42, 0.02)
    accent = _oval(-0.30, -0.04, 0.06, 0.06)
    accent.addPath(plate)
    return Silhouette(body, accent=accent, wire=wire, eye=(-0.47, 0.0))


def _lipless() -> Silhouette:
    wire = QPainterPath()
    _treble(wire, -0.1, 0.14)
    _treble(wire, 0.42, 0.02)
    return Silhouette(_fish(0.2), accent=_oval(-0.36, -0.04, 0.06, 0.06), wire=wire, eye=(-0.18, -0.15))


def _spinnerbait() -> Silhouette:
    body = _skirted(-0.22, 0.12)
    wire = QPainterPath(QPointF(-0.22, 0.12))
    wire.lineTo(-0.5, -0.02)
    wire.lineTo(0.12, -0.3)
    _hook(wire, -0.15, 0.12, 0.36, 0.17)
    accent = _oval(0.24, -0.27, 0.26, 0.13)
    accent.addPath(_oval(-0.06, -0.2, 0.15, 0.09))
    return Silhouette(body, accent=accent, wire=wire, eye=(-0.5, -0.02))


def _buzzbait() -> Silhouette:
    shape = _spinnerbait()
    blade = QPainterPath()
    for side in (-1, 1):
        blade.addEllipse(QRectF(0.06, -0.3 + (side - 1) * 0.07, 0.24, 0.13))
    return Silhouette(shape.body, accent=blade, wire=shape.wire, eye=(-0.5, -0.02))


def _skirted(x: float, z: float) -> QPainterPath:
    """A head with a skirt that streams to the right."""
    body = _oval(x, z, 0.16, 0.15)
    skirt = QPainterPath(QPointF(x, z - 0.07))
    skirt.cubicTo(QPointF(x + 0.2, z - 0.14), QPointF(x + 0.45, z - 0.10), QPointF(x + 0.66, z - 0.14))
    skirt.lineTo(x + 0.52, z - 0.03)
    skirt.lineTo(x + 0.70, z + 0.0)
    skirt.lineTo(x + 0.52, z + 0.06)
    skirt.lineTo(x + 0.64, z + 0.15)
    skirt.cubicTo(QPointF(x + 0.45, z + 0.12), QPointF(x + 0.2, z + 0.14), QPointF(x, z + 0.07))
    skirt.closeSubpath()
    return body.united(skirt)


def _jig() -> Silhouette:
    wire = QPainterPath(QPointF(-0.34, 0.0))
    wire.lineTo(-0.30, -0.16)
    _hook(wire, -0.28, 0.02, 0.42, 0.24)
    return Silhouette(
        _skirted(-0.32, 0.03), accent=_oval(-0.34, 0.0, 0.045, 0.045), wire=wire, eye=(-0.30, -0.17)
    )


def _bladed() -> Silhouette:
    shape = _jig()
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


def _worm() -> Silhouette:
    wire = QPainterPath()
    _hook(wire, -0.36, 0.0, 0.34, 0.16)
    return Silhouette(_worm_path(), wire=wire, eye=(-0.38, 0.0))


def _weighted() -> Silhouette:
    shape = _worm()
    cone = QPainterPath(QPointF(-0.52, 0.0))
    cone.lineTo(-0.36, -0.09)
    cone.lineTo(-0.36, 0.09)
    cone.closeSubpath()
    return Silhouette(shape.body, accent=cone, wire=shape.wire, eye=(-0.52, 0.0))


def _headed() -> Silhouette:
    shape = _worm()
    shape.wire.moveTo(-0.40, 0.0)
    shape.wire.lineTo(-0.38, -0.15)
    return Silhouette(shape.body, accent=_oval(-0.40, 0.02, 0.18, 0.17), wire=shape.wire, eye=(-0.38, -0.16))


def _swimbait() -> Silhouette:
    body = _fish(0.14)
    tail = QPainterPath(QPointF(0.36, 0.0))
    tail.quadTo(QPointF(0.46, 0.02), QPointF(0.48, 0.15))
    tail.quadTo(QPointF(0.56, 0.02), QPointF(0.46, -0.06))
    tail.closeSubpath()
    wire = QPainterPath()
    _hook(wire, -0.32, -0.06, 0.3, 0.17)
    return Silhouette(body.united(tail), accent=_oval(-0.34, -0.03, 0.05, 0.05), wire=wire)


def _spoon() -> Silhouette:
    body = QPainterPath(QPointF(-0.44, 0.0))
    body.cubicTo(QPointF(-0.2, -0.16), QPointF(0.25, -0.2), QPointF(0.36, 0.0))
    body.cubicTo(QPointF(0.25, 0.15), QPointF(-0.2, 0.10), QPointF(-0.44, 0.0))
    wire = QPainterPath()
    _treble(wire, 0.40, -0.02)
    return Silhouette(body, accent=_oval(0.02, -0.03, 0.42, 0.07), wire=wire, eye=(-0.45, 0.0))


def _spinner() -> Silhouette:
    wire = QPainterPath(QPointF(-0.5, 0.0))
    wire.lineTo(0.3, 0.0)
    _treble(wire, 0.32, 0.0)
    return Silhouette(_oval(0.02, 0.0, 0.26, 0.10), accent=_oval(-0.16, -0.13, 0.36, 0.15), wire=wire)


def _drop_shot() -> Silhouette:
    wire = QPainterPath(QPointF(-0.34, -0.7))
    wire.lineTo(-0.34, 0.46)
    _hook(wire, -0.34, -0.16, 0.14, 0.10)
    body = QTransform.fromTranslate(0.06, -0.20).scale(0.82, 0.82).map(_worm_path())
    return Silhouette(body, accent=_oval(-0.34, 0.5, 0.12, 0.18), wire=wire, eye=(-0.34, -0.7))


def _float() -> Silhouette:
    body = _oval(0.0, -0.16, 0.24, 0.34)
    stick = QPainterPath(QPointF(0.0, -0.5))
    stick.lineTo(0.0, 0.5)
    _hook(stick, 0.0, 0.5, 0.05, 0.12)
    top = QPainterPath()
    top.addRect(QRectF(-0.11, -0.24, 0.22, 0.07))
    return Silhouette(body, accent=top, wire=stick, eye=(0.0, 0.04))


def _bottom_rig() -> Silhouette:
    wire = QPainterPath(QPointF(-0.5, 0.0))
    wire.lineTo(0.2, 0.02)
    _hook(wire, 0.2, 0.02, 0.14, 0.16)
    return Silhouette(_oval(-0.34, 0.03, 0.22, 0.17), accent=_oval(0.30, 0.0, 0.22, 0.08), wire=wire)


def _umbrella() -> Silhouette:
    wire, body = QPainterPath(), QPainterPath()
    for z in (-0.3, -0.15, 0.0, 0.15, 0.3):
        wire.moveTo(-0.4, 0.0)
        wire.lineTo(0.1, z)
        body.addPath(QTransform.fromTranslate(0.26, z).scale(0.34, 0.34).map(_fish(0.14, 0.03)))
    body.addPath(_oval(-0.42, 0.0, 0.14, 0.09))
    return Silhouette(body, wire=wire)


_MAKERS: Mapping[str, Maker] = {
    "walking bait": _walker, "popper": _popper, "prop bait": _propped, "rotating tail": _propped,
    "buzzbait": _buzzbait, "hollow frog": _frog, "wake bait": lambda: _bait(0.03, 0.19),
    "shallow crankbait": lambda: _bait(0.08, 0.22), "medium crankbait": lambda: _bait(0.16, 0.21),
    "deep crankbait": lambda: _bait(0.27, 0.20), "trolled crankbait": lambda: _bait(0.24, 0.14),
    "floating minnow": lambda: _bait(0.06, 0.11), "suspending minnow": lambda: _bait(0.08, 0.11),
    "sinking minnow": lambda: _bait(0.06, 0.12), "lipless crankbait": _lipless, "spinnerbait": _spinnerbait,
    "bladed jig": _bladed, "swim jig": _jig, "flipping jig": _jig, "football jig": _jig, "finesse jig": _jig,
    "hair jig": _jig, "small jig": _jig, "soft swimbait": _swimbait, "weedless swimbait": _swimbait,
    "glide bait": _lipless, "big swimbait": _swimbait, "big jerkbait": _walker, "umbrella rig": _umbrella,
    "inline spinner": _spinner, "bladed spinner": _spinner, "casting spoon": _spoon, "weedless spoon": _spoon,
    "pike spoon": _spoon, "jigging spoon": _spoon, "blade bait": _lipless, "punching rig": _weighted,
    "texas rig": _weighted, "carolina rig": _bottom_rig, "tube": _headed, "shaky head": _headed,
    "ned rig": _headed, "jig head": _headed, "drop shot": _drop_shot, "split shot rig": _bottom_rig,
    "weightless worm": _worm, "nail-weighted worm": _worm, "soft jerkbait": _swimbait, "float": _float,
    "bottom rig": _bottom_rig,
}  # fmt: skip
