"""The hook-set against check rows, exact curves and laws."""

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.hookset import hook_force, rig_stiffness, slack_in_bow, tip_travel
from rigbuilder.mechanics.validity import remarks

DATA = json.loads((Path(__file__).parent / "data_second" / "elastic.json").read_text(encoding="utf-8"))
PVDF_EA = DATA["series"][1]["EA"]


@pytest.mark.parametrize("row", DATA["series"], ids=lambda row: row["name"])
def test_force_as_in_the_check_rows(row: dict[str, Any]) -> None:
    whole = rig_stiffness(
        main_axial_stiffness_n=row["EA"],
        main_length_m=row["L"],
        leader_axial_stiffness_n=PVDF_EA,
        leader_length_m=2.0 if "leader" in row["name"] else 0.0,
        rod_stiffness_n_m=row["k_rod"],
    )
    assert whole == pytest.approx(row["k_total"], rel=1e-12)
    force = hook_force(tip_travel_m=row["tip_move"], slack_m=row["slack"], stiffness_n_m=whole)
    assert force == pytest.approx(row["F"], rel=1e-12)


def test_sweep_from_pointing_to_upright_takes_in_the_rod_length() -> None:
    assert tip_travel(rod_length_m=2.1, start_angle_rad=0.0, end_angle_rad=np.pi / 2) == pytest.approx(2.1)
    assert tip_travel(rod_length_m=2.1, start_angle_rad=0.0, end_angle_rad=np.pi) == pytest.approx(4.2)


@pytest.mark.parametrize("ratio", [0.01, 0.04, 1.0 / 12.0])
def test_slack_of_a_bow_is_that_of_the_exact_parabola(ratio: float) -> None:
    # exact arc length of a parabola: (L/2) [sqrt(1+k²) + asinh(k)/k], k = 4 b / L
    steep = 4.0 * ratio
    exact = 10.0 * (np.sqrt(1 + steep**2) + np.arcsinh(steep) / steep) - 20.0
    assert slack_in_bow(bow_m=20.0 * ratio, span_m=20.0) == pytest.approx(exact, rel=0.02)


def test_remark_for_a_deep_bow() -> None:
    assert remarks("hookset.slack_in_bow", bow_ratio=0.05) == ()
    assert remarks("hookset.slack_in_bow", bow_ratio=0.3)


@given(st.floats(2.0, 60.0), st.floats(0.5, 40.0), st.floats(20.0, 2000.0), st.floats(5.0, 200.0))
def test_a_fish_farther_out_feels_less(near: float, more: float, axial: float, rod: float) -> None:
    force = hook_force(
        tip_travel_m=1.5,
        slack_m=0.2,
        stiffness_n_m=rig_stiffness(
            main_axial_stiffness_n=axial,
            main_length_m=[near, near + more],
            leader_axial_stiffness_n=axial,
            leader_length_m=0.0,
            rod_stiffness_n_m=rod,
        ),
    )
    assert force[1] < force[0]


@given(st.floats(0.0, 2.0), st.floats(0.0, 3.0))
def test_slack_only_takes_away(travel: float, slack: float) -> None:
    with_slack = hook_force(tip_travel_m=travel, slack_m=slack, stiffness_n_m=10.0)
    assert 0.0 <= with_slack <= hook_force(tip_travel_m=travel, slack_m=0.0, stiffness_n_m=10.0)


def test_drag_caps_and_friction_takes_away() -> None:
    force = hook_force(
        tip_travel_m=1.5,
        slack_m=0.0,
        stiffness_n_m=20.0,
        friction_n=[0.0, 0.5, 50.0],
        limit_n=[12.0, np.inf, 12.0],
    )
    assert force == pytest.approx([12.0, 29.5, 0.0])


@pytest.mark.parametrize(
    ("change", "names"),
    [
        ({"tip_travel_m": -0.1}, "travel of the rod tip"),
        ({"slack_m": np.nan}, "slack"),
        ({"stiffness_n_m": 0.0}, "stiffness"),
        ({"limit_n": -1.0}, "limit"),
    ],
)
def test_refuses_what_cannot_be(change: dict[str, float], names: str) -> None:
    inputs = {"tip_travel_m": 1.0, "slack_m": 0.1, "stiffness_n_m": 10.0} | change
    with pytest.raises(ImpossibleInput, match=names):
        hook_force(**inputs)
