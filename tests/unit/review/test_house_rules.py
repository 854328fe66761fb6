"""The coach's house: severities, ranges and sides taken change the review, and every reason says so."""

import json
from pathlib import Path
from typing import Any

import pytest

from rigbuilder.cli import main
from rigbuilder.model.document import Document, put_all
from rigbuilder.model.reading import read
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House, UnusableHouse
from rigbuilder.reference.load import load
from rigbuilder.review.asjson import finding_data
from rigbuilder.review.core import Finding
from rigbuilder.review.engine import Report, review
from rigbuilder.review.explain import finding_text
from rigbuilder.review.houses import house_from
from rigbuilder.review.rules.book import RULES
from rigbuilder.review.speak import Speaker


def reported(document: Document, entries: dict[str, Any] | None = None) -> Report:
    """Review a card under house rules."""
    house = house_from(entries or {}, load())
    reference = house.apply(load())
    rig = read(document, reference).rig
    assert rig is not None
    return review(rig, reference, house)


def found(report: Report, rule: str) -> Finding | None:
    """Return the reason of a rule."""
    return next((finding for finding in report.findings if finding.rule.name == rule), None)


def card(technique: str, changes: dict[str, Any]) -> Document:
    return put_all(usual_document(technique), changes)


BARE = card("frog", {"backing": None})


@pytest.mark.parametrize("word", ["note", "risk"])
def test_severity_of_the_house_stands_and_is_said(word: str) -> None:
    finding = found(reported(BARE, {"severity": {"braid-on-bare-arbor": word}}), "braid-on-bare-arbor")
    assert finding is not None
    assert finding.severity.word == word
    assert any("coach" in words and word in words for words in finding.house)
    assert "coach" in finding_text(finding, (), Speaker())


def test_right_switches_a_rule_off_and_shipped_practice_brings_it_back() -> None:
    assert (
        found(reported(BARE, {"severity": {"braid-on-bare-arbor": "right"}}), "braid-on-bare-arbor") is None
    )
    finding = found(reported(BARE), "braid-on-bare-arbor")
    assert finding is not None
    assert finding.house == ()


def test_range_of_the_house_moves_the_limit_and_is_said() -> None:
    document = card("flip-jig", {"main.test": "20 lb"})
    assert found(reported(document), "test-above-practice") is None
    entries = {"techniques": {"flipping jig": {"lines": {"fluorocarbon": {"test_lb": [10, 14]}}}}}
    finding = found(reported(document, entries), "test-above-practice")
    assert finding is not None
    assert any("coach's own" in words for words in finding.house)
    assert "14 lb" in finding.headline(Speaker())


def test_drag_of_the_house_moves_the_limit_and_is_said() -> None:
    document = card("spinnerbait", {"drag": "4.5 lb"})
    entries = {"techniques": {"spinnerbait": {"drag": {"percent": [5, 10], "drag_lb": [0.5, 1.5]}}}}
    finding = found(reported(document, entries), "drag-above-practice")
    assert finding is not None
    assert any("coach's own" in words for words in finding.house)


SWITCHES = [
    ("buzzbait", {"main.type": "fluorocarbon", "main.test": "17 lb"}, "sinking-line-on-surface-lure",
     {"surface-line": ["fluorocarbon-when-moving"]}),
    ("texas-cover", {"water.cover": "wood", "main.type": "braid", "main.test": "50 lb"}, "braid-in-wood",
     {"wood-line": "braid"}),
    ("swim-jig", {"water.clarity": "4 m", "water.cover": "sparse grass", "leader": None},
     "bare-braid-in-clear-water", {"braid-clear-water": "moving"}),
    ("walking-bait", {"main.test": "15 lb", "reel.kind": "spinning", "reel.size": "2500",
                      "leader.length": "12 ft", "leader.test": "25 lb", "leader.knot": "fg"},
     "line-too-stiff-for-spinning-reel", {"spinning-limit": "by-leader"}),
]  # fmt: skip


