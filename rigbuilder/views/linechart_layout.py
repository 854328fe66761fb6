"""Where everything of the line chart lies, in logical pixels."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF

from rigbuilder.viewmodels.linechart import LineChart, Span, Square

CELL = 24.0  # least side of what can be pressed; the painted square is smaller by the gap
GAP = 2.0  # between cells
HEAD = 18.0  # row of tests
ROW = 29.0  # a row of cells with its range mark below
LABEL = 104.0  # column of line types
BRACKET = 24.0  # a bracket with its words
WIDEST = 34.0
_SAME_LB = 0.05


@dataclass(frozen=True, slots=True)
class ChartLayout:
    """The places of one chart at one width and zoom."""

    chart: LineChart
    width: float
    zoom: float

    @property
    def step(self) -> float:
        """The distance from one column to the next."""
        room = (self.width - LABEL * self.zoom) / len(self.chart.tests_lb)
        return min(max(room, CELL * self.zoom), (WIDEST + GAP) * self.zoom)

    @property
    def square(self) -> int:
        """The width of a painted cell, in whole pixels so that all are alike."""
        return int(self.step - GAP * self.zoom)

    @property
    def left(self) -> float:
        """The left edge of the first column."""
        return LABEL * self.zoom

    @property
    def right(self) -> float:
        """The right edge of the last column."""
        return self.left + self.step * len(self.chart.tests_lb)

    def head(self, column: int) -> QRectF:
        """Return the place of a test over its column."""
        return QRectF(self.left + column * self.step, 0, self.step, HEAD * self.zoom)

    def label(self, row: int) -> QRectF:
        """Return the place of a line type before its row."""
        return QRectF(0, self._top(row), self.left - 8 * self.zoom, CELL * self.zoom)

    def cell(self, row: int, column: int) -> QRectF:
        """Return the place of a cell."""
        side, left = self.square, self.left + column * self.step + (self.step - self.square) / 2
        return QRectF(round(left), round(self._top(row)), side, round(CELL * self.zoom))

    def bracket(self, line: int) -> QRectF:
        """Return the strip of the first or second bracket under the rows."""
        top = self._top(len(self.chart.rows)) + line * BRACKET * self.zoom
        return QRectF(self.left, top, self.right - self.left, BRACKET * self.zoom)

    def span(self, span: Span) -> tuple[float, float]:
        """Return the left and right end of a range: whole columns, or between two where it is no rung."""
        return self._edge(span.low_lb, low=True), self._edge(span.high_lb, low=False)

    def at(self, test_lb: float) -> float:
        """Return the middle of a test's column, or the boundary between two."""
        return (self._edge(test_lb, low=True) + self._edge(test_lb, low=False)) / 2

    def square_at(self, point: QPointF) -> Square | None:
        """Return the cell under a point."""
        row = self._row_at(point)
        if row is None or not self.left <= point.x() < self.right:
            return None
        return self.chart.rows[row].at(int((point.x() - self.left) // self.step))

    def label_at(self, point: QPointF) -> int | None:
        """Return the row whose line type is under a point."""
        return self._row_at(point) if point.x() < self.left else None

    def _row_at(self, point: QPointF) -> int | None:
        row = int((point.y() - HEAD * self.zoom) // (ROW * self.zoom))
        inside = point.y() >= HEAD * self.zoom and 0 <= row < len(self.chart.rows)
        return row if inside else None

    def _top(self, row: int) -> float:
        return (HEAD + ROW * row) * self.zoom

    def _edge(self, test_lb: float, *, low: bool) -> float:
        """Return the edge of the column of a test; a test between two rungs lies on their boundary."""
        below = sum(1 for rung in self.chart.tests_lb if rung < test_lb - _SAME_LB)
        within = sum(1 for rung in self.chart.tests_lb if rung <= test_lb + _SAME_LB)
        return self.left + (below if low else within) * self.step
