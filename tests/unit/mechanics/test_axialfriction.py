"""Friction of an impulsively pulled cylinder against its exact solution by two routes."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.special import j0, kv, y0

from rigbuilder.mechanics.axialfriction import LARGEST_TIME, axial_friction, friction_function
from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.validity import remarks

WATER = {"viscosity_pa_s": 1.0016e-3, "density_kg_m3": 998.2072}


def by_laplace_inversion(time: float, nodes: int = 32) -> float:
    """Fixed Talbot inversion (Abate & Valko 2004) of K1(sqrt p) / [sqrt p K0(sqrt p)]."""

    def transform(p: np.ndarray) -> np.ndarray:
        return kv(1, np.sqrt(p)) / (np.sqrt(p) * kv(0, np.sqrt(p)))

    radius = 2.0 * nodes / (5.0 * time)
    theta = np.arange(1, nodes) * np.pi / nodes
    cot = 1.0 / np.tan(theta)
    path = radius * theta * (cot + 1j)
    bend = theta + (theta * cot - 1.0) * cot
    total = 0.5 * transform(np.array(radius + 0j)) * np.exp(radius * time)
    return float(
        radius / nodes * (total + (np.exp(time * path) * transform(path) * (1 + 1j * bend)).sum()).real
    )


def by_integral(time: float) -> float:
    """The integral in the docstring over ln u, its slow tail below u = exp(-20) taken in closed form."""
    start, offset = -20.0, np.log(2.0) - np.euler_gamma
    tail = np.pi / 2 * (np.arctan(2 / np.pi * (start - offset)) + np.pi / 2)
    end = 0.5 * np.log(700.0 / time)
    edges = [start, *(edge for edge in (-8.0, -3.0, -1.0, 0.0, 1.0, 2.0, 3.0) if edge < end), end]

    def integrand(x: float) -> float:
        u = np.exp(x)
        return float(np.exp(-time * u * u) / (j0(u) ** 2 + y0(u) ** 2))

    parts = (quad(integrand, left, right, limit=200)[0] for left, right in pairwise(edges))
    return float(4 / np.pi**2 * (tail + sum(parts)))


@pytest.mark.parametrize("time", [2e-3, 0.05, 1.0, 2.2298, 8.9191, 35.676, 1e3, 9e4])
def test_fit_is_the_exact_solution(time: float) -> None:
    fitted = friction_function(reduced_time=time)
    assert fitted == pytest.approx(by_laplace_inversion(time), rel=3e-5)
    assert fitted == pytest.approx(by_integral(time), rel=3e-5)


@pytest.mark.parametrize("time", [1e-6, 1e-4, 9e-4])
def test_early_friction_is_that_of_a_flat_plate_and_a_half(time: float) -> None:
    # Batchelor 1954: G -> 1/sqrt(pi T) + 1/2
    assert friction_function(reduced_time=time) == pytest.approx(1 / np.sqrt(np.pi * time) + 0.5, rel=1e-3)


def test_series_meets_fit() -> None:
    below, above = friction_function(reduced_time=[0.99999e-3, 1.00001e-3])
    assert below == pytest.approx(above, rel=4e-5)


@given(st.floats(1e-6, 1e5), st.floats(1.001, 10.0))
def test_friction_fades_with_time(time: float, factor: float) -> None:
    early, late = friction_function(reduced_time=[time, min(time * factor, LARGEST_TIME)])
    assert late <= early


def test_force_of_a_hook_set() -> None:
    # .30 mm, 30 m, 5 m/s, 0.2 s: nu t / a² = 8.9191, G by Laplace inversion
    force = axial_friction(diameter_m=3e-4, length_m=30.0, speed_m_s=5.0, time_s=0.2, **WATER)
    expected = 2 * np.pi * 1.0016e-3 * 5.0 * by_laplace_inversion(8.919101275878509) * 30.0
    assert force == pytest.approx(expected, rel=3e-5)


def test_thicker_line_and_longer_line_rub_more() -> None:
    thick = axial_friction(diameter_m=[1.5e-4, 3e-4, 6e-4], length_m=30.0, speed_m_s=5.0, time_s=0.2, **WATER)
    assert np.all(np.diff(thick) > 0.0)
    none = axial_friction(diameter_m=3e-4, length_m=[0.0, 1.0], speed_m_s=[5.0, 0.0], time_s=0.2, **WATER)
    assert none.tolist() == [0.0, 0.0]


def test_beyond_the_fit_a_value_and_a_remark() -> None:
    assert friction_function(reduced_time=1e9) == friction_function(reduced_time=LARGEST_TIME)
    assert remarks("axialfriction.friction_function", reduced_time=1e9)


def test_refuses_no_time() -> None:
    with pytest.raises(ImpossibleInput, match="time in s"):
        axial_friction(diameter_m=3e-4, length_m=30.0, speed_m_s=5.0, time_s=0.0, **WATER)
