"""The whole rig painted: one function for screen, SVG, PDF and paper."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPainterPath

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.scene import RigScene
from rigbuilder.views.drawing.angler import (
    angler_rect,
    paint_angler,
    paint_rod,
    paint_stand,
    reel_point,
    rod_path,
    rod_points,
)
from rigbuilder.views.drawing.cover import paint_cover
from rigbuilder.views.drawing.frame import Frame, frame_for
from rigbuilder.views.drawing.lens_places import around, lenses_for
from rigbuilder.views.drawing.lenses import Lens, paint_lens
from rigbuilder.views.drawing.lines import middle, paint_band, paint_lines, shape_path, split_at_leader
from rigbuilder.views.drawing.lures import paint_lure
from rigbuilder.views.drawing.notes import Notes, paint_caption, paint_measures, paint_notes
from rigbuilder.views.drawing.pins import paint_pin
from rigbuilder.views.drawing.waters import paint_water
from rigbuilder.views.paint.pencil import Pencil
from rigbuilder.views.theme import Theme

_GHOST = 0.34  # how much of the present rig is seen behind a previewed one


@dataclass(frozen=True, slots=True)
class Drawn:
    """Where things lie on a painted sheet: the map, the room of each part, its pins by number."""

    frame: Frame
    parts: Mapping[Part, QPainterPath] = field(default_factory=dict)
    pins: Mapping[int, QRectF] = field(default_factory=dict)


def paint_rig(
    painter: QPainter, rect: QRectF, scene: RigScene, theme: Theme, *, ghost: RigScene | None = None
) -> Drawn:
    """Paint a rig into ``rect``; ``ghost`` is the present rig, shown faint behind a previewed one."""
    painter.save()
    painter.setClipRect(rect)
    pencil = Pencil(painter, theme)
    frame = frame_for(rect, scene, pencil.u)
    paint_water(pencil, frame, scene)
    paint_cover(pencil, frame, scene)
    if ghost is not None:
        _paint_ghost(pencil, frame, ghost)
    paint_band(pencil, frame, scene)
    paint_stand(pencil, frame, scene)
    paint_angler(pencil, frame, scene)
    rod = paint_rod(pencil, frame, scene)
    touched = paint_lines(pencil, frame, scene)
    _paint_small_lure(pencil, frame, scene)
    lenses = lenses_for(pencil, frame, scene)
    for lens in lenses:
        paint_lens(pencil, lens, scene)
    notes = Notes(
        pencil, frame, scene, [*(around(lens, pencil) for lens in lenses), angler_rect(frame, scene)]
    )
    notes.clutter.add_curve(shape_path(frame, list(scene.typical)), samples=90)
    notes.clutter.add_curve(rod_path(frame, scene), samples=30)
    paint_measures(notes)
    anchors = _anchors(frame, scene, lenses)
    paint_caption(notes)
    pins = {pin.number: place for pin, place in notes.pin_places(anchors)}
    paint_notes(notes, anchors)
    squares = {
        pin.number: paint_pin(pencil, pins[pin.number], pin)
        for pin in reversed(scene.pins)
        if pin.number in pins
    }
    painter.restore()
    return Drawn(frame, _regions(frame, scene, rod, touched, lenses, squares, anchors), squares)


def _paint_ghost(pencil: Pencil, frame: Frame, ghost: RigScene) -> None:
    pencil.painter.setOpacity(_GHOST)
    paint_lines(pencil, frame, ghost)
    pencil.painter.setOpacity(1.0)


def _paint_small_lure(pencil: Pencil, frame: Frame, scene: RigScene) -> None:
    """The lure in its place, at its true size or the least that can be told."""
    place = frame.at(*scene.typical[-1])
    true = 0.11 * (scene.lure.mass_kg / 0.015) ** (1 / 3) * frame.along
    size = min(max(true, 17 * frame.u), 42 * frame.u)
    turn = 20.0 * scene.lure.nose_down
    paint_lure(pencil, place + QPointF(0.45 * size, 0), size, scene.lure.kind, turn)


def _anchors(frame: Frame, scene: RigScene, lenses: list[Lens]) -> dict[Part, QPointF]:
    """Return where the pins and words of each part hang."""
    u, rect = frame.u, frame.rect
    main, leader = split_at_leader(scene)
    rod = rod_points(frame, scene)
    reel, lure = reel_point(frame, scene), frame.at(*scene.typical[-1])
    anchors = {
        Part.ROD: rod[20], Part.REEL: reel, Part.DRAG: reel + QPointF(0, 16 * u), Part.BACKING: reel,
        Part.MAIN: middle(frame, main, 0.62), Part.LURE: lure, Part.KNOTS: lure,
        Part.LEADER: middle(frame, main, 0.93),
        Part.WATER: QPointF(0.5 * (frame.tip_x + frame.lure_x), frame.bottom_y - 8 * u),
    }  # fmt: skip
    if leader:
        anchors[Part.LEADER] = middle(frame, leader, 0.5)
    for lens in lenses:
        corner = lens.radius * 0.72
        anchors[lens.part] = lens.centre + QPointF(corner, -corner)
        if lens.part is Part.REEL:
            anchors[Part.BACKING] = lens.centre + QPointF(corner, corner)
            anchors[Part.DRAG] = lens.centre + QPointF(-corner, corner)
        if lens.part is Part.LURE and scene.leader is None:
            anchors[Part.KNOTS] = lens.centre + QPointF(-lens.radius, 0)
    x = min(anchors[Part.WATER].x(), rect.right() - 40 * u)
    anchors[Part.WATER] = QPointF(x, anchors[Part.WATER].y())
    return anchors


def _regions(
    frame: Frame, scene: RigScene, rod: QPainterPath, touched: Mapping[Part, QPainterPath],
    lenses: list[Lens], squares: Mapping[int, QRectF], anchors: Mapping[Part, QPointF],
) -> dict[Part, QPainterPath]:  # fmt: skip
    """Return the room of each part that a pointer can touch, pins included."""
    found: dict[Part, QPainterPath] = {Part.ROD: rod, **touched}
    for lens in lenses:
        glass = QPainterPath()
        glass.addEllipse(lens.centre, lens.radius, lens.radius)
        found[lens.part] = glass
    half = 13 * frame.u
    for part in scene.parts:
        if part not in found and part in anchors:
            spot = QPainterPath()
            spot.addEllipse(anchors[part], half, half)
            found[part] = spot
    for pin in scene.pins:
        if pin.number in squares and pin.part in found:
            found[pin.part].addRect(squares[pin.number])
    return found
