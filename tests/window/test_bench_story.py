"""A card is opened, understood, mended, saved and opened again: once with the mouse, once by keys alone."""

import json
import os
import signal
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtWidgets import QApplication, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from rigbuilder.views.theme_look import Look, Mode
from tests.unit.viewmodels.parts import demo_card, save_card
from tests.unit.views.parts import Window
from tests.window.desk import Desk, Program, wait_for


@pytest.fixture
def window(tmp_path: Path, qapp: QApplication) -> Iterator[Window]:
    window = Window(tmp_path, Look(qapp, mode=Mode.LIGHT))
    window.main.activateWindow()
    yield window
    window.close()
    qapp.setStyleSheet("")


def _read(path: Path) -> dict[str, Any]:
    document: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return document


def _remedies(window: Window) -> list[QPushButton]:
    buttons = window.main.panels.reasons.findChildren(QPushButton)
    return [each for each in buttons if each.property("weight") == "remedy" and each.isVisible()]


def _first_remedy(window: Window, qtbot: QtBot) -> QPushButton:
    """Wait until the remedies are tried out and lie still, as someone who reads them does."""
    before: list[object] = []
    for _ in range(20):
        qtbot.wait(250)
        found = _remedies(window)
        now: list[object] = [(each.text(), each.mapToGlobal(each.rect().center())) for each in found]
        if found and now == before:
            return found[0]
        before = now
    raise AssertionError("the remedies never lay still")


def _click(desk: Desk, qtbot: QtBot, widget: QWidget) -> None:
    """Click the middle of a widget as a hand does."""
    qtbot.waitUntil(lambda: widget.visibleRegion().contains(widget.rect().center()), timeout=5000)
    top = widget.window()
    place = widget.mapTo(top, widget.rect().center())
    desk.click(str(int(top.winId())), x=place.x(), y=place.y())


def test_mending_a_rig_with_the_mouse(window: Window, desk: Desk, qtbot: QtBot) -> None:
    main = window.main
    main.resize(1700, 980)
    assert "fault" in main.header.verdict.text()
    _click(desk, qtbot, main.header.verdict)
    button = _first_remedy(window, qtbot)
    said = button.text()
    _click(desk, qtbot, button)
    qtbot.waitUntil(lambda: main.isWindowModified(), timeout=5000)
    assert "fault" not in main.header.verdict.text(), said
    undo = next(each for each in main.header.findChildren(QWidget) if "Undo" in each.accessibleName())
    _click(desk, qtbot, undo)
    qtbot.waitUntil(lambda: "fault" in main.header.verdict.text(), timeout=5000)
    assert window.bench.document == demo_card()
    redo = next(each for each in main.header.findChildren(QWidget) if "Redo" in each.accessibleName())
    _click(desk, qtbot, redo)
    qtbot.waitUntil(lambda: "fault" not in main.header.verdict.text(), timeout=5000)
    desk.key("ctrl+s")
    qtbot.waitUntil(lambda: not main.isWindowModified(), timeout=5000)
    kept = window.bench.document
    assert main.talk.open(window.card)
    assert window.bench.document == kept == _read(window.card)
    assert "fault" not in main.header.verdict.text()


def test_spoiling_and_mending_a_rig_by_keys_alone(window: Window, desk: Desk, qtbot: QtBot) -> None:
    main = window.main
    qtbot.waitUntil(lambda: QApplication.focusWidget() is main.header.verdict, timeout=5000)
    desk.key("ctrl+1")
    technique = main.form.sections["lure"].rows["lure.technique"].target
    qtbot.waitUntil(lambda: QApplication.focusWidget() in (technique, technique.focusProxy()), timeout=5000)
    for _ in range(30):
        here = QApplication.focusWidget()
        if here is not None and here.objectName() == "field:main.test":
            break
        desk.key("Tab")
        qtbot.waitUntil(lambda here=here: QApplication.focusWidget() is not here, timeout=5000)
    desk.key("ctrl+a")
    desk.type("16 bananas")
    desk.key("Tab")
    qtbot.waitUntil(lambda: "to fill in or mend" in main.header.verdict.text(), timeout=5000)
    desk.key("ctrl+z")
    qtbot.waitUntil(lambda: window.bench.document == demo_card(), timeout=5000)
    desk.key("ctrl+5")
    for _ in range(40):
        here = QApplication.focusWidget()
        if here is not None and here.property("weight") == "remedy":
            break
        desk.key("Tab")
        qtbot.waitUntil(lambda here=here: QApplication.focusWidget() is not here, timeout=5000)
    desk.key("space")
    qtbot.waitUntil(lambda: main.isWindowModified(), timeout=5000)
    assert "fault" not in main.header.verdict.text()
    desk.key("ctrl+s")
    qtbot.waitUntil(lambda: not main.isWindowModified(), timeout=5000)
    assert _read(window.card) == window.bench.document


def test_the_program_opens_renames_saves_and_reopens_a_card(
    start: Callable[..., Program], desk: Desk, tmp_path: Path
) -> None:
    card = save_card(tmp_path / "own")
    program = start(card)
    program.window("Pad frog, rod 3")
    desk.key("F2", "ctrl+a")
    desk.type("Mat frog")
    program.wait_for_title("Mat frog")
    desk.key("ctrl+s")
    wait_for(lambda: _read(card)["name"] == "Mat frog", "the card to be saved")
    desk.key("ctrl+q")
    assert program.wait() == 0
    again = start()
    again.window("Mat frog")
    desk.key("ctrl+q")
    assert again.wait() == 0
    assert _read(card) == demo_card() | {"name": "Mat frog"}
    assert sorted(path.name for path in card.parent.iterdir()) == [card.name]


@pytest.mark.parametrize("how", [signal.SIGTERM, signal.SIGKILL])
def test_unsaved_work_outlives_the_program(
    start: Callable[..., Program], desk: Desk, tmp_path: Path, home: Path, how: signal.Signals
) -> None:
    card = save_card(tmp_path / "own")
    program = start(card)
    program.window("Pad frog, rod 3")
    desk.key("F2", "ctrl+a")
    desk.type("Half done")
    program.wait_for_title("Half done")
    drafts = home / ".local" / "state" / "Rigbuilder" / "drafts"
    if how is signal.SIGKILL:
        wait_for(lambda: any("Half done" in each.read_text() for each in drafts.glob("*.json")), "the draft")
    os.kill(program.process.pid, how)
    assert program.wait() == (0 if how is signal.SIGTERM else -how)
    assert _read(card) == demo_card()
    again = start()
    again.window("Unsaved work")
    desk.key("Return")
    again.window("Half done")
    desk.key("ctrl+s")
    wait_for(lambda: _read(card)["name"] == "Half done", "the card to be saved")
    desk.key("ctrl+q")
    assert again.wait() == 0


def test_closing_with_unsaved_work_asks_first(
    start: Callable[..., Program], desk: Desk, tmp_path: Path
) -> None:
    card = save_card(tmp_path / "own")
    program = start(card)
    program.window("Pad frog, rod 3")
    desk.key("F2", "ctrl+a")
    desk.type("Thrown away")
    program.wait_for_title("Thrown away")
    desk.key("ctrl+q")
    program.window("Unsaved changes")
    desk.key("Escape")
    program.window("Thrown away")
    desk.key("ctrl+q")
    program.window("Unsaved changes")
    desk.key("Tab", "space")
    assert program.wait() == 0
    assert _read(card) == demo_card()
