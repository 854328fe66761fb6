"""One row of name and value that can be pressed as a whole."""

from PySide6.QtCore import QRect, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QPushButton, QSizePolicy, QWidget

from rigbuilder.viewmodels.literal import literal
from rigbuilder.viewmodels.short import ShortRow
from rigbuilder.views.theme_look import Look

_NAME = 112  # width of the names
_PAD = 4
_LEAST = 24
_LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
_WRAP = _LEFT | int(Qt.TextFlag.TextWordWrap.value)


class RowButton(QPushButton):
    """Paints a name and a value that may take several lines."""

    def __init__(self, look: Look, row: ShortRow, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._row = row
        self.setAutoDefault(False)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        look.changed.connect(self._refresh)
        self.set_row(row)

    @property
    def row(self) -> ShortRow:
        """The row shown."""
        return self._row

    def set_row(self, row: ShortRow) -> None:
        """Show another state of the row."""
        self._row = row
        self.setAccessibleName(f"{row.name}: {row.value}")
        self.setAccessibleDescription(f"{row.meaning} Press to see how we know.".strip())
        self.setToolTip(literal(f"{row.name}: {row.value}\n{row.meaning}\nPress to see how we know."))
        self._refresh()

    def hasHeightForWidth(self) -> bool:  # noqa: N802 (Qt's name)
        """Return True: long values take more lines."""
        return True

    def heightForWidth(self, width: int) -> int:  # noqa: N802 (Qt's name)
        """Return the height for name and value at ``width``."""
        theme = self._look.theme
        metrics = QFontMetrics(theme.font("body"))
        room = self._value_room(QRect(0, 0, width, 10_000))
        words = metrics.boundingRect(room, _WRAP, self._row.value).height()
        return max(theme.px(_LEAST), words + theme.px(_PAD))

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 (Qt's name)
        """Keep room for all lines of the value at the new width."""
        super().resizeEvent(event)
        self._keep_room()

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return a comfortable width with its height."""
        width = self._look.theme.px(250)
        return QSize(width, self.heightForWidth(self.width() if self.width() > width else width))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return the least size."""
        theme = self._look.theme
        return QSize(theme.px(_NAME + 80), theme.px(_LEAST))

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint name and value, a wash under the pointer, and the focus frame."""
        theme = self._look.theme
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        radius = theme.px(theme.spacing.radius)
        if self.underMouse() or self.isDown():
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(theme.colour("hover"))
            painter.drawRoundedRect(QRectF(self.rect()), radius, radius)
        painter.setPen(theme.colour("soft"))
        painter.setFont(theme.font("caption"))
        name = self.rect().adjusted(theme.px(6), 0, 0, 0)
        painter.drawText(
            name, int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter), self._row.name
        )
        painter.setPen(theme.colour("ink"))
        painter.setFont(theme.font("body"))
        painter.drawText(self._value_room(self.rect()), _WRAP, self._row.value)
        if self.hasFocus():
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(theme.colour("focus"), theme.px(theme.spacing.focus)))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), radius, radius)
        painter.end()

    def _value_room(self, rect: QRect) -> QRect:
        theme = self._look.theme
        return rect.adjusted(theme.px(_NAME), 0, -theme.px(4), 0)

    def _keep_room(self) -> None:
        """Never be squeezed below what the words take."""
        needed = self.heightForWidth(self.width())
        if self.minimumHeight() != needed:
            self.setMinimumHeight(needed)

    def _refresh(self, *_: object) -> None:
        self._keep_room()
        self.updateGeometry()
        self.update()
