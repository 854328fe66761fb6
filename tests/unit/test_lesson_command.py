"""``rigbuilder lesson``: checks a lesson and prints it."""

import json
from pathlib import Path
from typing import Any

import pytest

from rigbuilder.cli import main
from tests.unit.lessons.cases import card, lesson_document, shipped


def _file(tmp_path: Path, *rigs: dict[str, Any]) -> str:
    path = tmp_path / "class.riglesson"
    path.write_text(json.dumps(lesson_document(*rigs)), encoding="utf-8")
    return str(path)


RIGHT = {"card": card("frog"), "question": "Well?"}
STRONG = {"card": card("carolina", leader__test="25 lb"), "meant": ["leader-stronger-than-main"]}


@pytest.mark.parametrize("path", shipped(), ids=lambda path: path.stem)
def test_every_shipped_lesson_is_as_meant(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["lesson", str(path)]) == 0
    told = capsys.readouterr().out
    assert "rigs are as meant." in told
    assert "NOT AS MEANT" not in told


def test_a_lesson_as_meant_prints_reasons_and_exits_0(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["lesson", _file(tmp_path, RIGHT, STRONG)]) == 0
    told = capsys.readouterr().out
    assert "Rig 1: Hollow-body frog, usual rig (as meant: a right rig)" in told
    assert "FAULT (leader)" in told
    assert "how we know:" in told


@pytest.mark.parametrize(
    ("rig", "said"),
    [
        ({"card": card("frog"), "meant": ["line-worn"]}, "the rule line-worn is meant and does not speak"),
        ({"card": card("frog", main__condition="kinked")}, "not meant, but true: fault"),
        (
            {
                "card": card("carolina", leader__test="25 lb", main__condition="kinked"),
                "meant": STRONG["meant"],
            },
            "(the rule line-kinked)",
        ),
    ],
)
def test_a_rig_that_is_not_as_meant_exits_1(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], rig: dict[str, Any], said: str
) -> None:
    assert main(["lesson", _file(tmp_path, RIGHT, rig)]) == 1
    told = capsys.readouterr().out
    assert said in told
    assert "Not as meant: rig 2 of 2." in told


def test_mistakes_are_told_by_rig_and_field_on_the_error_output(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    bad = {"card": card("frog", main__test="strong"), "meant": ["no-such-rule"]}
    assert main(["lesson", _file(tmp_path, RIGHT, bad)]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    lines = said.err.splitlines()
    assert any("class.riglesson: rig 2, card.main.test: found “strong”" in line for line in lines)
    assert any("rig 2, meant, entry 1: found “no-such-rule”" in line for line in lines)


@pytest.mark.parametrize("text", ["", "{", '{"format": "rigbuilder.card", "version": 1}'])
def test_what_is_no_lesson_exits_2(tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str) -> None:
    path = tmp_path / "x.riglesson"
    path.write_text(text, encoding="utf-8")
    assert main(["lesson", str(path)]) == 2
    assert "x.riglesson" in capsys.readouterr().err


def test_a_missing_file_exits_2(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["lesson", str(tmp_path / "none.riglesson")]) == 2
    assert "does not exist" in capsys.readouterr().err


def test_json_is_plain_data(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = _file(tmp_path, STRONG, {"card": card("frog", main__condition="kinked")})
    assert main(["lesson", file, "--json"]) == 1
    told = json.loads(capsys.readouterr().out)
    assert told["as_meant"] is False
    one, two = told["rigs"]
    assert (one["rig"], one["as_meant"], one["meant"]) == (1, True, ["leader-stronger-than-main"])
    assert [found["rule"] for found in one["fired"]] == one["meant"]
    assert [found["rule"] for found in two["unmeant"]] == ["line-kinked"]
