"""Blocks of text set in two columns, or the word that they do not fit."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, Qt

from rigbuilder.viewmodels.sheet import Block, Paragraph
from rigbuilder.views.paint.pencil import TOP_LEFT, Pencil
from rigbuilder.views.paint.signs import placed
from rigbuilder.views.theme import FontRole

_GUTTER = 16.0  # logical pixels between the columns
_COLUMNS = 2


@dataclass(frozen=True, slots=True)
class Piece:
    """One heading or paragraph and where it stands."""

    rect: QRectF
    paragraph: Paragraph
    is_heading: bool


def set_blocks(pencil: Pencil, room: QRectF, blocks: Sequence[Block], *, spare: int) -> list[Piece] | None:
    """Return the pieces in their places, ``None`` if they do not all fit; what is sparer is left out."""
    u = pencil.u
    width = (room.width() - (_COLUMNS - 1) * _GUTTER * u) / _COLUMNS
    pieces: list[Piece] = []
    column, y = 0, room.top()
    standing = [
        (
            paragraph,
            is_heading,
            text_height(pencil, _words(paragraph), _role(paragraph, is_heading), width - indent),
        )
        for paragraph, is_heading, indent in _pieces(blocks, spare, 15 * u)
    ]
    for place, (paragraph, is_heading, height) in enumerate(standing):
        gap = (8 if is_heading else 2) * u if y > room.top() else 0.0
        least = height + _kept_with(standing[place:])
        if y + gap + least > room.bottom():
            column, y, gap = column + 1, room.top(), 0.0
            if column >= _COLUMNS or height > room.height():
                return None
        left = room.left() + column * (width + _GUTTER * u)
        pieces.append(Piece(QRectF(left, y + gap, width, height), paragraph, is_heading))
        y += gap + height
    return pieces


def paint_piece(pencil: Pencil, piece: Piece) -> None:
    """Write one piece, with its sign and number where it has them."""
    u, rect, paragraph = pencil.u, piece.rect, piece.paragraph
    text = rect
    if paragraph.severity:
        side = 9 * u
        line = pencil.line_height("caption")
        box = QRectF(rect.left(), rect.top() + (line - side) / 2, side, side)
        pencil.painter.fillPath(placed(paragraph.severity, box), pencil.theme.colour(paragraph.severity))
        text = rect.adjusted(15 * u, 0, 0, 0)
    pencil.write(
        text.adjusted(0, 0, 0.5 * u, 2 * u),
        _words(paragraph),
        _role(paragraph, piece.is_heading),
        "",
        TOP_LEFT,
    )
    if piece.is_heading:
        pencil.painter.setPen(pencil.pen(pencil.theme.colour("edge"), 0.6, flat=True))
        pencil.painter.drawLine(
            rect.bottomLeft() + QPointF(0, 0.5 * u), rect.bottomRight() + QPointF(0, 0.5 * u)
        )


def text_height(pencil: Pencil, text: str, role: FontRole, width: float) -> float:
    """Return the height that a text takes at a width."""
    flags = int(TOP_LEFT | Qt.TextFlag.TextWordWrap)
    return pencil.metrics(role).boundingRect(QRectF(0, 0, width, 1e7), flags, text).height()


def _words(paragraph: Paragraph) -> str:
    return paragraph.text if paragraph.number is None else f"{paragraph.number}  {paragraph.text}"


def _role(paragraph: Paragraph, is_heading: bool) -> FontRole:
    if is_heading:
        return "strong"
    return "strong" if paragraph.strong else "caption"


def _kept_with(standing: Sequence[tuple[Paragraph, bool, float]]) -> float:
    """Return the height of what must stand below a heading, so that none ends a column."""
    kept = 0.0
    for (paragraph, is_heading, _), (_, _, height) in pairwise(standing):
        if not (is_heading or paragraph.strong):
            break
        kept += height
    return kept


def _pieces(blocks: Sequence[Block], spare: int, indent: float) -> Iterator[tuple[Paragraph, bool, float]]:
    """Yield headings and paragraphs, whether each is a heading, and how far its words stand in."""
    for block in blocks:
        yield Paragraph(block.title), True, 0.0
        for paragraph in block.paragraphs:
            if paragraph.spare <= spare:
                yield paragraph, False, indent if paragraph.severity else 0.0
