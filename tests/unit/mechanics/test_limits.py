"""Closed forms of towed line."""

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics import limits, loads, shape
from rigbuilder.mechanics.errors import ImpossibleInput

CHECKS = json.loads((Path(__file__).parent / "data" / "line_checks.json").read_text(encoding="utf-8"))


def test_light_line() -> None:
    row = CHECKS["light_line"]
    found = limits.light_line_depth(
        pull_down_n=row["W"], drag_n=row["D"], broadside_n_m=row["F"], length_m=row["L"]
    )
    assert found == pytest.approx(row["depth"], rel=1e-7)


def test_the_integrator_agrees_on_a_light_line() -> None:
    row = CHECKS["light_line"]
    load = loads.constant_load(
        diameter_m=row["d"],
        speed_m_s=row["V"],
        density_kg_m3=998.2072,
        normal_coefficient=row["Cn"],
        tangential_coefficient=0.0,
    )
    end = shape.steady_shape(
        load=load, wet_weight_n_m=0.0, pull_down_n=row["W"], drag_n=row["D"], length_m=row["L"], steps=200
    ).end()
    assert end.height_m == pytest.approx(row["depth"], rel=1e-8)
    assert end.layback_m == pytest.approx(row["layback"], rel=1e-8)
    assert end.tension_n == pytest.approx(row["T_top"], rel=1e-8)
    assert np.degrees(end.angle_rad) == pytest.approx(row["phi_top_deg"], rel=1e-7)


@pytest.mark.parametrize("row", CHECKS["tow"], ids=lambda row: row["id"])
def test_the_simple_form_explains_the_full_one(row: dict[str, Any]) -> None:
    broadside = 0.5 * 998.2072 * 1.2 * row["diameter_m"] * row["speed_m_s"] ** 2
    found = limits.light_line_depth(
        pull_down_n=row["pull_down_n"],
        drag_n=row["drag_n"],
        broadside_n_m=broadside,
        length_m=row["length_m"],
    )
    assert found == pytest.approx(row["light_line_depth_m"], rel=1e-6)
    assert 0.80 < found / row["viscous"]["depth_m"] < 1.10


@pytest.mark.parametrize("row", CHECKS["critical_angle"], ids=lambda row: f"{row['angle_deg']} deg")
def test_critical_angle(row: dict[str, float]) -> None:
    weight = (row["line_kg_m3"] - 998.2072) * 9.80665 * np.pi / 4.0 * row["diameter_m"] ** 2
    broadside = 0.5 * 998.2072 * row["normal"] * row["diameter_m"] * row["speed_m_s"] ** 2
    found = limits.critical_angle(wet_weight_n_m=weight, broadside_n_m=broadside)
    assert np.degrees(found) == pytest.approx(row["angle_deg"], abs=1e-5)


@given(weight=st.floats(-1e-2, 1e-2), broadside=st.floats(1e-4, 1.0))
def test_at_the_critical_angle_weight_and_drag_balance(weight: float, broadside: float) -> None:
    angle = float(limits.critical_angle(wet_weight_n_m=weight, broadside_n_m=broadside))
    across = broadside * np.sin(angle) * abs(np.sin(angle))
    assert across == pytest.approx(weight * np.cos(angle), rel=1e-5, abs=1e-12)


def test_impossible_flow_is_refused() -> None:
    with pytest.raises(ImpossibleInput):
        limits.critical_angle(wet_weight_n_m=1e-4, broadside_n_m=0.0)
    with pytest.raises(ImpossibleInput):
        limits.light_line_depth(pull_down_n=0.0, drag_n=0.1, broadside_n_m=0.1, length_m=10.0)
