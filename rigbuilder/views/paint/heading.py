"""Head and foot of a figure: the question, the answer, the note."""

from PySide6.QtCore import QRectF, Qt

from rigbuilder.views.paint.pencil import TOP_LEFT, Pencil
from rigbuilder.views.theme import FontRole

_GAP = 4  # logical pixels between head and figure


def paint_head(pencil: Pencil, rect: QRectF, title: str, answer: str) -> QRectF:
    """Write title and answer at the top of ``rect`` and return what is left below them."""
    top = rect.top()
    top = _write_down(pencil, rect, top, title, "heading", "ink")
    top = _write_down(pencil, rect, top, answer, "body", "soft")
    if top > rect.top():
        top += 2 * _GAP * pencil.u
    return QRectF(rect.left(), top, rect.width(), rect.bottom() - top)


def paint_foot(pencil: Pencil, rect: QRectF, note: str) -> QRectF:
    """Write the note at the bottom of ``rect`` and return what is left above it."""
    if not note:
        return rect
    height = _text_height(pencil, note, "small", rect.width())
    box = QRectF(rect.left(), rect.bottom() - height, rect.width(), height)
    pencil.write(box, note, "small", pencil.theme.colour("soft"), TOP_LEFT)
    return QRectF(rect.left(), rect.top(), rect.width(), rect.height() - height - 2 * _GAP * pencil.u)


def _write_down(pencil: Pencil, rect: QRectF, top: float, text: str, role: FontRole, ink: str) -> float:
    if not text:
        return top
    height = _text_height(pencil, text, role, rect.width())
    box = QRectF(rect.left(), top, rect.width(), height)
    pencil.write(box, text, role, pencil.theme.colour(ink), TOP_LEFT)
    return top + height + _GAP * pencil.u


def _text_height(pencil: Pencil, text: str, role: FontRole, width: float) -> float:
    flags = int(TOP_LEFT | Qt.TextFlag.TextWordWrap)
    return pencil.metrics(role).boundingRect(QRectF(0, 0, width, 1e6), flags, text).height()
