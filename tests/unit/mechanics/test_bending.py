"""Bends and kinks against check rows and limits."""

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics.bending import bending_strain, kinked, pin_efficiency
from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.validity import remarks

DATA = json.loads((Path(__file__).parent / "data_second" / "tackle.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("row", DATA["kink_strain"], ids=lambda row: f"R/d {row['R_over_d']}")
def test_strain_as_in_the_check_rows(row: dict[str, Any]) -> None:
    strain = bending_strain(diameter_m=3e-4, radius_m=3e-4 * row["R_over_d"])
    assert strain == pytest.approx(row["eps"], rel=1e-12)


def test_strain_is_the_lengthening_of_the_outer_circle() -> None:
    diameter, radius = 4e-4, 2.2e-3
    outer = (2 * np.pi * (radius + diameter / 2)) / (2 * np.pi * radius) - 1.0
    assert bending_strain(diameter_m=diameter, radius_m=radius) == pytest.approx(outer, rel=1e-12)


def test_a_kink_is_past_the_break_of_every_line() -> None:
    # widest break extension of any line material here: PVDF 35 % (China Synthetic Fiber Industry 2024(2))
    kink = bending_strain(diameter_m=3e-4, radius_m=3e-4)
    assert kinked(strain=kink, break_extension=[0.04, 0.25, 0.35]).all()
    assert not kinked(strain=bending_strain(diameter_m=3e-4, radius_m=3e-3), break_extension=0.25)


@given(st.floats(1.0, 50.0), st.floats(1.01, 5.0))
def test_a_thicker_pin_spares_the_line(ratio: float, factor: float) -> None:
    thin, thick = pin_efficiency(diameter_m=1e-4, pin_diameter_m=[1e-4 * ratio, 1e-4 * ratio * factor])
    assert 0.5 - 1e-12 <= thin < thick < 1.0


def test_thinner_pins_keep_a_half_and_a_remark() -> None:
    assert pin_efficiency(diameter_m=1e-3, pin_diameter_m=1e-4) == 0.5
    assert remarks("bending.pin_efficiency", diameter_ratio=0.1)


def test_refuses_a_point_for_a_bend() -> None:
    with pytest.raises(ImpossibleInput, match="bend radius"):
        bending_strain(diameter_m=3e-4, radius_m=0.0)
