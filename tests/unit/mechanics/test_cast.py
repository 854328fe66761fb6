"""Casts against closed forms, check rows and scipy's integrator at tight tolerance."""

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from rigbuilder.mechanics.cast import LINE_FRICTION, PICKUP, fly, vacuum_distance
from rigbuilder.mechanics.comparison import compared_with
from rigbuilder.mechanics.errors import ImpossibleInput

ROWS = json.loads((Path(__file__).parent / "data_second" / "casting.json").read_text(encoding="utf-8"))[
    "casts"
]
G, AIR = 9.80665, 1.2041


def inputs_of(row: dict[str, Any]) -> dict[str, float]:
    diameter, density = row.get("line") or (0.0, 0.0)
    return {
        "mass_kg": row["m"],
        "drag_area_m2": row["Cd"] * np.pi / 4 * row["d"] ** 2,
        "speed_m_s": float(row["v0"]),
        "angle_rad": float(np.radians(row["theta"])),
        "height_m": float(row.get("h", 0.0)),
        "line_density_kg_m": density * np.pi / 4 * diameter**2,
        "line_diameter_m": diameter,
        "wind_m_s": row.get("wind", 0.0),
    }


def by_scipy(
    *,
    mass_kg: float,
    drag_area_m2: float,
    speed_m_s: float,
    angle_rad: float,
    height_m: float,
    line_density_kg_m: float,
    line_diameter_m: float,
    wind_m_s: float,
) -> tuple[float, float, float]:
    def rates(_: float, y: np.ndarray) -> list[float]:
        _, _, vx, vz, s = y
        speed, past = np.hypot(vx, vz), np.hypot(vx - wind_m_s, vz)
        own = 0.5 * AIR * drag_area_m2 * past
        line = (line_density_kg_m + 0.5 * AIR * np.pi * line_diameter_m * 0.003 * s) * speed
        return [
            vx,
            vz,
            -(own * (vx - wind_m_s) + line * vx) / mass_kg,
            -(own + line) * vz / mass_kg - G,
            speed,
        ]

    def water(_: float, y: np.ndarray) -> float:
        return float(y[1])

    water.terminal, water.direction = True, -1.0  # type: ignore[attr-defined]
    start = [0.0, height_m, speed_m_s * np.cos(angle_rad), speed_m_s * np.sin(angle_rad), 0.0]
    flown = solve_ivp(rates, (0.0, 60.0), start, events=water, rtol=1e-10, atol=1e-11)
    x, _, vx, vz, _ = flown.y[:, -1]
    return float(x), float(flown.t[-1]), float(np.hypot(vx, vz))


@pytest.mark.parametrize("row", ROWS[:2], ids=lambda row: row["id"])
def test_free_throws_are_parabolas(row: dict[str, Any]) -> None:
    inputs = inputs_of(row)
    assert fly(**inputs).distance_m == pytest.approx(row["range"], rel=1e-9)
    closed = vacuum_distance(**{name: inputs[name] for name in ("speed_m_s", "angle_rad", "height_m")})
    assert closed == pytest.approx(row["range"], rel=1e-9)


def test_straight_up_and_down_in_air() -> None:
    # C3: apex vt²/2g ln(1 + v0²/vt²); the fall from there ends at v0 vt / sqrt(v0² + vt²)
    row = ROWS[2]
    fall_speed = row["v0"] * row["vt"] / np.hypot(row["v0"], row["vt"])
    flight = fly(**inputs_of(row), steps=64)
    assert flight.speed_m_s == pytest.approx(fall_speed, rel=1e-6)
    rise = row["vt"] / G * np.arctan(row["v0"] / row["vt"])
    drop = row["vt"] / G * np.arccosh(np.exp(G * row["apex"] / row["vt"] ** 2))
    assert flight.time_s == pytest.approx(rise + drop, rel=1e-6)
    assert abs(float(flight.distance_m)) < 1e-9


@pytest.mark.parametrize("row", ROWS[3:], ids=lambda row: row["id"])
def test_casts_as_in_the_check_rows(row: dict[str, Any]) -> None:
    fine = fly(**inputs_of(row), steps=400)
    assert fine.distance_m == pytest.approx(row["range"], rel=1e-7)
    assert fine.time_s == pytest.approx(row["time"], rel=1e-7)
    assert fine.speed_m_s == pytest.approx(row["v_impact"], rel=1e-7)
    usual = fly(**inputs_of(row))
    assert usual.distance_m == pytest.approx(row["range"], rel=2e-4)


