"""The line chart on real cards: places, grades, ranges, pointer and keyboard."""

import time

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPixmap
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.linechart import LineChart, chart_of
from rigbuilder.views.linechart import LineChartPanel
from rigbuilder.views.linechart_keys import moved
from rigbuilder.views.linechart_layout import CELL, LABEL, ChartLayout
from rigbuilder.views.preview_toast import toast_of
from rigbuilder.views.theme_look import Look
from tests.unit.views.rigs import WRONG_FROG, bench_of, bench_with

LEFT = Qt.MouseButton.LeftButton
FULL_HD_MIDDLE, SMALL_MIDDLE = 1100, 690
CHART_IN_SMALL_WINDOW = 640  # what is left of a window 1366 wide for the chart itself


def panel_of(qtbot: QtBot, look: Look, bench: Bench, width: int = SMALL_MIDDLE) -> LineChartPanel:
    panel = LineChartPanel(bench, look)
    qtbot.addWidget(panel)
    panel.resize(width, panel.sizeHint().height())
    panel.show()
    panel.make_now()
    return panel


def chart(bench: Bench) -> LineChart:
    made = chart_of(bench)
    assert made is not None
    return made


@pytest.fixture
def frog() -> Bench:
    return bench_of("frog", WRONG_FROG)


def test_the_chart_is_the_review_cell_by_cell(frog: Bench) -> None:
    made = chart(frog)
    squares = [square for row in made.rows for square in row.squares]
    assert [square.cell for square in squares] == frog.cells()
    for square in squares:
        assert made.tests_lb[square.column] == pytest.approx(square.cell.test_lb)
        assert square.spoken.startswith(f"{square.cell.type} ")
        assert str(square.cell.grade) in square.spoken
        because = square.cell.because
        if because is not None:
            assert because.headline(frog.speaker) in square.spoken


def test_a_fault_is_given_as_the_reason(frog: Bench) -> None:
    present = chart(frog).present()
    assert present is not None
    assert present.spoken.startswith("fluorocarbon 16 lb: never, because sinking fluorocarbon 16 lb")


def test_tests_stand_in_order_on_one_ladder_with_an_odd_one_among_them() -> None:
    made = chart(bench_of("frog", {"main.type": "nylon", "main.test": "13 lb"}))
    assert list(made.tests_lb) == sorted(made.tests_lb)
    assert 13.0 in made.tests_lb
    column = made.tests_lb.index(13.0)
    assert [row.type for row in made.rows if row.at(column) is not None] == ["nylon"]


@pytest.mark.parametrize("technique", ["frog", "jerkbait", "drop-shot", "punching", "musky-jerk"])
@pytest.mark.parametrize("width", [CHART_IN_SMALL_WINDOW, FULL_HD_MIDDLE])
def test_cells_can_be_pressed_and_lie_apart(technique: str, width: int) -> None:
    made = chart(bench_of(technique))
    layout = ChartLayout(made, width, 1.0)
    boxes = [layout.cell(square.row, square.column) for row in made.rows for square in row.squares]
    assert layout.step >= CELL
    assert layout.right <= max(width, LABEL + CELL * len(made.tests_lb))
    assert all(box.height() >= CELL for box in boxes)
    assert not any(one.intersects(other) for i, one in enumerate(boxes) for other in boxes[i + 1 :])
    for row in made.rows:
        for square in row.squares:
            assert layout.square_at(layout.cell(square.row, square.column).center()) is square


def test_the_usual_chart_fits_a_small_window() -> None:
    made = chart(bench_of("frog"))
    assert ChartLayout(made, CHART_IN_SMALL_WINDOW, 1.0).right <= CHART_IN_SMALL_WINDOW


def test_brackets_span_the_columns_they_name() -> None:
    bench = bench_of("jerkbait", {"rod.line": "8-14 lb"})
    made = chart(bench)
    layout = ChartLayout(made, SMALL_MIDDLE, 1.0)
    assert made.rod is not None
    left, right = layout.span(made.rod)
    assert left == pytest.approx(layout.head(made.tests_lb.index(8.0)).left())
    assert right == pytest.approx(layout.head(made.tests_lb.index(14.0)).right())
    row = next(row for row in made.rows if row.type == "fluorocarbon")
    aim = bench.cells()[0].report.case.aim.for_type(row.squares[0].cell.type)
    assert row.usual is not None
    assert aim is not None
    assert (row.usual.low_lb, row.usual.aim_lb, row.usual.high_lb) == (aim.low_lb, aim.aim_lb, aim.high_lb)
    column = layout.head(made.tests_lb.index(aim.aim_lb))
    assert layout.at(aim.aim_lb) == pytest.approx(column.center().x())


def test_a_range_between_two_rungs_ends_on_their_boundary(frog: Bench) -> None:
    layout = ChartLayout(chart(frog), SMALL_MIDDLE, 1.0)
    assert layout.at(35.0) == pytest.approx(layout.head(layout.chart.tests_lb.index(40.0)).left())


def test_conditions_that_move_the_range_are_named() -> None:
    usual = chart(bench_of("flip-jig"))
    moved_chart = chart(bench_of("flip-jig", {"water.cover": "open", "fish.weight": "0.5 kg"}))
    before = [row.usual.text for row in usual.rows if row.usual is not None]
    after = [row.usual.text for row in moved_chart.rows if row.usual is not None]
    assert before != after
    assert any("moved:" in text for text in after)


