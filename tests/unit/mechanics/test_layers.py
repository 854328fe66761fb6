"""Turn-by-turn winding against the worked example of rope drums and against check rows."""

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.layers import Lay, full_spool, wind
from rigbuilder.mechanics.spool import PACKING_SQUARE, geometric_room, length_in_room

DATA = json.loads((Path(__file__).parent / "data_second" / "tackle.json").read_text(encoding="utf-8"))
INCH, FOOT = 0.0254, 0.3048


def test_worked_example_of_a_rope_drum() -> None:
    # Winch handbooks: barrel 10 in, flange 20 in, 12 in wide, half-inch rope, 10 layers: "about 940 ft"
    drum = full_spool(
        arbor_diameter_m=10 * INCH,
        rim_diameter_m=20 * INCH,
        width_m=12 * INCH,
        diameter_m=INCH / 2,
        lay=Lay.SQUARE,
    )
    assert drum.layers == 10
    assert drum.turns == 240.0
    assert drum.length_m / FOOT == pytest.approx(940.0, abs=5.0)
    assert drum.length_m / FOOT == pytest.approx(942.478, abs=1e-3)


@pytest.mark.parametrize("row", DATA["spool"], ids=lambda row: row["name"])
def test_full_spools_as_in_the_check_rows(row: dict[str, Any]) -> None:
    spool = {
        "arbor_diameter_m": row["Di"],
        "rim_diameter_m": row["Do"],
        "width_m": row["W"],
        "diameter_m": row["d"],
    }
    square = full_spool(**spool, lay=Lay.SQUARE)
    assert (square.layers, square.turns) == (row["layers"], row["layers"] * row["turns"])
    assert square.length_m == pytest.approx(row["L_layers_square"], rel=1e-12)
    nested = full_spool(**spool, lay=Lay.NESTED)
    assert nested.layers == row["layers_hex"]
    assert nested.length_m == pytest.approx(row["L_layers_hex"], rel=1e-12)


@given(st.integers(3, 40), st.integers(2, 30), st.floats(1e-4, 6e-4), st.floats(0.01, 0.05))
def test_whole_square_layers_are_the_volume_formula_exactly(
    across: int, layers: int, diameter: float, arbor: float
) -> None:
    rim, width = arbor + 2 * layers * diameter, across * diameter
    wound = full_spool(
        arbor_diameter_m=arbor, rim_diameter_m=rim, width_m=width, diameter_m=diameter, lay=Lay.SQUARE
    )
    room = geometric_room(arbor_diameter_m=arbor, fill_diameter_m=rim, width_m=width, packing=PACKING_SQUARE)
    assert wound.length_m == pytest.approx(float(length_in_room(room_m3=room, diameter_m=diameter)), rel=1e-9)


@given(st.floats(5.0, 300.0), st.floats(1e-4, 5e-4), st.floats(0.55, 0.85))
def test_wound_length_takes_the_room_it_should(length: float, diameter: float, packing: float) -> None:
    (wound,) = wind(arbor_diameter_m=0.03, width_m=0.016, packing=packing, lines_m=[(length, diameter)])
    room = geometric_room(
        arbor_diameter_m=0.03, fill_diameter_m=wound.fill_diameter_m, width_m=0.016, packing=packing
    )
    rise = np.pi * diameter / (4 * packing)
    slop = np.pi / 4 * rise * 2 * 0.016 * packing  # half a layer at the arbor
    assert float(room) == pytest.approx(length * diameter**2, abs=float(slop) * 0.05, rel=0.02)


def test_turn_by_turn_count_by_hand() -> None:
    # width for exactly 4 turns of 1 mm, square: circles of 11 mm, then of 13 mm
    (wound,) = wind(
        arbor_diameter_m=0.010,
        width_m=0.004,
        packing=PACKING_SQUARE,
        lines_m=[(np.pi * (4 * 0.011 + 2 * 0.013), 1e-3)],
    )
    assert wound.turns == pytest.approx(6.0)
    assert wound.layers == 2
    assert wound.fill_diameter_m == pytest.approx(0.010 + 2 * 1.5e-3)


def test_nothing_wound_changes_nothing() -> None:
    (wound,) = wind(arbor_diameter_m=0.03, width_m=0.016, packing=0.7, lines_m=[(0.0, 3e-4)])
    assert (wound.turns, wound.layers, wound.fill_diameter_m) == (0.0, 0, 0.03)


def test_refuses_line_thicker_than_the_spool_is_wide() -> None:
    with pytest.raises(ImpossibleInput, match="spool width"):
        wind(arbor_diameter_m=0.03, width_m=2e-4, packing=0.7, lines_m=[(10.0, 3e-4)])
    with pytest.raises(ImpossibleInput, match="depth of the spool"):
        full_spool(arbor_diameter_m=0.03, rim_diameter_m=0.02, width_m=0.016, diameter_m=3e-4, lay=Lay.SQUARE)
