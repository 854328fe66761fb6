"""What a card says of the spool and of how it is to be filled."""

from typing import Any

import pytest

from rigbuilder.model.document import Document, put, put_all
from rigbuilder.model.reading import read, read_rig
from rigbuilder.model.schema import card_schema
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.load import load
from rigbuilder.store.cardfile import card_bytes, parse_card

YARD_M = 0.9144


def frog(**changes: Any) -> Document:
    return put_all(
        usual_document("frog"), {path.replace("__", "."): value for path, value in changes.items()}
    )


def test_the_wishes_of_a_fill_are_read() -> None:
    fill = {"backing": "60 m", "main": "80 yd", "lip_gap": "2 mm", "taped": True, "season_refills": 3}
    rig = read_rig(frog(fill=fill), load()).rig
    assert rig is not None
    assert rig.fill.backing_m == pytest.approx(60.0)
    assert rig.fill.main_m == pytest.approx(80 * YARD_M)
    assert rig.fill.lip_gap_m == pytest.approx(0.002)
    assert rig.fill.taped
    assert rig.fill.season_refills == 3


def test_a_card_without_wishes_has_none() -> None:
    rig = read_rig(frog(), load()).rig
    assert rig is not None
    assert (rig.fill.backing_m, rig.fill.main_m, rig.fill.lip_gap_m) == (None, None, None)
    assert not rig.fill.taped
    assert rig.reel.spool.arbor_m is None


def test_the_spool_is_read_in_millimetres() -> None:
    rig = read_rig(frog(reel__spool={"arbor": "16 mm", "rim": "35 mm", "width": "23 mm"}), load()).rig
    assert rig is not None
    found = (rig.reel.spool.arbor_m, rig.reel.spool.rim_m, rig.reel.spool.width_m)
    assert found == pytest.approx((0.016, 0.035, 0.023))


def test_backing_has_a_price() -> None:
    price = {"amount": 5.0, "currency": "EUR", "length": "500 m"}
    rig = read_rig(put(frog(), "backing", {"type": "nylon", "test": "14 lb", "price": price}), load()).rig
    assert rig is not None
    assert rig.backing is not None
    assert rig.backing.price is not None
    assert rig.backing.price.length_m == pytest.approx(500.0)


@pytest.mark.parametrize(
    ("path", "value", "expected"),
    [
        ("fill.taped", "yes", "true or false"),
        ("fill.season_refills", "3", "a number"),
        ("fill.season_refills", True, "a number"),
        ("fill.season_refills", 0, "a number"),
        ("fill.lip_gap", "2 m", "check the unit"),
        ("reel.spool.rim", "35 inch-ish", "length"),
        ("reel.spool", "small", "a group"),
        ("fill", "full", "a group"),
    ],
)
def test_a_slip_is_named_with_its_field(path: str, value: Any, expected: str) -> None:
    problems = {problem.field: str(problem) for problem in read(put(frog(), path, value), load()).problems}
    assert expected in problems[path]


def test_an_outing_may_stand_in_the_log() -> None:
    rig = read_rig(frog(log=[{"on": "2026-05-02", "what": "outing"}]), load()).rig
    assert rig is not None
    assert str(rig.log[0].what) == "outing"


def test_the_schema_lists_the_new_fields() -> None:
    properties = card_schema()["properties"]
    assert set(properties["fill"]["properties"]) == {"backing", "main", "lip_gap", "taped", "season_refills"}
    assert set(properties["reel"]["properties"]["spool"]["properties"]) == {"arbor", "rim", "width"}


def test_the_file_keeps_them() -> None:
    document = put(frog(), "fill", {"taped": True, "main": "80 yd"})
    assert parse_card(card_bytes(document))["fill"] == {"main": "80 yd", "taped": True}