@pytest.mark.parametrize(
    ("technique", "changes", "rule", "sides"), SWITCHES, ids=lambda value: str(value)[:30]
)
def test_side_taken_by_the_coach_switches_the_reason(
    technique: str, changes: dict[str, Any], rule: str, sides: dict[str, Any]
) -> None:
    document = card(technique, changes)
    assert found(reported(document), rule) is not None
    assert found(reported(document, {"disagreements": sides}), rule) is None


def test_coach_who_holds_braid_against_the_label_hears_of_it() -> None:
    document = card("swim-jig", {"rod.label": "7'2\" MH F 12-20 lb 1/4-3/4 oz", "main.test": "40 lb"})
    assert found(reported(document), "test-above-rod") is None
    assert (
        found(reported(document, {"disagreements": {"braid-on-nylon-rod": "never"}}), "test-above-rod")
        is not None
    )


def test_reason_names_both_positions_and_the_side_taken() -> None:
    document = card("buzzbait", {"main.type": "fluorocarbon", "main.test": "17 lb"})
    finding = found(reported(document), "sinking-line-on-surface-lure")
    assert finding is not None
    row = load().disagreements["surface-line"]
    for position in row.positions:
        assert position.says in finding.disagreement
    assert row.house_says in finding.disagreement
    ruled = found(
        reported(document, {"disagreements": {"surface-line": "nylon"}}), "sinking-line-on-surface-lure"
    )
    assert ruled is not None
    assert "The coach's house takes: " + row.position("nylon").says in ruled.disagreement


def test_rules_name_disagreements_and_ranges_that_exist() -> None:
    known = load().disagreements
    assert {rule.differ for rule in RULES if rule.differ} <= set(known)
    assert {rule.reads for rule in RULES} <= {"", "lines", "leader", "drag"}


def test_plain_data_says_it_too() -> None:
    document = BARE
    report = reported(document, {"severity": {"braid-on-bare-arbor": "note"}})
    (data,) = [finding_data(document, report, f, Speaker()) for f in report.findings
               if f.rule.name == "braid-on-bare-arbor"]  # fmt: skip
    assert data["house"]


def test_unknown_rule_is_refused_with_the_nearest_named() -> None:
    with pytest.raises(UnusableHouse, match="braid-on-bare-arbor"):
        house_from({"severity": {"braid-on-bare-arbour": "note"}}, load())


def test_shipped_house_changes_nothing() -> None:
    assert House.shipped().apply(load()) is load()


@pytest.fixture
def house_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    folder = tmp_path / "config" / "Rigbuilder"
    folder.mkdir(parents=True)
    return folder / "house.toml"


@pytest.fixture
def bare_card(tmp_path: Path) -> str:
    path = tmp_path / "bare.rigcard"
    path.write_text(json.dumps(BARE), encoding="utf-8")
    return str(path)


def test_command_reviews_by_the_house_file(
    house_file: Path, bare_card: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["review", bare_card]) == 1
    house_file.write_text('[severity]\nbraid-on-bare-arbor = "note"\n', encoding="utf-8")
    capsys.readouterr()
    assert main(["review", bare_card]) == 0
    assert "coach" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ('[severity]\nbraid-on-bare-arbour = "note"\n', "braid-on-bare-arbor"),
        ('[severity]\nbraid-on-bare-arbor = "fatal"\n', "severity.braid-on-bare-arbor"),
        ("[severity\n", "line 1"),
        ('[techniques."flying jig"]\n', "flying jig"),
    ],
)
def test_command_refuses_an_unusable_house_file_with_one_clear_sentence(
    house_file: Path, bare_card: str, capsys: pytest.CaptureFixture[str], text: str, named: str
) -> None:
    house_file.write_text(text, encoding="utf-8")
    assert main(["review", bare_card]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert "house.toml" in said.err
    assert named in said.err
    assert "Traceback" not in said.err
