"""The cross-section of solid line: runnage, weights and strengths from outside."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics import section
from rigbuilder.mechanics.errors import ImpossibleInput

SIZES = st.floats(0.05e-3, 1.5e-3)

# Metres per kilogram of a solid round filament by geometry; nylon 1140, PVDF 1785, polyester 1390 kg/m³
RUNNAGE = [
    (0.20e-3, 1140.0, 27922.0),
    (0.30e-3, 1140.0, 12410.0),
    (0.50e-3, 1140.0, 4468.0),
    (1.00e-3, 1140.0, 1117.0),
    (0.20e-3, 1785.0, 17832.0),
    (0.30e-3, 1785.0, 7926.0),
    (0.30e-3, 1390.0, 10178.0),
]


@pytest.mark.parametrize(("diameter", "density", "metres_per_kg"), RUNNAGE)
def test_runnage(diameter: float, density: float, metres_per_kg: float) -> None:
    mass = section.linear_density(diameter_m=diameter, density_kg_m3=density)
    assert 1.0 / mass == pytest.approx(metres_per_kg, abs=0.5)


@pytest.mark.parametrize(
    ("density", "water", "share"),
    [
        # weight in water over weight in air, fresh water 20 °C and sea water 15 °C
        (1140.0, 998.207, 0.124),
        (1140.0, 1025.976, 0.100),
        (1785.0, 998.207, 0.441),
        (1785.0, 1025.976, 0.425),
        (1390.0, 998.207, 0.282),
        (970.0, 998.207, -0.029),
        (970.0, 1025.976, -0.058),
    ],
)
def test_share_of_weight_left_in_water(density: float, water: float, share: float) -> None:
    mass = section.linear_density(diameter_m=0.3e-3, density_kg_m3=density)
    dry = section.dry_weight(linear_density_kg_m=mass)
    wet = section.wet_weight(linear_density_kg_m=mass, density_kg_m3=density, water_density_kg_m3=water)
    assert wet / dry == pytest.approx(share, abs=5e-4)


def test_weights_of_nylon_030_per_metre() -> None:
    # 9.82895e-5 N/m in fresh water at 20 °C, 7.894e-4 N/m in air of 1.2 kg/m³
    mass = section.linear_density(diameter_m=0.3e-3, density_kg_m3=1140.0)
    arguments = {"linear_density_kg_m": mass, "density_kg_m3": 1140.0}
    assert section.wet_weight(**arguments, water_density_kg_m3=998.2072) == pytest.approx(
        9.82895e-5, rel=1e-5
    )
    assert section.wet_weight(**arguments, water_density_kg_m3=1.2) == pytest.approx(7.894062e-4, rel=1e-5)


@pytest.mark.parametrize(
    ("pounds", "millimetres", "stress_mpa"),
    [(15.0, 0.35, 694.0), (30.0, 0.50, 680.0)],  # a rule of thumb of the trade, as stresses
)
def test_two_rules_of_thumb(pounds: float, millimetres: float, stress_mpa: float) -> None:
    newton = pounds * 4.4482216152605
    found = section.diameter_from_strength(strength_n=newton, stress_pa=stress_mpa * 1e6)
    assert found * 1e3 == pytest.approx(millimetres, abs=0.0005)


@pytest.mark.parametrize(
    ("millimetres", "pounds"),
    # customary strengths of Japanese sizes 2 to 8: lb = 138.6 d² (785 MPa) fits them within 7 %
    [(0.235, 8), (0.260, 10), (0.285, 12), (0.330, 16), (0.405, 22), (0.470, 30)],
)
def test_customary_strengths(millimetres: float, pounds: float) -> None:
    found = section.strength_from_diameter(diameter_m=millimetres * 1e-3, stress_pa=785e6)
    assert found / 4.4482216152605 == pytest.approx(pounds, rel=0.07)


@given(diameter=SIZES, stress=st.floats(1e8, 2e9))
def test_strength_and_diameter_are_inverse(diameter: float, stress: float) -> None:
    strength = section.strength_from_diameter(diameter_m=diameter, stress_pa=stress)
    again = section.diameter_from_strength(strength_n=strength, stress_pa=stress)
    assert again == pytest.approx(diameter, rel=1e-12)


@given(diameter=SIZES)
def test_line_of_the_density_of_water_weighs_nothing_in_it(diameter: float) -> None:
    mass = section.linear_density(diameter_m=diameter, density_kg_m3=998.0)
    wet = section.wet_weight(linear_density_kg_m=mass, density_kg_m3=998.0, water_density_kg_m3=998.0)
    assert wet == 0.0


def test_arrays_keep_their_shape() -> None:
    found = section.area(diameter_m=np.array([[0.1e-3, 0.2e-3]]))
    assert found.shape == (1, 2)
    assert found[0, 1] == pytest.approx(4.0 * found[0, 0])


@pytest.mark.parametrize(
    ("call", "named"),
    [
        (lambda: section.area(diameter_m=0.0), "line diameter in m"),
        (lambda: section.strength_from_diameter(diameter_m=1e-3, stress_pa=0.0), "breaking stress in Pa"),
        (lambda: section.diameter_from_strength(strength_n=-1.0, stress_pa=1e9), "line strength in N"),
        (lambda: section.linear_density(diameter_m=1e-3, density_kg_m3=0.0), "density of the line in kg/m³"),
        (lambda: section.dry_weight(linear_density_kg_m=0.0), "mass per metre in kg/m"),
    ],
)
def test_impossible_line_is_refused(call, named: str) -> None:
    with pytest.raises(ImpossibleInput) as refused:
        call()
    assert refused.value.quantity == named
