"""What is asked around files, and what each answer does."""

import json
from pathlib import Path
from typing import Any

import pytest

from rigbuilder.store.lock import Notice
from rigbuilder.store.process import Process
from rigbuilder.views.controls.ask import ScriptedAsk
from rigbuilder.views.desk_talk import DeskTalk
from tests.unit.viewmodels.parts import Room, demo_card, make_room, save_card

pytestmark = pytest.mark.usefixtures("qapp")


class Talk:
    """A desk to talk with, and the card it has open."""

    def __init__(self, folder: Path) -> None:
        self.room: Room = make_room(folder)
        self.card = save_card(folder / "own")
        self.ask = ScriptedAsk()
        self.picked: str | None = "drop-shot"
        self.talk = DeskTalk(self.room.desk, self.ask, lambda: self.picked, lambda: None, self.room.bench)
        assert self.talk.open(self.card)

    def spoil(self) -> None:
        """Leave unsaved work on the bench."""
        self.room.bench.edit("main.test", "17 lb")

    def on_disk(self, path: Path | None = None) -> dict[str, Any]:
        """What the file holds."""
        document: dict[str, Any] = json.loads((path or self.card).read_text(encoding="utf-8"))
        return document

    def change_outside(self) -> None:
        """Change the file as another program would."""
        save_card(self.card.parent, demo_card() | {"drag": "9 lb"})


@pytest.fixture
def at(tmp_path: Path) -> Talk:
    return Talk(tmp_path)


def test_nothing_is_asked_while_nothing_would_be_lost(at: Talk) -> None:
    at.talk.new()
    assert at.ask.asked == []
    assert at.room.bench.text("lure.technique") == "drop shot"


def test_an_empty_card_may_be_wanted(at: Talk) -> None:
    at.picked = ""
    at.talk.new()
    assert not at.room.bench.says("lure.technique")


def test_thinking_better_of_a_new_card_changes_nothing(at: Talk) -> None:
    at.picked = None
    at.talk.new()
    assert at.room.desk.path == at.card


@pytest.mark.parametrize(("answer", "left"), [("save", True), ("discard", True), ("cancel", False)])
def test_unsaved_work_is_asked_about(at: Talk, answer: str, left: bool) -> None:
    at.spoil()
    at.ask.answers = [answer]
    assert at.talk.may_leave() is left
    assert "not saved" in at.ask.asked[-1]
    assert (at.on_disk()["main"]["test"] == "17 lb") is (answer == "save")
    assert at.room.bench.text("main.test") == "17 lb"


def test_a_card_open_elsewhere_is_opened_only_when_that_is_meant(at: Talk, tmp_path: Path) -> None:
    other = save_card(tmp_path / "other", demo_card() | {"name": "Other"})
    Notice(other, Process("elsewhere", "boot", 42, "1")).take()
    at.ask.answers = ["cancel", "anyway"]
    assert not at.talk.open(other)
    assert at.room.desk.path == at.card
    assert at.talk.open(other)
    assert at.room.bench.text("name") == "Other"


def test_a_card_that_cannot_be_read_is_told(at: Talk, tmp_path: Path) -> None:
    broken = tmp_path / "broken.rigcard"
    broken.write_text("{")
    assert not at.talk.open(broken)
    assert "broken.rigcard" in at.ask.asked[-1]
    assert at.room.desk.path == at.card


def test_both_versions_can_be_kept(at: Talk) -> None:
    at.spoil()
    at.change_outside()
    at.ask.answers = ["compare", "both"]
    assert at.talk.save()
    told = at.ask.asked[1]
    assert "drag" in told
    assert "17 lb" in told
    assert at.on_disk()["drag"] == "9 lb"
    assert at.room.desk.path is not None
    assert at.on_disk(at.room.desk.path)["main"]["test"] == "17 lb"


def test_coming_back_to_a_changed_file_asks_once(at: Talk) -> None:
    at.change_outside()
    at.ask.answers = ["later"]
    at.talk.look()
    at.talk.look()
    assert len(at.ask.asked) == 1
    assert at.room.bench.text("drag") == "6 lb"


def test_the_changed_file_can_be_loaded(at: Talk) -> None:
    at.change_outside()
    at.ask.answers = ["reload"]
    at.talk.look()
    assert at.room.bench.text("drag") == "9 lb"


def test_a_removed_file_can_be_written_again(at: Talk) -> None:
    at.card.unlink()
    at.ask.answers = ["again"]
    at.talk.look()
    assert at.card.exists()


def test_a_place_that_refuses_leads_to_another(at: Talk, tmp_path: Path) -> None:
    at.spoil()
    at.card.chmod(0o444)
    other = tmp_path / "elsewhere.rigcard"
    at.ask.answers = ["retry", "elsewhere", other]
    assert at.talk.save()
    assert at.on_disk(other)["main"]["test"] == "17 lb"
    assert at.on_disk()["main"]["test"] == "16 lb"


def test_giving_up_saving_keeps_the_work(at: Talk) -> None:
    at.spoil()
    at.card.chmod(0o444)
    at.ask.answers = ["later"]
    assert not at.talk.save()
    assert at.room.bench.text("main.test") == "17 lb"
    assert at.room.desk.is_dirty


def _leave_draft(folder: Path) -> None:
    room = make_room(folder, process=Process("gone", "boot", 1, "1"))
    room.bench.edit("name", "Left behind")
    room.desk.keeper.flush()


@pytest.mark.parametrize("answer", ["take", "discard", "later"])
def test_unsaved_work_of_an_earlier_run_is_offered(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, answer: str
) -> None:
    _leave_draft(tmp_path)
    monkeypatch.setattr("rigbuilder.store.drafts.is_gone", lambda *_, **__: True)
    at = Talk(tmp_path)
    at.ask.answers = [answer]
    at.talk.offer_drafts()
    assert "Left behind" in at.ask.asked[-1]
    assert (at.room.bench.text("name") == "Left behind") is (answer == "take")
    assert at.room.desk.is_dirty is (answer == "take")
    assert len(list(at.room.drafts.glob("*.json"))) == (0 if answer == "discard" else 1)
