"""Conditions of the day: which state holds, and which way it moves. Common practice, no source."""

import pytest

from rigbuilder.reference.load import load
from rigbuilder.reference.words import LineType

ADJUSTERS = {adjuster.id: adjuster for adjuster in load().adjusters}


@pytest.mark.parametrize(
    ("adjuster", "values", "state"),
    [
        ("clarity", {"water.clarity": 4.0}, "gin-clear"),
        ("clarity", {"water.clarity": 2.0}, "clear"),
        ("clarity", {"water.clarity": 0.5}, "stained"),
        ("clarity", {"water.clarity": 0.1}, "muddy"),
        ("cover", {"water.cover": "docks"}, "wood"),
        ("cover", {"water.cover": "lily pads"}, "thick-grass"),
        ("cover", {"water.cover": "matted grass"}, "mats"),
        ("depth", {"water.depth": 1.0}, "under-5-ft"),
        ("depth", {"water.depth": 20.0}, "over-30-ft"),
        ("wind", {"water.wind": "strong"}, "strong"),
        ("wind", {"water.wind": "strong", "reel.kind": "spinning", "main.type": "braid"}, "braid-into-wind"),
        ("distance", {"cast": 20.0}, "15-30-yd"),
        ("distance", {"cast": 45.0}, "over-45-yd"),
        ("stand", {"from": "shore"}, "shore"),
        ("fish-size", {"fish.weight_ratio": 2.5}, "big"),
    ],
)
def test_the_state_that_holds(adjuster: str, values: dict[str, float | str], state: str) -> None:
    found = ADJUSTERS[adjuster].state_for(values)
    assert found is not None
    assert found.id == state


@pytest.mark.parametrize("adjuster", ADJUSTERS.values(), ids=lambda adjuster: adjuster.id)
def test_nothing_holds_where_nothing_is_known(adjuster: object) -> None:
    assert adjuster.state_for({}) is None  # type: ignore[attr-defined]


@pytest.mark.parametrize("clarity_m", [0.0, 0.3, 0.91, 2.44, 30.0])
def test_exactly_one_state_of_clarity_holds(clarity_m: float) -> None:
    values = {"water.clarity": clarity_m}
    assert sum(state.holds(values) for state in ADJUSTERS["clarity"].states) == 1


def test_clear_water_asks_for_thinner_line_and_longer_leaders() -> None:
    clear, muddy = ADJUSTERS["clarity"].state("gin-clear"), ADJUSTERS["clarity"].state("muddy")
    assert clear.test is not None
    assert muddy.test is not None
    assert clear.test.high < 0 < muddy.test.low
    assert clear.leader_length is not None
    assert clear.leader_length.low > 0


def test_heavy_grass_asks_for_braid_of_fifty_pounds() -> None:
    for name in ("thick-grass", "mats"):
        state = ADJUSTERS["cover"].state(name)
        assert state.heavy_cover_floor_lb == 50
        assert state.favour == (LineType.BRAID,)


def test_every_state_advises_and_those_that_move_say_why() -> None:
    for adjuster in ADJUSTERS.values():
        for state in adjuster.states:
            assert state.advice.endswith("."), state.id
            assert state.test is None or state.why, state.id


def test_an_unknown_state_is_named() -> None:
    with pytest.raises(KeyError, match="cover/lava"):
        ADJUSTERS["cover"].state("lava")


def test_ladders_rise() -> None:
    ladders = load().ladders
    for ladder in (ladders.nylon_lb, ladders.braid_lb, ladders.leader_lb, ladders.leader_in):
        assert list(ladder) == sorted(set(ladder))
    assert ladders.for_line(LineType.FUSED_BRAID) == ladders.braid_lb
    assert ladders.for_line(LineType.FLUOROCARBON) == ladders.nylon_lb
