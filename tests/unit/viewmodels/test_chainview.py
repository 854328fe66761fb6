"""The chain's side of the bench, and the shelf of own pull tests."""

from pathlib import Path

import pytest

from rigbuilder.model.document import get
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.store.pulltests import NAME, PullTestFile
from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.chainview import ChainModel
from rigbuilder.viewmodels.pullshelf import PullShelf
from tests.unit.views.rigs import bench_of, bench_with

PULLS = {
    "type": "nylon",
    "test": "20 lb",
    "knot": "palomar",
    "readings": "12, 12.5, 13, 11.5, 12.2",
    "wet": True,
}


def shelf_at(folder: Path) -> PullShelf:
    return PullShelf(PullTestFile(folder / NAME, load()), load())


def test_links_come_from_the_hook_upwards_with_one_fuse() -> None:
    shown = ChainModel(bench_of("walking-bait")).shown()
    assert shown is not None
    assert [link.label for link in shown.links] == [
        "Hook", "Split ring", "Knot at the lure", "Leader", "Joint of leader and main line", "Main line",
    ]  # fmt: skip
    assert [link.label for link in shown.links if link.is_fuse] == ["Hook"]
    assert [row[0] for row in shown.lost.rows] == [link.label for link in shown.links]


def test_forces_follow_the_units() -> None:
    model = ChainModel(bench_of("walking-bait"))
    before = model.shown()
    model.bench.speak(UnitSystem.METRIC)
    after = model.shown()
    assert before is not None
    assert after is not None
    assert (before.unit, after.unit) == ("lb", "kg")
    assert after.links[0].typical == pytest.approx(before.links[0].typical * 0.45359237)


def test_tying_a_knot_is_one_undoable_edit() -> None:
    model = ChainModel(bench_of("walking-bait"))
    model.tie("leader.knot", "fg")
    assert get(model.bench.document, "leader.knot") == "fg"
    shown = model.shown()
    assert shown is not None
    assert next(joint.present for joint in shown.joints if joint.path == "leader.knot") == "fg"
    model.bench.undo_stack.undo()
    assert get(model.bench.document, "leader.knot") == "double uni"


def test_tying_in_an_assumed_leader_brings_the_leader_onto_the_card() -> None:
    bench = bench_of("walking-bait")
    bench.clear("leader")
    model = ChainModel(bench)
    model.tie("leader.knot", "double uni")
    leader = get(bench.document, "leader")
    assert leader["knot"] == "double uni"
    assert leader["type"]
    assert bench.report is not None


def test_an_unreadable_card_has_no_chain() -> None:
    assert ChainModel(bench_with({"format": "rigbuilder.card", "version": 1, "name": "x"})).shown() is None


class TestShelf:
    def test_pulls_are_kept_on_the_disk(self, tmp_path: Path) -> None:
        shelf = shelf_at(tmp_path)
        told: list[int] = []
        shelf.changed.connect(lambda: told.append(1))
        assert shelf.add(PULLS, UnitSystem.IMPERIAL) == ""
        assert told == [1]
        assert shelf_at(tmp_path).series == shelf.series
        assert shelf.series[0].readings[0] == "12 lb"
        assert shelf.remove(0) == ""
        assert shelf_at(tmp_path).series == ()

    def test_a_slip_is_told_and_nothing_is_kept(self, tmp_path: Path) -> None:
        shelf = shelf_at(tmp_path)
        assert "readings" in shelf.add(PULLS | {"readings": "many"}, UnitSystem.METRIC)
        assert shelf.series == ()

    def test_enough_pulls_dress_the_reference(self, tmp_path: Path) -> None:
        shelf = shelf_at(tmp_path)
        assert shelf.dress(load()) is load()
        shelf.add(PULLS, UnitSystem.IMPERIAL)
        assert "5 own pulls" in shelf.dress(load()).knot("palomar").sources[0].text
        assert shelf.results()[0].enough

    def test_the_bench_is_served_as_soon_as_there_are_enough(self, tmp_path: Path) -> None:
        shelf, bench = shelf_at(tmp_path), bench_of("walking-bait", {"knots.lure": "palomar"})
        shelf.serve(bench, load(), House.shipped())
        model = ChainModel(bench)
        before = model.shown()
        assert shelf.add(PULLS, UnitSystem.IMPERIAL) == ""
        after = model.shown()
        assert before is not None
        assert after is not None
        assert after.links[2].typical < before.links[2].typical
        assert "5 own pulls" in bench.reference.knot("palomar").sources[0].text

    def test_a_damaged_file_is_never_written_over(self, tmp_path: Path) -> None:
        (tmp_path / NAME).write_text("{", encoding="utf-8")
        shelf = shelf_at(tmp_path)
        assert NAME in shelf.trouble
        assert shelf.add(PULLS, UnitSystem.IMPERIAL) == shelf.trouble
        assert (tmp_path / NAME).read_text(encoding="utf-8") == "{"
