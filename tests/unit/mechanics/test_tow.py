"""Running depth and line needed, with the part of the line in air."""

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from rigbuilder.mechanics import cylinder, loads, tow
from rigbuilder.mechanics.errors import ImpossibleInput

CHECKS = json.loads((Path(__file__).parent / "data" / "line_checks.json").read_text(encoding="utf-8"))
FRESH = {"density_kg_m3": 998.2072, "viscosity_pa_s": 1.0016e-3}
G = 9.80665


def weights(diameter: Any, density: Any) -> dict[str, Any]:
    area = np.pi / 4.0 * np.asarray(diameter) ** 2
    return {"wet_weight_n_m": (density - 998.2072) * G * area, "dry_weight_n_m": density * G * area}


def viscous(diameter: Any, speed: Any) -> loads.ViscousLoad:
    return loads.viscous_load(diameter_m=diameter, speed_m_s=speed, **FRESH)


def rig(diameter: Any = 0.3e-3, density: Any = 1140.0, speed: Any = 0.5, **changed: Any) -> dict[str, Any]:
    usual = {"load": viscous(diameter, speed), "pull_down_n": 0.08, "drag_n": 0.03, "length_m": 30.0}
    return usual | weights(diameter, density) | changed


@pytest.mark.parametrize("row", CHECKS["tow"], ids=lambda row: row["id"])
def test_with_the_tip_at_the_surface_the_whole_line_is_wet(row: dict[str, Any]) -> None:
    found = tow.towed(
        **rig(
            row["diameter_m"],
            row["line_kg_m3"],
            row["speed_m_s"],
            pull_down_n=row["pull_down_n"],
            drag_n=row["drag_n"],
            length_m=row["length_m"],
        )
    )
    assert found.depth_m == pytest.approx(row["viscous"]["depth_m"], rel=1e-4)
    assert found.layback_m == pytest.approx(row["viscous"]["layback_m"], rel=1e-4)
    assert found.tension_n == pytest.approx(row["viscous"]["tension_n"], rel=1e-4)
    assert found.wet_length_m == pytest.approx(row["length_m"])


@pytest.mark.parametrize("row", CHECKS["current"], ids=lambda r: f"{r['line_kg_m3']} kg/m3")
def test_line_needed_in_a_current(row: dict[str, Any]) -> None:
    arguments = rig(row["diameter_m"], row["line_kg_m3"], row["speed_m_s"])
    del arguments["length_m"]
    arguments |= {"pull_down_n": row["pull_down_n"], "drag_n": row["drag_n"]}
    found = tow.line_needed(depth_m=row["depth_m"], **arguments)
    assert found == pytest.approx(row["viscous_length_m"], rel=1e-3)
    found = tow.line_needed(depth_m=row["depth_m"], steps=200, **arguments)
    assert found == pytest.approx(row["viscous_length_m"], rel=1e-5)
    arguments["load"] = loads.constant_load(
        diameter_m=row["diameter_m"],
        speed_m_s=row["speed_m_s"],
        density_kg_m3=FRESH["density_kg_m3"],
        normal_coefficient=1.2,
        tangential_coefficient=0.01,
    )
    found = tow.line_needed(depth_m=row["depth_m"], **arguments)
    assert found == pytest.approx(row["constant_length_m"], rel=1e-3)


def by_scipy(diameter: float, density: float, speed: float, length: float, tip: float) -> np.ndarray:
    """Depth, layback and tip tension: water and air integrated in one go, crossing found by a root."""
    line = {key: float(value) for key, value in weights(diameter, density).items()}

    def water(_s: float, state: np.ndarray) -> list[float]:
        tension, angle = state[0], state[1]
        flow = {"speed_m_s": speed, "angle_rad": angle, "diameter_m": diameter, **FRESH}
        across, along = float(cylinder.normal_force(**flow)), float(cylinder.tangential_force(**flow))
        weight = line["wet_weight_n_m"]
        turn = (weight * np.cos(angle) - across) / tension
        return [weight * np.sin(angle) + along, turn, np.cos(angle), np.sin(angle)]

    def air(_s: float, state: np.ndarray) -> list[float]:
        weight, angle = line["dry_weight_n_m"], state[1]
        return [weight * np.sin(angle), weight * np.cos(angle) / state[0], np.cos(angle), np.sin(angle)]

    start = [np.hypot(0.08, 0.03), np.arctan2(0.08, 0.03), 0.0, 0.0]
    tight = {"rtol": 1e-9, "atol": 1e-11}

    def ends(wet: float) -> tuple[np.ndarray, np.ndarray]:
        surface = solve_ivp(water, (0.0, wet), start, **tight).y[:, -1]
        return surface, solve_ivp(air, (0.0, length - wet), surface, **tight).y[:, -1]

    def miss(wet: float) -> float:
        surface, top = ends(wet)
        return float(top[3] - surface[3] - tip)

    surface, top = ends(brentq(miss, 1.0, length - tip, xtol=1e-9))
    return np.array([surface[3], top[2], top[0]])


