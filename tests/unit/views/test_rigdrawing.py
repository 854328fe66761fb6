"""The drawing in the window: by pointer, by keyboard, by ear; before and after."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QSignalSpy, QTest
from pytestqt.qtbot import QtBot

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.views.rigdrawing import DrawingPanel
from rigbuilder.views.rigdrawing_handle import PartHandle
from rigbuilder.views.theme_look import Look, Mode
from tests.unit.views.rigs import WRONG_FROG, bench_of, bench_with


@pytest.fixture
def bench() -> Bench:
    """A frog on sinking line."""
    return bench_of("frog", WRONG_FROG)


@pytest.fixture
def panel(bench: Bench, look: Look, qtbot: QtBot) -> DrawingPanel:
    """The drawing of it, on the screen."""
    panel = DrawingPanel(bench, look)
    qtbot.addWidget(panel)
    panel.resize(700, 340)
    panel.show()
    qtbot.waitExposed(panel)
    panel.grab()
    return panel


def handles(panel: DrawingPanel) -> dict[Part, PartHandle]:
    """Return the handles that are to be seen."""
    return {h.part: h for h in panel.findChildren(PartHandle) if not h.isHidden()}


def test_every_part_has_a_name_a_description_and_room_for_a_finger(panel: DrawingPanel) -> None:
    found = handles(panel)
    assert set(found) == set(Part)
    for handle in found.values():
        interface = QAccessible.queryAccessibleInterface(handle)
        assert interface.text(QAccessible.Text.Name)
        assert interface.text(QAccessible.Text.Description)
        assert min(handle.width(), handle.height()) >= 24
    assert len({handle.accessibleName() for handle in found.values()}) == len(found)


def test_the_drawing_as_a_whole_is_described_with_its_key_numbers(panel: DrawingPanel, bench: Bench) -> None:
    said = panel.canvas.accessibleDescription()
    report = bench.report
    assert report is not None
    assert bench.speaker.forces(report.case.facts.main_straight_n) in said
    for finding in report.findings:
        assert finding.headline(bench.speaker) in said


@pytest.mark.parametrize("part", [Part.LURE, Part.ROD, Part.REEL])
def test_a_press_on_a_part_chooses_it(panel: DrawingPanel, part: Part) -> None:
    drawn = panel.canvas.drawn
    assert drawn is not None
    spy = QSignalSpy(panel.part_chosen)
    spot = drawn.parts[part].boundingRect().center()
    assert drawn.parts[part].contains(spot)
    QTest.mouseClick(panel.canvas, Qt.MouseButton.LeftButton, pos=QPoint(round(spot.x()), round(spot.y())))
    assert [spy.at(k)[0] for k in range(spy.count())] == [part]
    assert handles(panel)[part].isChecked()


def test_arrows_walk_the_parts_and_enter_chooses(panel: DrawingPanel, qtbot: QtBot) -> None:
    found = handles(panel)
    order = [part for part in Part if part in found]
    found[order[0]].setFocus()
    spy = QSignalSpy(panel.part_chosen)
    QTest.keyClick(found[order[0]], Qt.Key.Key_Right)
    assert panel.focusWidget() is found[order[1]]
    QTest.keyClick(found[order[1]], Qt.Key.Key_Return)
    QTest.keyClick(found[order[1]], Qt.Key.Key_Left)
    assert panel.focusWidget() is found[order[0]]
    QTest.keyClick(found[order[0]], Qt.Key.Key_Space)
    assert [spy.at(k)[0] for k in range(spy.count())] == [order[1], order[0]]


def test_a_part_chosen_elsewhere_is_ringed_without_an_echo(panel: DrawingPanel) -> None:
    spy = QSignalSpy(panel.part_chosen)
    panel.choose_part(Part.MAIN)
    assert handles(panel)[Part.MAIN].isChecked()
    panel.choose_part(None)
    assert not handles(panel)[Part.MAIN].isChecked()
    assert spy.count() == 0


def test_it_follows_an_edit_and_the_units(panel: DrawingPanel, bench: Bench, qtbot: QtBot) -> None:
    before = panel.scene()
    assert before is not None
    bench.edit("cast", "30 m")
    after = panel.scene()
    assert after is not None
    assert after.cast_m == pytest.approx(30.0)
    qtbot.waitUntil(lambda: panel.canvas.at_rest)
    drawn = panel.canvas.drawn
    panel.grab()
    assert drawn is not None


def test_a_preview_is_drawn_in_full_over_the_present_rig(panel: DrawingPanel, bench: Bench) -> None:
    usual = bench_of("frog").report
    bench.look_at(usual)
    scene = panel.scene()
    assert scene is not None
    assert scene.caption == "looking at: braid 50 lb"
    assert "looking at: braid 50 lb" in panel.canvas.accessibleDescription()
    bench.look_at(None)
    scene = panel.scene()
    assert scene is not None
    assert scene.main.type == "fluorocarbon"
    assert not scene.caption


def test_a_card_that_cannot_be_read_yet_is_not_drawn_but_explained(look: Look, qtbot: QtBot) -> None:
    panel = DrawingPanel(bench_with({}), look)
    qtbot.addWidget(panel)
    panel.grab()
    assert panel.scene() is None
    assert "as soon as" in panel.canvas.accessibleDescription()
    assert not handles(panel)


def test_the_theme_switch_paints_anew(panel: DrawingPanel, look: Look) -> None:
    light = panel.grab().toImage().pixelColor(350, 4)
    look.set_mode(Mode.DARK)
    dark = panel.grab().toImage().pixelColor(350, 4)
    look.set_mode(Mode.LIGHT)
    assert light.lightness() > 200 > 100 > dark.lightness()
