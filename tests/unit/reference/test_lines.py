"""Material data against published values and sanity bounds."""

import pytest

from rigbuilder.reference.lines import LineTypeData
from rigbuilder.reference.load import load
from rigbuilder.reference.words import LabelConvention, LineType

LINES = load().line_types
WATER_KG_M3 = 998.2  # IAPWS-95 at 20 C


@pytest.mark.parametrize(
    ("line", "name", "published"),
    [
        (LineType.NYLON, "density_kg_m3", 1140),  # Morton & Hearle, table 5.1
        (LineType.BRAID, "density_kg_m3", 970),  # Morton & Hearle, table 5.2
        (LineType.FLUOROCARBON, "density_kg_m3", 1790),  # US patent 7,582,353
        (LineType.NYLON, "refractive_index", 1.53),  # Polymer Handbook, p. V/121, across the fibre
        (LineType.FLUOROCARBON, "refractive_index", 1.42),  # US patent 7,582,353
        (LineType.BRAID, "strength", 2.65e6),  # Tension Technology, table 1: 2.65 N/tex
        (LineType.NYLON, "strength", 7.77e8),  # ten soaked lines, middle of 640-914 MPa
        (LineType.NYLON, "break_extension", 0.25),  # the same test: bulk 25-28 per cent
        (LineType.BRAID, "fill", 0.648),  # MoorPy properties: HMPE rope
    ],
)
def test_the_range_holds_the_published_value(line: LineType, name: str, published: float) -> None:
    assert published in getattr(LINES[line], name).value


def test_the_mean_break_of_a_tested_braid_lies_in_its_honesty() -> None:
    # Olander (2010): braid labelled 30 lb broke at 44.5 to 54 lb, on average 48.5 lb
    honesty = LINES[LineType.BRAID].label_honesty[LabelConvention.US_TEST].value
    for broke_lb in (44.5, 48.5, 54.0):
        assert broke_lb / 30 in honesty


@pytest.mark.parametrize("line", [LineType.NYLON, LineType.COPOLYMER, LineType.HYBRID])
def test_nylon_stiffness_is_that_of_nylon(line: LineType) -> None:
    # 0.5 to 6 GPa; a page that lists 72 GPa for nylon is wrong by a factor of twenty
    assert LINES[line].modulus_pa.low >= 0.5e9
    assert LINES[line].modulus_pa.high <= 6e9


def test_what_floats_floats_and_what_sinks_sinks() -> None:
    assert LINES[LineType.BRAID].density_kg_m3.high < WATER_KG_M3
    assert LINES[LineType.NYLON].density_kg_m3.low > WATER_KG_M3
    assert LINES[LineType.NYLON].density_kg_m3.high < LINES[LineType.FLUOROCARBON].density_kg_m3.low


@pytest.mark.parametrize("data", LINES.values(), ids=lambda data: data.type)
def test_every_type_has_a_label_honesty_for_each_convention(data: LineTypeData) -> None:
    assert set(data.label_honesty) == set(LabelConvention)
    assert data.label_honesty[LabelConvention.CLASS].high <= 1.1
    assert data.is_strength_per_mass is data.type.is_braided
    assert data.fill.high <= 1
    assert data.pros
    assert data.cons
    assert data.care.endswith(".")


def test_fluorocarbon_costs_five_to_ten_times_nylon() -> None:
    # common practice, no source
    assert tuple(LINES[LineType.FLUOROCARBON].price_factor.value)[::2] == (5, 10)
