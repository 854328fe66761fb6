"""``rigbuilder plan`` and what plans add to ``review --json``."""

import json
from pathlib import Path

import pytest

from rigbuilder.cli import main
from rigbuilder.model.document import put_all
from rigbuilder.model.pulltests import read_series
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.load import load
from rigbuilder.store.paths import find_places
from rigbuilder.store.pulltests import NAME, PullTestFile


def saved(folder: Path, technique: str, **changes: object) -> str:
    document = put_all(usual_document(technique), changes)
    path = folder / "card.rigcard"
    path.write_text(json.dumps(document), encoding="utf-8")
    return str(path)


def test_a_newcomer_reads_everything_on_one_page(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", saved(tmp_path, "walking-bait")]) == 0
    out = capsys.readouterr().out
    for heading in (
        "What fills the spool?", "How to fill it", "Turned end for end", "What does it cost?",
        "Joint main line to leader", "Where will it break?", "What drag?", "Care, as of",
        "taken for granted:", "how we know:",
    ):  # fmt: skip
        assert heading in out


def test_the_plans_as_data(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    card = saved(tmp_path, "walking-bait", fill={"main": "100 m", "lip_gap": "2 mm"})
    assert main(["plan", card, "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert set(data) == {
        "fill", "steps", "reverse", "cost", "joints", "chain", "drag_plan", "care", "advice",
    }  # fmt: skip
    assert data["fill"]["main"]["length"]["typical"] == 100.0
    assert data["fill"]["follows"] == "backing"
    assert data["fill"]["lip_gap"] == {"low": 0.002, "typical": 0.002, "high": 0.002, "unit": "m"}


def test_the_review_carries_them_under_figures(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    main(["review", saved(tmp_path, "walking-bait"), "--json"])
    figures = json.loads(capsys.readouterr().out)["figures"]
    assert {"fill", "drag_plan", "chain", "fuse", "weakest_link"} <= set(figures)
    assert sum(link["goes_first"] for link in figures["chain"]) == pytest.approx(1.0, abs=0.01)
    assert all(link["lost"] for link in figures["chain"])


def test_an_impossible_wish_names_the_nearest_fill(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["plan", saved(tmp_path, "walking-bait", fill={"main": "900 m"}), "--json"])
    fill = json.loads(capsys.readouterr().out)["fill"]
    assert fill["possible"] is False
    assert fill["nearest"]["main"]["length"]["typical"] < 300.0
    assert fill["remarks"][0]["severity"] == "fault"


def test_own_pull_tests_reach_the_plan(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    card = saved(tmp_path, "walking-bait", **{"knots.lure": "palomar"})
    main(["plan", card, "--json"])
    before = json.loads(capsys.readouterr().out)["chain"]["links"]
    entry = {"type": "nylon", "test": "20 lb", "knot": "palomar", "wet": True,
             "readings": ["12 lb", "12.5 lb", "13 lb", "11.5 lb", "12 lb"]}  # fmt: skip
    PullTestFile(find_places().data / NAME, load()).save([read_series(entry, load())])
    main(["plan", card, "--json"])
    after = json.loads(capsys.readouterr().out)["chain"]["links"]
    knot = next(link for link in after if link["name"] == "knot at the lure")
    assert "5 own pulls" in knot["basis"][0]["text"]
    assert knot["typical"] < next(one for one in before if one["name"] == "knot at the lure")["typical"]


def test_a_damaged_file_of_pull_tests_is_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    card = saved(tmp_path, "walking-bait")
    place = find_places().data / NAME
    place.write_text("{", encoding="utf-8")
    assert main(["plan", card]) == 2
    assert NAME in capsys.readouterr().err
