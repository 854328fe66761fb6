"""How the lines of the library look: drawing, name with a remark, verdict with its sign, headings."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QImage, QPainter
from PySide6.QtWidgets import QLineEdit, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from rigbuilder.viewmodels.library_lines import Heading
from rigbuilder.viewmodels.library_sketch import Sketch
from rigbuilder.viewmodels.library_table import LINE_ROLE, REMARK_ROLE, SKETCH_ROLE, VERDICT_ROLE
from rigbuilder.viewmodels.library_words import Column
from rigbuilder.views.library_sketch import paint_sketch
from rigbuilder.views.paint.signs import paint_sign
from rigbuilder.views.theme import SEVERITIES, FontRole, Theme
from rigbuilder.views.theme_look import Look

Index = QModelIndex | QPersistentModelIndex

CARD_HEIGHT, HEADING_HEIGHT = 46.0, 34.0
DRAWING_WIDTH = 84.0
_SIGNS = {"unfinished": "ring", "broken": "cross"}
_LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)


class CardDelegate(QStyledItemDelegate):
    """Paints the cells; the theme is asked at every painting."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._drawn: dict[tuple[Sketch, str, int, int, float], QImage] = {}
        look.changed.connect(lambda _: self._drawn.clear())

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one cell."""
        theme = self._look.theme
        rect: QRect = option.rect
        chosen = bool(option.state & QStyle.StateFlag.State_Selected)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        line = index.data(LINE_ROLE)
        if isinstance(line, Heading):
            self._heading(painter, rect, line, theme)
        else:
            if chosen:
                painter.fillRect(rect, theme.colour("selection"))
            self._cell(painter, rect, index, theme, theme.colour("on_selection" if chosen else "ink"), chosen)
        painter.setPen(theme.colour("rule"))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        painter.restore()

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:  # noqa: N802 (Qt's name)
        """Return the height of a line, for columns that fit themselves."""
        return QSize(super().sizeHint(option, index).width(), self._look.theme.px(CARD_HEIGHT))

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:  # noqa: N802
        """Return the field in which a name or tags are written."""
        editor = QLineEdit(parent)
        naming = index.column() == Column.NAME
        editor.setAccessibleName("Name of the card" if naming else "Tags, separated by commas")
        editor.setMaxLength(200 if naming else 1000)
        return editor

    def _cell(
        self, painter: QPainter, rect: QRect, index: Index, theme: Theme, ink: QColor, chosen: bool
    ) -> None:
        pad = theme.px(8)
        room = rect.adjusted(pad, 0, -pad, 0)
        match Column(index.column()):
            case Column.DRAWING:
                self._drawing(painter, rect, index.data(SKETCH_ROLE), theme)
            case Column.NAME:
                self._name(painter, room, index, theme, ink, chosen)
            case Column.VERDICT:
                self._verdict(painter, room, index, theme, ink, chosen)
            case _:
                _write(painter, room, index.data() or "", theme, "body", ink)

    def _drawing(self, painter: QPainter, rect: QRect, sketch: Sketch, theme: Theme) -> None:
        side = theme.px(4)
        size = QSize(theme.px(DRAWING_WIDTH) - 2 * side, rect.height() - 2 * side)
        ratio = painter.device().devicePixelRatioF()
        key = (sketch, theme.name, size.width(), size.height(), ratio)
        if key not in self._drawn:
            image = QImage(size * ratio, QImage.Format.Format_ARGB32_Premultiplied)
            image.setDevicePixelRatio(ratio)
            image.fill(Qt.GlobalColor.transparent)
            inner = QPainter(image)
            paint_sketch(inner, QRectF(0.5, 0.5, size.width() - 1, size.height() - 1), sketch, theme)
            inner.end()
            self._drawn[key] = image
        painter.drawImage(rect.left() + side, rect.top() + side, self._drawn[key])

    def _name(
        self, painter: QPainter, room: QRect, index: Index, theme: Theme, ink: QColor, chosen: bool
    ) -> None:
        remark = index.data(REMARK_ROLE)
        if not remark:
            _write(painter, room, index.data(), theme, "strong", ink)
            return
        upper, lower = QRect(room), QRect(room)
        upper.setBottom(room.center().y() + theme.px(2))
        lower.setTop(room.center().y() - theme.px(1))
        _write(painter, upper, index.data(), theme, "strong", ink)
        tone = ink if chosen else theme.colour("fault" if index.data(VERDICT_ROLE) == "broken" else "risk")
        _write(painter, lower, remark, theme, "small", tone)

    def _verdict(
        self, painter: QPainter, room: QRect, index: Index, theme: Theme, ink: QColor, chosen: bool
    ) -> None:
        kind = index.data(VERDICT_ROLE)
        tone = ink if chosen else theme.colour(kind if kind in SEVERITIES else "soft")
        sign = kind if kind in SEVERITIES else _SIGNS.get(kind, "")
        side = theme.px(theme.spacing.sign)
        if sign:
            place = QRectF(room.left(), room.center().y() - side / 2, side, side)
            paint_sign(painter, place, sign, tone)
        room.setLeft(room.left() + side + theme.px(6))
        _write(painter, room, index.data(), theme, "body", tone if kind in SEVERITIES else ink)

    def _heading(self, painter: QPainter, rect: QRect, line: Heading, theme: Theme) -> None:
        painter.fillRect(rect, theme.colour("page"))
        room = rect.adjusted(theme.px(8), 0, -theme.px(8), 0)
        _write(painter, room, f"{line.text} · {line.count:,}", theme, "heading", theme.colour("ink"))


def _write(painter: QPainter, room: QRect, text: str, theme: Theme, role: FontRole, ink: QColor) -> None:
    font = theme.font(role)
    painter.setFont(font)
    painter.setPen(ink)
    short = QFontMetrics(font).elidedText(text, Qt.TextElideMode.ElideRight, room.width())
    painter.drawText(room, _LEFT, short)
