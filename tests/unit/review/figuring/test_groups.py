"""Single formulas of the groups, held against the full models that they stand for."""

import numpy as np
import pytest

from rigbuilder.mechanics.loads import viscous_load
from rigbuilder.mechanics.sinking import sinking_speed
from rigbuilder.mechanics.strength import chain_strength
from rigbuilder.mechanics.tow import towed
from rigbuilder.model.rig import Capacity, Reel
from rigbuilder.reference.words import LineType, ReelKind
from rigbuilder.review.figuring import chain, resting, throwing, towing
from rigbuilder.review.figuring.given import given
from rigbuilder.review.figuring.material import convention_of
from rigbuilder.review.figuring.sections import sections
from tests.unit.review.figuring.rigs import REFERENCE, facts, line, rig

WATER = {"density_kg_m3": 998.2, "viscosity_pa_s": 1.0016e-3}


def test_sinking_speed_from_the_table_is_that_of_the_search() -> None:
    weight, diameter = np.geomspace(1e-6, 1e-2, 40), np.geomspace(0.05e-3, 1e-3, 40)
    quick = resting.sinking_speed(weight, diameter, *(np.array(value) for value in WATER.values()))
    assert quick == pytest.approx(
        sinking_speed(wet_weight_n_m=weight, diameter_m=diameter, **WATER), rel=1e-3
    )


def test_floating_line_does_not_sink() -> None:
    assert resting.sinking_speed(np.array([-1e-4]), np.array([2e-4]), *map(np.array, WATER.values())) == 0.0


def test_coarse_steps_give_the_depth_of_fine_ones() -> None:
    rng = np.random.default_rng(3)
    count = 200
    diameter, speed = rng.uniform(1e-4, 6e-4, count), rng.uniform(0.2, 1.4, count)
    pull = 10.0 ** rng.uniform(-1.5, 0.5, count)
    load = viscous_load(diameter_m=diameter, speed_m_s=speed, **WATER)
    rigs = {
        "wet_weight_n_m": 7900.0 * diameter**2 * rng.uniform(-0.02, 0.45, count),
        "dry_weight_n_m": 7900.0 * diameter**2,
        "pull_down_n": pull,
        "drag_n": pull * rng.uniform(0.1, 2.0, count),
        "length_m": rng.uniform(10.0, 60.0, count),
        "tip_height_m": np.ones(count),
    }
    coarse, fine = (towed(load=load, steps=steps, **rigs).depth_m for steps in (towing.STEPS, 300))
    assert coarse == pytest.approx(fine, rel=1e-3)


def test_coarse_grid_gives_the_chain_of_a_fine_one() -> None:
    rng = np.random.default_rng(4)
    mean = rng.uniform(20.0, 80.0, (200, 4))
    spread = mean * rng.uniform(0.05, 0.3, mean.shape)
    coarse, fine = (chain_strength(mean_n=mean, sd_n=spread, points=points) for points in (chain.POINTS, 800))
    assert np.abs(coarse.breaks_first - fine.breaks_first).max() < 0.02
    assert coarse.strength.low == pytest.approx(fine.strength.low, rel=0.02)
    assert coarse.strength.typical == pytest.approx(fine.strength.typical, rel=0.02)


def test_the_lines_skin_shortens_the_cast_range_both_ways() -> None:
    found = facts(rig(main=line(LineType.BRAID, 10.0)))[0]
    assert found.cast_share.low < found.cast_share.typical < found.cast_share.high
    wide = found.cast_distance_m
    assert wide.low < (1.0 - throwing.METRES / 2) * wide.typical
    assert wide.high > (1.0 + throwing.METRES / 2) * wide.typical


def _label(*capacity: Capacity) -> object:
    reel = Reel(kind=ReelKind.SPINNING, size="2500", capacity=capacity)
    return given([rig(reel=reel)], [REFERENCE.techniques["spinnerbait"]], REFERENCE).spool_line[0]


def test_a_capacity_by_diameter_is_trusted_before_others() -> None:
    by_test = Capacity(length_m=100.0, test_n=40.0)
    by_diameter = Capacity(length_m=150.0, diameter_m=0.3e-3)
    assert _label(by_test, by_diameter) == line(pounds=None, diameter_m=0.3e-3)
    assert _label(by_test) == line(pounds=None).with_(test_n=40.0)


def test_a_printed_diameter_is_within_five_per_cent() -> None:
    found = sections([line(diameter_m=0.3e-3)], REFERENCE)
    assert found.diameter_m[:, 0] == pytest.approx([0.285e-3, 0.3e-3, 0.315e-3])


def test_a_number_stands_for_its_standard_diameter() -> None:
    """No. 3 is 0.285 mm: Japanese standard sizes of fishing line, JAFS 2010."""
    numbered = line(pounds=None).with_(size={"scale": "No.", "number": 3.0})
    assert sections([numbered], REFERENCE).diameter_m[1, 0] == pytest.approx(0.285e-3, rel=0.01)


def test_braid_is_thinner_stiffer_and_lighter_than_nylon_of_its_test() -> None:
    found = sections([line(LineType.NYLON, 20.0), line(LineType.BRAID, 20.0)], REFERENCE)
    assert found.diameter_m[1, 1] < found.diameter_m[1, 0]
    assert found.axial_n[1, 1] > found.axial_n[1, 0]
    assert found.mass_kg_m[1, 1] < found.mass_kg_m[1, 0]


def test_a_label_is_read_by_the_lines_own_convention() -> None:
    said = line(convention="European")
    assert convention_of(said, REFERENCE) == "European"
    assert convention_of(line(), REFERENCE) == REFERENCE.line_types[LineType.NYLON].usual_convention
    breaks = sections([said, line()], REFERENCE).wet_break_n
    assert breaks[1, 0] < breaks[1, 1]
