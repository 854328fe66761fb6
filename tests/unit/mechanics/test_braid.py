"""Braid by mass: sizes, strengths and outside diameters from outside."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics import braid, section, sizes
from rigbuilder.mechanics.errors import ImpossibleInput

POUND = 4.4482216152605


def test_pe_one_as_a_solid_rod_and_outside() -> None:
    # 200 denier at 970 kg/m³ is 0.1708 mm solid; with a fill of 0.65 the outside is 0.212 mm
    mass = sizes.pe_linear_density(size=1.0)
    solid = braid.solid_diameter(linear_density_kg_m=mass, density_kg_m3=970.0)
    assert solid * 1e3 == pytest.approx(0.1708, abs=5e-5)
    assert braid.outside_diameter(solid_diameter_m=solid, packing=0.65) * 1e3 == pytest.approx(
        0.212, abs=5e-4
    )


@pytest.mark.parametrize(
    ("packing", "ratio"),
    [(0.6, 1.29), (0.8, 1.12), (1.0, 1.0)],
)
def test_gaps_make_braid_thicker(packing: float, ratio: float) -> None:
    assert braid.outside_diameter(solid_diameter_m=1e-3, packing=packing) * 1e3 == pytest.approx(
        ratio, abs=0.005
    )


@pytest.mark.parametrize(
    ("size", "tenacity", "pounds"),
    [
        # strength of a size at 2.0, 2.65 and 3.1 N/tex, the last two published for gel-spun fibre
        (0.6, 2.0, 6.0),
        (0.6, 2.65, 7.9),
        (0.8, 3.1, 12.4),
        (1.0, 2.0, 10.0),
        (1.0, 2.65, 13.2),
        (1.0, 3.1, 15.5),
        (2.0, 2.65, 26.5),
    ],
)
def test_strength_of_pe_sizes(size: float, tenacity: float, pounds: float) -> None:
    mass = sizes.pe_linear_density(size=size)
    found = braid.strength_from_mass(linear_density_kg_m=mass, tenacity_n_tex=tenacity)
    assert found / POUND == pytest.approx(pounds, abs=0.06)


def test_a_claim_of_20_lb_for_pe_one_is_beyond_the_fibre() -> None:
    # 20 lb on 22.22 tex asks for 4.0 N/tex, above the 3.1 N/tex of the strongest yarn
    mass = sizes.pe_linear_density(size=1.0)
    assert braid.strength_from_mass(linear_density_kg_m=mass, tenacity_n_tex=4.0) / POUND == pytest.approx(
        20.0, abs=0.05
    )


@given(strength=st.floats(1.0, 2000.0), tenacity=st.floats(0.5, 4.0))
def test_strength_and_mass_are_inverse(strength: float, tenacity: float) -> None:
    mass = braid.mass_from_strength(strength_n=strength, tenacity_n_tex=tenacity)
    again = braid.strength_from_mass(linear_density_kg_m=mass, tenacity_n_tex=tenacity)
    assert again == pytest.approx(strength, rel=1e-12)


@given(mass=st.floats(1e-6, 1e-3), density=st.floats(900.0, 2000.0))
def test_solid_diameter_carries_the_mass(mass: float, density: float) -> None:
    solid = braid.solid_diameter(linear_density_kg_m=mass, density_kg_m3=density)
    assert section.linear_density(diameter_m=solid, density_kg_m3=density) == pytest.approx(mass, rel=1e-12)


@pytest.mark.parametrize("packing", [0.0, -0.2, 1.2])
def test_impossible_packing_is_refused(packing: float) -> None:
    with pytest.raises(ImpossibleInput) as refused:
        braid.outside_diameter(solid_diameter_m=1e-3, packing=packing)
    assert refused.value.quantity == "packing of the braid"
