"""Sagging and bowed lines against MoorPy and separately computed catenaries."""

import json
import warnings
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_bvp

from rigbuilder.mechanics import still, validity
from rigbuilder.mechanics.errors import ImpossibleInput

with warnings.catch_warnings():
    # MoorPy's own imports use what newer libraries deprecate; nothing of ours runs in here
    warnings.simplefilter("ignore")
    from moorpy.Catenary import catenary

CHECKS = json.loads((Path(__file__).parent / "data" / "line_checks.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("row", CHECKS["still"], ids=lambda r: f"{r['material']} in {r['medium']}")
def test_sag_and_extra_length(row: dict[str, Any]) -> None:
    line = {"weight_n_m": row["weight_n_m"], "span_m": row["span_m"], "tension_n": row["tension_n"]}
    floats = np.sign(row["weight_n_m"])  # the checks give the size of the sag
    assert still.sag(**line) * floats == pytest.approx(row["sag_m"], rel=1e-8)
    assert still.parabola_sag(**line) * floats == pytest.approx(row["parabola_sag_m"], rel=1e-8)
    assert still.extra_length(**line) == pytest.approx(row["extra_m"], rel=1e-7)
    assert still.parabola_extra_length(**line) == pytest.approx(row["parabola_extra_m"], rel=1e-8)


@pytest.mark.parametrize("row", CHECKS["hanging"], ids=lambda r: r["what"])
def test_hanging_line_against_moorpy(row: dict[str, Any]) -> None:
    line = {"span_m": row["span_m"], "rise_m": row["rise_m"], "length_m": row["length_m"]}
    found = still.hanging_line(weight_n_m=row["weight_n_m"], **line)
    assert found.horizontal_n == pytest.approx(row["horizontal_n"], rel=1e-7)
    assert found.vertical_top_n == pytest.approx(row["vertical_top_n"], rel=1e-7)
    # MoorPy, practically inextensible (EA 1e8 N); CB = -10 keeps its sea floor 10 m below
    low_h, low_v, top_h, top_v, _ = catenary(
        row["span_m"], row["rise_m"], row["length_m"], 1e8, row["weight_n_m"], CB=-10
    )
    assert found.horizontal_n == pytest.approx(abs(low_h), rel=1e-5)
    assert found.horizontal_n == pytest.approx(abs(top_h), rel=1e-5)
    assert found.vertical_top_n == pytest.approx(abs(top_v), rel=1e-5)
    weight = row["weight_n_m"] * row["length_m"]
    assert abs(found.vertical_bottom_n) == pytest.approx(abs(low_v), abs=1e-5 * weight)


@given(
    span=st.floats(1.0, 50.0),
    rise=st.floats(0.0, 10.0),
    slack=st.floats(1e-6, 5.0),
    weight=st.floats(1e-6, 1e-2),
)
def test_the_ends_carry_the_line(span: float, rise: float, slack: float, weight: float) -> None:
    length = np.hypot(span, rise) * (1.0 + slack)
    found = still.hanging_line(weight_n_m=weight, span_m=span, rise_m=rise, length_m=length)
    assert found.vertical_top_n - found.vertical_bottom_n == pytest.approx(weight * length, rel=1e-9)
    # in a catenary tension grows by weight per metre × height
    top = np.hypot(found.horizontal_n, found.vertical_top_n)
    low = np.hypot(found.horizontal_n, found.vertical_bottom_n)
    assert top - low == pytest.approx(weight * rise, rel=1e-5, abs=1e-8 * top)


@given(
    weight=st.floats(-1e-3, 1e-3),
    span=st.floats(1.0, 50.0),
    tension=st.floats(0.2, 10.0),
)
def test_exact_and_shallow_forms_meet_on_taut_line(weight: float, span: float, tension: float) -> None:
    line = {"weight_n_m": weight, "span_m": span, "tension_n": tension}
    exact, simple = still.sag(**line), still.parabola_sag(**line)
    assert exact == pytest.approx(simple, rel=0.01)
    assert validity.remarks("still.parabola_sag", sag_ratio=abs(simple) / span) == ()
    assert still.extra_length(**line) == pytest.approx(
        still.parabola_extra_length(**line), rel=0.02, abs=1e-18
    )


def test_level_hanging_line_and_sag_agree() -> None:
    span, tension, weight = 20.0, 0.02, 5.4e-4
    extra = float(still.extra_length(weight_n_m=weight, span_m=span, tension_n=tension))
    found = still.hanging_line(weight_n_m=weight, span_m=span, rise_m=0.0, length_m=span + extra)
    assert found.horizontal_n == pytest.approx(tension, rel=1e-9)


@pytest.mark.parametrize("row", CHECKS["bow"], ids=lambda r: f"{r['diameter_m'] * 1e3:g} mm")
def test_bow_in_current_and_wind(row: dict[str, Any]) -> None:
    found = still.cross_flow_bow(force_n_m=row["force_n_m"], span_m=row["span_m"], tension_n=row["tension_n"])
    assert found == pytest.approx(row["bow_m"], rel=1e-8)


def test_bow_against_an_evenly_loaded_cable_in_full() -> None:
    # T y'' = −f √(1 + y'²), the cable loaded by its length; scipy's boundary solver
    force, span, tension = 0.018224, 20.0, 1.0
    places = np.linspace(0.0, span, 50)
    solved = solve_bvp(
        lambda _x, y: np.vstack([y[1], -force / tension * np.sqrt(1.0 + y[1] ** 2)]),
        lambda start, end: np.array([start[0], end[0]]),
        places,
        np.zeros((2, 50)),
    )
    bow = still.cross_flow_bow(force_n_m=force, span_m=span, tension_n=tension)
    assert bow == pytest.approx(solved.sol(span / 2.0)[0], rel=0.01)


def test_current_outweighs_weight_and_air_outsags_water() -> None:
    bow, water, air = (
        row[key]
        for row, key in (
            (CHECKS["bow"][0], "bow_m"),
            (CHECKS["still"][0], "sag_m"),
            (CHECKS["still"][3], "sag_m"),
        )
    )
    assert bow / (water / 10.0) > 100.0  # bow at 1 N, sag at 0.1 N
    assert 7.0 < 2.0 * air / water < 9.0  # sag in air at 0.2 N


def test_slack_line_stays_finite() -> None:
    slack = {"weight_n_m": 1e-3, "span_m": 20.0, "tension_n": 1e-9}
    assert np.isfinite(still.sag(**slack))
    assert np.isfinite(still.extra_length(**slack))


def test_a_slack_bow_is_remarked_upon() -> None:
    bow = still.cross_flow_bow(force_n_m=0.02, span_m=20.0, tension_n=0.1)
    assert validity.remarks("still.cross_flow_bow", bow_ratio=bow / 20.0)


@pytest.mark.parametrize(
    ("call", "named"),
    [
        (lambda: still.sag(weight_n_m=1e-4, span_m=0.0, tension_n=1.0), "span in m"),
        (lambda: still.sag(weight_n_m=1e-4, span_m=20.0, tension_n=0.0), "tension in N"),
        (
            lambda: still.hanging_line(weight_n_m=1e-4, span_m=20.0, rise_m=3.0, length_m=20.0),
            "line length beyond the straight distance in m",
        ),
        (
            lambda: still.hanging_line(weight_n_m=-1e-4, span_m=20.0, rise_m=3.0, length_m=25.0),
            "weight of the line in N/m",
        ),
    ],
)
def test_impossible_lines_are_refused(call: Any, named: str) -> None:
    with pytest.raises(ImpossibleInput) as refused:
        call()
    assert refused.value.quantity == named
