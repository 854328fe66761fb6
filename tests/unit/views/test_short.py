"""In short: the rows agree with the review's own figures and each says how it is known."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.short import how_we_know, short_rows
from rigbuilder.views.short import ShortPanel
from rigbuilder.views.theme_look import Look
from tests.unit.views.rigs import WRONG_FROG, bench_of, bench_with


@pytest.fixture
def frog() -> Bench:
    return bench_of("frog", WRONG_FROG)


def panel_of(qtbot: QtBot, look: Look, bench: Bench) -> ShortPanel:
    panel = ShortPanel(bench, look)
    qtbot.addWidget(panel)
    panel.resize(320, 260)
    panel.show()
    return panel


def test_the_rows_say_the_figures_of_the_review(frog: Bench) -> None:
    assert frog.report is not None
    facts, said = frog.report.case.facts, {row.key: row.value for row in short_rows(frog)}
    assert said["weakest"] == f"{facts.weakest.name}, {frog.speaker.forces(facts.weakest.strength_n)}"
    assert said["drag"].startswith(frog.speaker.forces(facts.drag_recommended_n))
    assert said["line"].startswith(frog.speaker.line(facts.main_wound_m.typical))
    assert f"{100 * facts.hook_share.typical:.2g}" in said["hook"]
    assert said["assumed"].startswith(str(len(frog.reading.assumed)))


@pytest.mark.parametrize("technique", ["frog", "jerkbait", "drop-shot", "deep-diver", "catfish"])
def test_every_row_says_how_it_is_known(technique: str) -> None:
    bench = bench_of(technique)
    for row in short_rows(bench):
        known = how_we_know(bench, row)
        if row.key == "assumed":
            assert len(known) == len(bench.reading.assumed)
            continue
        assert known
        assert any(each.formula for each in known)
        assert any(each.sources for each in known)
        assert all(each.result for each in known)


def test_depth_is_left_out_where_there_is_none() -> None:
    bench = bench_of("frog")
    assert bench.report is not None
    assert bench.report.case.facts.depth_m is None
    assert "depth" not in {row.key for row in short_rows(bench)}


def test_a_value_opens_its_sheet_by_keyboard(qtbot: QtBot, look: Look, frog: Bench) -> None:
    panel = panel_of(qtbot, look, frog)
    row = panel.rows()[0]
    QTest.keyClick(row, Qt.Key.Key_Space)
    sheet = panel.sheet()
    assert sheet is not None
    assert sheet.isVisible()
    assert "goes first" in sheet.text()
    assert "Computed" in sheet.text()
    QTest.keyClick(sheet, Qt.Key.Key_Escape)
    assert not sheet.isVisible()


def test_going_on_elsewhere_closes_the_sheet(qtbot: QtBot, look: Look, frog: Bench) -> None:
    panel = panel_of(qtbot, look, frog)
    panel.activateWindow()
    panel.rows()[1].click()
    sheet = panel.sheet()
    assert sheet is not None
    qtbot.waitUntil(sheet.close_button.hasFocus)
    panel.rows()[2].setFocus()
    qtbot.waitUntil(lambda: not sheet.isVisible())


def test_a_window_may_go_while_the_sheet_is_open(qtbot: QtBot, look: Look, frog: Bench) -> None:
    panel = ShortPanel(frog, look)
    panel.show()
    panel.rows()[0].click()
    panel.deleteLater()
    qtbot.wait(20)
    frog.edit("main.test", "20 lb")


def test_rows_are_named_for_assistive_technology(qtbot: QtBot, look: Look, frog: Bench) -> None:
    for button in panel_of(qtbot, look, frog).rows():
        assert button.accessibleName() == f"{button.row.name}: {button.row.value}"
        assert "how we know" in button.accessibleDescription()
        assert button.height() >= 24


def test_rows_follow_card_and_units(qtbot: QtBot, look: Look, frog: Bench) -> None:
    panel = panel_of(qtbot, look, frog)
    before = panel.rows()
    frog.speak(UnitSystem.METRIC)
    assert " kg" in panel.rows()[0].row.value
    assert panel.rows() == before
    frog.edit("lure.technique", "no such thing")
    assert panel.rows() == ()
    assert panel.empty.isVisible()
    frog.undo_stack.undo()
    assert len(panel.rows()) == len(before)


def test_a_card_that_cannot_be_read_has_no_figures(qtbot: QtBot, look: Look) -> None:
    panel = panel_of(qtbot, look, bench_with({"name": "New"}))
    assert panel.rows() == ()
    assert panel.empty.isVisible()
