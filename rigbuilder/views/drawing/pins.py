"""Numbered pins: the reason's number on its part, severity by outline as well as colour."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainterPath, QPolygonF

from rigbuilder.viewmodels.scene import Pin
from rigbuilder.views.paint.pencil import Pencil

SIDE = 20.0  # logical pixels


def paint_pin(pencil: Pencil, centre: QPointF, pin: Pin) -> QRectF:
    """Paint one pin and return the square it covers."""
    theme, u = pencil.theme, pencil.u
    tone, body = theme.severity(pin.severity), body_path(centre, pin.severity, u)
    pencil.painter.strokePath(body, pencil.pen(theme.colour("card"), 3.4))
    pencil.painter.fillPath(body, theme.colour(pin.severity))
    half = SIDE * u / 2
    box = QRectF(centre.x() - half, centre.y() - half, 2 * half, 2 * half)
    pencil.write(
        box.adjusted(-4 * u, 0, 4 * u, 0),
        str(pin.number),
        "strong" if pin.number < 10 else "caption",
        tone.on,
        Qt.AlignmentFlag.AlignCenter,
    )
    return box


def body_path(centre: QPointF, severity: str, u: float) -> QPainterPath:
    """Return the outline of a pin: disc for a fault, diamond for a risk, rounded square for a note."""
    half = SIDE * u / 2
    path = QPainterPath()
    if severity == "risk":
        wide = half + 3 * u
        corners = [(0, -wide), (wide, 0), (0, wide), (-wide, 0)]
        path.addPolygon(QPolygonF([centre + QPointF(x, y) for x, y in corners]))
        path.closeSubpath()
    elif severity == "note":
        inner = half - u
        path.addRoundedRect(
            QRectF(centre.x() - inner, centre.y() - inner, 2 * inner, 2 * inner), 4 * u, 4 * u
        )
    else:
        path.addEllipse(centre, half, half)
    return path
