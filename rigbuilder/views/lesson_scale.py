"""The scale of a what-if: one tick a value, a sign where the verdict changes, the limit marked."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from rigbuilder.viewmodels.lesson_whatif import WhatIfShown
from rigbuilder.views.paint.signs import paint_sign
from rigbuilder.views.theme_look import Look

_KEYS = {
    Qt.Key.Key_Left: -1,
    Qt.Key.Key_Down: -1,
    Qt.Key.Key_Right: 1,
    Qt.Key.Key_Up: 1,
    Qt.Key.Key_Home: -1000,
    Qt.Key.Key_End: 1000,
}


class Scale(QWidget):
    """A slider over the values of a field; arrow keys, Home and End, or the pointer move it."""

    moved = Signal(int)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._shown: WhatIfShown | None = None
        self._at = 0
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(lambda _: self.update())

    def set_shown(self, shown: WhatIfShown | None, at: int) -> None:
        """Show a field with the slider at a value."""
        self._shown, self._at = shown, at
        self.setEnabled(shown is not None)
        if shown is not None and 0 <= at < len(shown.steps):
            step = shown.steps[at]
            self.setAccessibleName(f"{shown.words}: {step.value}")
            self.setAccessibleDescription(step.words)
        self.update()

    def at(self) -> int:
        """Return the place of the slider, counted from 0."""
        return self._at

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return room for signs above, rail, and values below."""
        theme = self._look.theme
        return QSize(theme.px(420), theme.px(74))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return the least room."""
        theme = self._look.theme
        return QSize(theme.px(260), theme.px(74))

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 (Qt's name)
        """Move by keys."""
        by = _KEYS.get(Qt.Key(event.key()))
        if by is None or self._shown is None:
            super().keyPressEvent(event)
        else:
            self._go(self._at + by)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 (Qt's name)
        """Jump to the value under the pointer."""
        self._go(self._nearest(event.position().x()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802 (Qt's name)
        """Follow the pointer while it is pressed."""
        if event.buttons() & Qt.MouseButton.LeftButton:
            self._go(self._nearest(event.position().x()))

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint rail, ticks, values, limits and the handle."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._shown is not None and self._shown.steps:
            self._paint_rail(painter, self._shown)
            self._paint_limits(painter, self._shown)
            self._paint_handle(painter)
        painter.end()

    def _x(self, at: float) -> float:
        edge, last = self._look.theme.px(30), max(1, len(self._shown.steps) - 1) if self._shown else 1
        return edge + at * (self.width() - 2 * edge) / last

    def _nearest(self, x: float) -> int:
        count = len(self._shown.steps) if self._shown else 1
        return min(range(count), key=lambda at: abs(self._x(at) - x))

    def _go(self, at: int) -> None:
        count = len(self._shown.steps) if self._shown else 1
        at = min(max(at, 0), count - 1)
        if at != self._at:
            self.moved.emit(at)

    def _paint_rail(self, painter: QPainter, shown: WhatIfShown) -> None:
        theme = self._look.theme
        middle, side = theme.px(34), theme.px(12)
        painter.setFont(theme.font("small"))
        room = painter.fontMetrics().horizontalAdvance("100 yd  ")
        every = max(1, round(room / max(1.0, self._x(1) - self._x(0)) + 0.49))
        for at, step in enumerate(shown.steps):
            ink = theme.colour(step.severity)
            if at + 1 < len(shown.steps):
                painter.setPen(QPen(theme.colour("edge"), theme.px(2)))
                painter.drawLine(QPointF(self._x(at), middle), QPointF(self._x(at + 1), middle))
            box = QRectF(self._x(at) - side / 2, middle - theme.px(8) - side, side, side)
            paint_sign(painter, box, step.severity, ink)
            painter.setPen(theme.colour("ink" if step.present else "soft"))
            if at % every == 0 or step.present:
                words = f"{step.value} ◂" if step.present else step.value
                place = QRectF(self._x(at) - room, middle + theme.px(10), 2 * room, theme.px(18))
                if step.present or abs(at - shown.present) >= every or shown.present < 0:
                    painter.drawText(place, int(Qt.AlignmentFlag.AlignCenter), words)

    def _paint_limits(self, painter: QPainter, shown: WhatIfShown) -> None:
        theme = self._look.theme
        for limit in shown.limits:
            x = self._x(limit.after + 0.5)
            painter.setPen(QPen(theme.colour(limit.severity), theme.px(2), Qt.PenStyle.DashLine))
            painter.drawLine(QPointF(x, theme.px(6)), QPointF(x, theme.px(50)))

    def _paint_handle(self, painter: QPainter) -> None:
        theme = self._look.theme
        radius = theme.px(7)
        ring = "focus" if self.hasFocus() else "accent"
        painter.setPen(QPen(theme.colour(ring), theme.px(2)))
        painter.setBrush(theme.colour("accent"))
        painter.drawEllipse(QPointF(self._x(self._at), theme.px(34)), radius, radius)
