"""Silhouettes of hard baits and of the hollow frog."""

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainterPath

from rigbuilder.views.drawing.lure_parts import Silhouette, fish, oval, treble


def walker() -> Silhouette:
    """A cigar with two trebles."""
    wire = QPainterPath()
    treble(wire, -0.12, 0.09)
    treble(wire, 0.42, 0.03)
    return Silhouette(fish(0.15), accent=oval(-0.34, -0.035, 0.055, 0.055), wire=wire)


def popper() -> Silhouette:
    """A cupped face."""
    body = QPainterPath(QPointF(-0.5, -0.17))
    body.quadTo(QPointF(-0.40, 0.0), QPointF(-0.5, 0.17))
    body.cubicTo(QPointF(-0.1, 0.16), QPointF(0.15, 0.09), QPointF(0.42, 0.02))
    body.lineTo(0.42, -0.02)
    body.cubicTo(QPointF(0.15, -0.09), QPointF(-0.1, -0.16), QPointF(-0.5, -0.17))
    wire = QPainterPath()
    treble(wire, -0.10, 0.13)
    treble(wire, 0.42, 0.02)
    return Silhouette(body, accent=oval(-0.30, -0.05, 0.06, 0.06), wire=wire, eye=(-0.44, 0.0))


def propped() -> Silhouette:
    """Propellers at both ends."""
    shape = walker()
    for x in (-0.5, 0.46):
        shape.wire.moveTo(x, -0.13)
        shape.wire.lineTo(x + 0.03, 0.13)
    return shape


def frog() -> Silhouette:
    """A hollow frog with its legs."""
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
    return Silhouette(body, accent=oval(-0.28, -0.10, 0.09, 0.09), wire=wire)


def bait(lip: float, height: float = 0.16) -> Silhouette:
    """A bait with a bill of this length, in lengths of the lure."""
    body = fish(height)
    plate = QPainterPath(QPointF(-0.46, 0.02))
    plate.lineTo(-0.5 - lip, 0.10 + 0.5 * lip)
    plate.lineTo(-0.44 - lip * 0.7, 0.16 + 0.5 * lip)
    plate.lineTo(-0.36, 0.07)
    plate.closeSubpath()
    wire = QPainterPath()
    treble(wire, -0.08, 0.8 * height)
    treble(wire, 0.42, 0.02)
    accent = oval(-0.30, -0.04, 0.06, 0.06)
    accent.addPath(plate)
    return Silhouette(body, accent=accent, wire=wire, eye=(-0.47, 0.0))


def lipless() -> Silhouette:
    """A flat-sided bait, tied at its back."""
    wire = QPainterPath()
    treble(wire, -0.1, 0.14)
    treble(wire, 0.42, 0.02)
    return Silhouette(fish(0.2), accent=oval(-0.36, -0.04, 0.06, 0.06), wire=wire, eye=(-0.18, -0.15))