def test_arrows_reach_every_cell_and_stay_inside(frog: Bench) -> None:
    made = chart(frog)
    start = made.present()
    assert start is not None
    reached, waiting = {start.spoken}, [start]
    arrows = (Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Down)
    while waiting:
        here = waiting.pop()
        for key in arrows:
            target = moved(made, here, key)
            assert target is not None
            if target.spoken not in reached:
                reached.add(target.spoken)
                waiting.append(target)
    assert reached == {square.spoken for row in made.rows for square in row.squares}
    first, last = made.rows[start.row].squares[0], made.rows[start.row].squares[-1]
    assert moved(made, start, Qt.Key.Key_Home) is first
    assert moved(made, start, Qt.Key.Key_End) is last
    assert moved(made, first, Qt.Key.Key_Left) is first
    assert moved(made, start, Qt.Key.Key_A) is None


def test_looking_changes_nothing_and_enter_puts_on(qtbot: QtBot, look: Look, frog: Bench) -> None:
    panel, before = panel_of(qtbot, look, frog), frog.document
    panel.grid.setFocus()
    panel.grid.set_current(3, panel.grid.chart().tests_lb.index(50.0))  # type: ignore[union-attr]
    panel.grid.looked.emit(panel.grid.current())
    qtbot.waitUntil(lambda: frog.preview is not None)
    assert frog.document == before
    assert panel.badge.text() == "braid 50 lb"
    assert panel.grid.accessibleDescription().startswith("braid 50 lb: ")
    QTest.keyClick(panel.grid, Qt.Key.Key_Return)
    assert frog.text("main.type") == "braid"
    assert frog.text("main.test") == "50 lb"
    assert frog.undo_stack.count() == 1
    toast_of(panel).undo_button.click()
    assert frog.document == before


def test_a_click_puts_the_line_on_and_the_frame_follows(qtbot: QtBot, look: Look, frog: Bench) -> None:
    panel = panel_of(qtbot, look, frog)
    layout = panel.grid.layout_now()
    assert layout is not None
    square = layout.chart.of("braid", 40.0)
    assert square is not None
    QTest.mouseClick(panel.grid, LEFT, pos=layout.cell(square.row, square.column).center().toPoint())
    assert (frog.text("main.type"), frog.text("main.test")) == ("braid", "40 lb")
    qtbot.waitUntil(lambda: chart_shown(panel).present().name == "braid 40 lb")  # type: ignore[union-attr]
    assert frog.preview is None


def chart_shown(panel: LineChartPanel) -> LineChart:
    shown = panel.grid.chart()
    assert shown is not None
    return shown


def test_a_click_on_a_type_looks_at_its_best_line(qtbot: QtBot, look: Look, frog: Bench) -> None:
    panel, before = panel_of(qtbot, look, frog), frog.document
    layout = panel.grid.layout_now()
    assert layout is not None
    QTest.mouseClick(panel.grid, LEFT, pos=layout.label(3).center().toPoint())
    best = panel.grid.current()
    assert best is not None
    assert best.cell.type == "braid"
    assert best.grade in ("first choice", "works")
    assert frog.document == before


def test_an_empty_place_is_no_cell(frog: Bench) -> None:
    layout = ChartLayout(chart(frog), SMALL_MIDDLE, 1.0)
    beyond = layout.cell(0, layout.chart.tests_lb.index(80.0)).center()
    assert layout.square_at(beyond) is None
    assert layout.square_at(QPointF(-5, -5)) is None


def test_typing_is_not_held_up_and_the_chart_follows(qtbot: QtBot, look: Look, frog: Bench) -> None:
    panel = panel_of(qtbot, look, frog)
    old = panel.grid.chart()
    frog.edit("main.test", "20 lb")
    assert panel.grid.chart() is old
    qtbot.waitUntil(lambda: panel.grid.chart() is not old)
    present = chart_shown(panel).present()
    assert present is not None
    assert present.name == "fluorocarbon 20 lb"


def test_a_card_that_cannot_be_read_has_no_chart(qtbot: QtBot, look: Look) -> None:
    panel = panel_of(qtbot, look, bench_with({"name": "New"}))
    assert panel.grid.chart() is None
    assert "as soon as" in panel.words.text()
    QTest.keyClick(panel.grid, Qt.Key.Key_Return)


def test_units_change_the_heads_only(qtbot: QtBot, look: Look, frog: Bench) -> None:
    panel = panel_of(qtbot, look, frog)
    before = [row.type for row in chart_shown(panel).rows]
    frog.speak(UnitSystem.METRIC)
    qtbot.waitUntil(lambda: chart_shown(panel).unit == "kg")
    assert [row.type for row in chart_shown(panel).rows] == before


def test_painting_takes_a_few_milliseconds(qtbot: QtBot, look: Look, frog: Bench) -> None:
    panel = panel_of(qtbot, look, frog)
    sheet = QPixmap(panel.grid.size())
    panel.grid.render(sheet)
    times = []
    for _ in range(15):
        start = time.perf_counter()
        panel.grid.render(sheet)
        times.append(time.perf_counter() - start)
    assert min(times) < 0.005
