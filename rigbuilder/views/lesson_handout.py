"""The hand-out of a lesson as PDF: one rig after the other, with room to write or with the answers."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QImage, QPainter

from rigbuilder.viewmodels.lesson_paper import Answer, LessonPaper, RigPaper
from rigbuilder.views.drawing.rig import paint_rig
from rigbuilder.views.paint.export import A4, Paint, Sheet, to_pdf
from rigbuilder.views.paint.pencil import TOP_LEFT, Pencil
from rigbuilder.views.paint.signs import paint_sign
from rigbuilder.views.theme import FontRole, Theme
from rigbuilder.views.theme_palettes import PRINT

LARGE = 1.5  # how much larger than usual the type of the large version is: 15 instead of 10 points
_MM = 96 / 25.4  # logical pixels in a millimetre
_DRAWING = 0.46  # height of a drawing by its width
_RULE = 26.0  # distance of the lines to write on, in logical pixels
_LINES = 6
_SLACK = 1.02  # wrapped text on paper may take a hair more room than measured


@dataclass(frozen=True, slots=True)
class Item:
    """One thing on a page: its height in logical pixels, and how it is painted into a rectangle."""

    height: float
    paint: Callable[[Pencil, QRectF], None]
    breaks: bool = False  # begins a new page
    keeps: bool = False  # stays on one page with what follows


def write_handout(path: Path, paper: LessonPaper, *, large: bool = False, size: Sheet = A4) -> None:
    """Write a lesson's hand-out as a PDF.

    Raises:
        OSError: if the file cannot be written.
    """
    path.write_bytes(handout_pdf(paper, large=large, size=size))


def handout_pdf(paper: LessonPaper, *, large: bool = False, size: Sheet = A4) -> bytes:
    """Return a lesson's hand-out as a PDF; equal lessons give equal bytes."""
    theme = PRINT.zoomed(LARGE if large else 1.0)
    width = (size.width_mm - 2 * size.margin_mm) * _MM
    height = (size.height_mm - 2 * size.margin_mm) * _MM
    device = QImage(8, 8, QImage.Format.Format_ARGB32_Premultiplied)
    device.setDotsPerMeterX(round(96 / 0.0254))
    device.setDotsPerMeterY(round(96 / 0.0254))
    painter = QPainter(device)
    pages = _pages(list(_items(Pencil(painter, theme), paper, width)), height)
    painter.end()
    title = f"{paper.title} ({'answers' if paper.with_answers else 'for the juniors'})"
    return to_pdf([_page(page, theme, width) for page in pages], size, title=title)


def _pages(items: list[Item], height: float) -> list[list[Item]]:
    pages: list[list[Item]] = [[]]
    used = 0.0
    for place, item in enumerate(items):
        need, following = item.height, place
        while items[following].keeps and following + 1 < len(items):
            following += 1
            need += items[following].height
        if pages[-1] and (item.breaks or used + need > height):
            pages.append([])
            used = 0.0
        pages[-1].append(item)
        used += item.height
    return pages


def _page(items: list[Item], theme: Theme, width: float) -> Paint:
    def paint(painter: QPainter, rect: QRectF) -> None:
        pencil = Pencil(painter, theme)
        scale = rect.width() / width
        top = rect.top()
        for item in items:
            item.paint(pencil, QRectF(rect.left(), top, rect.width(), item.height * scale))
            top += item.height * scale

    return paint


def _items(pencil: Pencil, paper: LessonPaper, width: float) -> Iterator[Item]:
    yield _text(pencil, paper.title, "title", width)
    if paper.introduction:
        yield _text(pencil, paper.introduction, "body", width, after=8)
    if not paper.with_answers:
        yield _text(pencil, "Name: ______________________________", "body", width, after=6)
    for number, rig in enumerate(paper.rigs):
        yield from _rig(pencil, rig, width, breaks=number > 0, answers=paper.with_answers)
    if paper.closing:
        yield _text(pencil, paper.closing, "body", width, before=12)


def _rig(pencil: Pencil, rig: RigPaper, width: float, *, breaks: bool, answers: bool) -> Iterator[Item]:
    yield replace(_text(pencil, rig.title, "heading", width, before=6), breaks=breaks, keeps=True)
    yield _drawing(rig, width)
    for title, words in rig.labels:
        yield _text(pencil, f"{title}: {words}", "body", width)
    yield replace(_text(pencil, rig.question, "strong", width, before=10), keeps=True)
    if not answers:
        yield _lines(pencil)
        return
    if rig.right:
        yield _text(pencil, rig.right, "body", width, before=4)
    for answer in rig.answers:
        yield from _answer(pencil, answer, width)
    if rig.remark:
        yield _text(pencil, rig.remark, "body", width, before=8)


def _answer(pencil: Pencil, answer: Answer, width: float) -> Iterator[Item]:
    head = _text(pencil, f"{answer.severity}, {answer.head}", "strong", width, before=8, indent=22)

    def paint(on: Pencil, rect: QRectF) -> None:
        head.paint(on, rect)
        side = 14 * on.u
        box = QRectF(rect.left(), rect.top() + 8 * on.u, side, side)
        paint_sign(on.painter, box, answer.severity, on.theme.colour("ink"))

    yield Item(head.height, paint, keeps=True)
    for words in (answer.why, answer.figures, answer.basis):
        if words:
            yield _text(pencil, words, "body", width, indent=22)


def _text(
    pencil: Pencil,
    text: str,
    role: FontRole,
    width: float,
    *,
    before: float = 2,
    after: float = 2,
    indent: float = 0,
) -> Item:
    zoom = pencil.theme.zoom
    room = QRectF(0, 0, width - indent * zoom, 10_000)
    box = pencil.metrics(role).boundingRect(
        room, int(Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextWordWrap), text
    )

    def paint(on: Pencil, rect: QRectF) -> None:
        inner = rect.adjusted(indent * on.u, before * on.u, 0, 0)
        on.write(inner, text, role, on.theme.colour("ink"), TOP_LEFT)

    return Item(box.height() * _SLACK + (before + after) * zoom, paint)


def _drawing(rig: RigPaper, width: float) -> Item:
    def paint(on: Pencil, rect: QRectF) -> None:
        edge = 4 * on.u
        place = rect.adjusted(0, edge, 0, -edge)
        paint_rig(on.painter, place, rig.scene, on.theme)
        on.painter.setPen(on.pen(on.theme.colour("edge"), 1.0))
        on.painter.setBrush(Qt.BrushStyle.NoBrush)
        on.painter.drawRect(place)

    return Item(width * _DRAWING, paint)


def _lines(pencil: Pencil) -> Item:
    def paint(on: Pencil, rect: QRectF) -> None:
        on.painter.setPen(on.pen(on.theme.colour("edge"), 0.8))
        for number in range(1, _LINES + 1):
            y = rect.top() + number * _RULE * on.u
            on.painter.drawLine(QPointF(rect.left(), y), QPointF(rect.right(), y))

    return Item((_LINES + 0.5) * _RULE * pencil.theme.zoom, paint)
