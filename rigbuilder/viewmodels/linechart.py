"""The line chart as plain values: every type a row, every test a column on one ladder."""

from collections.abc import Sequence
from dataclasses import dataclass

from rigbuilder.reference.ranges import LBF_N
from rigbuilder.review.chart import Cell, Grade
from rigbuilder.review.conditions import Aim, Bounds
from rigbuilder.review.core import Severity
from rigbuilder.review.speak import Speaker
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.systems import in_system
from rigbuilder.viewmodels.bench import Bench

_SAME_LB = 0.05
_WHOLE_FROM_KG = 10.0
_BEST_FIRST = (Grade.FIRST_CHOICE, Grade.WORKS, Grade.POOR, Grade.NEVER)


@dataclass(frozen=True, slots=True)
class Span:
    """A range of tests on the ladder [lb], with its words."""

    low_lb: float
    high_lb: float
    text: str
    aim_lb: float | None = None


@dataclass(frozen=True, slots=True)
class Square:
    """One cell: its place, its grade, what is said of it, and the whole as one sentence."""

    row: int
    column: int
    name: str
    grade: str
    says: str
    spoken: str
    cell: Cell

    @property
    def present(self) -> bool:
        """Tell whether this is the line on the reel."""
        return self.cell.present


@dataclass(frozen=True, slots=True)
class Row:
    """One type of line.

    ``usual`` is the technique's range as today's conditions move it; ``without``
    says so where practice names none for this type.
    """

    type: str
    squares: tuple[Square, ...]
    usual: Span | None
    without: str = ""

    def at(self, column: int) -> Square | None:
        """Return the cell in a column, ``None`` where this type is not sold in that test."""
        return next((square for square in self.squares if square.column == column), None)

    def best(self) -> Square:
        """Return the best line of this type; of equals the one nearest to the aim."""
        aim = self.usual.aim_lb if self.usual is not None and self.usual.aim_lb is not None else 0.0
        return min(
            self.squares,
            key=lambda s: (_BEST_FIRST.index(s.cell.grade), abs(s.cell.test_lb - aim)),
        )


@dataclass(frozen=True, slots=True)
class LineChart:
    """All rows over one ladder of tests [lb]; ``heads`` are the tests in the unit that is read."""

    tests_lb: tuple[float, ...]
    heads: tuple[str, ...]
    unit: str
    rows: tuple[Row, ...]
    rod: Span | None

    def present(self) -> Square | None:
        """Return the line on the reel."""
        return next((s for row in self.rows for s in row.squares if s.present), None)

    def of(self, kind: str, test_lb: float) -> Square | None:
        """Return the cell of a type and test [lb]."""
        cells = (square for row in self.rows if row.type == kind for square in row.squares)
        return next((s for s in cells if abs(s.cell.test_lb - test_lb) <= _SAME_LB), None)


def line_chart(cells: Sequence[Cell], speaker: Speaker) -> LineChart | None:
    """Return the chart of the cells, ``None`` when there are none because the card cannot be read."""
    if not cells:
        return None
    tests = _ladder(cells)
    types = dict.fromkeys(cell.type for cell in cells)
    rows = [
        _row(index, [cell for cell in cells if cell.type is kind], tests, speaker)
        for index, kind in enumerate(types)
    ]
    heads = [_head(test, speaker) for test in tests]
    unit = in_system(LBF_N, Dimension.FORCE, speaker.system, kind="test")[1]
    return LineChart(tests, tuple(heads), unit, tuple(rows), _rod_span(cells[0], speaker))


def chart_of(bench: Bench) -> LineChart | None:
    """Return the line chart of the rig on the bench; heavy after a change."""
    return line_chart(bench.cells(), bench.speaker)


def _ladder(cells: Sequence[Cell]) -> tuple[float, ...]:
    ladder: list[float] = []
    for test in sorted(cell.test_lb for cell in cells):
        if not ladder or test - ladder[-1] > _SAME_LB:
            ladder.append(test)
    return tuple(ladder)


def _head(test_lb: float, speaker: Speaker) -> str:
    """Return a test as short as the head of a narrow column needs it."""
    value, unit = in_system(test_lb * LBF_N, Dimension.FORCE, speaker.system, kind="test")
    decimals = 1 if unit == "lb" or value < _WHOLE_FROM_KG else 0
    return f"{value:.{decimals}f}".removesuffix(".0")


def _row(index: int, cells: Sequence[Cell], tests: Sequence[float], speaker: Speaker) -> Row:
    squares = tuple(_square(index, _column(tests, cell.test_lb), cell, speaker) for cell in cells)
    usual = _usual_span(cells[0], speaker)
    without = "" if usual is not None else f"practice names no test of {cells[0].type} for this technique"
    return Row(str(cells[0].type), squares, usual, without)


def _column(tests: Sequence[float], test_lb: float) -> int:
    return min(range(len(tests)), key=lambda column: abs(tests[column] - test_lb))


def _square(row: int, column: int, cell: Cell, speaker: Speaker) -> Square:
    name = f"{cell.type} {speaker.test(cell.test_lb * LBF_N)}"
    says = _says(cell, speaker)
    spoken = f"{name}: {says}{' (on the reel now)' if cell.present else ''}"
    return Square(row, column, name, str(cell.grade), says, spoken, cell)


def _says(cell: Cell, speaker: Speaker) -> str:
    reason = cell.because
    if reason is None:
        return f"{cell.grade}; nothing speaks against it"
    join = ", because " if reason.severity > Severity.NOTE else "; to know: "
    return f"{cell.grade}{join}{reason.headline(speaker)}"


def _usual_span(cell: Cell, speaker: Speaker) -> Span | None:
    case = cell.report.case
    bounds = case.aim.for_type(cell.type)
    if bounds is None:
        return None
    tests = speaker.span(bounds.low_lb * LBF_N, bounds.high_lb * LBF_N, Dimension.FORCE, "test")
    text = f"{case.technique.name} on {cell.type}: {tests}, aim {speaker.test(bounds.aim_lb * LBF_N)}"
    moved = _moved_words(case.aim, cell, bounds)
    return Span(bounds.low_lb, bounds.high_lb, text + moved, bounds.aim_lb)


def _moved_words(aim: Aim, cell: Cell, bounds: Bounds) -> str:
    """Return which conditions of the day moved the range away from the usual one."""
    unmoved = (bounds.low_lb, bounds.high_lb) == (bounds.base.low, bounds.base.high)
    movers = [move for move in aim.moves(cell.type) if move.steps]
    if unmoved or not movers:
        return ""
    return " (moved: " + ", ".join(move.state.name for move in movers) + ")"


def _rod_span(cell: Cell, speaker: Speaker) -> Span | None:
    rod = cell.report.case.rig.rod
    if rod.line_n is None:
        return None
    kind = " of braid" if rod.line_for_braid else ""
    text = f"rod label {speaker.tests(rod.line_n)}{kind}"
    return Span(rod.line_n.low / LBF_N, rod.line_n.high / LBF_N, text)
