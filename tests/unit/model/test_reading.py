"""From card to rig: values in SI, labels filled in, every slip named with field, find and expectation."""

from typing import Any

import pytest

from rigbuilder.model.document import Document, drop, put, put_all
from rigbuilder.model.problems import CardUnreadable
from rigbuilder.model.reading import completed, read, read_rig
from rigbuilder.reference.load import load
from rigbuilder.reference.words import Cover, LineType, Power, ReelKind

LBF_N = 4.4482216152605


def card() -> Document:
    """The card of the manual: a frog rod with three things wrong."""
    return {
        "format": "rigbuilder.card", "version": 1, "id": "1", "name": "Pad frog, rod 3",
        "presentation": "floating",
        "lure": {"technique": "hollow-body frog", "weight": "5/8 oz", "trailer": None},
        "rod": {"label": "7'3\" H F 30-65 lb 1/2-1 1/4 oz"},
        "reel": {"kind": "baitcasting", "label": "14/120 lb/yd 7.1:1 15 lb"},
        "main": {"type": "fluorocarbon", "test": "16 lb", "diameter": "0.35 mm", "length": "80 yd",
                 "condition": "fresh", "measured": {"diameter": None, "strength": None},
                 "price": {"amount": 24.0, "currency": "EUR", "length": "200 yd"}},
        "backing": {"type": "nylon", "test": "14 lb", "knot": "double uni"},
        "leader": None, "knots": {"lure": "palomar", "arbor": "arbor"},
        "hardware": {"swivel": None, "snap": None}, "drag": "6 lb",
        "water": {"kind": "fresh", "temperature": "20 C", "clarity": "1.5 m", "depth": "1 m",
                  "cover": "matted grass", "pressure": "high", "wind": "calm"},
        "from": "shore", "cast": "18 m", "fish": {"weight": "2 kg", "teeth": "unknown"},
        "silenced": [{"rule": "braid-on-bare-arbor", "why": "taped spool"}],
        "log": [{"on": "2026-05-02", "what": "filled"}],
    }  # fmt: skip


def problems(document: Document) -> dict[str, str]:
    return {problem.field: str(problem) for problem in read(document, load()).problems}


def test_the_card_of_the_manual_is_read_whole() -> None:
    rig = read_rig(card(), load()).rig
    assert rig is not None
    assert rig.lure.weight_kg == pytest.approx(5 / 8 * 0.028349523125)
    assert rig.main.type is LineType.FLUOROCARBON
    assert rig.main.test_n == pytest.approx(16 * LBF_N)
    assert rig.main.diameter_m == pytest.approx(0.00035)
    assert rig.main.length_m == pytest.approx(80 * 0.9144)
    assert rig.main.price is not None
    assert rig.main.price.length_m == pytest.approx(200 * 0.9144)
    assert rig.leader is None
    assert rig.water.cover is Cover.MATTED_GRASS
    assert rig.from_shore is True
    assert [entry.rule for entry in rig.silenced] == ["braid-on-bare-arbor"]
    assert rig.log[0].on.isoformat() == "2026-05-02"


def test_labels_fill_what_the_card_leaves_open() -> None:
    rig = read_rig(card(), load()).rig
    assert rig is not None
    assert rig.rod.length_m == pytest.approx(7.25 * 0.3048)
    assert rig.rod.power is Power.HEAVY
    assert rig.rod.line_n is not None
    assert tuple(rig.rod.line_n) == pytest.approx((30 * LBF_N, 65 * LBF_N))
    assert rig.rod.line_for_braid, "a range that begins at 30 lb is for braid"
    assert rig.reel.kind is ReelKind.BAITCASTING
    assert rig.reel.ratio == pytest.approx(7.1)
    assert rig.reel.drag_n == pytest.approx(15 * LBF_N)
    assert rig.reel.capacity[0].length_m == pytest.approx(120 * 0.9144)


def test_given_fields_win_over_the_label() -> None:
    rig = read_rig(put_all(card(), {"rod.power": "MH", "rod.line": "14-25 lb"}), load()).rig
    assert rig is not None
    assert rig.rod.power is Power.MEDIUM_HEAVY
    assert rig.rod.line_n is not None
    assert not rig.rod.line_for_braid


