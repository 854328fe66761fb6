"""Water against IAPWS, TEOS-10 and CoolProp, each run here."""

import json
from pathlib import Path

import gsw
import iapws
import numpy as np
import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics import validity, water
from rigbuilder.mechanics.errors import ImpossibleInput

CHECKS = json.loads((Path(__file__).parent / "data" / "line_checks.json").read_text(encoding="utf-8"))
TEMPERATURES = [0.5, 4.0, 10.0, 17.5, 25.0, 35.0]
SEA = 35.16504  # absolute salinity of the reference sea water, g/kg


@pytest.mark.parametrize("check", CHECKS["water"], ids=lambda row: f"{row['temperature_c']} C")
def test_table_of_checks(check: dict[str, float]) -> None:
    t = check["temperature_c"]
    assert water.density(temperature_c=t) == pytest.approx(check["density"], abs=0.005)
    assert water.viscosity(temperature_c=t) == pytest.approx(check["viscosity"], rel=1e-4)
    assert water.density(temperature_c=t, salinity_g_kg=35.165) == pytest.approx(
        check["sea_density"], abs=0.005
    )
    # the share of salt is a remembered formula: the check itself is 0.02 % off in fresh water
    assert water.viscosity(temperature_c=t, salinity_g_kg=35.165) == pytest.approx(
        check["sea_viscosity"], rel=2e-4
    )


@pytest.mark.parametrize("temperature", TEMPERATURES)
def test_fresh_water_follows_iapws_and_coolprop(temperature: float) -> None:
    theirs = iapws.IAPWS95(T=temperature + 273.15, P=0.101325)  # IAPWS-95, viscosity IAPWS 2008
    assert water.density(temperature_c=temperature) == pytest.approx(theirs.rho, abs=0.005)
    assert water.viscosity(temperature_c=temperature) == pytest.approx(theirs.mu, rel=1e-4)
    assert water.density(temperature_c=temperature) == pytest.approx(
        PropsSI("D", "T", temperature + 273.15, "P", 101325.0, "Water"), abs=0.005
    )
    assert water.viscosity(temperature_c=temperature) == pytest.approx(
        PropsSI("V", "T", temperature + 273.15, "P", 101325.0, "Water"), rel=1e-4
    )


@pytest.mark.parametrize("temperature", TEMPERATURES)
@pytest.mark.parametrize("salinity", [0.0, 5.0, 17.5, SEA])
def test_density_of_brackish_and_sea_water_follows_teos_10(temperature: float, salinity: float) -> None:
    conservative = gsw.CT_from_t(salinity, temperature, 0.0)
    theirs = gsw.rho(salinity, conservative, 0.0)  # TEOS-10, 75-term polynomial
    assert water.density(temperature_c=temperature, salinity_g_kg=salinity) == pytest.approx(
        theirs, abs=0.006
    )


def test_printed_check_value_of_eos_80() -> None:
    # UNESCO 1983: S = 35, t68 = 5 °C, surface: 1027.67547 kg/m³
    found = water.density(temperature_c=5.0 / water.T68_PER_T90, salinity_g_kg=SEA)
    assert found == pytest.approx(1027.67547, abs=1e-5)


@pytest.mark.parametrize("temperature", TEMPERATURES)
def test_sea_viscosity_follows_coolprop(temperature: float) -> None:
    # CoolProp "MITSW": sea water after Sharqawy and others 2010, salinity as mass fraction
    theirs = PropsSI("V", "T", temperature + 273.15, "P", 101325.0, f"INCOMP::MITSW[{SEA / 1000}]")
    assert water.viscosity(temperature_c=temperature, salinity_g_kg=SEA) == pytest.approx(theirs, rel=0.015)


@pytest.mark.parametrize("temperature", TEMPERATURES)
def test_surface_tension_follows_iapws(temperature: float) -> None:
    theirs = iapws._iapws._Tension(temperature + 273.15)  # IAPWS R1-76(2014)
    assert water.surface_tension(temperature_c=temperature) == pytest.approx(theirs, rel=1e-6)


@given(
    t=st.floats(0.0, 35.0),
    fresher=st.floats(0.0, 39.0),
    salt=st.floats(0.1, 1.0),
)
def test_salt_makes_water_denser_and_stiffer(t: float, fresher: float, salt: float) -> None:
    for law in (water.density, water.viscosity):
        assert law(temperature_c=t, salinity_g_kg=fresher + salt) > law(
            temperature_c=t, salinity_g_kg=fresher
        )


@given(t=st.floats(0.0, 34.0), warmer=st.floats(0.1, 1.0))
def test_warm_water_is_thinner(t: float, warmer: float) -> None:
    assert water.viscosity(temperature_c=t + warmer) < water.viscosity(temperature_c=t)
    assert water.surface_tension(temperature_c=t + warmer) < water.surface_tension(temperature_c=t)


def test_arrays_broadcast() -> None:
    found = water.density(temperature_c=np.array([[5.0], [20.0]]), salinity_g_kg=np.array([0.0, 10.0, 35.0]))
    assert found.shape == (2, 3)


@pytest.mark.parametrize(
    ("given_water", "named"),
    [
        ({"temperature_c": -40.0}, "water temperature in °C"),
        ({"temperature_c": float("nan")}, "water temperature in °C"),
        ({"temperature_c": 20.0, "salinity_g_kg": -1.0}, "salinity in g/kg"),
    ],
)
def test_impossible_water_is_refused(given_water: dict[str, float], named: str) -> None:
    with pytest.raises(ImpossibleInput) as refused:
        water.density(**given_water)
    assert refused.value.quantity == named


def test_hot_water_gives_a_figure_and_a_remark() -> None:
    assert water.density(temperature_c=45.0) == pytest.approx(990.2, abs=0.5)  # IAPWS-95: 990.21
    (said,) = validity.remarks("water.density", temperature_c=45.0)
    assert "45 °C" in said
    assert "0 to 35 °C" in said
