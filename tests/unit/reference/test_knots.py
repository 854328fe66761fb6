"""Knots: efficiencies against published tests, and what holds for all."""

import pytest

from rigbuilder.reference.knots import Knot
from rigbuilder.reference.load import load
from rigbuilder.reference.words import JointPlace, LineType

REFERENCE = load()
KNOTS = list(REFERENCE.knots.values())


@pytest.mark.parametrize(
    ("knot", "line", "published"),
    [
        ("blood", LineType.NYLON, 0.83),  # Field & Stream: five turns, 10 lb nylon to fluorocarbon
        ("blood", LineType.FLUOROCARBON, 0.83),
        ("surgeon's join", LineType.NYLON, 0.65),  # the same test, three turns
        ("double palomar", LineType.BRAID, 1.0),  # Olander (2006): virtually all of a 20 lb braid
    ],
)
def test_the_range_holds_the_published_result(knot: str, line: LineType, published: float) -> None:
    efficiency = REFERENCE.knot(knot).efficiency_in(line)
    assert efficiency is not None
    assert published in efficiency


def test_terminal_knots_stay_within_what_readers_measured() -> None:
    # Sport Fishing, third knot challenge: nylon 75-100 per cent, braid 31-87 per cent (single tests)
    plain = [knot for knot in KNOTS if knot.serves(JointPlace.TERMINAL) and LineType.NYLON in knot.suits]
    for knot in plain:
        nylon, braid = knot.efficiency_in(LineType.NYLON), knot.efficiency_in(LineType.BRAID)
        assert nylon is not None
        assert 0.70 <= nylon.typical <= 1.0
        assert braid is None or 0.31 <= braid.typical <= 0.87
        assert braid is None or braid.typical < nylon.typical


@pytest.mark.parametrize("knot", KNOTS, ids=lambda knot: knot.name)
def test_a_knot_is_described_whole(knot: Knot) -> None:
    assert knot.name == knot.name.lower()
    assert knot.places
    assert not set(knot.suits) & set(knot.avoid)
    assert len(knot.steps) >= 2
    assert all(step.endswith(".") for step in knot.steps)
    for line, share in knot.efficiency.items():
        assert 0.2 <= share.low <= share.high <= 1.0, line
    if knot.places != (JointPlace.STOP,):
        assert set(knot.suits) <= set(knot.efficiency)


def test_joints_name_the_ratio_they_bear() -> None:
    for knot in KNOTS:
        if JointPlace.LINE_TO_LEADER in knot.places and LineType.NYLON in knot.suits and knot.name != "nail":
            assert knot.ratio is None or knot.ratio.low >= 1
    assert REFERENCE.knot("fg").ratio is not None
    assert REFERENCE.knot("double uni").ratio is not None


@pytest.mark.parametrize(("line", "limit"), [(LineType.NYLON, 20), (LineType.FLUOROCARBON, 12)])
def test_the_improved_clinch_has_its_limits(line: LineType, limit: float) -> None:
    assert REFERENCE.knot("improved clinch").max_lb(line) == limit


def test_the_palomar_is_not_for_large_trebles() -> None:
    assert not REFERENCE.knot("palomar").for_large_trebles
    assert REFERENCE.knot("uni").for_large_trebles