@pytest.mark.parametrize("row", [row for row in ROWS if "range_low_high" in row], ids=lambda row: row["id"])
def test_ranges_as_in_the_check_rows(row: dict[str, Any]) -> None:
    low, high = row["range_low_high"]
    far, short = (
        fly(**inputs_of(row), pickup=PICKUP[place], line_friction=LINE_FRICTION[place], steps=100).distance_m
        for place in (0, 2)
    )
    assert far == pytest.approx(high, rel=1e-6)
    assert short == pytest.approx(low, rel=1e-6)


@pytest.mark.parametrize("row", ROWS[3:], ids=lambda row: row["id"])
def test_agrees_with_scipys_integrator(row: dict[str, Any]) -> None:
    inputs = inputs_of(row)
    distance, time, speed = by_scipy(**inputs)
    flight = fly(**inputs, steps=400)
    assert flight.distance_m == pytest.approx(distance, rel=1e-7)
    assert flight.time_s == pytest.approx(time, rel=1e-7)
    assert flight.speed_m_s == pytest.approx(speed, rel=1e-7)


CASTS = st.fixed_dictionaries(
    {
        "mass_kg": st.floats(0.002, 0.06),
        "drag_area_m2": st.floats(2e-5, 1.2e-3),
        "speed_m_s": st.floats(10.0, 40.0),
        "angle_rad": st.floats(0.1, 1.1),
        "height_m": st.floats(0.5, 4.0),
        "line_density_kg_m": st.floats(1e-5, 3e-4),
        "line_diameter_m": st.floats(1e-4, 5e-4),
    }
)


@settings(max_examples=25, deadline=None)
@given(CASTS, st.floats(-8.0, 8.0))
def test_usual_steps_hold_their_promise(cast: dict[str, float], wind: float) -> None:
    distance, _, _ = by_scipy(**cast, wind_m_s=wind)
    assert fly(**cast, wind_m_s=wind).distance_m == pytest.approx(distance, rel=2e-3, abs=0.01)


@settings(max_examples=60, deadline=None)
@given(CASTS, st.floats(0.5, 6.0), st.floats(1.1, 3.0))
def test_headwind_thick_line_and_bluff_lures_shorten_a_cast(
    cast: dict[str, float], wind: float, factor: float
) -> None:
    headwind, calm, tailwind = fly(**cast, wind_m_s=[-wind, 0.0, wind]).distance_m
    assert headwind < calm < tailwind
    thick = fly(
        **cast
        | {
            "line_diameter_m": cast["line_diameter_m"] * factor,
            "line_density_kg_m": cast["line_density_kg_m"] * factor**2,
        }
    )
    bluff = fly(**cast | {"drag_area_m2": cast["drag_area_m2"] * factor})
    assert thick.distance_m < calm
    assert bluff.distance_m < calm
    free = vacuum_distance(**{name: cast[name] for name in ("speed_m_s", "angle_rad", "height_m")})
    assert calm < free


def test_many_at_once_are_each_as_alone() -> None:
    masses = np.linspace(0.003, 0.03, 20)
    cast = inputs_of(ROWS[9])
    together = fly(**cast | {"mass_kg": masses})
    alone = [float(fly(**cast | {"mass_kg": mass}).distance_m) for mass in masses]
    assert together.distance_m == pytest.approx(alone, rel=1e-12)
    grid = fly(**cast | {"mass_kg": masses[:, None], "wind_m_s": np.array([-3.0, 0.0, 3.0])})
    assert grid.distance_m.shape == (20, 3)


def test_a_very_light_lure_still_comes_down() -> None:
    flight = fly(**inputs_of(ROWS[9]) | {"mass_kg": 1e-4})
    assert 0.0 < flight.distance_m < 5.0
    assert np.isfinite(flight.time_s)


def test_per_cent_of_a_reference() -> None:
    assert compared_with(distance_m=[33.0, 24.0], reference_m=30.0) == pytest.approx([10.0, -20.0])


@pytest.mark.parametrize(
    ("change", "names"),
    [
        ({"mass_kg": 0.0}, "mass of the lure"),
        ({"speed_m_s": -5.0}, "speed of the cast"),
        ({"angle_rad": 2.0}, "angle of the cast"),
        ({"height_m": -1.0}, "height of the rod tip"),
        ({"wind_m_s": np.nan}, "wind"),
    ],
)
def test_refuses_what_cannot_be(change: dict[str, float], names: str) -> None:
    with pytest.raises(ImpossibleInput, match=names):
        fly(**inputs_of(ROWS[9]) | change)
