"""Lenses: round windows that show enlarged what true scale would hide, and say so."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainterPath

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.scene import RigScene
from rigbuilder.views.drawing.lures import paint_lure
from rigbuilder.views.paint.pencil import Pencil

_REEL_ACROSS_M = 1.06  # room of the spool in its lens, in lips
_SEEN = 0.02  # a weaker pull on the nose is not drawn
_LINES_M = 3.0e-3  # width of the lens over the lines at the joint [m]


@dataclass(frozen=True, slots=True)
class Lens:
    """One lens: what it shows, where, how large, the place it looks at, its words."""

    part: Part
    centre: QPointF
    radius: float
    looks_at: QPointF
    words: tuple[str, ...]

    @property
    def rect(self) -> QRectF:
        """The square around the glass."""
        side = 2 * self.radius
        return QRectF(self.centre.x() - self.radius, self.centre.y() - self.radius, side, side)


def paint_lens(pencil: Pencil, lens: Lens, scene: RigScene) -> None:
    """Paint the glass, what is under it, its rim and the line that leads to the place."""
    painter, theme, u = pencil.painter, pencil.theme, pencil.u
    away = lens.looks_at - lens.centre
    far = max((away.x() ** 2 + away.y() ** 2) ** 0.5, 1e-6)
    if far > lens.radius:
        rim = lens.centre + away * (lens.radius / far)
        painter.setPen(pencil.pen(theme.colour("lens"), 1, (1.5, 2.5)))
        painter.drawLine(rim, lens.looks_at)
    glass = QPainterPath()
    glass.addEllipse(lens.centre, lens.radius, lens.radius)
    painter.fillPath(glass, theme.colour("water_top" if lens.part is Part.LURE else "card"))
    painter.save()
    painter.setClipPath(glass)
    {Part.REEL: _paint_spool, Part.LURE: _paint_lure, Part.KNOTS: _paint_joint}[lens.part](
        pencil, lens, scene
    )
    painter.restore()
    worst = _worst(lens.part, scene)
    if worst in ("fault", "risk"):
        glow = theme.colour(worst)
        glow.setAlphaF(0.30)
        painter.strokePath(glass, pencil.pen(glow, 9))
    painter.strokePath(glass, pencil.pen(theme.colour(worst or "lens"), 2.2 if worst else 1.6))
    _paint_words(pencil, lens, u)


def _worst(part: Part, scene: RigScene) -> str:
    shown = (Part.REEL, Part.BACKING, Part.DRAG) if part is Part.REEL else (part,)
    for severity in ("fault", "risk", "note"):
        if any(scene.worst(each) == severity for each in shown):
            return severity
    return ""


def _paint_words(pencil: Pencil, lens: Lens, u: float) -> None:
    line = pencil.line_height("small")
    centre = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop
    for index, text in enumerate(lens.words):
        box = QRectF(lens.centre.x() - 160 * u, lens.rect.bottom() + 3 * u + index * line, 320 * u, line)
        ink = pencil.theme.colour("soft" if index == len(lens.words) - 1 else "ink")
        width = pencil.text_width(text, "small") + 4 * u
        veil = pencil.theme.colour("sky")
        veil.setAlphaF(0.8)
        pencil.painter.fillRect(QRectF(box.center().x() - width / 2, box.top(), width, line), veil)
        pencil.write(box, text, "small", ink, centre)


def _paint_spool(pencil: Pencil, lens: Lens, scene: RigScene) -> None:
    """The spool seen along its axis: lip, line, backing, bare spool, to one scale."""
    painter, theme, section = pencil.painter, pencil.theme, scene.section
    per_m = 2 * lens.radius * 0.9 / (section.lip_m * _REEL_ACROSS_M)
    main, backing = theme.colour(scene.main.type), theme.colour("backing")
    lip = theme.colour("reel")
    lip.setAlphaF(0.30)
    rings: list[tuple[float, QColor]] = [(section.lip_m, lip), (section.fill_m, main)]
    if scene.backing:
        rings.append((section.core_m, backing))
    rings.append((section.barrel_m, theme.colour("spool")))
    painter.setPen(Qt.PenStyle.NoPen)
    for across, colour in rings:
        half = across * per_m / 2
        painter.setBrush(theme.colour("card"))
        painter.drawEllipse(lens.centre, half, half)
        painter.setBrush(colour)
        painter.drawEllipse(lens.centre, half, half)
    painter.setBrush(theme.colour("card"))
    hub = 0.22 * section.barrel_m * per_m
    painter.drawEllipse(lens.centre, hub, hub)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    veil = theme.colour("card")
    veil.setAlphaF(0.45)
    painter.setPen(pencil.pen(veil, 0.7))
    steps = 5
    for k in range(1, steps):
        half = (section.core_m + (section.fill_m - section.core_m) * k / steps) * per_m / 2
        painter.drawEllipse(lens.centre, half, half)
    painter.setPen(pencil.pen(theme.colour("reel"), 1.8))
    half = section.lip_m * per_m / 2
    painter.drawEllipse(lens.centre, half, half)


def _paint_lure(pencil: Pencil, lens: Lens, scene: RigScene) -> None:
    painter, theme, u = pencil.painter, pencil.theme, pencil.u
    surface = scene.typical[-1][1] > -0.02
    level = lens.centre.y() - (0.02 if surface else 2.0) * lens.radius
    if surface:
        sky = QRectF(lens.rect.left(), lens.rect.top(), lens.rect.width(), level - lens.rect.top())
        painter.fillRect(sky, theme.colour("sky"))
        painter.setPen(pencil.pen(theme.colour("surface"), 1.2))
        painter.drawLine(QPointF(lens.rect.left(), level), QPointF(lens.rect.right(), level))
    turn = 26.0 * scene.lure.nose_down if surface else 0.0
    size = 1.25 * lens.radius * (0.86 if scene.lure.kind in ("drop shot", "float") else 1.0)
    eye = paint_lure(pencil, lens.centre + QPointF(0.12 * lens.radius, 0), size, scene.lure.kind, turn)
    end = scene.leader or scene.main
    (x1, z1), (x0, z0) = scene.typical[-1], scene.typical[-4]
    slope = (z0 - z1) / max(abs(x1 - x0), 1e-6)
    reach = QPointF(-1.2 * lens.radius, -min(max(slope, -1.4), 1.6) * 1.2 * lens.radius)
    if scene.lure.kind == "drop shot":
        reach = QPointF(-0.7 * lens.radius, -1.2 * lens.radius)
    painter.setPen(pencil.stroke_pen(theme.stroke(end.type), 2.2))
    painter.drawLine(eye, eye + reach)
    painter.setPen(pencil.pen(theme.colour("card"), 0.8))
    painter.setBrush(theme.colour("knot"))
    painter.drawEllipse(eye, 3.4 * u, 3.4 * u)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if scene.lure.nose_down > _SEEN:
        _paint_arrow(pencil, eye + QPointF(0, 5 * u), 0.34 * lens.radius, scene.worst(Part.MAIN) or "ink")


def _paint_arrow(pencil: Pencil, start: QPointF, length: float, role: str) -> None:
    u = pencil.u
    tip = start + QPointF(0, length)
    pencil.painter.setPen(pencil.pen(pencil.theme.colour(role), 2.0))
    pencil.painter.drawLine(start, tip)
    for side in (-1, 1):
        pencil.painter.drawLine(tip, tip + QPointF(side * 4 * u, -5 * u))


def _paint_joint(pencil: Pencil, lens: Lens, scene: RigScene) -> None:
    """Main line and leader side by side at the joint, their thickness to one scale."""
    if scene.leader is None:
        return
    painter, theme = pencil.painter, pencil.theme
    per_m = 2 * lens.radius / _LINES_M
    left, right, middle = lens.rect.left(), lens.rect.right(), lens.centre
    for start, end, line in ((left, middle.x(), scene.main), (middle.x(), right, scene.leader)):
        pen = pencil.pen(theme.colour(line.type), 1.0, flat=True)
        pen.setWidthF(max(line.diameter_m * per_m, 1.4 * pencil.u))
        painter.setPen(pen)
        painter.drawLine(QPointF(start, middle.y()), QPointF(end, middle.y()))
    thick = max(scene.main.diameter_m, scene.leader.diameter_m) * per_m
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(theme.colour("knot"))
    for k in range(5):
        x = middle.x() + (k - 2) * 0.15 * lens.radius
        painter.drawRoundedRect(
            QRectF(x - 0.055 * lens.radius, middle.y() - 0.9 * thick, 0.11 * lens.radius, 1.8 * thick),
            2 * pencil.u,
            2 * pencil.u,
        )
    painter.setBrush(Qt.BrushStyle.NoBrush)
