"""One page of a rig card for paper: head, drawing, and the blocks below it."""

from dataclasses import replace

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from rigbuilder.viewmodels.sheet import EXTRA, REMARK, STEPS, SURE, SheetContent
from rigbuilder.views.drawing.rig import paint_rig
from rigbuilder.views.paint.pencil import LEFT, RIGHT, Pencil
from rigbuilder.views.paint.signs import placed
from rigbuilder.views.sheet.flow import Piece, paint_piece, set_blocks
from rigbuilder.views.theme import Theme
from rigbuilder.views.theme_palettes import PRINT

# Sizes of type are tried from large to small, first with everything, then without what is sparest.
_ZOOMS = (1.0, 0.94, 0.88, 0.82, 0.78, 0.74, 0.7)
_SMALLEST = (0.66, 0.62, 0.58, 0.54)
_TRIES = (
    *((zoom, spare) for spare in (EXTRA, REMARK, STEPS, SURE) for zoom in _ZOOMS),
    *((zoom, SURE) for zoom in _SMALLEST),
)
_SHORTENED = "Shortened to fit; a larger sheet holds more."
_RULES = "Local rules come first."
_DRAWING = 0.47  # height of the drawing over its width


def paint_page(painter: QPainter, rect: QRectF, content: SheetContent) -> None:
    """Paint the whole sheet into ``rect``, in the largest type at which everything stands on it."""
    for zoom, spare in _TRIES:
        theme = replace(PRINT, zoom=zoom)
        pencil = Pencil(painter, theme)
        head, drawing, room = _parts(pencil, rect)
        pieces = set_blocks(pencil, room, content.blocks, spare=spare)
        if pieces is not None:
            break
    else:
        pieces = []
    said = f"{_SHORTENED} {_RULES}" if _is_shortened(content, spare) else _RULES
    _paint(painter, pencil, content, said, theme, head, drawing, pieces)


def _is_shortened(content: SheetContent, spare: int) -> bool:
    """Tell whether checks, cautions or steps of knots are left out; remarks are not missed."""
    paragraphs = [paragraph for block in content.blocks for paragraph in block.paragraphs]
    return any(paragraph.spare > spare and paragraph.spare != REMARK for paragraph in paragraphs)


def _parts(pencil: Pencil, rect: QRectF) -> tuple[QRectF, QRectF, QRectF]:
    u = pencil.u
    tall = pencil.line_height("title") + pencil.line_height("caption") + 4 * u
    head = QRectF(rect.left(), rect.top(), rect.width(), tall)
    high = min(_DRAWING * rect.width(), 0.33 * rect.height())
    drawing = QRectF(rect.left(), head.bottom() + 4 * u, rect.width(), high)
    top = drawing.bottom() + 8 * u
    return head, drawing, QRectF(rect.left(), top, rect.width(), rect.bottom() - top)


def _paint(
    painter: QPainter, pencil: Pencil, content: SheetContent, said: str, theme: Theme,
    head: QRectF, drawing: QRectF, pieces: list[Piece],
) -> None:  # fmt: skip
    _paint_head(pencil, head, content, said)
    paint_rig(painter, drawing, content.scene, replace(theme, zoom=max(0.72, theme.zoom)))
    painter.setPen(pencil.pen(theme.colour("edge"), 0.6))
    painter.drawRect(drawing)
    for piece in pieces:
        paint_piece(pencil, piece)


def _paint_head(pencil: Pencil, head: QRectF, content: SheetContent, said: str) -> None:
    u, line = pencil.u, pencil.line_height("title")
    side = 11 * u
    width = pencil.text_width(content.verdict, "strong") + side + 6 * u
    title = QRectF(head.left(), head.top(), head.width() - width - 10 * u, line)
    pencil.write(title, _elided(pencil, content.title, title.width()), "title", "", LEFT)
    box = QRectF(head.right() - width, head.top() + (line - side) / 2, side, side)
    pencil.painter.fillPath(placed(content.severity, box), pencil.theme.colour(content.severity))
    beside = QRectF(box.right() + 4 * u, head.top(), width - side, line)
    pencil.write(beside, content.verdict, "strong", "", LEFT)
    below = QRectF(head.left(), head.top() + line, head.width(), pencil.line_height("caption"))
    pencil.write(below, content.technique, "caption", pencil.theme.colour("soft"), LEFT)
    pencil.write(below, said, "caption", pencil.theme.colour("soft"), RIGHT)
    pencil.painter.setPen(pencil.pen(pencil.theme.colour("ink"), 0.8, flat=True))
    foot = QPointF(0, 2 * u)
    pencil.painter.drawLine(head.bottomLeft() - foot, head.bottomRight() - foot)


def _elided(pencil: Pencil, text: str, width: float) -> str:
    shown = text
    while shown and pencil.text_width(f"{shown}…", "title") > width:
        shown = shown[:-1]
    return text if shown == text or pencil.text_width(text, "title") <= width else f"{shown.rstrip()}…"
