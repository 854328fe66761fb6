"""``rigbuilder cards`` as a shell sees it."""

import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from rigbuilder.cli import main
from rigbuilder.commands import cardlook
from rigbuilder.model.document import Document, put_all
from rigbuilder.model.usual import usual_document
from rigbuilder.store.sets import read_set

PROJECT = Path(__file__).resolve().parents[2]
WRONG = {"main.type": "fluorocarbon", "main.test": "16 lb", "main.diameter": None}


def put(folder: Path, name: str, document: Document | str) -> Path:
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{name}.rigcard"
    path.write_text(document if isinstance(document, str) else json.dumps(document), encoding="utf-8")
    return path


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    put(tmp_path / "cards", "right", usual_document("frog"))
    return tmp_path / "cards"


def test_list_names_each_card_with_its_verdict(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    put(folder, "wrong", put_all(usual_document("frog"), WRONG | {"name": "Rod 3"}))
    put(folder, "broken", '{"format": "rigbuilder.card", "name": "Half a ca')
    assert main(["cards", "list", str(folder)]) == 0
    head, *lines = capsys.readouterr().out.splitlines()
    assert head.split() == ["name", "technique", "line", "verdict", "file"]
    told = {line.split()[-1]: line for line in lines}
    assert "fluorocarbon 16 lb" in told["wrong.rigcard"]
    assert "fault" in told["wrong.rigcard"]
    assert " right " in told["right.rigcard"]
    assert "Half a ca" in told["broken.rigcard"] or "broken" in told["broken.rigcard"]
    assert "unreadable" in told["broken.rigcard"]


def test_list_as_data(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["cards", "list", str(folder), "--json"]) == 0
    (card,) = json.loads(capsys.readouterr().out)
    assert set(card) == {"file", "name", "technique", "line", "tags", "verdict", "readable"}
    assert card["file"] == str(folder / "right.rigcard")


UNFINISHED = {"main.test": "16 pounds and a bit"}


@pytest.mark.parametrize(
    ("also", "code", "says"),
    [
        ({}, 0, "right"),
        ({"wrong": put_all(usual_document("frog"), WRONG)}, 1, "fault: "),
        ({"half": put_all(usual_document("frog"), UNFINISHED)}, 2, "main.test"),
        ({"broken": "{"}, 2, "unreadable"),
        ({"newer": usual_document("frog") | {"version": 99}}, 2, "99"),
        ({"wrong": put_all(usual_document("frog"), WRONG), "broken": "{"}, 2, "1 fault"),
    ],
)
def test_check_says_what_is_wrong_and_exits_by_the_worst(
    folder: Path, capsys: pytest.CaptureFixture[str], also: dict[str, Document | str], code: int, says: str
) -> None:
    for name, document in also.items():
        put(folder, name, document)
    assert main(["cards", "check", str(folder)]) == code
    assert says in capsys.readouterr().out


def test_check_as_data_holds_the_findings(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    put(folder, "wrong", put_all(usual_document("frog"), WRONG))
    put(folder, "broken", "{")
    assert main(["cards", "check", str(folder), "--json"]) == 2
    told = json.loads(capsys.readouterr().out)
    assert told["counts"] == {"fault": 1, "right": 1, "unreadable": 1}
    by_name = {Path(card["file"]).stem: card for card in told["cards"]}
    assert by_name["wrong"]["findings"][0]["severity"] == "fault"
    assert by_name["broken"]["trouble"]


def test_single_cards_and_a_folder_are_told_once(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["cards", "check", str(folder / "right.rigcard"), str(folder), "--json"]) == 0
    assert len(json.loads(capsys.readouterr().out)["cards"]) == 1


def test_the_own_cards_are_meant_without_a_folder(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["cards", "list"]) == 0
    assert "no cards" in capsys.readouterr().out
    put(home / ".local/share/Rigbuilder/cards", "mine", usual_document("frog") | {"name": "Mine"})
    assert main(["cards", "list"]) == 0
    assert "Mine" in capsys.readouterr().out


def test_what_is_not_there_is_one_sentence(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["cards", "check", str(tmp_path / "away")]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.startswith("rigbuilder: “")
    assert "does not exist" in told.err


def test_export_packs_all_and_overwrites_only_when_told(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    put(folder, "wrong", put_all(usual_document("frog"), WRONG))
    target = tmp_path / "club.rigset"
    assert main(["cards", "export", str(folder), "--to", str(tmp_path / "club")]) == 0
    assert len(read_set(target)) == 2
    before = target.read_bytes()
    assert main(["cards", "export", str(folder / "right.rigcard"), "--to", str(target)]) == 2
    assert "--over" in capsys.readouterr().err
    assert target.read_bytes() == before
    assert main(["cards", "export", str(folder / "right.rigcard"), "--to", str(target), "--over"]) == 0
    assert len(read_set(target)) == 1


def test_export_refuses_a_broken_card(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    put(folder, "broken", "{")
    assert main(["cards", "export", str(folder), "--to", str(tmp_path / "club.rigset")]) == 2
    assert "broken.rigcard" in capsys.readouterr().err
    assert not (tmp_path / "club.rigset").exists()


def test_ctrl_c_ends_it_with_a_word(
    folder: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(cardlook, "review_documents", interrupted)
    assert main(["cards", "check", str(folder)]) == 130
    assert capsys.readouterr().err == "rigbuilder: stopped after 0 of 1 cards.\n"


def test_a_real_ctrl_c_leaves_no_traceback(tmp_path: Path) -> None:
    folder = tmp_path / "many"
    text = json.dumps(usual_document("frog"))
    for number in range(2000):
        put(folder, f"{number:04}", text)
    process = subprocess.Popen(
        [sys.executable, "-P", "-m", "rigbuilder", "cards", "check", str(folder)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONPATH": str(PROJECT)},
    )
    time.sleep(1.2)  # somewhere in the middle; where does not matter
    process.send_signal(signal.SIGINT)
    _, errors = process.communicate(timeout=30)
    assert process.returncode == 130
    assert "Traceback" not in errors
    assert "stopped" in errors
