"""Every condition that a card can name moves the test by its steps, and the reason says which did."""

from typing import Any

import pytest

from rigbuilder.model.document import put_all
from rigbuilder.model.reading import read
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.reference.words import LineType
from rigbuilder.review.conditions import Bounds, moved, steps_between
from rigbuilder.review.engine import Report, review
from rigbuilder.review.speak import Speaker

FLUOROCARBON, BRAID = LineType.FLUOROCARBON, LineType.BRAID


def reported(technique: str, changes: dict[str, Any]) -> Report:
    """Review the usual rig with changes."""
    rig = read(put_all(usual_document(technique), changes), load()).rig
    assert rig is not None
    return review(rig, load(), House.shipped())


def aim(technique: str, changes: dict[str, Any], kind: LineType = FLUOROCARBON) -> Bounds:
    found = reported(technique, changes).case.aim.for_type(kind)
    assert found is not None
    return found


# On a Texas rig: its range is 10 to 17 lb, and its usual day leaves room on both sides.
@pytest.mark.parametrize(
    ("changes", "up", "said"),
    [
        ({"water.clarity": "4 m"}, False, "very clear"),
        ({"water.clarity": "0.2 m"}, True, "muddy"),
        ({"water.pressure": "high"}, False, "heavily fished"),
        ({"water.wind": "strong"}, False, "strong wind"),
        ({"water.current": "1 m/s"}, False, "strong current"),
        ({"water.temperature": "4 C"}, False, "cold water"),
        ({"fish.weight": "6 kg"}, True, "big fish"),
        ({"fish.weight": "0.3 kg"}, False, "small fish"),
        ({"cast": "8 m"}, True, "short casts"),
        ({"cast": "50 m"}, False, "very long casts"),
        ({"from": "shore"}, True, "from the shore"),
        ({"water.cover": "wood"}, True, "wood or docks"),
        ({"lure.weight": "1/8 oz"}, False, "a light lure"),
    ],
)
def test_condition_moves_the_aim_and_is_named(changes: dict[str, Any], up: bool, said: str) -> None:
    usual, report = aim("texas-open", {}), reported("texas-open", changes)
    today = report.case.aim.for_type(FLUOROCARBON)
    assert today is not None
    assert (today.aim_lb > usual.aim_lb) if up else (today.aim_lb < usual.aim_lb)
    assert any(said in move.state.name for move in report.case.aim.movers(FLUOROCARBON, up=up))


def test_depth_moves_lures_that_are_wound_or_worked_up_and_down() -> None:
    assert aim("drop-shot", {"water.depth": "7 m"}).aim_lb < aim("drop-shot", {"water.depth": "3 m"}).aim_lb
    assert aim("flip-jig", {"water.depth": "7 m"}).aim_lb == aim("flip-jig", {"water.depth": "3 m"}).aim_lb


def test_braid_into_the_wind_on_a_spinning_reel_is_its_own_state() -> None:
    moves = reported("drop-shot", {"water.wind": "strong"}).case.aim.moves(BRAID)
    assert "wind against braid on a spinning reel" in [move.state.name for move in moves]


def test_reason_says_what_moved_the_test() -> None:
    report = reported("flip-jig", {"main.test": "14 lb", "fish.weight": "6 kg"})
    (finding,) = [found for found in report.findings if found.rule.name == "test-off-the-aim"]
    assert "25 lb" in finding.headline(Speaker())
    assert "big fish" in finding.why(Speaker())


def test_usual_day_moves_nothing() -> None:
    for technique in load().techniques.values():
        case = reported(technique.id, {}).case
        assert not [move for move in case.aim.moves(case.main.type) if move.steps], technique.name


def test_weed_asks_strong_braid_of_techniques_of_heavy_cover() -> None:
    assert aim("texas-cover", {"water.cover": "lily pads"}, BRAID).aim_lb >= 50
    assert aim("texas-cover", {"water.cover": "matted grass"}, BRAID).aim_lb >= 65
    assert aim("swim-jig", {"water.cover": "lily pads"}, BRAID).aim_lb < 50


def test_aim_never_leaves_its_bounds_and_soft_days_never_leave_the_range() -> None:
    day = {"water.clarity": "4 m", "water.pressure": "high", "water.cover": "open", "fish.weight": "0.1 kg"}
    for technique in load().techniques.values():
        found = reported(technique.id, day).case.aim
        for kind in LineType:
            bounds = found.for_type(kind)
            if bounds is not None:
                assert bounds.low_lb <= bounds.aim_lb <= bounds.high_lb
                assert bounds.base.low <= bounds.aim_lb <= bounds.base.high


def test_ladder_steps() -> None:
    ladder = (2.0, 4.0, 8.0)
    assert [moved(ladder, 4.0, steps) for steps in (-5, -1, 0, 1, 5)] == [2, 2, 4, 8, 8]
    assert moved(ladder, 5.0, 1) == 8
    assert steps_between(ladder, 8.0, 2.0) == 2
    assert steps_between(ladder, 2.1, 7.9) == -2
