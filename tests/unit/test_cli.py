"""The commands as a shell sees them: output, exit codes, one clear message on stderr."""

import json
from pathlib import Path

import pytest

from rigbuilder import __version__
from rigbuilder.cli import main
from rigbuilder.model.document import Document, put_all
from rigbuilder.model.usual import usual_document
from rigbuilder.review.rules.book import RULES


def saved(folder: Path, document: Document) -> str:
    path = folder / "card.rigcard"
    path.write_text(json.dumps(document), encoding="utf-8")
    return str(path)


@pytest.fixture
def right_card(tmp_path: Path) -> str:
    return saved(tmp_path, usual_document("frog"))


@pytest.fixture
def wrong_card(tmp_path: Path) -> str:
    changes = {"main.type": "fluorocarbon", "main.test": "16 lb", "main.diameter": None}
    return saved(tmp_path, put_all(usual_document("frog"), changes))


def test_right_card_exits_0(right_card: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["review", right_card]) == 0
    out = capsys.readouterr().out
    assert "What is right" in out
    assert "Which line suits this rig?" in out


def test_fault_exits_1_and_says_why_and_what_to_do(
    wrong_card: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["review", wrong_card]) == 1
    out = capsys.readouterr().out
    assert "FAULT (main)" in out
    assert "→ Use braid" in out
    assert "how we know" in out


def test_json_review_has_the_contract(wrong_card: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["review", wrong_card, "--json"]) == 1
    data = json.loads(capsys.readouterr().out)
    assert data["verdict"] == "fault"
    finding = data["findings"][0]
    assert {"rule", "severity", "part", "headline", "why", "numbers", "remedies", "basis"} <= set(finding)
    assert finding["part"] == "main"
    assert all({"name", "low", "typical", "high", "unit"} == set(number) for number in finding["numbers"])
    assert all({"say", "set"} == set(remedy) for remedy in finding["remedies"])
    assert all(basis["kind"] in ("computed", "published", "common practice", "from memory")
               for basis in finding["basis"])  # fmt: skip
    types = {cell["type"] for cell in data["lines"]}
    assert {"nylon", "copolymer", "fluorocarbon", "braid"} <= types
    assert {cell["grade"] for cell in data["lines"]} <= {"first choice", "works", "poor", "never"}
    assert data["figures"]["weakest_link"]["unit"] == "N"
    assert all({"field", "value", "why"} == set(entry) for entry in data["assumed"])


def test_every_line_type_has_its_tests(right_card: str, capsys: pytest.CaptureFixture[str]) -> None:
    main(["review", right_card, "--json"])
    lines = json.loads(capsys.readouterr().out)["lines"]
    nylon = [cell["test_lb"] for cell in lines if cell["type"] == "nylon"]
    braid = [cell["test_lb"] for cell in lines if cell["type"] == "braid"]
    assert nylon == [2, 3, 4, 5, 6, 8, 10, 12, 14, 15, 16, 17, 18, 20, 22, 25, 30, 40]
    assert braid == [4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 65, 80, 100]


def test_a_cell_of_the_chart_is_graded_by_the_same_review(
    wrong_card: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Putting a good cell's line on the card gives a card without fault or risk."""
    main(["review", wrong_card, "--json"])
    lines = json.loads(capsys.readouterr().out)["lines"]
    best = next(cell for cell in lines if cell["grade"] == "first choice")
    card = put_all(
        usual_document("frog"), {"main.type": best["type"], "main.test": f"{best['test_lb']:g} lb"}
    )
    assert main(["review", saved(tmp_path, card), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["verdict"] in ("right", "note")


UNREADABLE = [
    (b"", "empty"),
    (b'{"format": "rigbuilder.card", "version": 1', "end of the file"),
    (b'{"format": "rigbuilder.card", "version": 99}', "99"),
    (b'{"format": "something.else", "version": 1}', "something.else"),
    (b"[" * 20_000, "32 levels"),
    (b'{"format": "rigbuilder.card", "version": 1, "name": NaN}', "NaN"),
    (b'{"format": "rigbuilder.card", "version": 1, "name": "a", "name": "b"}', "name"),
]


@pytest.mark.parametrize(("content", "word"), UNREADABLE, ids=[word for _, word in UNREADABLE])
def test_unreadable_card_exits_2_with_one_message(
    content: bytes, word: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "card.rigcard"
    path.write_bytes(content)
    assert main(["review", str(path)]) == 2
    err = capsys.readouterr().err
    assert "card.rigcard" in err
    assert word in err
    assert "Traceback" not in err
    assert path.read_bytes() == content


def test_misspelt_word_is_told_with_file_field_find_and_nearest(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = saved(tmp_path, put_all(usual_document("frog"), {"lure.technique": "holow-body frog"}))
    assert main(["review", path, "--json"]) == 2
    err = capsys.readouterr().err
    for word in (path, "lure.technique", "holow-body frog", "hollow-body frog"):
        assert word in err


def test_missing_file_exits_2(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["review", str(tmp_path / "nowhere.rigcard")]) == 2
    assert "does not exist" in capsys.readouterr().err


@pytest.mark.parametrize("rule", [rule.name for rule in RULES])
def test_every_rule_can_be_read(rule: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rules", rule]) == 0
    out = capsys.readouterr().out
    assert out.startswith(rule)
    assert "Why:" in out
    assert "how we know" in out


def test_unknown_rule_names_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rules", "leader-misssing"]) == 2
    assert "leader-missing" in capsys.readouterr().err


def test_techniques_are_59(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["techniques", "--json"]) == 0
    assert len(json.loads(capsys.readouterr().out)) == 59


def test_schema_is_json(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema"]) == 0
    assert json.loads(capsys.readouterr().out)["title"] == "Rig card"


def test_label_prints_the_contract(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["label", "reel", "14/120 lb/yd 7.1:1 15 lb", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert set(data) == {"kind", "understood", "not_understood", "doubtful"}
    assert data["understood"]["ratio"] == 7.1


def test_label_words_may_come_apart(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["label", "rod", "7'3\"", "H", "F", "30-65", "lb"]) == 0
    assert "30-65 lb" in capsys.readouterr().out


def test_version(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--version"]) == 0
    assert capsys.readouterr().out == f"rigbuilder {__version__}\n"


def test_wrong_call_exits_2(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stop:
        main(["review"])
    assert stop.value.code == 2
    assert "card" in capsys.readouterr().err
