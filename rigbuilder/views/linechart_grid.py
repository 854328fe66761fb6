"""The line chart as one widget: every cell reached by pointer and keyboard."""

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QFocusEvent, QHelpEvent, QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QToolTip

from rigbuilder.viewmodels.linechart import Square
from rigbuilder.views.linechart_keys import moved
from rigbuilder.views.linechart_surface import ChartSurface


class LineGrid(ChartSurface):
    """Cells by type and test. Arrows move, Enter puts the line on, Esc stops looking ahead."""

    def set_current(self, row: int, column: int) -> None:
        """Move the keyboard's place, and look at that line."""
        chart = self.chart()
        square = None if chart is None else chart.rows[row].at(column)
        if square is not None:
            self.move_to(square)

    def event(self, event: QEvent) -> bool:
        """Show the reason of the cell under the pointer as a tip."""
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            square = self._at(QPointF(event.pos()))
            QToolTip.showText(event.globalPos(), "" if square is None else square.spoken, self)
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 (Qt's name)
        """Move among the cells; Enter puts on, Esc stops looking."""
        key, chart, here = event.key(), self.chart(), self.current()
        if chart is None or here is None:
            super().keyPressEvent(event)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self.taken.emit(here)
        elif (target := moved(chart, here, key)) is not None:
            self.move_to(target)
        elif key == Qt.Key.Key_Escape:
            self.looked.emit(None)
            super().keyPressEvent(event)
        else:
            super().keyPressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802 (Qt's name)
        """Look at the line under the pointer."""
        square, layout = self._at(event.position()), self.layout_now()
        on_label = layout is not None and layout.label_at(event.position()) is not None
        hand = square is not None or on_label
        self.setCursor(Qt.CursorShape.PointingHandCursor if hand else Qt.CursorShape.ArrowCursor)
        self.hover(square)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 (Qt's name)
        """Put the line under the pointer on; the name of a type looks at its best line."""
        square, layout = self._at(event.position()), self.layout_now()
        if event.button() != Qt.MouseButton.LeftButton or layout is None:
            return
        if square is not None:
            self.move_to(square)
            self.taken.emit(square)
        elif (row := layout.label_at(event.position())) is not None:
            self.move_to(layout.chart.rows[row].best())

    def leaveEvent(self, event: QEvent) -> None:  # noqa: N802 (Qt's name)
        """Stop looking at what was under the pointer."""
        super().leaveEvent(event)
        self.hover(None)

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802 (Qt's name)
        """Look at the cell that the keyboard stands on."""
        super().focusInEvent(event)
        self.tell()

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802 (Qt's name)
        """Stop looking."""
        super().focusOutEvent(event)
        self.tell()

    def _at(self, point: QPointF) -> Square | None:
        layout = self.layout_now()
        return None if layout is None else layout.square_at(point)
