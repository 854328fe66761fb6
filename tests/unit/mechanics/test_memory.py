"""Coil memory against check rows and scaling laws."""

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.memory import (
    coil_moment,
    coil_radius,
    coil_strain,
    stored_energy,
    straightening_tension,
)
from rigbuilder.mechanics.stiffness import bending_stiffness

DATA = json.loads((Path(__file__).parent / "data_second" / "tackle.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("row", DATA["coil"], ids=lambda row: row["name"])
def test_coils_as_in_the_check_rows(row: dict[str, Any]) -> None:
    sizes = {"diameter_m": row["d"], "spool_diameter_m": row["D_spool"]}
    coil = {
        "bending_stiffness_n_m2": bending_stiffness(diameter_m=row["d"], modulus_pa=row["E"]),
        "coil_radius_m": coil_radius(**sizes),
    }
    assert coil["bending_stiffness_n_m2"] == pytest.approx(row["EI"], rel=1e-12)
    assert 1.0 / coil["coil_radius_m"] == pytest.approx(row["kappa"], rel=1e-12)
    assert coil_strain(**sizes) == pytest.approx(row["eps"], rel=1e-12)
    assert coil_moment(**coil) == pytest.approx(row["M"], rel=1e-12)
    assert stored_energy(**coil) == pytest.approx(row["U_per_m"], rel=1e-12)
    assert straightening_tension(**coil) == pytest.approx(row["T_straight_scale"], rel=1e-12)


@given(st.floats(1e-4, 4e-4), st.floats(1.05, 3.0))
def test_thicker_line_and_smaller_spool_remember_more(diameter: float, factor: float) -> None:
    thin, thick = coil_strain(diameter_m=[diameter, diameter * factor], spool_diameter_m=0.03)
    wide, narrow = coil_strain(diameter_m=diameter, spool_diameter_m=[0.03 * factor, 0.03])
    assert thin < thick
    assert wide < narrow


def test_pull_grows_as_the_fourth_power_of_the_diameter() -> None:
    stiffness = bending_stiffness(diameter_m=[2e-4, 4e-4], modulus_pa=2e9)
    thin, thick = straightening_tension(bending_stiffness_n_m2=stiffness, coil_radius_m=0.02)
    assert thick / thin == pytest.approx(16.0)


def test_braid_without_bending_stiffness_has_no_memory() -> None:
    assert straightening_tension(bending_stiffness_n_m2=0.0, coil_radius_m=0.02) == 0.0


def test_refuses_a_spool_without_size() -> None:
    with pytest.raises(ImpossibleInput, match="spool diameter"):
        coil_strain(diameter_m=3e-4, spool_diameter_m=0.0)
    with pytest.raises(ImpossibleInput, match="radius of the coil"):
        coil_moment(bending_stiffness_n_m2=1e-6, coil_radius_m=0.0)
