"""Knot efficiency and own pull tests against sampling and against Student's t."""

import json
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import t as student

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.knotstats import efficiency, efficiency_range, pull_tests
from rigbuilder.mechanics.validity import remarks

DATA = json.loads((Path(__file__).parent / "data_second" / "tackle.json").read_text(encoding="utf-8"))


def test_delta_rule_as_in_the_check_row() -> None:
    # 70 +- 7 over 100 +- 4, with 2e6 samples (method: Symmetry 2022, 14:1926)
    row = DATA["knot_ratio_mc"]
    mean, deviation = efficiency(knot_mean_n=70.0, knot_sd_n=7.0, line_mean_n=100.0, line_sd_n=4.0)
    assert mean == pytest.approx(row["mean_delta"], rel=1e-12)
    assert deviation == pytest.approx(row["sd_delta"], rel=1e-12)
    assert mean == pytest.approx(row["mean_mc"], rel=1e-3)
    assert deviation == pytest.approx(row["sd_mc"], rel=5e-3)


@pytest.mark.parametrize("variation", [0.05, 0.1, 0.15])
def test_delta_rule_within_one_per_cent_of_sampling(variation: float) -> None:
    generator = np.random.default_rng(3)
    knots, lines = (1.0 + variation * generator.standard_normal((2, 1_000_000))) * [[60.0], [90.0]]
    mean, _ = efficiency(
        knot_mean_n=60.0, knot_sd_n=60.0 * variation, line_mean_n=90.0, line_sd_n=90.0 * variation
    )
    assert mean == pytest.approx((knots / lines).mean(), rel=0.01)


def test_remark_for_wide_scatter() -> None:
    assert remarks("knotstats.efficiency", variation=0.35)


def test_prediction_range_is_student_s() -> None:
    readings = [41.0, 44.5, 39.2, 42.8, 43.1, 40.4]
    tests = pull_tests(readings_n=readings)
    reach = student.ppf(0.95, 5) * np.std(readings, ddof=1) * np.sqrt(1 + 1 / 6)
    assert tests.mean_n == pytest.approx(np.mean(readings))
    assert float(tests.next_pull.high) == pytest.approx(np.mean(readings) + reach, rel=1e-4)
    assert float(tests.next_pull.low) == pytest.approx(np.mean(readings) - reach, rel=1e-4)


@pytest.mark.parametrize("count", [2, 3, 5, 10, 21, 31])
def test_ninety_per_cent_of_next_pulls_fall_inside(count: int) -> None:
    generator = np.random.default_rng(count)
    inside = 0
    for _ in range(4000):
        *readings, following = generator.normal(50.0, 2.0, count + 1)
        tests = pull_tests(readings_n=readings)
        inside += bool(tests.next_pull.low <= following <= tests.next_pull.high)
    assert inside / 4000 == pytest.approx(0.90, abs=0.02)


def test_few_pulls_are_not_enough_and_say_so() -> None:
    assert not pull_tests(readings_n=[40.0, 41.0, 42.0, 40.5]).enough
    assert pull_tests(readings_n=[40.0, 41.0, 42.0, 40.5, 41.5]).enough


def test_efficiency_from_own_pulls() -> None:
    knot = pull_tests(readings_n=[39.0, 41.0, 40.0, 42.0, 38.0])
    line = pull_tests(readings_n=[50.0, 51.0, 49.0, 50.5, 49.5])
    result = efficiency_range(knot=knot, line=line)
    assert float(result.typical) == pytest.approx(0.8, rel=1e-3)
    assert float(knot.next_pull.low) / line.mean_n > float(result.low) > 0.6


@given(st.lists(st.floats(5.0, 200.0), min_size=2, max_size=40))
def test_range_holds_the_mean_and_never_goes_below_nothing(readings: list[float]) -> None:
    tests = pull_tests(readings_n=readings)
    assert 0.0 <= tests.next_pull.low <= tests.mean_n <= tests.next_pull.high


def test_refuses_one_pull_and_nonsense() -> None:
    with pytest.raises(ImpossibleInput, match="number of pulls"):
        pull_tests(readings_n=[40.0])
    with pytest.raises(ImpossibleInput, match="reading in N"):
        pull_tests(readings_n=[40.0, -1.0])
