"""Opening, saving, watching and recovering a card; no test may lose a keystroke."""

import errno
import json
import os
import signal
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from pytestqt.qtbot import QtBot

from rigbuilder import resources
from rigbuilder.store import syscalls
from rigbuilder.store.lock import Notice
from rigbuilder.store.process import Process
from rigbuilder.viewmodels.desk import Desk
from rigbuilder.viewmodels.outcome import Fate
from tests.unit.viewmodels.parts import Room, demo_card, make_room, save_card

pytestmark = pytest.mark.usefixtures("qapp")

PROJECT = Path(__file__).resolve().parents[3]
OTHER = Process("elsewhere", "boot", 4242, "1")


@pytest.fixture
def room(tmp_path: Path) -> Room:
    return make_room(tmp_path)


def _read(path: Path) -> dict[str, Any]:
    document: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return document


def _open_dirty(room: Room, path: Path) -> Desk:
    assert room.desk.open(path).done
    room.bench.edit("main.test", "17 lb")
    return room.desk


def test_a_new_card_is_a_usual_rig_that_is_right_at_once(room: Room) -> None:
    assert room.bench.reading.problems == ()
    assert not room.desk.is_dirty
    assert room.desk.path is None


def test_two_new_cards_have_identities_of_their_own(room: Room) -> None:
    first = room.desk.document["id"]
    room.desk.new("frog")
    assert room.desk.document["id"] != first


def test_the_first_save_finds_a_safe_name_and_later_ones_stay_there(room: Room) -> None:
    room.bench.edit("name", "Con: the / best?")
    assert room.desk.save().done
    path = room.desk.path
    assert path is not None
    assert path.parent == room.store.folder
    assert not set(path.name) & set('/:?\\"')
    room.bench.edit("main.test", "40 lb")
    assert room.desk.save().done
    assert room.desk.path == path
    assert _read(path)["main"]["test"] == "40 lb"
    assert not room.desk.is_dirty


def test_a_half_finished_card_is_saved_as_it_is(room: Room) -> None:
    room.desk.new("")
    room.bench.edit("main.test", "16 bananas")
    assert len(room.bench.reading.problems) > 3
    assert room.desk.save().done
    assert room.desk.path is not None
    assert _read(room.desk.path)["main"]["test"] == "16 bananas"


def test_what_was_opened_and_saved_unchanged_says_the_same(room: Room, tmp_path: Path) -> None:
    path = save_card(tmp_path, demo_card() | {"future": {"key": [1, 2]}})
    desk = _open_dirty(room, path)
    room.bench.undo_stack.undo()
    assert not desk.is_dirty
    assert desk.save().done
    assert _read(path) == demo_card() | {"future": {"key": [1, 2]}}


def test_undo_goes_on_after_saving_and_the_saved_state_is_known_again(room: Room, tmp_path: Path) -> None:
    desk = _open_dirty(room, save_card(tmp_path))
    assert desk.save().done
    room.bench.undo_stack.undo()
    assert desk.is_dirty
    room.bench.undo_stack.redo()
    assert not desk.is_dirty


def test_a_card_saved_elsewhere_gets_an_identity_of_its_own(room: Room, tmp_path: Path) -> None:
    path = save_card(tmp_path)
    desk = _open_dirty(room, path)
    assert desk.save_as(tmp_path / "copy").done
    copy = tmp_path / "copy.rigcard"
    assert desk.path == copy
    assert _read(copy)["id"] != _read(path)["id"]
    assert _read(path)["main"]["test"] == "16 lb"
    room.bench.edit("main.test", "18 lb")
    assert desk.save().done
    assert _read(copy)["main"]["test"] == "18 lb"


def test_another_file_is_replaced_only_when_that_is_meant(room: Room, tmp_path: Path) -> None:
    path = save_card(tmp_path)
    assert room.desk.save_as(path).fate is Fate.TAKEN
    assert _read(path) == demo_card()
    assert room.desk.save_as(path, over=True).done
    assert _read(path)["name"] != demo_card()["name"]


def test_a_shipped_card_stays_as_it_is(room: Room) -> None:
    shipped = resources.path("demo", "pad-frog.rigcard")
    before = shipped.read_bytes()
    assert room.desk.open(shipped).done
    assert room.desk.path is None
    assert room.desk.save().done
    assert shipped.read_bytes() == before
    assert room.desk.path is not None
    assert room.desk.path.parent == room.store.folder


@pytest.mark.parametrize(
    ("content", "says"),
    [("{", "cannot be read"), ("[]", "cannot be read"), ('{"format": "other"}', "format")],
)
def test_a_broken_card_leaves_the_bench_as_it_is(room: Room, tmp_path: Path, content: str, says: str) -> None:
    path = tmp_path / "broken.rigcard"
    path.write_text(content)
    before = room.bench.document
    outcome = room.desk.open(path)
    assert outcome.fate is Fate.TROUBLE
    assert says in outcome.happened
    assert outcome.advice
    assert room.bench.document is before
    assert path.read_text() == content


