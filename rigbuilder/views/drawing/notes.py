"""Words and measures on the drawing, each where it belongs and none over another."""

from collections.abc import Iterator, Mapping, Sequence

from PySide6.QtCore import QPointF, QRectF, Qt

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.scene import Pin, RigScene
from rigbuilder.views.drawing.frame import Frame
from rigbuilder.views.drawing.pins import SIDE
from rigbuilder.views.paint.clutter import Clutter
from rigbuilder.views.paint.pencil import RIGHT, Pencil
from rigbuilder.views.paint.ticks import nice_step

_LONG = 0.24  # of the sheet's width: a longer label is broken
_NARROW = (0.2, 0.14)  # of the sheet's width: so narrow it may be set where it would cover something else
_MOST_LINES = 3
_WRITTEN = (Part.ROD, Part.MAIN, Part.LEADER)


class Notes:
    """What is written so far, and the tools to write more."""

    def __init__(self, pencil: Pencil, frame: Frame, scene: RigScene, taken: Sequence[QRectF]) -> None:
        self.pencil, self.frame, self.scene = pencil, frame, scene
        self.clutter = Clutter(frame.rect.adjusted(4 * frame.u, 4 * frame.u, -4 * frame.u, -4 * frame.u))
        for rect in taken:
            self.clutter.take(rect)

    def word(self, text: str, at: QPointF, role: str, *, ground: str = "sky") -> None:
        """Write a short text beside a place, where it covers least, broken where it would cover more."""
        u, pencil = self.frame.u, self.pencil
        line = pencil.line_height("caption")
        tries = [(spot, lines) for lines in self._layouts(text) for spot in self._spots(lines, at)]
        box = self.clutter.place([spot for spot, _ in tries])
        lines = next(lines for spot, lines in tries if spot is box)
        veil = pencil.theme.colour(ground)
        veil.setAlphaF(0.82)
        pencil.painter.setPen(pencil.pen(veil, 0.1))
        pencil.painter.setBrush(veil)
        pencil.painter.drawRoundedRect(box, 3 * u, 3 * u)
        for place, part in enumerate(lines):
            row = QRectF(box.left() + 4 * u, box.top() + place * line, box.width() + 36 * u, line)
            pencil.write(row, part, "caption", pencil.theme.colour(role))

    def _layouts(self, text: str) -> list[list[str]]:
        """Return the ways to set a text, the best first: a long one breaks after its comma, then narrower."""
        pencil, sheet = self.pencil, self.frame.rect.width()
        wide = pencil.text_width(text, "caption") > _LONG * sheet
        broken = text.replace(", ", ",\n").split("\n")
        narrow = [
            [line for part in broken for line in pencil.wrapped(part, "caption", share * sheet)]
            for share in _NARROW
        ]
        return [broken if wide else [text], *(lines for lines in narrow if len(lines) <= _MOST_LINES)]

    def _spots(self, lines: Sequence[str], at: QPointF) -> list[QRectF]:
        """Return the places for some lines of text around a point, the best first."""
        u = self.frame.u
        width = max(self.pencil.text_width(part, "caption") for part in lines) + 8 * u
        height = self.pencil.line_height("caption") * len(lines)
        left, top, step = at.x() - width / 2, at.y() - height / 2, height / 2 + 9 * u
        return [
            self._inside(QRectF(left + dx * width, top + dy * step, width, height))
            for dy in (-1.0, 1.0, -1.8, 1.8, -2.8, 2.8)
            for dx in (0.0, 0.15, -0.15, 0.3, -0.3, 0.45, 0.6, -0.55)
        ]

    def pin_places(self, anchors: Mapping[Part, QPointF]) -> Iterator[tuple[Pin, QPointF]]:
        """Yield a place for every pin, those of one part side by side, none over another."""
        u = self.frame.u
        step = (SIDE + 6) * u
        for part in self.scene.parts:
            for pin in self.scene.pins_of(part):
                at = anchors[part]
                around = [
                    (0, 0),
                    (1, 0),
                    (-1, 0),
                    (2, 0),
                    (-2, 0),
                    (0, -1),
                    (0, 1),
                    (1, -1),
                    (1, 1),
                    (3, 0),
                    (-3, 0),
                ]
                boxes = [
                    self._inside(
                        QRectF(at.x() + dx * step - step / 2, at.y() + dy * step - step / 2, step, step)
                    )
                    for dx, dy in around
                ]
                yield pin, self._free(boxes).center()

    def _free(self, boxes: Sequence[QRectF]) -> QRectF:
        """Take the first box that lies over no other pin or word; lenses may be touched."""
        pinned = [rect for rect in self.clutter.taken if rect.width() < 40 * self.frame.u]
        clear = [box for box in boxes if not any(box.intersects(rect) for rect in pinned)]
        chosen = clear[0] if clear else boxes[-1]
        self.clutter.take(chosen)
        return chosen

    def _inside(self, box: QRectF) -> QRectF:
        room = self.frame.rect.adjusted(
            3 * self.frame.u, 3 * self.frame.u, -3 * self.frame.u, -3 * self.frame.u
        )
        left = min(max(box.left(), room.left()), max(room.left(), room.right() - box.width()))
        top = min(max(box.top(), room.top()), room.bottom() - box.height())
        return QRectF(left, top, box.width(), box.height())


