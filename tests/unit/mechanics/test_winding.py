"""Turns of the handle against the winding counted turn by turn."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.layers import wind
from rigbuilder.mechanics.winding import handle_turns, line_mass, retrieve_per_turn


def test_retrieve_of_a_full_reel() -> None:
    # 46 mm over the line, 5.2 : 1: pi * 46 mm * 5.2 = 75.1 cm
    assert retrieve_per_turn(fill_diameter_m=0.046, gear_ratio=5.2) == pytest.approx(0.7515, abs=1e-4)


@given(st.floats(20.0, 300.0), st.floats(1e-4, 4e-4), st.floats(4.0, 9.0))
def test_turns_are_those_counted_turn_by_turn(length: float, diameter: float, ratio: float) -> None:
    (wound,) = wind(arbor_diameter_m=0.03, width_m=0.016, packing=0.7, lines_m=[(length, diameter)])
    turns = handle_turns(
        start_diameter_m=0.03, end_diameter_m=wound.fill_diameter_m, length_m=length, gear_ratio=ratio
    )
    assert turns == pytest.approx(wound.turns / ratio, rel=0.01)


def test_turns_are_the_integral_over_the_growing_spool() -> None:
    start, end, length = 0.03, 0.045, 140.0
    wound = np.linspace(0.0, length, 20_001)
    diameter = np.sqrt(start**2 + (end**2 - start**2) * wound / length)
    turns = np.trapezoid(1.0 / (np.pi * diameter * 6.0), wound)
    found = handle_turns(start_diameter_m=start, end_diameter_m=end, length_m=length, gear_ratio=6.0)
    assert found == pytest.approx(turns, rel=1e-8)


def test_two_parts_add_up_to_the_whole() -> None:
    middle = np.sqrt((0.03**2 + 0.045**2) / 2.0)
    parts = handle_turns(
        start_diameter_m=[0.03, middle], end_diameter_m=[middle, 0.045], length_m=70.0, gear_ratio=6.0
    )
    whole = handle_turns(start_diameter_m=0.03, end_diameter_m=0.045, length_m=140.0, gear_ratio=6.0)
    assert parts.sum() == pytest.approx(float(whole), rel=1e-12)
    assert parts[0] > parts[1]


def test_grams_on_the_kitchen_scale() -> None:
    # nylon .30 mm, 1140 kg/m3: 12 410 m/kg (runnage of a solid round filament)
    assert line_mass(length_m=[100.0, 12410.0], linear_density_kg_m=8.058e-5) == pytest.approx(
        [0.008058, 1.0], rel=1e-3
    )


def test_refuses_a_spool_that_shrinks_while_filling() -> None:
    with pytest.raises(ImpossibleInput, match="growth of the spool"):
        handle_turns(start_diameter_m=0.04, end_diameter_m=0.03, length_m=10.0, gear_ratio=6.0)
    with pytest.raises(ImpossibleInput, match="gear ratio"):
        retrieve_per_turn(fill_diameter_m=0.04, gear_ratio=0.0)
