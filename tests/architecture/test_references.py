"""PySide6 keeps count: calls that return nothing must not use up ``None``, nor signals ``True``.

PySide6 6.12.0 lost one reference to ``None`` with every call that returns nothing and one to ``True``
with every signal sent. Before Python 3.12 both can be used up, and the program then dies after some
thousand calls. The versions allowed in pyproject.toml leave that release out; this measures that the
one in use is sound.
"""

import sys
import tomllib
from importlib.metadata import version

from packaging.requirements import Requirement
from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from tests.architecture.code import PROJECT

CALLS = 100_000
STEP = 1_000  # small enough to notice a loss long before the interpreter would die of it
SLACK = 100  # other code may hold some more or fewer references at any time


class _Sender(QObject):
    sent = Signal()


def test_widget_calls_lose_no_reference_to_none(qtbot: QtBot) -> None:
    label = QLabel()
    qtbot.addWidget(label)
    for _ in range(CALLS // STEP):
        before = sys.getrefcount(None)
        for _ in range(STEP):
            label.setText("12 lb")
        assert sys.getrefcount(None) > before - SLACK


def test_signals_lose_no_reference_to_true(qtbot: QtBot) -> None:
    sender = _Sender()
    received = 0

    def receive() -> None:
        nonlocal received
        received += 1

    sender.sent.connect(receive)
    for _ in range(CALLS // STEP):
        nothing, yes = sys.getrefcount(None), sys.getrefcount(True)
        for _ in range(STEP):
            sender.sent.emit()
        assert sys.getrefcount(None) > nothing - SLACK
        assert sys.getrefcount(True) > yes - SLACK
    assert received == CALLS


def test_the_release_that_loses_references_is_kept_out() -> None:
    project = tomllib.loads((PROJECT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    wanted = {r.name: r for r in map(Requirement, project["dependencies"])}["PySide6-Essentials"]
    assert not wanted.specifier.contains("6.12.0")
    assert wanted.specifier.contains(version("PySide6-Essentials"))
