"""The line in air and water: its computed shape, its range as a faint band, its stroke by type."""

from math import hypot

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainterPath, QPainterPathStroker, QPolygonF, QTransform

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.scene import RigScene
from rigbuilder.views.drawing.frame import Frame
from rigbuilder.views.paint.pencil import Pencil
from rigbuilder.views.theme import Stroke

_KINK_AT = 0.36  # share of the line's way at which a kink is drawn; its pin stands further on

Points = list[tuple[float, float]]


def split_at_leader(scene: RigScene) -> tuple[Points, Points]:
    """Return the points of main line and leader; the joint belongs to both."""
    points = list(scene.typical)
    if scene.leader is None or scene.leader_m <= 0.0:
        return points, []
    left = scene.leader_m
    for index in range(len(points) - 1, 0, -1):
        (x1, z1), (x0, z0) = points[index], points[index - 1]
        step = hypot(x1 - x0, z1 - z0)
        if step >= left and step > 0.0:
            share = left / step
            joint = (x1 + (x0 - x1) * share, z1 + (z0 - z1) * share)
            return [*points[:index], joint], [joint, *points[index:]]
        left -= step
    return points[:1], points


def shape_path(frame: Frame, points: Points) -> QPainterPath:
    """Return straight pieces through every computed point."""
    placed = frame.path_points(points)
    path = QPainterPath(placed[0])
    for point in placed[1:]:
        path.lineTo(point)
    return path


def paint_band(pencil: Pencil, frame: Frame, scene: RigScene) -> None:
    """Wash the room between the shallowest and the deepest shape."""
    outline = frame.path_points(scene.shallow) + frame.path_points(scene.deep)[::-1]
    path = QPainterPath()
    path.addPolygon(QPolygonF(outline))
    wash = pencil.theme.colour(scene.main.type)
    wash.setAlphaF(0.17)
    pencil.painter.fillPath(path.simplified(), wash)
    edge = pencil.theme.colour(scene.main.type)
    edge.setAlphaF(0.45)
    for points in (scene.shallow, scene.deep):
        pencil.painter.strokePath(shape_path(frame, list(points)), pencil.pen(edge, 0.7))


def paint_lines(pencil: Pencil, frame: Frame, scene: RigScene) -> dict[Part, QPainterPath]:
    """Paint main line, leader and joint with a glow where something is wrong; return where to touch them."""
    main, leader = split_at_leader(scene)
    found = {}
    if len(main) > 1:
        path = shape_path(frame, main)
        _glow(pencil, path, scene.worst(Part.MAIN))
        _stroke(pencil, path, pencil.theme.stroke(scene.main.type), 2.2)
        if scene.main.kinked:
            _paint_kink(pencil, path, scene.main.type)
        found[Part.MAIN] = _touch(path, frame.u)
    if len(leader) > 1 and scene.leader is not None:
        path = shape_path(frame, leader)
        _glow(pencil, path, scene.worst(Part.LEADER))
        _stroke(pencil, path, pencil.theme.stroke(scene.leader.type), 2.2)
        if scene.leader.kinked:
            _paint_kink(pencil, path, scene.leader.type)
        found[Part.LEADER] = _touch(path, frame.u)
        joint = frame.at(*leader[0])
        pencil.painter.setPen(pencil.pen(pencil.theme.colour("card"), 1))
        pencil.painter.setBrush(pencil.theme.colour("knot"))
        pencil.painter.drawEllipse(joint, 3.4 * frame.u, 3.4 * frame.u)
        pencil.painter.setBrush(pencil.theme.colour("card"))
    return found


def middle(frame: Frame, points: Points, share: float = 0.5) -> QPointF:
    """Return the place at a share of the way along a shape, as it is seen."""
    return shape_path(frame, points).pointAtPercent(share) if len(points) > 1 else frame.at(*points[0])


def _stroke(pencil: Pencil, path: QPainterPath, stroke: Stroke, width: float) -> None:
    halo = pencil.theme.colour("sky")
    halo.setAlphaF(0.7)
    pencil.painter.strokePath(path, pencil.pen(halo, width + 2.0))
    pencil.painter.strokePath(path, pencil.stroke_pen(stroke, width))


def _paint_kink(pencil: Pencil, path: QPainterPath, kind: str) -> None:
    """Draw a sharp Z over the line where nothing else stands: it has a kink somewhere."""
    u, at = pencil.u, path.pointAtPercent(_KINK_AT)
    turn = QTransform().translate(at.x(), at.y()).rotate(-path.angleAtPercent(_KINK_AT))
    corners = [QPointF(x * u, y * u) for x, y in ((-11, 0), (4, -7), (-4, 7), (11, 0))]
    kink = QPainterPath(turn.map(corners[0]))
    for corner in corners[1:]:
        kink.lineTo(turn.map(corner))
    pencil.painter.strokePath(kink, pencil.pen(pencil.theme.colour("sky"), 5.0))
    pencil.painter.strokePath(kink, pencil.pen(pencil.theme.colour(kind), 2.2))


def _glow(pencil: Pencil, path: QPainterPath, severity: str) -> None:
    if severity not in ("fault", "risk"):
        return
    tone = pencil.theme.colour(severity)
    tone.setAlphaF(0.30 if severity == "fault" else 0.26)
    pencil.painter.strokePath(path, pencil.pen(tone, 11.0 if severity == "fault" else 8.0))


def _touch(path: QPainterPath, u: float) -> QPainterPath:
    stroker = QPainterPathStroker()
    stroker.setWidth(16 * u)
    return stroker.createStroke(path)
