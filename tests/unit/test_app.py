"""Wiring: the window stands up over whatever the person's folders hold."""

import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication

from rigbuilder.app import begin, build
from rigbuilder.store.paths import Places, find_places
from rigbuilder.store.process import Process, mark, this_process
from rigbuilder.views.controls.ask import ScriptedAsk
from rigbuilder.views.window import MainWindow
from tests.unit.viewmodels.parts import demo_card, save_card

PROJECT = Path(__file__).resolve().parents[2]


class Start:
    """One start of the program, without its event loop."""

    def __init__(self, application: QApplication) -> None:
        self.application = application
        self.remarks: list[str] = []
        self.windows: list[MainWindow] = []

    def __call__(self, *cards: Path, places: Places | None = None) -> MainWindow:
        window = build(self.application, places or find_places(), self.remarks)
        window.ask = window.talk._ask = ScriptedAsk()
        self.windows.append(window)
        begin(window, cards, self.remarks)
        return window


@pytest.fixture
def start(qapp: QApplication) -> Iterator[Start]:
    start = Start(qapp)
    yield start
    for window in start.windows:
        window.bench.undo_stack.setClean()
        window.close()
        window.deleteLater()
    qapp.setStyleSheet("")


def test_the_first_start_shows_a_ready_rig(start: Start) -> None:
    window = start()
    assert window.bench.reading.problems == ()
    assert window.bench.report is not None
    assert not window.desk.is_dirty
    assert start.remarks == []


def test_the_last_card_comes_back(start: Start, tmp_path: Path) -> None:
    first = start(save_card(tmp_path))
    assert first.close()
    assert start().desk.path == tmp_path / "frog.rigcard"


def test_of_several_cards_the_first_is_opened_the_others_are_at_hand(start: Start, tmp_path: Path) -> None:
    paths = [save_card(tmp_path, demo_card() | {"name": name}, f"{name}.rigcard") for name in "abc"]
    window = start(*paths)
    assert window.desk.path == paths[0]
    assert window.preferences.recent == tuple(paths)


def test_a_card_that_cannot_be_opened_leaves_a_ready_rig(start: Start, tmp_path: Path) -> None:
    window = start(tmp_path / "nowhere.rigcard")
    assert isinstance(window.ask, ScriptedAsk)
    assert "nowhere.rigcard" in window.ask.asked[-1]
    assert window.bench.report is not None


def test_a_start_clears_up_after_a_killed_one_and_finishes_its_import(start: Start, tmp_path: Path) -> None:
    places = find_places()
    remnant = f".rigbuilder-{mark(Process(this_process().host, 'an earlier start', 7, '1'))}"
    places.cards.mkdir(parents=True)
    (places.cards / f"{remnant}-0123456789abcdef.part").write_text("half a card")
    ready = places.cards / f"{remnant.replace('rigbuilder-', 'rigbuilder-import-')}-89abcdef.ready"
    ready.mkdir()
    card = save_card(ready)
    start(places=places)
    assert [path.name for path in places.cards.iterdir()] == [card.name]
    assert start.remarks == ["An import that was cut short is finished; cards brought in: 1."]


def test_a_house_file_is_used(start: Start) -> None:
    places = find_places()
    places.house.write_text('[severity]\nsinking-line-on-surface-lure = "note"\n')
    window = start()
    assert start.remarks == []
    assert window.bench.house.severity("sinking-line-on-surface-lure") == "note"


@pytest.mark.parametrize("content", ["[severity", '[techniques."juggling".drag]\npercent = [1, 2]\n'])
def test_a_house_file_that_means_nothing_is_named_and_left_alone(start: Start, content: str) -> None:
    places = find_places()
    places.house.write_text(content)
    window = start()
    assert window.bench.house.is_shipped
    assert "house" in start.remarks[0]
    assert places.house.read_text() == content
    assert window.toast.isVisibleTo(window)


def test_folders_that_cannot_be_used_are_told_and_stop_nothing(
    start: Start, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").write_text("")
    for name in ("XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME"):
        monkeypatch.setenv(name, str(tmp_path / "file"))
    places = find_places()
    start.remarks.extend(map(str, places.troubles))
    window = start(places=places)
    assert len(start.remarks) >= 3
    window.bench.edit("main.test", "60 lb")
    window.desk.keeper.flush()
    assert window.bench.text("main.test") == "60 lb"


_LEAN = """
import sys
import rigbuilder.app
heavy = ("scipy", "PySide6.QtNetwork", "PySide6.QtPrintSupport")
print(",".join(name for name in heavy if name in sys.modules))
"""


def test_the_start_imports_nothing_that_the_first_window_does_not_need() -> None:
    environment = {**os.environ, "PYTHONPATH": str(PROJECT), "QT_QPA_PLATFORM": "offscreen"}
    done = subprocess.run(
        [sys.executable, "-c", _LEAN],
        capture_output=True,
        text=True,
        env=environment,
        cwd=PROJECT,
        check=True,
    )
    assert done.stdout.strip() == ""
