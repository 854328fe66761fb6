"""Springs in series and wave speed against hand-computed check rows and laws."""

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.stretch import line_stiffness, rod_stiffness, springs_in_series, stretch, wave_speed

DATA = json.loads((Path(__file__).parent / "data_second" / "elastic.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("row", DATA["series"][:3], ids=lambda row: row["name"])
def test_line_and_rod_in_series_as_in_the_check_rows(row: dict[str, Any]) -> None:
    line = line_stiffness(axial_stiffness_n=row["EA"], length_m=row["L"])
    assert line == pytest.approx(row["k_line"], rel=1e-12)
    whole = springs_in_series(stiffnesses_n_m=(line, row["k_rod"]))
    assert whole == pytest.approx(row["k_total"], rel=1e-12)
    force = whole * (row["tip_move"] - row["slack"])
    assert stretch(force_n=force, stiffness_n_m=line) == pytest.approx(row["stretch_line"], rel=1e-12)


@pytest.mark.parametrize("row", DATA["wave"], ids=lambda row: row["mat"])
def test_wave_speed_as_in_the_check_rows(row: dict[str, Any]) -> None:
    speed = wave_speed(modulus_pa=row["E"], density_kg_m3=row["rho"])
    assert speed == pytest.approx(row["c"], rel=1e-12)
    assert 30.0 / speed * 1e3 == pytest.approx(row["t_30m_ms"], rel=1e-12)


def test_wave_speed_of_a_steel_bar() -> None:
    # Thin rod of steel: about 5000 to 5200 m/s (CRC Handbook of Chemistry and Physics)
    assert 5000.0 < wave_speed(modulus_pa=205e9, density_kg_m3=7850.0) < 5200.0


@given(st.floats(1.0, 80.0), st.floats(0.1, 80.0), st.floats(5.0, 5000.0), st.floats(0.1, 200.0))
def test_more_line_out_stretches_more(length: float, more: float, axial: float, force: float) -> None:
    short, long = (
        stretch(force_n=force, stiffness_n_m=line_stiffness(axial_stiffness_n=axial, length_m=metres))
        for metres in (length, length + more)
    )
    assert long > short


@given(st.lists(st.floats(0.1, 1e4), min_size=1, max_size=5))
def test_springs_together_are_softer_than_the_softest(springs: list[float]) -> None:
    whole = springs_in_series(stiffnesses_n_m=springs)
    assert min(springs) / len(springs) * (1 - 1e-12) <= whole <= min(springs) * (1 + 1e-12)


def test_a_spring_that_does_not_give_changes_nothing() -> None:
    assert springs_in_series(stiffnesses_n_m=(12.0, np.inf)) == pytest.approx(12.0)
    assert springs_in_series(stiffnesses_n_m=(np.inf,)) == np.inf


def test_quick_pull_stiffens_and_water_softens() -> None:
    quick = line_stiffness(axial_stiffness_n=140.0, length_m=20.0, rate_factor=1.3)
    soaked = line_stiffness(axial_stiffness_n=140.0, length_m=20.0, wet_factor=0.6)
    assert quick == pytest.approx(9.1)
    assert soaked == pytest.approx(4.2)


def test_longer_rod_of_the_same_build_is_softer_by_the_cube() -> None:
    half = rod_stiffness(reference_stiffness_n_m=[40.0, 80.0], reference_length_m=2.0, length_m=4.0)
    assert half == pytest.approx([5.0, 10.0])


def test_lists_and_floats_mix() -> None:
    assert line_stiffness(axial_stiffness_n=[100.0, 200.0], length_m=10.0) == pytest.approx([10.0, 20.0])


@pytest.mark.parametrize("length", [0.0, -1.0, np.nan, np.inf])
def test_refuses_a_length_that_cannot_be(length: float) -> None:
    with pytest.raises(ImpossibleInput, match="line length in m"):
        line_stiffness(axial_stiffness_n=100.0, length_m=length)


def test_refuses_no_springs_and_dead_springs() -> None:
    with pytest.raises(ImpossibleInput, match="number of springs"):
        springs_in_series(stiffnesses_n_m=())
    with pytest.raises(ImpossibleInput, match="spring stiffness"):
        springs_in_series(stiffnesses_n_m=(5.0, 0.0))
