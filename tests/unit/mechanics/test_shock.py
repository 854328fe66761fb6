"""Sudden loads against check rows and against the equation of motion."""

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.shock import fall_force, sudden_stop_force

DATA = json.loads((Path(__file__).parent / "data_second" / "tackle.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("row", DATA["shock"], ids=lambda row: f"{row['m']} kg k {row['k']}")
def test_fall_as_in_the_check_rows(row: dict[str, Any]) -> None:
    force = fall_force(mass_kg=row["m"], drop_m=row["h"], stiffness_n_m=row["k"])
    assert force == pytest.approx(row["F"], rel=1e-12)
    assert force == pytest.approx(row["F_ode"], rel=1e-5)


@pytest.mark.parametrize("row", DATA["velocity_shock"], ids=lambda row: f"{row['m']} kg k {row['k']}")
def test_sudden_stop_as_in_the_check_rows(row: dict[str, Any]) -> None:
    force = sudden_stop_force(mass_kg=row["m"], speed_m_s=row["v"], stiffness_n_m=row["k"])
    assert force == pytest.approx(row["F"], rel=1e-12)


def test_sudden_stop_by_the_equation_of_motion() -> None:
    mass, speed, stiffness = 1.3, 2.4, 21.0
    flight = solve_ivp(
        lambda _, y: [y[1], -stiffness * y[0] / mass],
        (0.0, 1.0),
        [0.0, speed],
        rtol=1e-10,
        atol=1e-12,
        max_step=1e-3,
    )
    force = sudden_stop_force(mass_kg=mass, speed_m_s=speed, stiffness_n_m=stiffness)
    assert force == pytest.approx(stiffness * flight.y[0].max(), rel=1e-5)


@given(st.floats(0.05, 10.0), st.floats(0.0, 3.0), st.floats(1.0, 500.0), st.floats(1.05, 20.0))
def test_stretchy_line_softens_a_fall_but_never_below_twice_the_weight(
    mass: float, drop: float, stiffness: float, factor: float
) -> None:
    soft, stiff = fall_force(mass_kg=mass, drop_m=drop, stiffness_n_m=[stiffness, stiffness * factor])
    assert 2.0 * mass * 9.80665 <= soft * (1 + 1e-12)
    assert soft <= stiff


def test_refuses_a_fall_upwards() -> None:
    with pytest.raises(ImpossibleInput, match="drop in m"):
        fall_force(mass_kg=1.0, drop_m=-0.1, stiffness_n_m=10.0)
    with pytest.raises(ImpossibleInput, match="stiffness"):
        sudden_stop_force(mass_kg=1.0, speed_m_s=1.0, stiffness_n_m=0.0)
