"""A handle over one part of the drawing: it takes the keyboard, speaks, and is ringed when chosen."""

from PySide6.QtCore import QEvent, QPoint, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QWidget

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.literal import literal
from rigbuilder.viewmodels.pins import part_words
from rigbuilder.views.theme_look import Look

_STEPS = {
    Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1, Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1,
}  # fmt: skip


class PartHandle(QAbstractButton):
    """Transparent, at least as large as a finger; the pointer goes through it to the painted part."""

    picked = Signal(object)  # its Part
    stepped = Signal(object, int)  # its Part, and one on or back

    def __init__(self, look: Look, part: Part, parent: QWidget) -> None:
        super().__init__(parent)
        self._look, self.part = look, part
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setObjectName(f"part-{part}")
        self.setAccessibleName(part_words(part))
        self.clicked.connect(self._pick)

    def say(self, label: str, spoken: str) -> None:
        """Take the words of the part."""
        self.setAccessibleName(f"{part_words(self.part)}: {label}")
        self.setAccessibleDescription(spoken)
        self.setToolTip(literal(spoken))

    def cover(self, room: QRectF, sheet: QRectF) -> None:
        """Lie over the room of the part, kept on the sheet and large enough to be seen."""
        least = self._look.theme.px(self._look.theme.spacing.least_target)
        grow_x, grow_y = max(0.0, least - room.width()) / 2, max(0.0, least - room.height()) / 2
        grown = room.adjusted(-grow_x, -grow_y, grow_x, grow_y).intersected(sheet)
        self.setGeometry(grown.toAlignedRect())

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Draw the ring of the chosen part, and the frame of the one with the keyboard."""
        if not (self.isChecked() or self.hasFocus()):
            return
        theme = self._look.theme
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        width = theme.px(2)
        pen = painter.pen()
        pen.setColor(theme.colour("focus" if self.hasFocus() else "chosen"))
        pen.setWidth(width)
        if not self.hasFocus():
            pen.setStyle(Qt.PenStyle.DashLine)
        painter.setPen(pen)
        half, round_ = width / 2, theme.px(5)
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(half, half, -half, -half), round_, round_)
        painter.end()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 (Qt's name)
        """Arrows go to the next part; Space and Enter choose."""
        step = _STEPS.get(Qt.Key(event.key()))
        if step is not None:
            self.stepped.emit(self.part, step)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def hitButton(self, pos: QPoint) -> bool:  # noqa: N802 (Qt's name)
        """Take every press within the handle."""
        return self.rect().contains(pos)

    def event(self, event: QEvent) -> bool:
        """Repaint when the keyboard comes and goes."""
        if event.type() in (QEvent.Type.FocusIn, QEvent.Type.FocusOut):
            self.update()
        return super().event(event)

    def _pick(self) -> None:
        self.picked.emit(self.part)