def paint_notes(notes: Notes, anchors: Mapping[Part, QPointF]) -> None:
    """Write the labels of line, leader and rod beside them."""
    scene = notes.scene
    for part in _WRITTEN:
        if part is not Part.LEADER or scene.leader is not None:
            role = {
                Part.MAIN: scene.main.type,
                Part.LEADER: scene.leader.type if scene.leader else "ink",
            }.get(part, "ink")
            notes.word(scene.labels[part], anchors[part], role)


def paint_measures(notes: Notes) -> None:
    """Draw cast, depths and a scale, and say how it is drawn."""
    pencil, frame, scene, u = notes.pencil, notes.frame, notes.scene, notes.frame.u
    ink = pencil.theme.colour("measure")
    line = pencil.line_height("small")
    y = frame.bottom_y + 15 * u
    pencil.painter.setPen(pencil.pen(ink, 1, flat=True))
    start, end = frame.tip_x, frame.lure_x
    pencil.painter.drawLine(QPointF(start, y), QPointF(end, y))
    for x in (start, end):
        pencil.painter.drawLine(QPointF(x, y - 4 * u), QPointF(x, y + 4 * u))
    _paint_ticks(notes, start, end, y)
    words = f"{scene.words['cast']} cast"
    width = pencil.text_width(words, "caption") + 10 * u
    box = QRectF(
        (start + end - width) / 2, y - pencil.line_height("caption") / 2, width, pencil.line_height("caption")
    )
    pencil.painter.fillRect(box, pencil.theme.colour("bottom"))
    pencil.write(box.adjusted(5 * u, 0, 30 * u, 0), words, "caption", ink)
    said = QRectF(
        frame.rect.left() + 6 * u, frame.rect.bottom() - line - 3 * u, frame.rect.width() - 12 * u, line
    )
    pencil.write(said, frame.scale_words, "small", ink, RIGHT)
    notes.clutter.take(QRectF(start, y - 8 * u, end - start, 16 * u))
    notes.clutter.take(said)
    _paint_depth(notes)


def _paint_ticks(notes: Notes, start: float, end: float, y: float) -> None:
    """Mark round distances along the cast in the chosen unit."""
    scene, frame, u = notes.scene, notes.frame, notes.frame.u
    length = (end - start) / frame.along / scene.unit_m
    if length <= 0:
        return
    step, k = nice_step(length, 6), 1
    while k * step < length:
        x = start + k * step * scene.unit_m * frame.along
        notes.pencil.painter.drawLine(QPointF(x, y - 2 * u), QPointF(x, y + 2 * u))
        k += 1


def _paint_depth(notes: Notes) -> None:
    pencil, frame, scene, u = notes.pencil, notes.frame, notes.scene, notes.frame.u
    ink = pencil.theme.colour("measure")
    x = frame.rect.right() - 10 * u
    pencil.painter.setPen(pencil.pen(ink, 1, flat=True))
    pencil.painter.drawLine(QPointF(x, frame.surface_y), QPointF(x, frame.bottom_y))
    for y in (frame.surface_y, frame.bottom_y):
        pencil.painter.drawLine(QPointF(x - 4 * u, y), QPointF(x + 4 * u, y))
    height = pencil.line_height("small")
    texts = [f"{scene.words['deep']} deep", f"clear to {scene.words['clear']}"]
    middle = (frame.surface_y + frame.bottom_y) / 2
    for index, text in enumerate(texts):
        width = pencil.text_width(text, "small") + 6 * u
        box = QRectF(x - width - 6 * u, middle + (index - 1) * height, width, height)
        veil = pencil.theme.colour("water_deep")
        veil.setAlphaF(0.8)
        pencil.painter.fillRect(box, veil)
        pencil.write(box, text, "small", ink, RIGHT)
        notes.clutter.take(box)
    depth = -scene.typical[-1][1]
    if depth > 0.05 and depth < 0.97 * frame.depth_m:
        place = frame.at(*scene.typical[-1])
        pencil.painter.setPen(pencil.pen(ink, 1, (2, 2)))
        pencil.painter.drawLine(QPointF(place.x(), frame.surface_y), place)
        halfway = QPointF(place.x(), (place.y() + frame.surface_y) / 2)
        notes.word(scene.words["runs"], halfway, "measure", ground="water_top")


def paint_caption(notes: Notes) -> None:
    """Say over the drawing what is only being looked at."""
    pencil, frame, u = notes.pencil, notes.frame, notes.frame.u
    if not notes.scene.caption:
        return
    theme, height = pencil.theme, pencil.line_height("strong") + 8 * u
    width = pencil.text_width(notes.scene.caption, "strong") + 20 * u
    box = QRectF(frame.rect.left() + 8 * u, frame.rect.bottom() - height - 6 * u, width, height)
    pencil.painter.setPen(pencil.pen(theme.colour("accent"), 1.4))
    pencil.painter.setBrush(theme.colour("accent_wash"))
    pencil.painter.drawRoundedRect(box, 4 * u, 4 * u)
    pencil.painter.setBrush(Qt.BrushStyle.NoBrush)
    pencil.write(box.adjusted(10 * u, 0, 20 * u, 0), notes.scene.caption, "strong", theme.colour("accent"))
    notes.clutter.take(box)
