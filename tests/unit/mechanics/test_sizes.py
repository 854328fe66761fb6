"""Japanese size numbers against the table of standard diameters."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics import sizes, validity
from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.sources import Kind

# JAFS 2010 standard diameters in mm as a club of anglers prints them (second hand)
JAFS = {
    0.4: 0.104,
    0.6: 0.128,
    0.8: 0.148,
    1.0: 0.165,
    1.2: 0.185,
    1.5: 0.205,
    2.0: 0.235,
    2.5: 0.260,
    3.0: 0.285,
    4.0: 0.330,
    6.0: 0.405,
    8.0: 0.470,
    10.0: 0.520,
    14.0: 0.620,
    18.0: 0.700,
}


@pytest.mark.parametrize(("size", "millimetres"), JAFS.items())
def test_law_and_table(size: float, millimetres: float) -> None:
    assert sizes.size_diameter(size=size) * 1e3 == pytest.approx(millimetres, rel=0.025)
    found = sizes.standard_diameter(size=size)
    assert found.diameter_m * 1e3 == pytest.approx(millimetres)
    assert found.source.kind is Kind.PUBLISHED


@pytest.mark.parametrize("size", [0.2, 0.3, 0.5, 3.5, 5.0, 7.0, 12.0, 16.0, 20.0])
def test_remembered_rows_say_so_and_follow_the_law(size: float) -> None:
    found = sizes.standard_diameter(size=size)
    assert found.source.kind is Kind.MEMORY
    assert found.diameter_m == pytest.approx(float(sizes.size_diameter(size=size)), rel=0.01)


def test_between_rows_the_law_is_named() -> None:
    found = sizes.standard_diameter(size=2.25)
    assert found.source.kind is Kind.COMPUTED
    assert found.diameter_m == pytest.approx(0.2475e-3)
    assert "2.25" in found.source.text


def test_standard_diameters_rise_with_their_numbers() -> None:
    numbers = [entry.number for entry in sizes.STANDARD_SIZES]
    diameters = [entry.diameter_m for entry in sizes.STANDARD_SIZES]
    assert numbers == sorted(set(numbers))
    assert diameters == sorted(set(diameters))


@given(size=st.floats(0.1, 100.0))
def test_size_and_diameter_are_inverse(size: float) -> None:
    assert sizes.size_from_diameter(diameter_m=sizes.size_diameter(size=size)) == pytest.approx(
        size, rel=1e-12
    )
    assert sizes.pe_size(linear_density_kg_m=sizes.pe_linear_density(size=size)) == pytest.approx(
        size, rel=1e-12
    )


def test_pe_one_is_200_denier() -> None:
    # 200 g in 9000 m
    assert sizes.pe_linear_density(size=1.0) == pytest.approx(0.200 / 9000.0)
    assert sizes.pe_linear_density(size=1.0) * 1e6 == pytest.approx(22.22, abs=0.005)


def test_beyond_the_table_a_remark() -> None:
    assert sizes.size_diameter(size=40.0) > 0.0
    (said,) = validity.remarks("sizes.size_diameter", size=40.0)
    assert "Japanese size number" in said


@pytest.mark.parametrize("size", [0.0, -1.0, float("nan")])
def test_impossible_size_is_refused(size: float) -> None:
    for law in (sizes.size_diameter, sizes.pe_linear_density, sizes.standard_diameter):
        with pytest.raises(ImpossibleInput):
            law(size=size)
