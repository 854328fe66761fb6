"""The harness itself, and a display that behaves as a desktop does."""

from collections.abc import Callable

from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from tests.window.desk import Desk, Program

WINDOW = """
import sys
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QApplication, QLineEdit

application = QApplication(sys.argv)
field = QLineEdit()
field.setWindowTitle("empty")
field.textChanged.connect(lambda text: field.setWindowTitle(f"typed {text}"))
QShortcut(QKeySequence("Ctrl+Q"), field, application.quit)
field.resize(400, 40)
field.show()
sys.exit(application.exec())
"""


def test_keys_reach_a_real_window(start: Callable[..., Program], desk: Desk) -> None:
    program = start(script=WINDOW)
    program.window("empty")
    desk.type("12 lb")
    program.wait_for_title("typed 12 lb")
    desk.key("ctrl+q")
    assert program.wait() == 0


def test_the_mouse_reaches_a_real_window(start: Callable[..., Program], desk: Desk) -> None:
    program = start(script=WINDOW)
    window = program.window("empty")
    desk.resize(window, width=600, height=60)
    assert desk.box(window).width == 600
    desk.click(window, x=590, y=30)
    desk.type("0,28 mm")
    program.wait_for_title("typed 0,28 mm")
    desk.close(window)
    assert program.wait() == 0


def test_a_window_of_this_process_gets_the_focus(qtbot: QtBot) -> None:
    field = QLineEdit()
    qtbot.addWidget(field)
    field.show()
    field.activateWindow()
    qtbot.waitUntil(field.hasFocus)
    qtbot.keyClicks(field, "PE 1.5")
    assert field.text() == "PE 1.5"
    assert field.window().windowHandle().isActive()
