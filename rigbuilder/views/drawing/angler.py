"""The angler on bank or boat, and the rod with its length, bend and stoutness."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainterPath, QPainterPathStroker, QPolygonF

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.scene import RigScene
from rigbuilder.views.drawing.frame import BUTT_M, Frame, hands, stand_m
from rigbuilder.views.paint.pencil import Pencil

_TELLS = 8.0  # logical pixels: a smaller bend under the drag is not drawn


def paint_stand(pencil: Pencil, frame: Frame, scene: RigScene) -> None:
    """Paint the bank or the boat that the angler stands on."""
    theme, painter, u = pencil.theme, pencil.painter, frame.u
    x, _ = hands(scene)
    feet = frame.at(x - 0.28, stand_m(scene.water.shore))
    if scene.water.shore:
        bank = QPainterPath(QPointF(frame.rect.left(), feet.y()))
        bank.lineTo(feet.x() + 0.30 * frame.over, feet.y())
        bank.cubicTo(
            QPointF(feet.x() + 0.9 * frame.over, feet.y() + 2 * u),
            QPointF(feet.x() + 0.7 * frame.over, frame.bottom_y - 8 * u),
            QPointF(feet.x() + 1.35 * frame.over, frame.bottom_y + 3 * u),
        )
        edge = QPainterPath(bank)
        bank.lineTo(frame.rect.left(), frame.bottom_y + 6 * u)
        bank.closeSubpath()
        painter.fillPath(bank, theme.colour("bottom"))
        painter.strokePath(edge, pencil.pen(theme.colour("bottom_edge"), 1.3))
        return
    bow = min(feet.x() + 1.0 * frame.over, frame.tip_x - 6 * u)
    stern = max(frame.rect.left() - 20 * u, feet.x() - 1.2 * frame.over)
    rail = feet.y() - 0.10 * frame.over
    keel = frame.surface_y + 0.22 * frame.over
    hull = QPainterPath(QPointF(stern, rail))
    hull.lineTo(bow, rail - 3 * u)
    hull.quadTo(QPointF(bow - 0.25 * frame.over, keel), QPointF(bow - 0.55 * frame.over, keel))
    hull.lineTo(stern, keel)
    hull.closeSubpath()
    painter.fillPath(hull, theme.colour("dock"))
    painter.strokePath(hull, pencil.pen(theme.colour("angler"), 1.2))


def paint_angler(pencil: Pencil, frame: Frame, scene: RigScene) -> None:
    """Paint the angler as one calm figure with a hat, holding the rod."""
    painter, ink = pencil.painter, pencil.theme.colour("angler")
    x, height = hands(scene)
    ground, k = stand_m(scene.water.shore), frame.over

    def at(dx: float, dz: float) -> QPointF:
        """Return a point of the figure, from the hands' distance and the ground."""
        return frame.at(x - 0.28 + dx, 0.0) - QPointF(0.0, (ground + dz) * k)

    limb = pencil.pen(ink, 1.0)
    limb.setWidthF(0.13 * k)
    for foot, knee in ((-0.13, -0.05), (0.12, 0.09)):
        leg = QPainterPath(at(0.0, 0.86))
        leg.lineTo(at(knee, 0.46))
        leg.lineTo(at(foot, 0.05))
        painter.strokePath(leg, limb)
    body = QPainterPath(at(-0.14, 0.84))
    body.cubicTo(at(-0.20, 1.10), at(-0.18, 1.36), at(-0.06, 1.44))
    body.lineTo(at(0.10, 1.43))
    body.cubicTo(at(0.18, 1.30), at(0.15, 1.05), at(0.13, 0.84))
    body.closeSubpath()
    painter.fillPath(body, ink)
    limb.setWidthF(0.09 * k)
    arm = QPainterPath(at(0.04, 1.36))
    arm.quadTo(at(0.08, 1.02), frame.at(x, height))
    painter.strokePath(arm, limb)
    head = at(0.04, 1.58)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ink)
    painter.drawEllipse(head, 0.105 * k, 0.115 * k)
    hat = QPainterPath(at(-0.09, 1.63))
    hat.cubicTo(at(-0.08, 1.78), at(0.14, 1.78), at(0.15, 1.65))
    hat.lineTo(at(0.30, 1.61))
    hat.lineTo(at(-0.10, 1.61))
    hat.closeSubpath()
    painter.fillPath(hat, ink)
    painter.setBrush(Qt.BrushStyle.NoBrush)


