"""The spool cut through its axis, to scale: bare spool, backing, joint, line, level after a cast, lip."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from rigbuilder.viewmodels.answers import ShownRow
from rigbuilder.viewmodels.spoolview import SpoolShown, WoundWords
from rigbuilder.views.paint.labels import spread
from rigbuilder.views.paint.pencil import LEFT, Pencil
from rigbuilder.views.paint.ticks import number
from rigbuilder.views.theme import Theme

_LIP_WIDE_M = 2.0e-3  # thickness at which the lips are drawn [m]

Label = tuple[float, str, str, bool]  # height on the sheet, words, role of the ink, strong


def paint_spool(
    painter: QPainter, rect: QRectF, section: SpoolShown, theme: Theme, others: Sequence[ShownRow] = ()
) -> None:
    """Paint the upper half of the section with its words, and below how much of other lines it would hold."""
    painter.save()
    pencil = Pencil(painter, theme)
    u, line = pencil.u, pencil.line_height("caption")
    foot = line * 1.5 if others else 0.0
    words = 0.40 * rect.width()
    tall = (section.lip_m - 0.72 * section.barrel_m) / 2
    wide = section.width_m + 2 * _LIP_WIDE_M
    scale = min((rect.width() - words - 24 * u) / wide, (rect.height() - foot - 16 * u) / tall)
    left = rect.left() + max(0.0, rect.width() - words - 24 * u - wide * scale) / 2
    base = rect.top() + 8 * u + (section.lip_m / 2) * scale
    _paint_section(pencil, section, left, base, scale)
    right = left + wide * scale
    _paint_labels(pencil, rect, right, _labels(section, base, scale), rect.bottom() - foot)
    if others:
        _paint_others(pencil, QRectF(rect.left(), rect.bottom() - line, rect.width(), line), others)
    painter.restore()


def _paint_section(pencil: Pencil, section: SpoolShown, left: float, base: float, scale: float) -> None:
    painter, theme, u = pencil.painter, pencil.theme, pencil.u
    inner, width = left + _LIP_WIDE_M * scale, section.width_m * scale

    def layer(outer_m: float, inner_m: float, colour: QColor) -> None:
        top, bottom = base - outer_m / 2 * scale, base - inner_m / 2 * scale
        painter.fillRect(QRectF(inner, top, width, bottom - top), colour)

    floor_m = 0.72 * section.barrel_m
    layer(section.barrel_m, floor_m, theme.colour("spool"))
    if section.backing is not None:
        layer(section.core_m, section.barrel_m, theme.colour("backing"))
    start = section.core_m if section.backing is not None else section.barrel_m
    layer(section.fill_m, start, theme.colour(section.main.type))
    veil = theme.colour("card")
    veil.setAlphaF(0.38)
    painter.setPen(pencil.pen(veil, 0.8, flat=True))
    rows = 7
    for k in range(1, rows):
        y = base - (start + (section.fill_m - start) * k / rows) / 2 * scale
        painter.drawLine(QPointF(inner, y), QPointF(inner + width, y))
    lips = theme.colour("reel")
    top, bottom = base - section.lip_m / 2 * scale, base - floor_m / 2 * scale
    for x in (left, inner + width):
        painter.fillRect(QRectF(x, top, _LIP_WIDE_M * scale, bottom - top), lips)
    painter.setPen(pencil.pen(theme.colour("ink"), 1.2, (4, 3)))
    y = base - section.after_cast_m / 2 * scale
    painter.drawLine(QPointF(inner, y), QPointF(inner + width, y))
    if section.backing is not None:
        painter.setPen(pencil.pen(theme.colour("card"), 1))
        painter.setBrush(theme.colour("knot"))
        painter.drawEllipse(QPointF(inner + 0.86 * width, base - section.core_m / 2 * scale), 4 * u, 4 * u)
        painter.setBrush(Qt.BrushStyle.NoBrush)


def _labels(section: SpoolShown, base: float, scale: float) -> list[Label]:
    """Return the words beside the section, each at the height that it speaks of."""

    def at(across_m: float) -> float:
        return base - across_m / 2 * scale

    main, backing = section.main, section.backing
    start = section.core_m if backing is not None else section.barrel_m
    labels = [
        (at((section.lip_m + section.fill_m) / 2), section.gap, "ink", False),
        (at(section.after_cast_m), section.cast, "soft", False),
        *_wound(main, at((start + section.fill_m) / 2)),
    ]
    if backing is not None:
        labels.append((at(section.core_m), "joint of line and backing", "knot", False))
        labels += _wound(backing, at((section.barrel_m + section.core_m) / 2))
    return sorted(labels, key=_height)


def _height(label: Label) -> float:
    return label[0]


def _wound(words: WoundWords, y: float) -> list[Label]:
    return [
        (y, f"{words.name}, {words.length}, {words.grams}", words.type, True),
        (y + 0.01, words.turns, "soft", False),
    ]


def _paint_labels(pencil: Pencil, rect: QRectF, right: float, labels: list[Label], bottom: float) -> None:
    u, line = pencil.u, pencil.line_height("caption")
    left = right + 26 * u
    centres = spread([y for y, *_ in labels], [line] * len(labels), rect.top(), bottom)
    for (y, text, role, strong), centre in zip(labels, centres, strict=True):
        ink = pencil.theme.colour(role)
        if role != "soft" or not text[0].isdigit():
            pencil.painter.setPen(pencil.pen(ink, 1))
            pencil.painter.drawLine(QPointF(right + 3 * u, y), QPointF(left - 5 * u, centre))
        box = QRectF(left, centre - line / 2, max(rect.right() - left, 10 * u), line)
        pencil.write(box.adjusted(0, 0, 60 * u, 0), text, "strong" if strong else "caption", ink, LEFT)


def _paint_others(pencil: Pencil, rect: QRectF, others: Sequence[ShownRow]) -> None:
    said = "Full, the spool holds: " + " \u00b7 ".join(f"{row.label} {number(row.typical)}" for row in others)
    pencil.write(rect, said, "caption", pencil.theme.colour("soft"), LEFT)
