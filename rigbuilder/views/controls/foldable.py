"""A section that can be folded away; what is wrong inside stays in sight on its head."""

from collections.abc import MutableMapping

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette, QPen, QPolygonF
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QToolButton, QVBoxLayout, QWidget

from rigbuilder.views.controls.badge import SeverityBadge
from rigbuilder.views.theme_look import Look


class _Head(QToolButton):
    """The pressable head: chevron and title."""

    def __init__(self, look: Look, title: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self.setText(title)
        self.setCheckable(True)
        self.setProperty("fold", True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint the frame as styled, then chevron and title in the heading type."""
        theme = self._look.theme
        text, shown = self.text(), self.isChecked()
        self.blockSignals(True)
        self.setText("")
        super().paintEvent(event)
        self.setText(text)
        self.blockSignals(False)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink = self.palette().color(QPalette.ColorRole.WindowText)
        pen = QPen(ink, theme.px(3) / 2, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        arm, middle = theme.px(4), QPointF(theme.px(10), self.height() / 2)
        if shown:
            bend = [QPointF(-arm, -arm / 2), QPointF(0, arm / 2), QPointF(arm, -arm / 2)]
        else:
            bend = [QPointF(-arm / 2, -arm), QPointF(arm / 2, 0), QPointF(-arm / 2, arm)]
        painter.drawPolyline(QPolygonF([middle + point for point in bend]))
        painter.setFont(theme.font("heading"))
        room = self.rect().adjusted(theme.px(22), 0, 0, 0)
        painter.drawText(room, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), text)
        painter.end()


class Foldable(QWidget):
    """Head with title and badge, body below.

    ``memory`` keeps whether a section is open under its ``key``; hand in any
    mapping, settings of the program for instance.
    """

    folded = Signal(bool)  # True when the body was folded away

    def __init__(
        self,
        look: Look,
        title: str,
        *,
        key: str = "",
        memory: MutableMapping[str, bool] | None = None,
        open_at_first: bool = True,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._look, self._key, self._title = look, key or title, title
        self._memory = {} if memory is None else memory
        self._tail = ""
        self.head = _Head(look, title, self)
        self.badge = SeverityBadge(look, "note", "", parent=self)
        self.badge.hide()
        self.body = QWidget(self)
        self.column = QVBoxLayout(self.body)
        row = QHBoxLayout()
        row.addWidget(self.head, 1)
        row.addWidget(self.badge)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(2)
        layout.addLayout(row)
        layout.addWidget(self.body)
        self.column.setContentsMargins(0, 0, 0, 4)
        self.head.setChecked(self._memory.get(self._key, open_at_first))
        self.head.toggled.connect(self._toggled)
        self._show(self.head.isChecked())

    def is_open(self) -> bool:
        """Return whether the body is shown."""
        return self.head.isChecked()

    def set_open(self, shown: bool) -> None:
        """Unfold or fold the body."""
        self.head.setChecked(shown)

    def set_badge(self, severity: str, count: int) -> None:
        """Show how many reasons lie inside and the worst of them; zero hides the badge."""
        self.badge.setVisible(count > 0)
        if count > 0:
            self.badge.set_kind(severity, str(count))
        self._tail = f", {count} {severity}" if count else ""
        self._name()

    def _toggled(self, shown: bool) -> None:
        self._memory[self._key] = shown
        self._show(shown)
        self.folded.emit(not shown)

    def _show(self, shown: bool) -> None:
        self.body.setVisible(shown)
        self._name()

    def _name(self) -> None:
        self.head.setAccessibleName(self._title + self._tail)
        self.head.setAccessibleDescription("open" if self.is_open() else "folded")
