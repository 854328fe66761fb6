"""Optics of the line against check rows, limits and ray geometry."""

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.glint import cylinder_glint, focal_length_ratio, normal_reflectance, reflectance

DATA = json.loads((Path(__file__).parent / "data_second" / "sight.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("row", DATA["fresnel"], ids=lambda row: row["material"])
def test_materials_as_in_the_check_rows(row: dict[str, Any]) -> None:
    index = row["n"]
    assert normal_reflectance(line_index=index) == pytest.approx(row["R_normal"], rel=1e-12)
    in_air = normal_reflectance(line_index=index, water_index=1.0)
    assert in_air == pytest.approx(row["R_normal_in_air"], rel=1e-12)
    oblique = reflectance(line_index=index, sine_of_incidence=np.sin(np.pi / 4))
    assert oblique == pytest.approx(row["R_45deg"], rel=1e-10)
    assert cylinder_glint(line_index=index) == pytest.approx(row["R_cylinder_broadside"], rel=1e-4)
    assert focal_length_ratio(line_index=index) == pytest.approx(row["focal_length_over_d"], rel=1e-12)


def test_glass_in_air_returns_four_per_cent() -> None:
    # textbook value (Hecht, Optics): glass of index 1.5 in air, 4 %
    assert normal_reflectance(line_index=1.5, water_index=1.0) == pytest.approx(0.04)


def test_no_p_light_at_brewsters_angle() -> None:
    sine = np.sin(np.arctan(1.5))
    cosine_out, cosine_in = np.sqrt(1 - sine**2), np.sqrt(1 - (sine / 1.5) ** 2)
    s_light = ((cosine_out - 1.5 * cosine_in) / (cosine_out + 1.5 * cosine_in)) ** 2
    assert reflectance(line_index=1.5, water_index=1.0, sine_of_incidence=sine) == pytest.approx(s_light / 2)


def test_nylon_glints_twice_not_five_times_as_much() -> None:
    pvdf, nylon = cylinder_glint(line_index=[1.42, 1.53])
    assert nylon / pvdf == pytest.approx(2.1, abs=0.1)
    assert normal_reflectance(line_index=1.53) / normal_reflectance(line_index=1.42) == pytest.approx(
        4.74, abs=0.01
    )


def test_head_on_limit_grazing_limit_and_total_return() -> None:
    assert reflectance(line_index=1.53, sine_of_incidence=0.0) == pytest.approx(
        float(normal_reflectance(line_index=1.53)), rel=1e-12
    )
    assert reflectance(line_index=1.53, sine_of_incidence=1.0) == pytest.approx(1.0)
    assert reflectance(line_index=1.2, sine_of_incidence=[0.95, 1.0]) == pytest.approx([1.0, 1.0])
    assert reflectance(line_index=1.333, sine_of_incidence=[0.3, 1.0]) == pytest.approx([0.0, 0.0])


def test_average_is_the_integral_over_the_width() -> None:
    offset = (np.arange(200_000) + 0.5) / 200_000
    mean = reflectance(line_index=1.53, sine_of_incidence=offset).mean()
    assert cylinder_glint(line_index=1.53) == pytest.approx(mean, rel=1e-4)


@given(st.floats(1.34, 1.7), st.floats(0.005, 0.3))
def test_a_higher_index_shows_more(index: float, more: float) -> None:
    clear, bright = cylinder_glint(line_index=[index, index + more])
    assert clear < bright


def test_refuses_an_index_below_that_of_nothing() -> None:
    with pytest.raises(ImpossibleInput, match="refractive index of the line"):
        normal_reflectance(line_index=0.9)
    with pytest.raises(ImpossibleInput, match="over that of the water"):
        focal_length_ratio(line_index=1.3)
