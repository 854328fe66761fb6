"""The line from the side: it ends where it must, and lies as deep as the review says."""

from itertools import pairwise

import pytest

from rigbuilder.mechanics.cylinder import drag_coefficient
from rigbuilder.reference.load import load
from rigbuilder.review.questions.profile import AIR, WET, Way, profile
from tests.unit.review.questions.cases import WRONG_FROG, report_of, usual_report

ALL = tuple(load().techniques)


@pytest.mark.parametrize("technique", ALL)
def test_every_shape_runs_from_the_tip_to_the_lure_within_the_water(technique: str) -> None:
    case = usual_report(technique).case
    shape = profile(case)
    bottom = case.rig.water.depth_m or 1e9
    for points in (shape.typical, shape.shallow, shape.deep):
        assert len(points) == WET + AIR
        assert points[0][0] == pytest.approx(0.0, abs=1e-6)
        assert points[0][1] > 0.0
        assert all(z >= -bottom - 1e-9 for _, z in points)
        assert all(x1 >= x0 - 1e-6 for (x0, _), (x1, _) in pairwise(points))


@pytest.mark.parametrize("technique", ALL)
def test_the_band_holds_the_typical_shape(technique: str) -> None:
    shape = profile(usual_report(technique).case)
    for (_, typical), (_, shallow), (_, deep) in zip(shape.typical, shape.shallow, shape.deep, strict=True):
        assert deep - 0.02 <= typical <= shallow + 0.02


@pytest.mark.parametrize("technique", ["deep-diver", "square-bill", "jerkbait", "lipless"])
def test_a_wound_lure_is_drawn_as_deep_as_the_review_says(technique: str) -> None:
    case = usual_report(technique).case
    shape, depth = profile(case), case.facts.depth_m
    assert shape.way is Way.TOWED
    assert depth is not None
    assert shape.depth_m == pytest.approx(depth.typical, rel=2e-3)
    assert -shape.shallow[-1][1] == pytest.approx(depth.low, rel=2e-3)


def test_a_wound_line_is_as_long_as_the_cast() -> None:
    case = usual_report("deep-diver").case
    points = profile(case).typical
    length = sum(((x1 - x0) ** 2 + (z1 - z0) ** 2) ** 0.5 for (x0, z0), (x1, z1) in pairwise(points))
    assert case.rig.cast_m is not None
    assert length == pytest.approx(case.rig.cast_m, rel=5e-3)


def test_sinking_line_hangs_from_a_surface_lure_and_floating_line_does_not() -> None:
    floating = profile(usual_report("frog").case)
    sinking = profile(report_of("frog", WRONG_FROG).case)
    assert floating.way is sinking.way is Way.RESTING
    assert min(z for _, z in floating.deep) == pytest.approx(0.0, abs=1e-6)
    assert min(z for _, z in sinking.typical) < -0.05
    assert sinking.lure[1] == pytest.approx(0.0, abs=1e-6)


def test_sinking_line_hangs_no_deeper_than_it_can_have_sunk() -> None:
    # Terminal speed of the line across the flow, balance of weight and drag, times the longest pause of 15 s.
    case = report_of("frog", WRONG_FROG | {"water.depth": "20 m"}).case
    across = case.facts.main_diameter_m.typical
    weight = (1780.0 - 998.0) * 9.81 * 3.1416 / 4 * across**2  # fluorocarbon in fresh water [N/m]
    speed = 0.02
    for _ in range(60):
        drag = float(drag_coefficient(reynolds=998.0 * speed * across / 1.0e-3))
        speed = (2 * weight / (998.0 * across * drag)) ** 0.5
    assert -min(z for _, z in profile(case).deep) == pytest.approx(15.0 * speed, rel=0.1)


def test_a_bottom_lure_lies_on_the_bottom_on_a_straight_enough_line() -> None:
    case = usual_report("punching").case
    shape = profile(case)
    assert shape.way is Way.HELD
    assert shape.depth_m == pytest.approx(case.rig.water.depth_m or 0.0)
