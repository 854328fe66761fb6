"""Diving lures calibrated from the depth on the box."""

from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rigbuilder.mechanics import diving, loads, tow
from rigbuilder.mechanics.errors import ImpossibleInput

FRESH = {"density_kg_m3": 998.2072, "viscosity_pa_s": 1.0016e-3}


def line(diameter: Any, density: float = 1140.0, speed: float = 1.0) -> dict[str, Any]:
    area = np.pi / 4.0 * np.asarray(diameter) ** 2
    return {
        "load": loads.viscous_load(diameter_m=diameter, speed_m_s=speed, **FRESH),
        "wet_weight_n_m": (density - 998.2072) * 9.80665 * area,
        "dry_weight_n_m": density * 9.80665 * area,
        "length_m": 25.0,
        "tip_height_m": 1.0,
    }


@settings(max_examples=25, deadline=None)
@given(depth=st.floats(0.3, 12.0), drag=st.floats(0.1, 3.0), diameter=st.floats(0.2e-3, 0.4e-3))
def test_the_reference_line_gives_the_printed_depth(depth: float, drag: float, diameter: float) -> None:
    pull = diving.dive_force(running_depth_m=depth, drag_n=drag, **line(diameter))
    found = tow.towed(pull_down_n=pull, drag_n=drag, **line(diameter))
    assert found.depth_m == pytest.approx(depth, rel=1e-3)


def test_a_known_pull_is_found_again() -> None:
    depth = tow.towed(pull_down_n=0.7, drag_n=0.5, **line(0.3e-3)).depth_m
    assert diving.dive_force(running_depth_m=depth, drag_n=0.5, **line(0.3e-3)) == pytest.approx(
        0.7, rel=1e-3
    )


def test_other_lines_then_run_as_their_thickness_says() -> None:
    pull = diving.dive_force(running_depth_m=3.0, drag_n=0.6, **line(0.3e-3))
    thin, same, thick = tow.towed(
        pull_down_n=pull, drag_n=0.6, **line(np.array([0.15e-3, 0.3e-3, 0.45e-3]))
    ).depth_m
    assert thin > same > thick
    assert same == pytest.approx(3.0, rel=1e-3)
    assert 1.0 < thin / same < 1.7


def test_many_lures_at_once() -> None:
    depths = np.array([[1.0], [3.0], [6.0]])
    pulls = diving.dive_force(running_depth_m=depths, drag_n=0.6, **line(np.array([0.25e-3, 0.35e-3])))
    assert pulls.shape == (3, 2)
    assert (np.diff(pulls, axis=0) > 0.0).all()  # deeper takes more pull
    assert (np.diff(pulls, axis=1) > 0.0).all()  # so does thicker line
    single = diving.dive_force(running_depth_m=6.0, drag_n=0.6, **line(0.35e-3))
    assert pulls[2, 1] == pytest.approx(single, rel=1e-3)


def test_the_dive_scales_with_the_square_of_speed() -> None:
    area = diving.dive_area(pull_down_n=0.5, weight_in_water_n=-0.05, speed_m_s=1.0, density_kg_m3=998.2)
    dive = tow.form_drag(speed_m_s=2.0, drag_area_m2=area, density_kg_m3=998.2)
    assert dive == pytest.approx(4.0 * 0.55)


@pytest.mark.parametrize("depth", [24.0, 40.0])
def test_a_depth_beyond_the_line_is_refused(depth: float) -> None:
    with pytest.raises(ImpossibleInput) as refused:
        diving.dive_force(running_depth_m=depth, drag_n=0.5, **line(0.3e-3))
    assert "running depth" in refused.value.quantity


@pytest.mark.parametrize("depth", [0.0, -1.0])
def test_a_depth_that_is_none_is_refused(depth: float) -> None:
    with pytest.raises(ImpossibleInput):
        diving.dive_force(running_depth_m=depth, drag_n=0.5, **line(0.3e-3))


def test_dive_at_rest_is_refused() -> None:
    with pytest.raises(ImpossibleInput):
        diving.dive_area(pull_down_n=0.5, weight_in_water_n=0.0, speed_m_s=0.0, density_kg_m3=998.0)
