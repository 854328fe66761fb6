"""What is assumed goes with what was said: reel and cover with the line, drag with rod and reel."""

from typing import Any

import pytest

from rigbuilder.model.document import Document, put_all
from rigbuilder.model.reading import read
from rigbuilder.reference.load import load


def assumed(technique: str, changes: dict[str, Any]) -> dict[str, str | None]:
    """Return what is assumed for a card that says no more than this."""
    card: Document = {
        "format": "rigbuilder.card",
        "version": 1,
        "name": "least",
        "lure": {"technique": technique, "weight": "3/8 oz"},
        "rod": {"line": "10-20 lb"},
        "main": {"type": "braid", "test": "40 lb"},
    }
    return {entry.field: entry.value for entry in read(put_all(card, changes), load()).assumed}


@pytest.mark.parametrize(
    ("technique", "kind", "test", "reel"),
    [
        ("Texas rig", "fluorocarbon", "15 lb", "baitcasting"),
        ("Texas rig", "braid", "15 lb", "spinning"),
        ("finesse jig", "braid", "15 lb", "spinning"),
        ("finesse jig", "fluorocarbon", "14 lb", "baitcasting"),
        ("trolled crankbait", "braid", "10 lb", "baitcasting"),  # let out, not cast
    ],
)
def test_the_reel_goes_with_the_line(technique: str, kind: str, test: str, reel: str) -> None:
    found = assumed(technique, {"main.type": kind, "main.test": test})
    assert found["reel.kind"] == reel


def test_the_size_is_one_of_the_kind_that_was_said() -> None:
    """A casting reel's number on a spinning reel would be a reel for bleak."""
    found = assumed("Texas rig", {"reel": {"kind": "spinning"}, "main.test": "15 lb"})
    assert "reel.kind" not in found
    assert 1000 <= float(found["reel.size"] or 0) <= 6000


@pytest.mark.parametrize(("kind", "cover"), [("braid", "thick grass"), ("fluorocarbon", "sparse grass")])
def test_the_cover_goes_with_the_line(kind: str, cover: str) -> None:
    found = assumed("swim jig", {"main.type": kind, "main.test": "20 lb"})
    assert found["water.cover"] == cover


def test_the_drag_is_one_that_rod_and_reel_bear() -> None:
    on = {"main.test": "65 lb", "rod.line": "15-30 lb"}
    assert assumed("hollow-body frog", on)["drag"] == "18 lb"  # six tenths of 30 lb, where the drag is locked
    assert assumed("hollow-body frog", {**on, "reel": {"drag": "11.5 lb"}})["drag"] == "11 lb"
    assert float((assumed("hollow-body frog", {**on, "rod.line": "30-65 lb"})["drag"] or "0").split()[0]) > 18