def test_a_change_by_someone_else_is_seen_and_both_can_be_kept(room: Room, tmp_path: Path) -> None:
    path = save_card(tmp_path)
    desk = _open_dirty(room, path)
    save_card(tmp_path, demo_card() | {"drag": "9 lb"})
    assert desk.place.look(desk.store).fate is Fate.CHANGED
    assert desk.save().fate is Fate.CHANGED
    assert ("main.test", "16 lb", "17 lb") in desk.place.compare(desk.store, desk.document)
    assert desk.keep_both().done
    assert _read(path)["drag"] == "9 lb"
    assert desk.path is not None
    assert desk.path != path
    assert _read(desk.path)["main"]["test"] == "17 lb"
    assert _read(desk.path)["id"] != _read(path)["id"]
    assert not desk.is_dirty


def test_the_other_version_can_be_loaded_instead(room: Room, tmp_path: Path) -> None:
    desk = _open_dirty(room, save_card(tmp_path))
    save_card(tmp_path, demo_card() | {"drag": "9 lb"})
    assert desk.reload().done
    assert room.bench.text("drag") == "9 lb"
    assert room.bench.text("main.test") == "16 lb"
    assert not desk.is_dirty


def test_a_removed_file_is_noticed_and_can_be_written_again(room: Room, tmp_path: Path) -> None:
    path = save_card(tmp_path)
    desk = _open_dirty(room, path)
    path.unlink()
    assert desk.place.look(desk.store).fate is Fate.GONE
    assert desk.save().fate is Fate.GONE
    assert desk.save(again=True).done
    assert _read(path)["main"]["test"] == "17 lb"


@pytest.mark.parametrize("code", ["ENOSPC", "EROFS", "EACCES", "EIO"])
def test_a_failing_disk_leaves_file_and_work_whole(
    room: Room, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, code: str
) -> None:
    path = save_card(tmp_path)
    desk = _open_dirty(room, path)
    before = path.read_bytes()

    def fail(*_: object) -> int:
        raise OSError(getattr(errno, code), "no")

    monkeypatch.setattr(syscalls, "write", fail)
    outcome = desk.save()
    assert outcome.fate is Fate.TROUBLE
    assert outcome.happened.endswith(".")
    assert outcome.advice.endswith(".")
    assert path.read_bytes() == before
    assert room.bench.text("main.test") == "17 lb"
    assert desk.is_dirty
    monkeypatch.undo()
    assert desk.save().done


def test_a_second_window_on_the_same_card_is_told(room: Room, tmp_path: Path) -> None:
    path = save_card(tmp_path)
    Notice(path, OTHER).take()
    outcome = room.desk.open(path)
    assert outcome.fate is Fate.ELSEWHERE
    assert "another window" in outcome.happened
    assert room.desk.path is None
    assert room.desk.open(path, force=True).done
    room.desk.leave()
    assert Notice(path).holder() is None


def test_recent_cards_are_ten_at_most_and_each_once(room: Room, tmp_path: Path) -> None:
    paths = [save_card(tmp_path / "many", name=f"{number}.rigcard") for number in range(12)]
    for path in [*paths, paths[5]]:
        room.desk.open(path)
    recent = room.preferences.recent
    assert recent[0] == paths[5]
    assert len(recent) == len(set(recent)) == 10


def test_a_draft_is_written_soon_after_an_edit_and_goes_with_the_save(
    room: Room, tmp_path: Path, qtbot: QtBot
) -> None:
    desk = _open_dirty(room, save_card(tmp_path))
    qtbot.waitUntil(lambda: any(room.drafts.glob("*.json")), timeout=2000)
    assert desk.save().done
    assert not any(room.drafts.glob("*.json"))


def test_a_draft_goes_when_everything_is_taken_back(room: Room, tmp_path: Path) -> None:
    _open_dirty(room, save_card(tmp_path))
    room.desk.keeper.flush()
    assert any(room.drafts.glob("*.json"))
    room.bench.undo_stack.undo()
    assert not any(room.drafts.glob("*.json"))


_KILLED = """
import os, signal, sys
from pathlib import Path
from PySide6.QtCore import QCoreApplication, QTimer
from tests.unit.viewmodels.parts import make_room
application = QCoreApplication([])
room = make_room(Path(sys.argv[1]))
assert room.desk.open(Path(sys.argv[2])).done
room.bench.edit("main.test", "17 lb")
QTimer.singleShot(1900, lambda: os.kill(os.getpid(), signal.SIGKILL))
application.exec()
"""


def test_work_survives_a_kill_and_is_offered_never_merged(tmp_path: Path) -> None:
    path = save_card(tmp_path / "own")
    command = [sys.executable, "-c", _KILLED, str(tmp_path), str(path)]
    environment = {**os.environ, "PYTHONPATH": str(PROJECT), "QT_QPA_PLATFORM": "offscreen"}
    ended = subprocess.run(command, env=environment, cwd=PROJECT, capture_output=True, text=True)
    assert ended.returncode == -signal.SIGKILL, ended.stderr
    room = make_room(tmp_path)
    assert _read(path) == demo_card()
    [offer] = room.desk.keeper.offers()
    assert offer.name == "Pad frog, rod 3"
    assert "as it was" in offer.says
    room.desk.recover(offer)
    assert room.bench.text("main.test") == "17 lb"
    assert room.desk.is_dirty
    assert room.desk.path == path
    assert _read(path) == demo_card()
    assert room.desk.save().done
    assert _read(path)["main"]["test"] == "17 lb"
    assert room.desk.keeper.offers() == []
    assert not any(room.drafts.glob("*.json"))
