"""One slide of the show: title with its sign, the picture, and the words beside or below it."""

from dataclasses import replace

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.scene import Pin
from rigbuilder.viewmodels.slides import Slide
from rigbuilder.views.drawing.pins import paint_pin
from rigbuilder.views.drawing.rig import paint_rig
from rigbuilder.views.drawing.spool import paint_spool
from rigbuilder.views.paint.bars import paint_bars
from rigbuilder.views.paint.chart import paint_chart
from rigbuilder.views.paint.pencil import LEFT, RIGHT, TOP_LEFT, Pencil
from rigbuilder.views.paint.signs import placed
from rigbuilder.views.paint.spec import BarSpec
from rigbuilder.views.questions_spec import figure_of
from rigbuilder.views.theme import FontRole, Theme, TypeScale

_GROWN = 1.5
_GLOWING = (Part.MAIN, Part.LEADER, Part.ROD)  # told by their glow; a frame would hold half the sheet
_KEYS = "→ next   ← back   Esc leave"


def paint_slide(painter: QPainter, rect: QRectF, slide: Slide, place: tuple[int, int], theme: Theme) -> None:
    """Paint one slide into ``rect``; ``place`` is its number and how many there are."""
    painter.save()
    pencil = Pencil(painter, theme)
    u = pencil.u
    room = rect.adjusted(36 * u, 24 * u, -36 * u, -16 * u)
    room = _paint_foot(pencil, room, place)
    room = _paint_title(pencil, room, slide)
    if slide.scene is None and slide.answer is None:
        _paint_lines(pencil, room, slide)
    else:
        words = _words_height(pencil, room.width(), slide)
        picture = QRectF(room.left(), room.top(), room.width(), room.height() - words - 12 * u)
        _paint_picture(pencil, picture, slide)
        _paint_lines(pencil, QRectF(room.left(), picture.bottom() + 12 * u, room.width(), words), slide)
    painter.restore()


def _paint_foot(pencil: Pencil, room: QRectF, place: tuple[int, int]) -> QRectF:
    line, soft = pencil.line_height("small"), pencil.theme.colour("soft")
    foot = QRectF(room.left(), room.bottom() - line, room.width(), line)
    pencil.write(foot, _KEYS, "small", soft, LEFT)
    pencil.write(foot, f"{place[0]} of {place[1]}", "small", soft, RIGHT)
    return room.adjusted(0, 0, 0, -line - 8 * pencil.u)


def _paint_title(pencil: Pencil, room: QRectF, slide: Slide) -> QRectF:
    u, left = pencil.u, room.left()
    line = pencil.line_height("title")
    if slide.number is not None and slide.part is not None:
        pin = Pin(slide.part, slide.number, slide.severity, "")
        grown = Pencil(pencil.painter, _grown(pencil.theme))
        paint_pin(grown, QRectF(left, room.top(), line, line).center(), pin)
        left += line + 10 * u
    elif slide.severity:
        side = 0.66 * line
        box = QRectF(left, room.top() + 0.17 * line, side, side)
        pencil.painter.fillPath(placed(slide.severity, box), pencil.theme.colour(slide.severity))
        left += side + 12 * u
    width = room.right() - left
    height = _height(pencil, slide.title, "title", width)
    ink = pencil.theme.colour(slide.severity if slide.number is not None else "ink")
    pencil.write(QRectF(left, room.top(), width, height), slide.title, "title", ink, TOP_LEFT)
    return room.adjusted(0, height + 12 * u, 0, 0)


def _paint_picture(pencil: Pencil, room: QRectF, slide: Slide) -> None:
    painter = pencil.painter
    theme = _grown(pencil.theme)
    if slide.scene is not None:
        drawn = paint_rig(painter, room, slide.scene, theme)
        if slide.part is not None and slide.part in drawn.parts and slide.part not in _GLOWING:
            ring = drawn.parts[slide.part].boundingRect().adjusted(-6, -6, 6, 6).intersected(room)
            painter.setPen(pencil.pen(theme.colour(slide.severity), 3))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(ring, 8 * pencil.u, 8 * pencil.u)
        return
    if slide.spool is not None and slide.answer is not None:
        paint_spool(painter, room, slide.spool, theme, slide.answer.rows)
        return
    spec = None if slide.answer is None else figure_of(slide.answer)
    if isinstance(spec, BarSpec):
        paint_bars(painter, room, spec, theme)
    elif spec is not None:
        paint_chart(painter, room, spec, theme)


def _grown(theme: Theme) -> Theme:
    """The picture grows as a whole: pins and strokes with its words."""
    return replace(theme, type=TypeScale(), zoom=_GROWN * theme.zoom)


def _paint_lines(pencil: Pencil, room: QRectF, slide: Slide) -> None:
    top = room.top()
    for text in slide.lines:
        height = _height(pencil, text, "body", room.width())
        pencil.write(QRectF(room.left(), top, room.width(), height), text, "body", "", TOP_LEFT)
        top += height + 4 * pencil.u


def _words_height(pencil: Pencil, width: float, slide: Slide) -> float:
    return sum(_height(pencil, text, "body", width) + 4 * pencil.u for text in slide.lines)


def _height(pencil: Pencil, text: str, role: FontRole, width: float) -> float:
    flags = int(TOP_LEFT | Qt.TextFlag.TextWordWrap)
    return pencil.metrics(role).boundingRect(QRectF(0, 0, width, 1e6), flags, text).height()
