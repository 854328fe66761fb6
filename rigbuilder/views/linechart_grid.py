"""The line chart as one widget: painted whole, every cell reached by pointer and keyboard."""

from PySide6.QtCore import QEvent, QPointF, QSize, Qt, Signal
from PySide6.QtGui import QFocusEvent, QHelpEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from rigbuilder.viewmodels.linechart import LineChart, Square
from rigbuilder.views.linechart_keys import moved
from rigbuilder.views.linechart_layout import BRACKET, CELL, HEAD, LABEL, ROW, ChartLayout
from rigbuilder.views.linechart_paint import ChartPainter, Marks
from rigbuilder.views.theme_look import Look

_COLUMNS, _ROWS = 22, 4  # what room is kept for before there is a chart
_NAME = "Line chart"


class LineGrid(QWidget):
    """Cells by type and test. Arrows move, Enter puts the line on, Esc stops looking ahead."""

    looked = Signal(object)  # the Square under pointer or keyboard, None when there is none
    taken = Signal(object)  # the Square to put on

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._chart: LineChart | None = None
        self._current: Square | None = None
        self._hovered: Square | None = None
        self._stale = False
        self.setAccessibleName(_NAME)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._dress)

    def set_chart(self, chart: LineChart | None) -> None:
        """Show a chart made anew; the place of the keyboard is kept by type and test."""
        old, self._chart, self._stale = self._current, chart, False
        self._hovered = None
        self._current = None if chart is None else self.same(old) or chart.present()
        self._describe()
        self._dress()

    def chart(self) -> LineChart | None:
        """Return the chart shown."""
        return self._chart

    def set_stale(self) -> None:
        """Show softly that the chart is about to be made anew."""
        self._stale = True
        self.update()

    def current(self) -> Square | None:
        """Return the cell that the keyboard stands on."""
        return self._current

    def same(self, other: Square | None) -> Square | None:
        """Return the cell of the same type and test in the chart of now."""
        if other is None or self._chart is None:
            return None
        return self._chart.of(other.cell.type, other.cell.test_lb)

    def looked_at(self) -> Square | None:
        """Return the cell under the pointer, else the one with the keyboard's focus, if any."""
        return self._hovered or (self._current if self.hasFocus() else None)

    def set_current(self, row: int, column: int) -> None:
        """Move the keyboard's place, and look at that line."""
        square = None if self._chart is None else self._chart.rows[row].at(column)
        if square is not None:
            self._move_to(square)

    def layout_now(self) -> ChartLayout | None:
        """Return where things lie at this size, ``None`` without a chart."""
        return None if self._chart is None else ChartLayout(self._chart, self.width(), self._look.theme.zoom)

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return room for all rows and both brackets at a comfortable width."""
        rows = _ROWS if self._chart is None else len(self._chart.rows)
        columns = _COLUMNS if self._chart is None else len(self._chart.tests_lb)
        zoom = self._look.theme.zoom
        height = (HEAD + ROW * rows + 2 * BRACKET + 2) * zoom
        return QSize(round((LABEL + (CELL + 1) * columns + 4) * zoom), round(height))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return the least size: no cell becomes smaller than can be pressed."""
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint the chart."""
        layout = self.layout_now()
        if layout is None:
            return
        looked = self.looked_at() or (None if self._chart is None else self._chart.present())
        painter = QPainter(self)
        marks = Marks(
            self._current, self._hovered, None if looked is None else looked.row, self.hasFocus(), self._stale
        )
        ChartPainter(painter, layout, self._look.theme).paint(marks)
        painter.end()

    def event(self, event: QEvent) -> bool:
        """Show the reason of the cell under the pointer as a tip."""
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            square = self._at(QPointF(event.pos()))
            QToolTip.showText(event.globalPos(), "" if square is None else square.spoken, self)
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 (Qt's name)
        """Move among the cells; Enter puts on, Esc stops looking."""
        key = Qt.Key(event.key())
        if self._chart is None or self._current is None:
            super().keyPressEvent(event)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self.taken.emit(self._current)
        elif (target := moved(self._chart, self._current, key)) is not None:
            self._move_to(target)
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
        self._hover(square)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 (Qt's name)
        """Put the line under the pointer on; the name of a type looks at its best line."""
        if event.button() != Qt.MouseButton.LeftButton or self._chart is None:
            return
        square, layout = self._at(event.position()), self.layout_now()
        if square is not None:
            self._current = square
            self.taken.emit(square)
        elif layout is not None and (row := layout.label_at(event.position())) is not None:
            self._move_to(self._chart.rows[row].best())

    def leaveEvent(self, event: QEvent) -> None:  # noqa: N802 (Qt's name)
        """Stop looking at what was under the pointer."""
        super().leaveEvent(event)
        self._hover(None)

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802 (Qt's name)
        """Look at the cell that the keyboard stands on."""
        super().focusInEvent(event)
        self._tell()

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802 (Qt's name)
        """Stop looking."""
        super().focusOutEvent(event)
        self._tell()

    def _at(self, point: QPointF) -> Square | None:
        layout = self.layout_now()
        return None if layout is None or self._stale else layout.square_at(point)

    def _hover(self, square: Square | None) -> None:
        if square is not self._hovered:
            self._hovered = square
            self._tell()

    def _move_to(self, square: Square) -> None:
        self._current = square
        self._hovered = None
        self._describe()
        self._tell()

    def _tell(self) -> None:
        self.looked.emit(self.looked_at())
        self.update()

    def _describe(self) -> None:
        words = "" if self._current is None else self._current.spoken
        self.setAccessibleDescription(words or "Empty until the card can be read.")

    def _dress(self, *_: object) -> None:
        self.updateGeometry()
        self.update()
