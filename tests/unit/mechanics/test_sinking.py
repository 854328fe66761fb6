"""Sinking line and dropping lures."""

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from rigbuilder.mechanics import cylinder, sinking
from rigbuilder.mechanics.errors import ImpossibleInput

CHECKS = json.loads((Path(__file__).parent / "data" / "line_checks.json").read_text(encoding="utf-8"))
WATERS = {
    "fresh 20C": {"density_kg_m3": 998.2072, "viscosity_pa_s": 1.0016e-3},
    "fresh 5C": {"density_kg_m3": 999.9666, "viscosity_pa_s": 1.518173e-3},
    "sea 20C": {"density_kg_m3": 1024.766, "viscosity_pa_s": 1.07702e-3},
}
FRESH = WATERS["fresh 20C"]


def weight(diameter: float, density: float, water: float) -> float:
    return (density - water) * 9.80665 * np.pi / 4.0 * diameter**2


@pytest.mark.parametrize(
    "row", CHECKS["sinking"], ids=lambda r: f"{r['material']} {r['diameter_m'] * 1e3:g} mm {r['water']}"
)
def test_sinking_speed(row: dict[str, Any]) -> None:
    water = WATERS[row["water"]]
    found = sinking.sinking_speed(
        wet_weight_n_m=weight(row["diameter_m"], row["line_kg_m3"], water["density_kg_m3"]),
        diameter_m=row["diameter_m"],
        **water,
    )
    assert found == pytest.approx(row["speed_m_s"], rel=2e-4)


@given(
    diameter=st.floats(0.05e-3, 1.5e-3),
    density=st.floats(999.0, 2000.0),
    more=st.floats(1.0, 500.0),
)
def test_denser_sinks_faster(diameter: float, density: float, more: float) -> None:
    light, heavy = sinking.sinking_speed(
        wet_weight_n_m=np.array([weight(diameter, d, 998.2072) for d in (density, density + more)]),
        diameter_m=diameter,
        **FRESH,
    )
    assert heavy > light > 0.0


@given(diameter=st.floats(0.05e-3, 2e-3), pull=st.floats(1e-9, 1.0), up=st.booleans())
def test_at_that_speed_weight_and_drag_balance(diameter: float, pull: float, up: bool) -> None:
    signed = -pull if up else pull
    speed = sinking.sinking_speed(wet_weight_n_m=signed, diameter_m=diameter, **FRESH)
    drag = cylinder.normal_force(speed_m_s=speed, diameter_m=diameter, **FRESH)
    assert drag == pytest.approx(signed, rel=1e-9)


def test_line_of_the_density_of_water_stays() -> None:
    assert sinking.sinking_speed(wet_weight_n_m=0.0, diameter_m=0.3e-3, **FRESH) == 0.0


LURE = {"pull_down_n": 0.07, "drag_area_m2": 3e-4, "wet_weight_n_m": 9.829e-5, **FRESH}


def test_without_line_a_lure_drops_at_its_own_speed() -> None:
    # terminal speed √(2W / ρCdA)
    own = np.sqrt(2.0 * 0.07 / (998.2072 * 3e-4))
    free = LURE | {"wet_weight_n_m": 0.0, "viscosity_pa_s": 1e-12}
    assert sinking.drop_speed(depth_m=4.0, **free) == pytest.approx(own, rel=1e-6)
    assert sinking.drop_time(depth_m=4.0, **free) == pytest.approx(4.0 / own, rel=1e-6)


@pytest.mark.parametrize("spool", [0.0, 0.02])
@pytest.mark.parametrize("wet", [9.829e-5, -4.9e-6, 5.4e-4])
def test_drop_time_is_the_integral_over_depth(spool: float, wet: float) -> None:
    lure = LURE | {"spool_tension_n": spool, "wet_weight_n_m": wet}
    expected, _ = quad(lambda z: 1.0 / float(sinking.drop_speed(depth_m=z, **lure)), 0.0, 12.0)
    assert sinking.drop_time(depth_m=12.0, **lure) == pytest.approx(expected, rel=1e-8)


def test_the_start_costs_less_than_a_second() -> None:
    # the same drop with the lure's mass (and half as much water carried along) at rest first
    mass, depth = 0.015, 5.0

    def motion(_t: float, state: np.ndarray) -> list[float]:
        below, speed = state
        friction = np.pi * FRESH["viscosity_pa_s"] * 0.5 * below * speed
        form = 0.5 * FRESH["density_kg_m3"] * LURE["drag_area_m2"] * speed * abs(speed)
        return [speed, (LURE["pull_down_n"] + LURE["wet_weight_n_m"] * below - friction - form) / mass]

    def arrived(_t: float, state: np.ndarray) -> float:
        return state[0] - depth

    arrived.terminal = True  # type: ignore[attr-defined]
    slow = solve_ivp(motion, (0.0, 60.0), [0.0, 0.0], events=arrived, rtol=1e-9, atol=1e-9).t[-1]
    quick = float(sinking.drop_time(depth_m=depth, **LURE))
    assert quick < slow < quick + 1.0


@settings(max_examples=50)
@given(depth=st.floats(0.5, 30.0), factor=st.floats(1.1, 3.0))
def test_a_heavier_lure_drops_sooner(depth: float, factor: float) -> None:
    times = sinking.drop_time(depth_m=depth, **(LURE | {"pull_down_n": np.array([0.05, 0.05 * factor])}))
    assert times[1] < times[0]


def test_a_lure_that_its_line_holds_never_arrives() -> None:
    held = LURE | {"pull_down_n": 1e-4, "wet_weight_n_m": -1e-4}
    assert sinking.drop_time(depth_m=5.0, **held) == np.inf
    assert np.isfinite(sinking.drop_time(depth_m=0.5, **held))
    stuck = LURE | {"spool_tension_n": 1.0}
    assert sinking.drop_time(depth_m=5.0, **stuck) == np.inf


def test_arrays_broadcast() -> None:
    found = sinking.drop_time(
        depth_m=np.array([[1.0], [5.0]]), **(LURE | {"pull_down_n": np.array([0.05, 0.1])})
    )
    assert found.shape == (2, 2)


@pytest.mark.parametrize(
    ("changed", "named"),
    [
        ({"depth_m": -1.0}, "depth in m"),
        ({"drag_area_m2": 0.0}, "drag area of the lure in m²"),
        ({"spool_tension_n": -0.1}, "spool tension in N"),
    ],
)
def test_impossible_drops_are_refused(changed: dict[str, float], named: str) -> None:
    with pytest.raises(ImpossibleInput) as refused:
        sinking.drop_time(**({"depth_m": 5.0} | LURE | changed))
    assert refused.value.quantity == named
