"""The line-shape integrator against tight integration, closed forms and other programs."""

import json
from itertools import product
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from rigbuilder.mechanics import cylinder, loads, shape, validity
from rigbuilder.mechanics.errors import ImpossibleInput

CHECKS = json.loads((Path(__file__).parent / "data" / "line_checks.json").read_text(encoding="utf-8"))
FRESH = {"density_kg_m3": 998.2072, "viscosity_pa_s": 1.0016e-3}
G = 9.80665


def wet_weight(row: dict[str, Any]) -> float:
    return (row["line_kg_m3"] - FRESH["density_kg_m3"]) * G * np.pi / 4.0 * row["diameter_m"] ** 2


def viscous(row: dict[str, Any], **factors: float) -> loads.ViscousLoad:
    return loads.viscous_load(diameter_m=row["diameter_m"], speed_m_s=row["speed_m_s"], **FRESH, **factors)


def constant(row: dict[str, Any], *, normal: float, tangential: float) -> loads.ConstantLoad:
    return loads.constant_load(
        diameter_m=row["diameter_m"],
        speed_m_s=row["speed_m_s"],
        density_kg_m3=FRESH["density_kg_m3"],
        normal_coefficient=normal,
        tangential_coefficient=tangential,
    )


def run(row: dict[str, Any], load: loads.Load, steps: int | None = None) -> shape.LinePoint:
    return shape.steady_shape(
        load=load,
        wet_weight_n_m=wet_weight(row),
        pull_down_n=row["pull_down_n"],
        drag_n=row["drag_n"],
        length_m=row["length_m"],
        steps=steps,
    ).end()


def assert_same(point: shape.LinePoint, check: dict[str, float], *, rel: float) -> None:
    assert point.height_m == pytest.approx(check["depth_m"], rel=rel)
    assert point.layback_m == pytest.approx(check["layback_m"], rel=rel)
    assert point.tension_n == pytest.approx(check["tension_n"], rel=rel)
    if "angle_deg" in check:
        assert np.degrees(point.angle_rad) == pytest.approx(check["angle_deg"], rel=10 * rel)


@pytest.mark.parametrize("row", CHECKS["tow"], ids=lambda row: f"{row['id']} {row['what']}")
class TestTowedLines:
    """Ten lines integrated apart from this code, as angle equation and as a march of forces."""

    def test_recommended_load(self, row: dict[str, Any]) -> None:
        assert_same(run(row, viscous(row)), row["viscous"], rel=1e-4)
        fine = run(row, viscous(row), steps=400)
        assert_same(fine, row["viscous"], rel=1e-5)
        assert fine.height_m == pytest.approx(row["marched_depth_m"], rel=1e-5)
        assert fine.tension_n == pytest.approx(row["marched_tension_n"], rel=1e-5)

    def test_constant_coefficients(self, row: dict[str, Any]) -> None:
        load = constant(row, normal=1.2, tangential=0.01)
        assert_same(run(row, load), row["constant"], rel=2e-4)
        assert_same(run(row, load, steps=400), row["constant"], rel=1e-8)

    def test_range_of_coefficients(self, row: dict[str, Any]) -> None:
        corners = [
            run(row, viscous(row, normal_factor=across, tangential_factor=along))
            for across, along in product((0.9, 1.5), (0.4, 2.0))
        ]
        depths = [float(corner.height_m[0]) for corner in corners]
        tensions = [float(corner.tension_n[0]) for corner in corners]
        assert [min(depths), max(depths)] == pytest.approx(row["depth_range_m"], rel=1e-4)
        assert [min(tensions), max(tensions)] == pytest.approx(row["tension_range_n"], rel=1e-4)

    def test_what_a_change_does(self, row: dict[str, Any]) -> None:
        names = {
            "pull": ("pull_down_n",),
            "drag": ("drag_n",),
            "speed": ("speed_m_s",),
            "diameter": ("diameter_m",),
        }
        for change, depth in row["depth_when"].items():
            name, factor = change.split()
            changed = row | {key: row[key] * float(factor) for key in names[name]}
            if name == "speed":
                changed["drag_n"] = row["drag_n"] * float(factor) ** 2
            assert run(changed, viscous(changed)).height_m == pytest.approx(depth, rel=1e-4), change


@pytest.mark.parametrize("row", CHECKS["cable_program"], ids=lambda row: f"{row['diameter_m'] * 1e3} mm")
def test_an_independent_cable_program(row: dict[str, Any]) -> None:
    # WHOI Cable, built from source with its static integrator repaired; it prints five digits
    load = constant(row, normal=row["normal"], tangential=row["tangential"])
    assert_same(run(row, load, steps=400), row, rel=5e-5)


