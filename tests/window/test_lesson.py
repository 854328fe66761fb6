"""A lesson in a real window: by keyboard in the program itself, killed half-way, resumed; and by mouse."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from rigbuilder.store.progress import ProgressStore
from rigbuilder.viewmodels.lesson import LessonRun
from rigbuilder.views.lesson_window import LessonWindow
from rigbuilder.views.theme_look import Look
from tests.unit.lessons.cases import lesson, shipped
from tests.unit.viewmodels.parts import make_bench
from tests.window.desk import Desk, Program, wait_for

LESSONS, TITLE = "Lessons — Rigbuilder", "What the labels say — Mia — Rigbuilder"
PARTS = 9


def _kept(home: Path) -> dict[str, Any]:
    path = home / ".local" / "share" / "Rigbuilder" / "progress" / "mia.rigprogress"
    told: dict[str, Any] = json.loads(path.read_text(encoding="utf-8")) if path.exists() else {}
    return told


def _take(program: Program, desk: Desk) -> None:
    program.window("Rigbuilder")
    desk.key("ctrl+shift+t")
    program.window(LESSONS)
    desk.key("Return")
    desk.type("Mia")
    desk.key("Return")
    program.window(TITLE)


def test_a_lesson_by_keyboard_is_killed_and_goes_on(
    start: Callable[..., Program], desk: Desk, home: Path
) -> None:
    program = start()
    _take(program, desk)
    desk.key("ctrl+Return", *["Tab"] * PARTS, "space", "ctrl+Return")
    wait_for(lambda: len(_kept(home).get("answers", [])) == 1, "the first answer in the file")
    assert _kept(home)["answers"][0]["right"] is True
    desk.key("ctrl+Return")
    wait_for(lambda: _kept(home)["sitting"]["at"] == 1, "the second rig")
    desk.key("space", "ctrl+h")
    wait_for(lambda: _kept(home)["sitting"]["hints"] == 1, "the hint in the file")
    before = _kept(home)
    assert [mark["part"] for mark in before["sitting"]["marks"]] == ["lure"]
    program.process.kill()
    program.process.wait()
    again = start()
    _take(again, desk)
    assert _kept(home) == before
    desk.key("ctrl+h")
    wait_for(lambda: _kept(home)["sitting"]["hints"] == 2, "the next hint after the kill")
    assert _kept(home)["answers"] == before["answers"]


def test_a_lesson_by_mouse(desk: Desk, qtbot: QtBot, tmp_path: Path, qapp: Any) -> None:
    store = ProgressStore(tmp_path)
    path = shipped()[0]
    window = LessonWindow(LessonRun(lesson(path), path, store.load("Tom"), store, make_bench({})), Look(qapp))
    qtbot.addWidget(window)
    window.show()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)

    def press(widget: QWidget) -> None:
        qtbot.waitUntil(widget.isVisible)
        qtbot.wait(50)
        spot = widget.mapToGlobal(widget.rect().center())
        desk.click_screen(x=spot.x(), y=spot.y())

    press(window.opening.button)
    press(window.answer.nothing)
    qtbot.waitUntil(lambda: window.answer.show_button.isEnabled())
    press(window.answer.show_button)
    qtbot.waitUntil(lambda: window.run.sitting.shown)
    press(window.outcome.next_button)
    qtbot.waitUntil(lambda: window.run.sitting.at == 1)
    assert [answer.right for answer in store.load("Tom").answers] == [True]
    qapp.setStyleSheet("")


def test_a_lesson_from_a_file_manager_opens_in_the_running_window(
    start: Callable[..., Program], desk: Desk, home: Path
) -> None:
    sent = home / "class.riglesson"
    sent.write_bytes(shipped()[0].read_bytes())
    program = start()
    program.window("Hollow-body frog")
    assert start(sent).wait() == 0
    program.window(LESSONS)
    desk.type("Mia")
    desk.key("Return")
    program.window(TITLE)
