"""Signs for severities, grades and series, drawn as paths.

Every sign is one filled path in the unit square (0..1), so that screen, SVG
and PDF show the same shape; a sign is told by its outline alone, in black and
white and at 12 px.  One family: a slash cuts off (fault, never), a diamond
asks (risk, poor), a hook-shaped tick is right (right, first choice).
"""

from collections.abc import Callable, Mapping
from functools import lru_cache
from math import cos, pi, sin

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPainterPathStroker, QPolygonF, QTransform

from rigbuilder.views.theme import Theme

_GRAIN = 100.0  # signs are put together this large: joining small paths would flatten their curves


def sign_path(name: str) -> QPainterPath:
    """Return the sign of a severity, a grade or a marker as a filled path in the unit square.

    Raises:
        KeyError: if there is no such sign.
    """
    return QPainterPath(_built(str(name)))


def placed(name: str, rect: QRectF) -> QPainterPath:
    """Return the sign scaled into the largest square in the middle of ``rect``."""
    side = min(rect.width(), rect.height())
    corner = rect.center() - QPointF(side / 2, side / 2)
    return QTransform.fromTranslate(corner.x(), corner.y()).scale(side, side).map(_built(str(name)))


def paint_sign(painter: QPainter, rect: QRectF, name: str, colour: QColor | str) -> None:
    """Paint one sign into ``rect`` in one colour."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.fillPath(placed(name, rect), QColor(colour))
    painter.restore()


def paint_pin(painter: QPainter, centre: QPointF, number: int, severity: str, theme: Theme) -> QRectF:
    """Paint a numbered pin for one reason and return the rectangle it covers.

    The body takes the severity's outline: disc for a fault, diamond for a
    risk, rounded square for a note, plain ring for what is right.
    """
    tone = theme.severity(severity)
    side = theme.px(20)
    rect = QRectF(centre.x() - side / 2, centre.y() - side / 2, side, side)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    body = _pin_body(severity, rect)
    rim = QPainterPathStroker()
    rim.setWidth(theme.px(2) * 2)
    painter.fillPath(rim.createStroke(body), theme.colour("card"))
    painter.fillPath(body, QColor(tone.ink))
    font = theme.font("caption")
    font.setBold(True)
    painter.setFont(font)
    painter.setPen(QColor(tone.on))
    painter.drawText(rect, int(Qt.AlignmentFlag.AlignCenter), str(number))
    painter.restore()
    return body.boundingRect()


def _pin_body(severity: str, rect: QRectF) -> QPainterPath:
    path = QPainterPath()
    if severity == "risk":
        wide = rect.adjusted(-2.5, -2.5, 2.5, 2.5)
        path.addPolygon(
            QPolygonF(
                [
                    QPointF(wide.center().x(), wide.top()),
                    QPointF(wide.right(), wide.center().y()),
                    QPointF(wide.center().x(), wide.bottom()),
                    QPointF(wide.left(), wide.center().y()),
                ]
            )
        )
        path.closeSubpath()
    elif severity == "note":
        path.addRoundedRect(rect.adjusted(1, 1, -1, -1), 3, 3)
    else:
        path.addEllipse(rect)
    return path


@lru_cache(maxsize=64)
def _built(name: str) -> QPainterPath:
    return QTransform.fromScale(1 / _GRAIN, 1 / _GRAIN).map(_DRAWN[name]())


def _outline(points: list[tuple[float, float]], width: float) -> QPainterPath:
    """Return a polyline as a filled outline with round ends and joins."""
    line = QPainterPath(QPointF(*points[0]))
    for point in points[1:]:
        line.lineTo(QPointF(*point))
    return _stroked(line, width)


def _grown(path: QPainterPath) -> QPainterPath:
    return QTransform.fromScale(_GRAIN, _GRAIN).map(path)


def _stroked(line: QPainterPath, width: float) -> QPainterPath:
    stroker = QPainterPathStroker()
    stroker.setWidth(width * _GRAIN)
    stroker.setCapStyle(Qt.PenCapStyle.RoundCap)
    stroker.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return stroker.createStroke(_grown(line)).simplified()


def _disc(radius: float = 0.5) -> QPainterPath:
    path = QPainterPath()
    path.addEllipse(QPointF(0.5, 0.5), radius, radius)
    return _grown(path)


def _ring(outer: float = 0.42, inner: float = 0.26) -> QPainterPath:
    return _disc(outer).subtracted(_disc(inner))


def _polygon(points: list[tuple[float, float]]) -> QPainterPath:
    path = QPainterPath()
    path.addPolygon(QPolygonF([QPointF(x, y) for x, y in points]))
    path.closeSubpath()
    return _grown(path)


def _diamond(reach: float) -> QPainterPath:
    return _polygon([(0.5, 0.5 - reach), (0.5 + reach, 0.5), (0.5, 0.5 + reach), (0.5 - reach, 0.5)])


def _slash(reach: float, width: float) -> QPainterPath:
    return _outline([(0.5 - reach, 0.5 + reach), (0.5 + reach, 0.5 - reach)], width)


def _hook_tick(scale: float = 1.0, width: float = 0.17) -> QPainterPath:
    """A tick whose short arm is bent like a hook, barb included."""
    line = QPainterPath(QPointF(0.91, 0.10))
    line.lineTo(0.56, 0.70)
    line.cubicTo(QPointF(0.44, 0.94), QPointF(0.10, 0.94), QPointF(0.10, 0.50))
    line.lineTo(0.27, 0.62)
    spread = QTransform.fromTranslate(0.5, 0.5).scale(scale, scale).translate(-0.5, -0.5)
    return _stroked(spread.map(line), width)


def _fault() -> QPainterPath:
    return _disc().subtracted(_slash(0.22, 0.17))


def _risk() -> QPainterPath:
    return _diamond(0.5).subtracted(_diamond(0.30)).united(_disc(0.11))


def _note() -> QPainterPath:
    return _outline([(0.12, 0.34), (0.88, 0.34)], 0.17).united(_outline([(0.12, 0.68), (0.56, 0.68)], 0.17))


def _first_choice() -> QPainterPath:
    return _disc().subtracted(_hook_tick(0.58, 0.14))


def _poor() -> QPainterPath:
    lower = QPainterPath()
    lower.addRect(QRectF(0.0, 0.5, 1.0, 0.5))
    half = _diamond(0.30).intersected(_grown(lower))
    return _diamond(0.44).subtracted(_diamond(0.26)).united(half)


def _corners(points: int) -> QPainterPath:
    corners = [
        (0.5 + 0.5 * sin(2 * pi * k / points), 0.54 - 0.5 * cos(2 * pi * k / points)) for k in range(points)
    ]
    return _polygon(corners)


def _square() -> QPainterPath:
    path = QPainterPath()
    path.addRect(QRectF(0.12, 0.12, 0.76, 0.76))
    return _grown(path)


def _cross() -> QPainterPath:
    return _slash(0.38, 0.2).united(_outline([(0.12, 0.12), (0.88, 0.88)], 0.2))


_DRAWN: Mapping[str, Callable[[], QPainterPath]] = {
    "fault": _fault,
    "risk": _risk,
    "note": _note,
    "right": _hook_tick,
    "first choice": _first_choice,
    "works": lambda: _ring(0.40, 0.24),
    "poor": _poor,
    "never": lambda: _slash(0.32, 0.13),
    "disc": lambda: _disc(0.42),
    "ring": lambda: _ring(0.44, 0.24),
    "diamond": lambda: _diamond(0.5),
    "square": _square,
    "triangle": lambda: _corners(3),
    "cross": _cross,
}
