"""The ground of the line chart: what it shows, where the keyboard stands, how it is painted."""

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from rigbuilder.viewmodels.linechart import LineChart, Square
from rigbuilder.views.linechart_layout import BRACKET, CELL, HEAD, LABEL, ROW, ChartLayout
from rigbuilder.views.linechart_paint import ChartPainter, Marks
from rigbuilder.views.theme_look import Look

_COLUMNS, _ROWS = 22, 4  # what room is kept for before there is a chart
_NAME = "Line chart"


class ChartSurface(QWidget):
    """Shows a chart, the cell of the keyboard and the one under the pointer."""

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
        self.setAccessibleDescription(_spoken(self._current))
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

    def layout_now(self) -> ChartLayout | None:
        """Return where things lie at this size, ``None`` without a chart."""
        return None if self._chart is None else ChartLayout(self._chart, self.width(), self._look.theme.zoom)

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return room for all rows and both brackets at a comfortable width."""
        rows = _ROWS if self._chart is None else len(self._chart.rows)
        columns = _COLUMNS if self._chart is None else len(self._chart.tests_lb)
        zoom = self._look.theme.zoom
        height = (HEAD + ROW * rows + 2 * BRACKET + 2) * zoom
        return QSize(round((LABEL + CELL * columns + 2) * zoom), round(height))

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

    def hover(self, square: Square | None) -> None:
        """Take the cell that is under the pointer now."""
        if square is not self._hovered:
            self._hovered = square
            self.tell()

    def move_to(self, square: Square) -> None:
        """Move the place of the keyboard, look at that line, and have it read out."""
        self._current = square
        self._hovered = None
        self.setAccessibleDescription(_spoken(self._current))
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, square.spoken))
        self.tell()

    def tell(self) -> None:
        """Tell which line is looked at now."""
        self.looked.emit(self.looked_at())
        self.update()

    def _dress(self, *_: object) -> None:
        self.updateGeometry()
        self.update()


def _spoken(square: Square | None) -> str:
    return "Empty until the card can be read." if square is None else square.spoken
