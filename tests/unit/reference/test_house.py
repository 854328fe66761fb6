"""The coach's house: what it overrides, what it refuses, how it goes back."""

from typing import Any

import pytest

from rigbuilder.reference.house import HOUSE_REASON, House, UnusableHouse
from rigbuilder.reference.load import load
from rigbuilder.reference.ranges import Span
from rigbuilder.reference.words import LineType, Rank

REFERENCE = load()
ENTRIES: dict[str, Any] = {
    "severity": {"braid-on-bare-arbor": "note"},
    "disagreements": {"surface-line": ["fluorocarbon-when-moving"], "drag-share": "third"},
    "techniques": {
        "flipping jig": {
            "lines": {"fluorocarbon": {"test_lb": [15, 22]}, "nylon": {"rank": "poor", "reason": "Ours."}},
            "leader": {"length_m": [0.5, 1.0]},
            "drag": {"percent": [30, 40]},
        }
    },
    "spinning_limits": {"2500": {"fluorocarbon_max_lb": 6}},
}


def test_the_shipped_house_changes_nothing() -> None:
    house = House.shipped()
    assert house.is_shipped
    assert house.apply(REFERENCE) is REFERENCE
    assert house.severity("braid-on-bare-arbor") is None
    assert house.choice("surface-line", REFERENCE) == ("nylon", "braid")
    assert house.entries() == {}


def test_overrides_are_seen_and_named() -> None:
    house = House.read(ENTRIES, REFERENCE)
    seen = house.apply(REFERENCE)
    jig = seen.technique("flipping jig")
    assert jig.lines[LineType.FLUOROCARBON].test_lb == Span(15, 22)
    assert jig.lines[LineType.FLUOROCARBON].reason == HOUSE_REASON
    assert jig.lines[LineType.NYLON].rank is Rank.POOR
    assert jig.lines[LineType.NYLON].reason == "Ours."
    assert jig.lines[LineType.BRAID] == REFERENCE.technique("flipping jig").lines[LineType.BRAID]
    assert jig.drag.percent == Span(30, 40)
    assert jig.leader.length_m == Span(0.5, 1.0)
    assert seen.spinning_limit(2500).fluorocarbon_max_lb == 6
    assert house.severity("braid-on-bare-arbor") == "note"
    assert house.choice("drag-share", REFERENCE) == ("third",)
    assert house.overrides(REFERENCE, jig) == ("lines.fluorocarbon", "lines.nylon", "leader", "drag")
    assert house.overrides(REFERENCE, REFERENCE.technique("frog")) == ()


def test_the_dispute_over_restless_surface_lures_can_be_switched() -> None:
    seen = House.read(ENTRIES, REFERENCE).apply(REFERENCE)
    assert seen.technique("buzzbait").lines[LineType.FLUOROCARBON].rank is Rank.WORKS
    assert seen.technique("walking bait").lines[LineType.FLUOROCARBON].rank is Rank.NEVER


def test_what_is_written_reads_back() -> None:
    house = House.read(ENTRIES, REFERENCE)
    assert House.read(house.entries(), REFERENCE) == house


@pytest.mark.parametrize(
    ("entries", "where", "said"),
    [
        ({"severities": {}}, "severities", "means nothing here"),
        ({"severity": {"x": "grave"}}, "severity.x", "fault"),
        ({"techniques": {"froog": {}}}, "techniques.froog", "frog"),
        ({"techniques": {"frog": {"lines": {"string": {}}}}}, "techniques.frog.lines.string", "braid"),
        ({"techniques": {"frog": {"lines": {"braid": {"test_lb": [50, 30]}}}}}, "test_lb", "low <= high"),
        ({"disagreements": {"surface-line": ["silk"]}}, "disagreements.surface-line", "nylon"),
        ({"disagreements": {"weather": ["rain"]}}, "disagreements.weather", "surface-line"),
        ({"disagreements": {"surface-line": []}}, "disagreements.surface-line", "nothing"),
        ({"disagreements": "all"}, "disagreements", "dictionary"),
        ({"spinning_limits": {"9000": {}}}, "spinning_limits.9000", "2500"),
        ({"spinning_limits": {"2500": {"nylon_max_lb": -1}}}, "nylon_max_lb", "greater than 0"),
    ],
)
def test_what_means_nothing_is_refused_by_name(entries: dict[str, Any], where: str, said: str) -> None:
    with pytest.raises(UnusableHouse) as refused:
        House.read(entries, REFERENCE)
    assert where in str(refused.value)
    assert said in str(refused.value)
