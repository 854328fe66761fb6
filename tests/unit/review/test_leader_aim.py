"""Which leader the day points at."""

from typing import Any

import pytest

from rigbuilder.model.document import put_all
from rigbuilder.model.reading import read
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.reference.words import LeaderNeed, LineType
from rigbuilder.review.engine import review
from rigbuilder.review.leader_aim import LeaderAim, leader_aim


def aim_of(technique: str, changes: dict[str, Any]) -> LeaderAim:
    """Return the leader that a day points at on the technique's usual line."""
    rig = read(put_all(usual_document(technique), changes), load()).rig
    assert rig is not None
    case = review(rig, load(), House.shipped()).case
    return leader_aim(case.aim, case.main.type)


def test_usual_day_points_at_the_usual_leader() -> None:
    aim = aim_of("drop-shot", {})
    assert aim.test_lb is not None
    assert aim.length_in is not None
    assert aim.test_lb[1] == 8
    assert aim.length_in[1] == 96
    assert not aim.test_moves
    assert not aim.length_moves


@pytest.mark.parametrize(
    ("changes", "longer"),
    [
        ({"water.clarity": "4 m"}, True),
        ({"water.pressure": "high"}, True),
        ({"water.clarity": "0.5 m"}, False),
        ({"water.cover": "thick grass"}, False),
    ],
)
def test_day_moves_the_length_and_says_by_what(changes: dict[str, Any], longer: bool) -> None:
    usual, moved = aim_of("ned", {}), aim_of("ned", changes)
    assert usual.length_in is not None
    assert moved.length_in is not None
    assert (moved.length_in[1] > usual.length_in[1]) is longer
    assert [move.state.name for move in moved.length_moves]


def test_big_fish_and_the_shore_move_the_test() -> None:
    usual = aim_of("ned", {"from": "boat"})
    moved = aim_of("ned", {"from": "shore", "fish.weight": "6 kg"})
    assert usual.test_lb is not None
    assert moved.test_lb is not None
    assert moved.test_lb[1] > usual.test_lb[1]


def test_toothed_fish_bring_advice_and_lead_in_the_list_of_moves() -> None:
    assert any("bite leader" in words for words in aim_of("spinnerbait", {"fish.teeth": "present"}).advice)


def test_clear_water_puts_fluorocarbon_first_where_both_do() -> None:
    assert aim_of("split-shot", {"water.clarity": "4 m"}).materials[0] is LineType.FLUOROCARBON


def test_need_follows_the_main_line() -> None:
    assert aim_of("ned", {}).need in (LeaderNeed.USUAL, LeaderNeed.REQUIRED)
    assert aim_of("flip-jig", {}).need is LeaderNeed.NONE
