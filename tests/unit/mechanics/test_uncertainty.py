"""Combined ranges against brute-force sampling of several real functions.

Sampling: each input is drawn from two half-normals that share the typical value as
median, with low and high at the 5th and 95th percentile; low and high of the result are
read at its 5th and 95th percentile.
"""

from collections.abc import Callable, Mapping
from functools import partial

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.hookset import hook_force, rig_stiffness
from rigbuilder.mechanics.sinking import sinking_speed
from rigbuilder.mechanics.spool import label_room, length_in_room
from rigbuilder.mechanics.uncertainty import Z_90, Range, around, combine, known

SAMPLES = 40_000


def sampled(function: Callable[..., np.ndarray], inputs: Mapping[str, Range]) -> tuple[float, float, float]:
    generator = np.random.default_rng(20260502)
    # cut at 2.5 deviations, beyond which a wide normal would leave what can be
    drawn = {
        name: value.at(np.clip(generator.standard_normal(SAMPLES), -2.5, 2.5))
        for name, value in inputs.items()
    }
    low, middle, high = np.percentile(function(**drawn), [5.0, 50.0, 95.0])
    return float(low), float(middle), float(high)


def hook_force_of(*, modulus_pa: np.ndarray, rod_n_m: np.ndarray, travel_m: np.ndarray, slack_m: np.ndarray):
    axial = modulus_pa * np.pi / 4 * 3e-4**2
    whole = rig_stiffness(
        main_axial_stiffness_n=axial,
        main_length_m=25.0,
        leader_axial_stiffness_n=axial,
        leader_length_m=0.0,
        rod_stiffness_n_m=rod_n_m,
    )
    return hook_force(tip_travel_m=travel_m, slack_m=slack_m, stiffness_n_m=whole)


def knotted_strength(*, label_n, honesty, wet, knot, wear):
    return label_n * honesty * wet * knot * wear


def spooled_length(*, label_m, label_d_m, line_d_m):
    return length_in_room(room_m3=label_room(length_m=label_m, diameter_m=label_d_m), diameter_m=line_d_m)


def sinking(*, line_density, diameter_m, water_density, viscosity):
    weight = (line_density - water_density) * 9.80665 * np.pi / 4 * np.square(diameter_m)
    return sinking_speed(
        wet_weight_n_m=weight, diameter_m=diameter_m, density_kg_m3=water_density, viscosity_pa_s=viscosity
    )