@pytest.mark.parametrize(
    ("diameter", "density"),
    [(0.3e-3, 1140.0), (0.3e-3, 1780.0), (0.15e-3, 970.0)],
    ids=["nylon", "pvdf", "pe"],
)
def test_line_in_water_and_air_against_scipy(diameter: float, density: float) -> None:
    found = tow.towed(**rig(diameter, density, tip_height_m=1.8))
    depth, layback, tension = by_scipy(diameter, density, 0.5, 30.0, 1.8)
    assert found.depth_m == pytest.approx(depth, rel=1e-3)
    assert found.layback_m == pytest.approx(layback, rel=1e-3)
    assert found.tension_n == pytest.approx(tension, rel=1e-3)


@settings(max_examples=60, deadline=None)
@given(
    diameter=st.floats(0.1e-3, 0.5e-3),
    density=st.sampled_from([970.0, 1140.0, 1780.0]),
    speed=st.floats(0.2, 1.5),
    depth=st.floats(0.5, 5.0),
    tip=st.floats(0.0, 3.0),
)
def test_line_needed_and_depth_are_inverse(
    diameter: float, density: float, speed: float, depth: float, tip: float
) -> None:
    arguments = rig(diameter, density, speed, pull_down_n=0.3, drag_n=0.05, tip_height_m=tip)
    del arguments["length_m"]
    needed = tow.line_needed(depth_m=depth, longest_m=100.0, **arguments)
    if np.isfinite(needed).all():
        again = tow.towed(length_m=needed, **arguments)
        assert again.depth_m == pytest.approx(depth, rel=2e-3)


@settings(max_examples=40, deadline=None)
@given(speed=st.floats(0.3, 1.5), share=st.floats(0.5, 0.95), tip=st.floats(0.0, 2.5))
def test_thinner_runs_deeper_also_below_a_raised_tip(speed: float, share: float, tip: float) -> None:
    thick, thin = tow.towed(**rig(np.array([0.3e-3, 0.3e-3 * share]), speed=speed, tip_height_m=tip)).depth_m
    assert thin > thick


@settings(max_examples=40, deadline=None)
@given(tip=st.floats(0.0, 2.0), more=st.floats(0.2, 2.0))
def test_a_raised_tip_lifts_the_lure(tip: float, more: float) -> None:
    low, high = tow.towed(**rig(tip_height_m=np.array([tip, tip + more]))).depth_m
    assert high < low


def test_a_floating_lure_runs_at_the_surface() -> None:
    found = tow.towed(**rig(pull_down_n=-0.02, tip_height_m=1.5))
    assert found.depth_m == 0.0
    assert np.isfinite(found.layback_m).all()


def test_a_lure_too_light_to_hold_the_line_down_runs_at_the_surface() -> None:
    assert tow.towed(**rig(pull_down_n=1e-3, drag_n=3.0, tip_height_m=2.0)).depth_m == 0.0


def test_floating_line_lies_on_the_surface_beyond_the_highest_point() -> None:
    # very slow: the braid would stream above the point where it meets the surface
    found = tow.towed(**rig(0.4e-3, 950.0, 0.1, pull_down_n=0.002, drag_n=0.001, length_m=40.0))
    assert found.angle_rad < 0.0
    assert found.depth_m > 0.0


def test_still_water_hangs_a_plumb_line() -> None:
    found = tow.towed(**rig(speed=0.0, drag_n=0.0, length_m=10.0, tip_height_m=1.5))
    assert found.depth_m == pytest.approx(8.5, rel=1e-6)
    assert found.layback_m == pytest.approx(0.0, abs=1e-6)


def test_inputs_broadcast_to_their_common_shape() -> None:
    found = tow.towed(**rig(np.array([0.2e-3, 0.3e-3, 0.4e-3]), tip_height_m=np.array([[0.5], [2.0]])))
    assert found.depth_m.shape == (2, 3)
    single = tow.towed(**rig(0.4e-3, tip_height_m=2.0))
    assert found.depth_m[1, 2] == pytest.approx(single.depth_m, rel=1e-4)


def test_a_depth_that_no_line_reaches_is_infinite() -> None:
    arguments = rig(speed=2.0)
    del arguments["length_m"]
    assert tow.line_needed(depth_m=50.0, **arguments) == np.inf


@pytest.mark.parametrize(
    ("changed", "named"),
    [
        ({"length_m": 1.0, "tip_height_m": 2.0}, "line length beyond the height of the rod tip in m"),
        ({"tip_height_m": -0.5}, "height of the rod tip in m"),
        ({"drag_n": -0.5}, "drag of the lure in N"),
    ],
)
def test_impossible_rigs_are_refused(changed: dict[str, float], named: str) -> None:
    with pytest.raises(ImpossibleInput) as refused:
        tow.towed(**rig(**changed))
    assert refused.value.quantity == named


def test_lure_drag_grows_with_the_square_of_speed() -> None:
    slow, fast = tow.form_drag(speed_m_s=np.array([0.5, 1.0]), drag_area_m2=1e-3, density_kg_m3=1000.0)
    assert slow == pytest.approx(0.125)
    assert fast == pytest.approx(0.5)
