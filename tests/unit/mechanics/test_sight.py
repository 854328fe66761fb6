"""Sight through water against check rows, scipy's Lambert W and laws."""

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.special import lambertw

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.sight import (
    SUNFISH_ACUITY,
    attenuation_from_secchi,
    black_target_range,
    contrast,
    detection_distance,
    diffuse_attenuation,
    resolvable_distance,
)
from rigbuilder.mechanics.validity import remarks

DATA = json.loads((Path(__file__).parent / "data_second" / "sight.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("row", DATA["secchi"], ids=lambda row: f"{row['Zsd']} m")
def test_clarity_as_in_the_check_rows(row: dict[str, Any]) -> None:
    attenuation = attenuation_from_secchi(secchi_depth_m=row["Zsd"])
    assert attenuation == pytest.approx(row["c_est"], rel=1e-12)
    assert diffuse_attenuation(secchi_depth_m=row["Zsd"]) == pytest.approx(row["Kd_poole"], rel=1e-12)
    together = attenuation + diffuse_attenuation(secchi_depth_m=row["Zsd"])
    assert together == pytest.approx(row["c_plus_K_tyler"], rel=1e-12)
    reach = black_target_range(attenuation_1_m=attenuation)
    assert reach == pytest.approx(row["black_target_horizontal_range_4p8_over_c"], rel=1e-12)


@pytest.mark.parametrize("row", DATA["resolve"], ids=lambda row: f"{row['d_mm']} mm {row['theta_deg']:.3f}")
def test_resolvable_distance_as_in_the_check_rows(row: dict[str, Any]) -> None:
    distance = resolvable_distance(
        diameter_m=row["d_mm"] / 1e3, smallest_angle_rad=np.radians(row["theta_deg"])
    )
    assert distance == pytest.approx(row["r_m"], rel=1e-12)


@pytest.mark.parametrize("row", DATA["detect"], ids=lambda row: f"C0 {row['C0']} c {row['c']}")
def test_detection_distance_as_in_the_check_rows(row: dict[str, Any]) -> None:
    distance = detection_distance(
        diameter_m=row["d"],
        smallest_angle_rad=np.radians(row["theta_deg"]),
        inherent_contrast=row["C0"],
        threshold_contrast=row["CT"],
        attenuation_1_m=row["c"],
    )
    assert distance == pytest.approx(row["r"], rel=1e-9)


EYE = {"smallest_angle_rad": np.radians(0.17), "threshold_contrast": 0.05}


@given(st.floats(1e-5, 1e-3), st.floats(1e-3, 1.0), st.floats(1e-3, 50.0))
def test_detection_is_scipys_lambert_w(diameter: float, inherent: float, attenuation: float) -> None:
    distance = detection_distance(
        diameter_m=diameter, inherent_contrast=inherent, attenuation_1_m=attenuation, **EYE
    )
    argument = attenuation * inherent * diameter / (EYE["smallest_angle_rad"] * 0.05)
    assert distance == pytest.approx(lambertw(argument).real / attenuation, rel=1e-10)


def test_lambert_w_over_its_whole_range() -> None:
    arguments = np.geomspace(1e-12, 1e12, 200)
    distance = detection_distance(
        diameter_m=arguments,
        smallest_angle_rad=1.0,
        inherent_contrast=1.0,
        threshold_contrast=1.0,
        attenuation_1_m=1.0,
    )
    assert distance == pytest.approx(lambertw(arguments).real, rel=1e-10)


@given(st.floats(5e-5, 5e-4), st.floats(0.2, 10.0), st.floats(1.05, 4.0))
def test_thinner_line_and_cloudier_water_hide_it(diameter: float, attenuation: float, factor: float) -> None:
    thin, thick = detection_distance(
        diameter_m=[diameter, diameter * factor], inherent_contrast=0.3, attenuation_1_m=attenuation, **EYE
    )
    clear, cloudy = detection_distance(
        diameter_m=diameter, inherent_contrast=0.3, attenuation_1_m=[attenuation, attenuation * factor], **EYE
    )
    assert thin < thick
    assert cloudy < clear


def test_a_line_without_contrast_is_not_seen() -> None:
    assert detection_distance(diameter_m=3e-4, inherent_contrast=0.0, attenuation_1_m=1.0, **EYE) == 0.0


def test_contrast_fades_by_the_exponential() -> None:
    left = contrast(inherent_contrast=[1.0, 0.5], attenuation_1_m=0.7, distance_m=2.0)
    assert left == pytest.approx([np.exp(-1.4), 0.5 * np.exp(-1.4)])


def test_acuity_falls_with_contrast() -> None:
    # Spratte et al. 2021, J. Exp. Biol. 224:jeb243068
    assert [angle for _, angle in SUNFISH_ACUITY] == [0.17, 0.34, 0.42]
    distances = [
        resolvable_distance(diameter_m=3e-4, smallest_angle_rad=np.radians(a)) for _, a in SUNFISH_ACUITY
    ]
    assert distances == pytest.approx([0.101, 0.0506, 0.0409], rel=2e-3)


def test_remarks_and_refusals() -> None:
    assert remarks("sight.attenuation_from_secchi", secchi_depth_m=0.1)
    with pytest.raises(ImpossibleInput, match="clarity of the water"):
        attenuation_from_secchi(secchi_depth_m=0.0)
    with pytest.raises(ImpossibleInput, match="smallest contrast noticed"):
        detection_distance(
            diameter_m=3e-4,
            smallest_angle_rad=0.003,
            inherent_contrast=0.3,
            threshold_contrast=0.0,
            attenuation_1_m=1.0,
        )