def test_still_water_gives_the_catenary() -> None:
    row = CHECKS["still_water"]
    load = loads.viscous_load(diameter_m=row["d"], speed_m_s=0.0, **FRESH)
    end = shape.steady_shape(
        load=load,
        wet_weight_n_m=row["w"],
        pull_down_n=row["W"],
        drag_n=row["D"],
        length_m=row["L"],
        steps=200,
    ).end()
    scale, bottom, top = row["D"] / row["w"], row["W"] / row["D"], (row["W"] + row["w"] * row["L"]) / row["D"]
    assert end.height_m == pytest.approx(scale * (np.hypot(1.0, top) - np.hypot(1.0, bottom)), rel=1e-8)
    assert end.layback_m == pytest.approx(scale * (np.arcsinh(top) - np.arcsinh(bottom)), rel=1e-8)
    assert end.height_m == pytest.approx(row["depth"], rel=1e-8)
    assert end.tension_n == pytest.approx(row["T_top"], rel=1e-8)


def pode_load(across: float, along: float) -> loads.Load:
    class Pode:
        """Pode's assumption: a tangential force that does not change with the angle."""

        broadside_n_m = np.array(across)

        def forces(self, sine: np.ndarray, cosine: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
            return across * sine * np.abs(sine), np.full_like(sine, along)

    return Pode()


def test_podes_integral() -> None:
    # quadrature of Pode's single integral from 90° to 30°, apart from this code
    row = CHECKS["pode"]
    end = shape.steady_shape(
        load=pode_load(row["R"], row["Ft"]),
        wet_weight_n_m=row["w"],
        pull_down_n=row["T0"],
        drag_n=0.0,
        length_m=row["s"],
        steps=200,
    ).end()
    assert np.degrees(end.angle_rad) == pytest.approx(row["phi1_deg"], rel=1e-7)
    assert end.height_m == pytest.approx(row["z"], rel=1e-7)
    assert end.layback_m == pytest.approx(row["x"], rel=1e-7)
    assert end.tension_n == pytest.approx(row["T"], rel=1e-7)


@pytest.mark.parametrize("row", CHECKS["critical_angle"], ids=lambda row: f"{row['angle_deg']} deg")
def test_a_very_long_line_settles_at_the_critical_angle(row: dict[str, Any]) -> None:
    load = constant(row, normal=row["normal"], tangential=0.0)
    end = shape.steady_shape(
        load=load,
        wet_weight_n_m=wet_weight(row),
        pull_down_n=0.001,
        drag_n=0.0002,
        length_m=200.0,
        steps=2000,
    ).end()
    assert np.degrees(end.angle_rad) == pytest.approx(row["angle_deg"], rel=1e-5)


def plain(row: dict[str, float]) -> np.ndarray:
    """One line by scipy, in the angle form of the equations: tension, angle, layback, height."""

    def slope(_s: float, state: np.ndarray) -> list[float]:
        tension, angle = state[0], state[1]
        force = {"speed_m_s": row["speed_m_s"], "angle_rad": angle, "diameter_m": row["diameter_m"], **FRESH}
        across, along = float(cylinder.normal_force(**force)), float(cylinder.tangential_force(**force))
        weight = wet_weight(row)
        return [
            weight * np.sin(angle) + along,
            (weight * np.cos(angle) - across) / tension,
            np.cos(angle),
            np.sin(angle),
        ]

    start = [
        np.hypot(row["pull_down_n"], row["drag_n"]),
        np.arctan2(row["pull_down_n"], row["drag_n"]),
        0.0,
        0.0,
    ]
    return solve_ivp(slope, (0.0, row["length_m"]), start, rtol=1e-8, atol=1e-10).y[:, -1]


def test_scipy_at_tight_tolerance_over_the_whole_range_of_use() -> None:
    random = np.random.default_rng(7)
    rows = [
        {
            "diameter_m": random.uniform(0.1e-3, 0.6e-3),
            "line_kg_m3": random.choice([970.0, 1140.0, 1780.0]),
            "speed_m_s": 10 ** random.uniform(-1.3, 0.2),
            "pull_down_n": 10 ** random.uniform(-1.7, 0.5),
            "drag_n": 10 ** random.uniform(-2.5, 0.3),
            "length_m": random.uniform(5.0, 50.0),
        }
        for _ in range(12)
    ]
    together = {key: np.array([row[key] for row in rows]) for key in rows[0]}
    ours = run(together, viscous(together))
    theirs = np.array([plain(row) for row in rows])
    np.testing.assert_allclose(ours.height_m, theirs[:, 3], rtol=1e-4)
    np.testing.assert_allclose(ours.layback_m, theirs[:, 2], rtol=1e-4)
    np.testing.assert_allclose(ours.tension_n, theirs[:, 0], rtol=1e-3)


def test_hard_cases_take_more_steps_and_stay_exact() -> None:
    # light lure, thick heavy line, fast: the line settles to its critical angle within centimetres
    row = {
        "diameter_m": 0.93e-3,
        "line_kg_m3": 1780.0,
        "speed_m_s": 2.5,
        "pull_down_n": 0.026,
        "drag_n": 0.0014,
        "length_m": 69.0,
    }
    load = viscous(row, normal_factor=1.5, tangential_factor=0.4)
    fine = run(row, load, steps=2000)
    assert run(row, load).height_m == pytest.approx(fine.height_m, rel=1e-3)
    assert run(row, load).tension_n == pytest.approx(fine.tension_n, rel=1e-3)


def test_between_nodes_the_line_is_as_good_as_at_them() -> None:
    row = CHECKS["tow"][0]
    arguments = {"wet_weight_n_m": wet_weight(row), "pull_down_n": 0.08, "drag_n": 0.03}
    line = shape.steady_shape(load=viscous(row), length_m=30.0, **arguments)
    for node, place in ((1, 1.37), (5, 5.5), (11, 11.81)):
        found = line.between(np.array([node]))(np.array([place]))
        end = shape.steady_shape(
            load=viscous(row), length_m=float(found.arc_m[0]), steps=200, **arguments
        ).end()
        assert found.height_m == pytest.approx(end.height_m, rel=5e-4)
        assert found.tension_n == pytest.approx(end.tension_n, rel=5e-4)


# Lures that hang well below their line, and speeds well above the line's own sinking speed: below
# either, the weight of thick sinking line takes part and the laws need not hold.
LINES = st.builds(
    lambda pull, share, **line: line | {"pull_down_n": pull, "drag_n": pull * share},
    pull=st.floats(0.05, 3.0),
    share=st.floats(0.1, 1.5),
    diameter_m=st.floats(0.1e-3, 0.5e-3),
    line_kg_m3=st.sampled_from([970.0, 1140.0]),
    speed_m_s=st.floats(0.3, 2.0),
    length_m=st.floats(5.0, 60.0),
)


def pair(row: dict[str, float], **changed: float) -> np.ndarray:
    """Depths of a line and of the same line changed."""
    both = {key: np.array([value, changed.get(key, value)]) for key, value in row.items()}
    return run(both, viscous(both)).height_m


@settings(max_examples=60, deadline=None)
@given(row=LINES, share=st.floats(0.5, 0.95))
def test_thinner_runs_deeper(row: dict[str, float], share: float) -> None:
    thick, thin = pair(row, diameter_m=row["diameter_m"] * share)
    assert thin > thick


@settings(max_examples=60, deadline=None)
@given(row=LINES, factor=st.floats(1.05, 2.0))
def test_faster_runs_shallower(row: dict[str, float], factor: float) -> None:
    slow, fast = pair(row, speed_m_s=row["speed_m_s"] * factor, drag_n=row["drag_n"] * factor**2)
    assert fast < slow


@settings(max_examples=60, deadline=None)
@given(row=LINES, factor=st.floats(1.05, 3.0))
def test_heavier_lure_runs_deeper(row: dict[str, float], factor: float) -> None:
    light, heavy = pair(row, pull_down_n=row["pull_down_n"] * factor)
    assert heavy > light


@settings(max_examples=60, deadline=None)
@given(row=LINES)
def test_the_line_is_as_long_as_it_is(row: dict[str, float]) -> None:
    end = run(row, viscous(row))
    assert np.hypot(end.layback_m, end.height_m) <= row["length_m"] * (1 + 1e-6)
    assert end.arc_m == pytest.approx(row["length_m"])


def test_a_floating_line_rises_behind_a_point_without_pull() -> None:
    row = {"diameter_m": 0.3e-3, "line_kg_m3": 970.0, "speed_m_s": 0.05}
    end = shape.steady_shape(
        load=viscous(row), wet_weight_n_m=wet_weight(row), pull_down_n=0.0, drag_n=0.001, length_m=20.0
    ).end()
    assert end.height_m < 0.0
    assert end.angle_rad < 0.0


def test_a_lure_without_pull_and_drag_stays_finite() -> None:
    row = {"diameter_m": 0.3e-3, "line_kg_m3": 1140.0, "speed_m_s": 0.0}
    end = shape.steady_shape(
        load=viscous(row), wet_weight_n_m=wet_weight(row), pull_down_n=0.0, drag_n=0.0, length_m=5.0
    ).end()
    assert np.isfinite(end.height_m).all()


@pytest.mark.parametrize(
    ("changed", "named"),
    [
        ({"length_m": 0.0}, "line length in m"),
        ({"drag_n": -1.0}, "drag of the lure in N"),
        ({"pull_down_n": float("nan")}, "downward pull of the lure in N"),
    ],
)
def test_impossible_lines_are_refused(changed: dict[str, float], named: str) -> None:
    row = CHECKS["tow"][0]
    with pytest.raises(ImpossibleInput) as refused:
        run(row | changed, viscous(row))
    assert refused.value.quantity == named


def test_a_rope_in_a_torrent_gives_a_figure_and_a_remark() -> None:
    row = CHECKS["tow"][0] | {"diameter_m": 5e-3, "speed_m_s": 3.0}
    assert np.isfinite(run(row, viscous(row)).height_m).all()
    assert validity.remarks("shape.steady_shape", reynolds=viscous(row).reynolds)
