"""Film, nose pull and tilt at the surface."""

from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics import still, surface, validity, water
from rigbuilder.mechanics.errors import ImpossibleInput

NYLON, PVDF = 9.82895e-5, 5.41932e-4  # weight of 0.30 mm line in fresh water at 20 °C, N/m
LURE = {"body_length_m": 0.06, "body_width_m": 0.018, "mass_kg": 0.018, "water_density_kg_m3": 998.2}


@pytest.mark.parametrize(("weight", "ratio"), [(NYLON, 1481), (PVDF, 269)])
def test_film_carries_dry_line_many_times_over(weight: float, ratio: float) -> None:
    # 2γ/w with the surface tension of IAPWS R1-76 at 20 °C, to the last printed digit
    tension = water.surface_tension(temperature_c=20.0)
    assert surface.film_ratio(surface_tension_n_m=tension, wet_weight_n_m=weight) == pytest.approx(
        ratio, abs=1.0
    )


def test_film_is_not_asked_by_line_that_floats() -> None:
    ratios = surface.film_ratio(surface_tension_n_m=0.0727, wet_weight_n_m=np.array([-1e-5, 0.0, 1e-4]))
    assert np.isinf(ratios).tolist() == [True, True, False]


def test_a_shallow_sag_hangs_half_the_line_on_the_nose() -> None:
    span, tension = 15.0, 0.05
    found = surface.hanging_length(wet_weight_n_m=PVDF, span_m=span, tension_n=tension, depth_m=10.0)
    whole = span + still.extra_length(weight_n_m=PVDF, span_m=span, tension_n=tension)
    assert found == pytest.approx(whole / 2.0, rel=1e-9)


def test_the_nose_carries_its_half_of_a_hanging_line() -> None:
    # the end force of a catenary between level points: half its weight, 15 m and 15.8 m of line
    ends = still.hanging_line(weight_n_m=PVDF, span_m=15.0, rise_m=0.0, length_m=15.8)
    length = surface.hanging_length(
        wet_weight_n_m=PVDF, span_m=15.0, tension_n=ends.horizontal_n, depth_m=30.0
    )
    assert surface.nose_pull(wet_weight_n_m=PVDF, hanging_length_m=length) == pytest.approx(
        float(ends.vertical_top_n), rel=1e-9
    )


def test_slack_line_hangs_straight_to_the_depth_it_reached() -> None:
    found = surface.hanging_length(wet_weight_n_m=PVDF, span_m=15.0, tension_n=0.0, depth_m=0.8)
    assert found == pytest.approx(0.8, rel=1e-6)


@given(
    span=st.floats(2.0, 40.0),
    tension=st.floats(0.0, 0.5),
    depth=st.floats(1e-3, 10.0),
    weight=st.floats(1e-6, 1e-2),
)
def test_the_hanging_part_reaches_the_depth_or_half_the_span(
    span: float, tension: float, depth: float, weight: float
) -> None:
    line = {"wet_weight_n_m": weight, "span_m": span, "tension_n": tension}
    found = float(surface.hanging_length(depth_m=depth, **line))
    assert np.isfinite(found)
    assert found >= min(depth, span / 2.0) * (1.0 - 1e-9)
    deeper = surface.hanging_length(
        wet_weight_n_m=weight, span_m=span, tension_n=tension, depth_m=depth + 1.0
    )
    assert deeper >= found


def test_line_that_floats_does_not_pull() -> None:
    found = surface.hanging_length(wet_weight_n_m=-1e-5, span_m=15.0, tension_n=0.0, depth_m=3.0)
    assert found == 0.0
    assert surface.nose_pull(wet_weight_n_m=-1e-5, hanging_length_m=3.0) == 0.0


def righting_by_strips(angle: float, lure: dict[str, float]) -> float:
    """Righting moment of a box afloat, its submerged part cut into strips across its length."""
    volume = lure["mass_kg"] / lure["water_density_kg_m3"]
    draught = volume / (lure["body_length_m"] * lure["body_width_m"])
    edges = np.linspace(-0.5, 0.5, 20001) * lure["body_length_m"]
    middle = 0.5 * (edges[1:] + edges[:-1])
    sunk = draught + middle * np.tan(angle)
    lift = lure["water_density_kg_m3"] * 9.80665 * lure["body_width_m"] * np.diff(edges) * sunk
    return float(np.sum(lift * middle))


@pytest.mark.parametrize("pull", [1e-4, 1e-3, 3e-3])
def test_tilt_against_strips_of_buoyancy(pull: float) -> None:
    angle = float(surface.tilt(pull_n=pull, **LURE))
    assert righting_by_strips(angle, LURE) == pytest.approx(pull * LURE["body_length_m"] / 2.0, rel=1e-6)


def test_nose_drop_of_a_box_is_four_times_its_sinkage() -> None:
    # box with its centres together: P/(ρgbl) from sinking plus three times that from tilting
    angle = surface.tilt(pull_n=2e-3, **LURE)
    size = {key: LURE[key] for key in ("body_length_m", "body_width_m", "water_density_kg_m3")}
    sinkage = 2e-3 / (998.2 * 9.80665 * 0.06 * 0.018)
    assert surface.nose_drop(pull_n=2e-3, tilt_rad=angle, **size) == pytest.approx(4.0 * sinkage, rel=1e-9)


@given(pull=st.floats(1e-5, 1e-2), factor=st.floats(1.05, 5.0))
def test_more_pull_tilts_more_and_ballast_less(pull: float, factor: float) -> None:
    assert surface.tilt(pull_n=pull * factor, **LURE) > surface.tilt(pull_n=pull, **LURE)
    ballasted = surface.tilt(pull_n=pull, gravity_above_buoyancy_m=-0.003, **LURE)
    assert ballasted < surface.tilt(pull_n=pull, **LURE)


def test_a_strong_pull_is_remarked_upon() -> None:
    assert validity.remarks("surface.tilt", tilt_rad=surface.tilt(pull_n=0.2, **LURE))


@pytest.mark.parametrize(
    ("changed", "named"),
    [
        ({"mass_kg": 0.0}, "mass of the lure in kg"),
        ({"gravity_above_buoyancy_m": 1.0}, "metacentric height of the lure in m"),
        ({"pull_n": -1.0}, "pull in N"),
    ],
)
def test_impossible_lures_are_refused(changed: dict[str, Any], named: str) -> None:
    with pytest.raises(ImpossibleInput) as refused:
        surface.tilt(**({"pull_n": 1e-3} | LURE | changed))
    assert refused.value.quantity == named