def rod_points(frame: Frame, scene: RigScene, *, further_m: float = 0.0) -> list[QPointF]:
    """Return the rod from butt to tip; a fast rod bends near its tip, a slow one all along.

    ``further_m`` is how far the tip is drawn down past where it is now; its length stays.
    """
    x, height = hands(scene)
    tip_z = scene.typical[0][1]
    reach = -x
    lean = (tip_z - height) / reach
    hardness = 1.8 + 2.2 * scene.rod.fast
    points = []
    for k in range(33):
        share = k / 32
        along = x - BUTT_M + (reach + BUTT_M) * share
        # The straight rod points above the tip's place by its bend; the pull brings the tip down to it.
        lift = scene.rod.bend_m * max(0.0, (along - x) / reach)
        bent = (scene.rod.bend_m + further_m) * max(0.0, (along - x) / reach) ** hardness
        along -= 0.6 * further_m**2 / reach * max(0.0, (along - x) / reach) ** hardness
        points.append(
            frame.at(0.0, 0.0)
            + QPointF(along * frame.over, -(height + lean * (along - x) + lift - bent) * frame.over)
        )
    return points


def rod_outline(frame: Frame, scene: RigScene) -> QPainterPath:
    """Return the tapering outline of the rod."""
    points, u = rod_points(frame, scene), frame.u
    thick = (3.0 + 3.4 * scene.rod.stout) * u
    upper, lower = [], []
    for k, point in enumerate(points):
        half = (thick * (1.0 - k / 32) + 1.1 * u * k / 32) / 2
        upper.append(point + QPointF(0, -half))
        lower.append(point + QPointF(0, half))
    path = QPainterPath()
    path.addPolygon(QPolygonF(upper + lower[::-1]))
    path.closeSubpath()
    return path


def paint_rod(pencil: Pencil, frame: Frame, scene: RigScene) -> QPainterPath:
    """Paint rod, grip, guides and the reel on it; return where the rod can be touched."""
    theme, painter, u = pencil.theme, pencil.painter, frame.u
    points = rod_points(frame, scene)
    worst = scene.worst(Part.ROD)
    if worst in ("fault", "risk"):
        glow = theme.colour(worst)
        glow.setAlphaF(0.3)
        painter.strokePath(rod_outline(frame, scene), pencil.pen(glow, 9))
    _paint_drawn_down(pencil, frame, scene)
    painter.fillPath(rod_outline(frame, scene), theme.colour("rod"))
    x, height = hands(scene)
    grip = QPainterPath(points[0])
    held = frame.at(0, 0) + QPointF((x + 0.10) * frame.over, 0)
    last = next((k for k, point in enumerate(points) if point.x() >= held.x()), 6)
    for point in points[1 : last + 1]:
        grip.lineTo(point)
    pen = pencil.pen(theme.colour("grip"), 4.6 + 2.4 * scene.rod.stout)
    painter.strokePath(grip, pen)
    below = 1.0 if scene.section.spinning else -1.0
    reel = frame.at(x, height) + QPointF(5 * u, below * 6 * u)
    painter.setPen(pencil.pen(theme.colour("sky"), 1))
    painter.setBrush(theme.colour("reel"))
    painter.drawEllipse(reel, 6.0 * u, 6.0 * u)
    painter.setBrush(theme.colour("spool"))
    painter.drawEllipse(reel, 2.6 * u, 2.6 * u)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pencil.pen(theme.colour("rod"), 1.2))
    for place in (14, 19, 23, 27, 30):
        painter.drawEllipse(points[place] + QPointF(0, below * 3 * u), 1.5 * u, 1.9 * u)
    touch = QPainterPathStroker()
    touch.setWidth(16 * u)
    return touch.createStroke(rod_path(frame, scene))


def _paint_drawn_down(pencil: Pencil, frame: Frame, scene: RigScene) -> None:
    """Show lightly how far the rod is drawn down before the drag gives line."""
    further = scene.rod.drag_bend_m - scene.rod.bend_m
    if further * frame.over < _TELLS * frame.u:
        return
    points = rod_points(frame, scene, further_m=further)
    line = QPainterPath(points[0])
    for point in points[1:]:
        line.lineTo(point)
    tone = pencil.theme.colour("rod")
    tone.setAlphaF(0.38)
    pencil.painter.strokePath(line, pencil.pen(tone, 1.4, (1.5, 2.5)))


def rod_path(frame: Frame, scene: RigScene) -> QPainterPath:
    """Return the middle line of the rod."""
    points = rod_points(frame, scene)
    line = QPainterPath(points[0])
    for point in points[1:]:
        line.lineTo(point)
    return line


def reel_point(frame: Frame, scene: RigScene) -> QPointF:
    """Return where the reel sits on the rod."""
    x, height = hands(scene)
    below = 1.0 if scene.section.spinning else -1.0
    return frame.at(x, height) + QPointF(5 * frame.u, below * 6 * frame.u)


def angler_rect(frame: Frame, scene: RigScene) -> QRectF:
    """Return the room that the figure takes, which words keep off."""
    x, _ = hands(scene)
    ground = stand_m(scene.water.shore)
    left = frame.tip_x + (x - 0.6) * frame.over
    top = frame.surface_y - (ground + 1.8) * frame.over
    # The edge of bank or boat goes with the figure.
    return QRectF(left, top, 0.8 * frame.over, (ground + 1.8) * frame.over)