SLIPS = [
    ("lure.weight", "5/8", "no unit", "3/8 oz"),
    ("lure.weight", "9 lightyears", "9 lightyears", "weight"),
    ("lure.weight", "0 oz", "0 oz", "more than nothing"),
    ("lure.weight", "5 kg", "5 kg", "check the unit"),
    ("lure.weight", "1 m", "length", "weight"),
    ("lure.weight", 12, "12", "text in quotes"),
    ("lure.weight", True, "true", "text in quotes"),
    ("lure.weight", ["1 oz"], "a list", "text in quotes"),
    ("lure.technique", "drop shto", "drop shto", "Did you mean drop shot"),
    ("knots.lure", "palomer", "palomer", "Did you mean palomar"),
    ("main.type", "flurocarbon", "flurocarbon", "Did you mean fluorocarbon"),
    ("main.test", "", "an empty text", "Leave the field out"),
    ("main.test", "12-16 lb", "12-16 lb", "one value, not a range"),
    ("rod.line", "25-14 lb", "25-14 lb", "backwards"),
    ("rod.lure", "1-1/2 to 1/4 oz", "1-1/2 to 1/4 oz", "backwards"),
    ("water.cover", "jungle", "jungle", "lily pads"),
    ("water.temperature", "90 C", "90 C", "lower"),
    ("cast", "18 ells", "18 ells", "length"),
    ("reel.ratio", "fast", "fast", "7.1:1"),
    ("water", "deep", "deep", "a group of fields"),
    ("leader", {"type": "nylon"}, "nothing", "null for no leader"),
    ("silenced", [{"rule": "x"}], "nothing", "a reason"),
    ("log", [{"on": "yesterday", "what": "filled"}], "yesterday", "2026-05-02"),
    ("log", [{"on": "2026-05-02", "what": "filed"}], "filed", "Did you mean filled"),
    ("main.price", {"amount": "lots", "length": "200 yd"}, "lots", "24.0"),
    ("pinned", ["rod"], "a list", "leader"),
    ("tags", "larkmere", "larkmere", "a list of words"),
]


@pytest.mark.parametrize(("path", "value", "found", "expected"), SLIPS)
def test_a_slip_names_field_find_and_expectation(path: str, value: Any, found: str, expected: str) -> None:
    told = problems(put(card(), path, value))
    field = next(field for field in told if field.startswith(path))
    assert found in told[field]
    assert expected in told[field]


@pytest.mark.parametrize("path", ["name", "lure.technique", "lure.weight", "main.type", "main.test"])
def test_required_fields_are_asked_for_when_missing_or_null(path: str) -> None:
    assert path in problems(drop(card(), path))
    assert path in problems(put(card(), path, None))


def test_a_rod_needs_a_label_or_a_line_range() -> None:
    assert "rod" in problems(put(card(), "rod", {"power": "heavy"}))
    assert not problems(put(card(), "rod", {"line": "14-25 lb"}))


def test_all_problems_are_told_at_once() -> None:
    told = problems(put_all(card(), {"main.test": "16", "drag": "6", "cast": "18"}))
    assert set(told) == {"main.test", "drag", "cast"}


def test_reading_for_a_command_names_the_file() -> None:
    with pytest.raises(CardUnreadable, match=r"frog\.rigcard: main\.test: found “16”"):
        read_rig(put(card(), "main.test", "16"), load(), file="frog.rigcard")


def test_the_least_card_reads_and_says_what_it_assumes() -> None:
    least: Document = {
        "name": "Bare", "lure": {"technique": "drop shot", "weight": "1/4 oz"},
        "rod": {"line": "6-10 lb"}, "main": {"type": "braid", "test": "10 lb"},
    }  # fmt: skip
    reading = read(least, load())
    assert reading.rig is not None
    assumed = {entry.field: entry for entry in reading.assumed}
    assert {"presentation", "leader.type", "knots.lure", "drag", "water.temperature", "cast"} <= set(assumed)
    assert all(entry.why for entry in reading.assumed)
    assert reading.rig.leader is not None, "practice ties a leader to braid for a drop shot"


def test_what_is_assumed_may_be_written_onto_the_card_without_changing_the_rig() -> None:
    least: Document = {
        "name": "Bare", "lure": {"technique": "ned rig", "weight": "1/8 oz"},
        "rod": {"line": "4-10 lb"}, "main": {"type": "braid", "test": "10 lb"},
    }  # fmt: skip
    first = read(least, load())
    second = read(completed(first), load())
    assert first.rig is not None
    assert second.rig is not None
    assert second.rig.with_(said=frozenset()) == first.rig.with_(said=frozenset())


def test_order_of_fields_does_not_matter() -> None:
    forwards = card()
    backwards = dict(reversed(list(forwards.items())))
    assert read(forwards, load()).rig == read(backwards, load()).rig


def test_sizes_stand_for_tests() -> None:
    rig = read_rig(
        put_all(card(), {"main.type": "braid", "main.test": "PE 1.5", "main.diameter": None}), load()
    ).rig
    assert rig is not None
    assert rig.main.size is not None
    assert rig.main.test_n == pytest.approx(1.5 * 12 * LBF_N)  # common practice: 12 lb a number
