"""Loads on line: the table that the integrator reads against the formulas behind it."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics import cylinder, loads
from rigbuilder.mechanics.errors import ImpossibleInput

FRESH = {"density_kg_m3": 998.2072, "viscosity_pa_s": 1.0016e-3}


@given(
    diameter=st.floats(0.05e-3, 2e-3),
    speed=st.floats(0.001, 5.0),
    angle=st.floats(-1.55, 1.55),
)
def test_the_table_gives_the_forces_of_the_formulas(diameter: float, speed: float, angle: float) -> None:
    load = loads.viscous_load(diameter_m=diameter, speed_m_s=speed, **FRESH)
    across, along = load.forces(np.array([np.sin(angle)]), np.array([np.cos(angle)]))
    line = {"speed_m_s": speed, "angle_rad": angle, "diameter_m": diameter, **FRESH}
    assert across == pytest.approx(cylinder.normal_force(**line), rel=2e-5)
    assert along == pytest.approx(cylinder.tangential_force(**line), rel=2e-5)


def test_factors_scale_each_force() -> None:
    usual = loads.viscous_load(diameter_m=0.3e-3, speed_m_s=0.5, **FRESH)
    rough = loads.viscous_load(
        diameter_m=0.3e-3, speed_m_s=0.5, normal_factor=1.5, tangential_factor=0.4, **FRESH
    )
    sine, cosine = np.array([0.5]), np.array([0.75**0.5])
    assert rough.forces(sine, cosine)[0] == pytest.approx(1.5 * usual.forces(sine, cosine)[0])
    assert rough.forces(sine, cosine)[1] == pytest.approx(0.4 * usual.forces(sine, cosine)[1])


def test_constant_load_follows_its_coefficients() -> None:
    # ½ρdV² Cn sin² and ½ρπdV² Ct cos²
    load = loads.constant_load(
        diameter_m=0.3e-3,
        speed_m_s=0.5,
        density_kg_m3=998.2072,
        normal_coefficient=1.2,
        tangential_coefficient=0.01,
    )
    across, along = load.forces(np.array([-0.6]), np.array([0.8]))
    assert across == pytest.approx(-0.044919324 * 0.36)
    assert along == pytest.approx(0.5 * 998.2072 * np.pi * 0.3e-3 * 0.25 * 0.01 * 0.64)


def test_still_water_does_not_push() -> None:
    load = loads.viscous_load(diameter_m=0.3e-3, speed_m_s=0.0, **FRESH)
    across, along = load.forces(np.array([0.7]), np.array([0.7]))
    assert across == 0.0
    assert along == 0.0


@pytest.mark.parametrize(
    ("changed", "named"),
    [
        ({"speed_m_s": -1.0}, "speed in m/s"),
        ({"diameter_m": 0.0}, "line diameter in m"),
        ({"density_kg_m3": 0.0}, "water density in kg/m³"),
        ({"normal_factor": -1.0}, "factor on drag"),
    ],
)
def test_impossible_loads_are_refused(changed: dict[str, float], named: str) -> None:
    with pytest.raises(ImpossibleInput) as refused:
        loads.viscous_load(**({"diameter_m": 0.3e-3, "speed_m_s": 0.5, **FRESH} | changed))
    assert refused.value.quantity == named
