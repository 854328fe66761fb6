"""Stretching, bending and wetting of line."""

import pytest

from rigbuilder.mechanics import section, stiffness
from rigbuilder.mechanics.errors import ImpossibleInput


@pytest.mark.parametrize(
    ("diameter", "modulus", "stiffness_n_m"),
    [
        # EA/L of 30 m of line: springs computed apart from this code
        (0.30e-3, 2.0e9, 4.71239),
        (0.30e-3, 2.5e9, 5.89049),
        (0.15e-3, 60e9, 35.3429),
    ],
)
def test_axial_stiffness(diameter: float, modulus: float, stiffness_n_m: float) -> None:
    found = stiffness.axial_stiffness(area_m2=section.area(diameter_m=diameter), modulus_pa=modulus)
    assert found / 30.0 == pytest.approx(stiffness_n_m, rel=1e-5)


def test_bending_stiffness_of_nylon_035() -> None:
    # 1.47324e-6 N m² for 0.35 mm at 2 GPa
    found = stiffness.bending_stiffness(diameter_m=0.35e-3, modulus_pa=2.0e9)
    assert found == pytest.approx(1.47324e-6, rel=1e-5)


def test_bending_stiffness_follows_the_fourth_power() -> None:
    thin, thick = (stiffness.bending_stiffness(diameter_m=d, modulus_pa=2e9) for d in (0.2e-3, 0.4e-3))
    assert thick / thin == pytest.approx(16.0)


def test_wet_strength() -> None:
    assert stiffness.wet_strength(dry_strength_n=50.0, wet_factor=0.9) == pytest.approx(45.0)


@pytest.mark.parametrize("factor", [0.0, 1.1, float("nan")])
def test_impossible_wet_factor_is_refused(factor: float) -> None:
    with pytest.raises(ImpossibleInput):
        stiffness.wet_strength(dry_strength_n=50.0, wet_factor=factor)


def test_impossible_modulus_is_refused() -> None:
    with pytest.raises(ImpossibleInput):
        stiffness.bending_stiffness(diameter_m=0.3e-3, modulus_pa=-2e9)
    with pytest.raises(ImpossibleInput):
        stiffness.axial_stiffness(area_m2=0.0, modulus_pa=2e9)