CASES = {
    "hook force": (
        hook_force_of,
        {
            "modulus_pa": Range(1.2e9, 2.0e9, 3.0e9),
            "rod_n_m": Range(28.0, 40.0, 60.0),
            "travel_m": Range(1.1, 1.5, 1.9),
            "slack_m": Range(0.1, 0.25, 0.5),
        },
    ),
    "knotted strength": (
        knotted_strength,
        {
            "label_n": known(62.3),
            "honesty": Range(0.8, 1.1, 1.3),
            "wet": Range(0.85, 0.9, 0.95),
            "knot": Range(0.6, 0.8, 0.95),
            "wear": Range(0.9, 0.95, 1.0),
        },
    ),
    "spool length": (
        spooled_length,
        {
            "label_m": around(150.0, low_factor=0.9, high_factor=1.1),
            "label_d_m": around(3e-4, low_factor=0.95, high_factor=1.05),
            "line_d_m": around(2.5e-4, low_factor=0.9, high_factor=1.1),
        },
    ),
    "sinking speed of fluorocarbon": (
        sinking,
        {
            "line_density": Range(1750.0, 1780.0, 1800.0),
            "diameter_m": Range(2.7e-4, 3e-4, 3.3e-4),
            "water_density": known(998.2),
            "viscosity": around(1.0016e-3, low_factor=0.92, high_factor=1.08),
        },
    ),
    "speed of a line that may sink or rise": (
        sinking,
        {
            "line_density": Range(940.0, 990.0, 1050.0),
            "diameter_m": Range(2.7e-4, 3e-4, 3.3e-4),
            "water_density": known(998.2),
            "viscosity": around(1.0016e-3, low_factor=0.92, high_factor=1.08),
        },
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_agrees_with_brute_force_sampling(name: str) -> None:
    function, inputs = CASES[name]
    result = combine(function, inputs=inputs)
    low, middle, high = sampled(function, inputs)
    width = high - low
    # each within a tenth of the sampled width, as the module promises
    assert float(result.low) == pytest.approx(low, abs=0.10 * width)
    assert float(result.high) == pytest.approx(high, abs=0.10 * width)
    assert float(result.typical) == pytest.approx(middle, abs=0.10 * width)


def test_closed_form_of_a_product() -> None:
    # logs of factors add in quadrature: two factors of 1.2 and 1.3 give exp(sqrt(ln² 1.2 + ln² 1.3))
    result = combine(
        lambda *, a, b: a * b,
        inputs={
            "a": around(2.0, low_factor=1 / 1.2, high_factor=1.2),
            "b": around(5.0, low_factor=1 / 1.3, high_factor=1.3),
        },
    )
    factor = np.exp(np.hypot(np.log(1.2), np.log(1.3)))
    assert float(result.high) == pytest.approx(10.0 * factor, rel=1e-12)
    assert float(result.low) == pytest.approx(10.0 / factor, rel=1e-12)


def test_a_falling_function_turns_the_range_round() -> None:
    result = combine(lambda *, x: 1.0 / x, inputs={"x": Range(1.0, 2.0, 5.0)})
    assert (float(result.low), float(result.typical), float(result.high)) == pytest.approx((0.2, 0.5, 1.0))


def test_arrays_are_treated_element_by_element() -> None:
    lengths = np.array([10.0, 20.0, 40.0])
    inputs = {"modulus_pa": Range(1e9, 2e9, 3e9)}
    together = combine(
        partial(lambda *, modulus_pa, length: modulus_pa / length, length=lengths), inputs=inputs
    )
    for place, length in enumerate(lengths):
        alone = combine(
            partial(lambda *, modulus_pa, length: modulus_pa / length, length=length), inputs=inputs
        )
        assert together.low[place] == pytest.approx(float(alone.low))
        assert together.high[place] == pytest.approx(float(alone.high))


def test_known_inputs_leave_nothing_to_doubt() -> None:
    result = combine(lambda *, x: 3.0 * x, inputs={"x": known(2.0)})
    assert (float(result.low), float(result.typical), float(result.high)) == (6.0, 6.0, 6.0)


def test_mean_and_deviation_of_a_range_are_those_of_its_samples() -> None:
    lopsided = Range(0.6, 0.8, 0.95)
    drawn = lopsided.at(np.random.default_rng(7).standard_normal(400_000))
    assert float(lopsided.mean()) == pytest.approx(drawn.mean(), abs=5e-4)
    assert float(lopsided.deviation()) == pytest.approx(drawn.std(), abs=5e-4)
    assert float(lopsided.at(Z_90)) == pytest.approx(0.95)
    assert float(lopsided.at(-Z_90)) == pytest.approx(0.6)


@given(st.floats(0.1, 10.0), st.floats(0.0, 0.9), st.floats(1.0, 3.0), st.floats(1.0, 2.0))
def test_wider_inputs_never_narrow_the_result(value: float, low: float, high: float, more: float) -> None:
    def width(spread: float) -> float:
        inputs = {
            "x": around(value, low_factor=low / spread, high_factor=high * spread),
            "y": around(2.0, low_factor=0.8, high_factor=1.3),
        }
        result = combine(lambda *, x, y: x + y, inputs=inputs)
        return float(result.high - result.low)

    assert width(more) >= width(1.0) - 1e-9


def test_refuses_a_range_upside_down() -> None:
    with pytest.raises(ImpossibleInput, match="step from low to typical"):
        Range(2.0, 1.0, 3.0)
    with pytest.raises(ImpossibleInput, match="high factor"):
        around(1.0, low_factor=0.9, high_factor=0.95)
    with pytest.raises(ImpossibleInput, match="step from typical to high"):
        Range(0.0, 1.0, np.nan)
