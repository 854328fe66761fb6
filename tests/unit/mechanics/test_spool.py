"""Capacity against check rows, open line sizes and closed forms."""

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.spool import (
    PACKING_NESTED,
    PACKING_SQUARE,
    calibrated_packing,
    fill_diameter,
    geometric_room,
    label_room,
    length_in_room,
    lip_gap_share,
)
from rigbuilder.mechanics.validity import remarks

DATA = json.loads((Path(__file__).parent / "data_second" / "tackle.json").read_text(encoding="utf-8"))

# Standard diameters of the Japanese size number (JAFS 2010), size: mm
SIZES = {
    1: 0.165,
    1.5: 0.205,
    2: 0.235,
    2.5: 0.260,
    3: 0.285,
    4: 0.330,
    6: 0.405,
    8: 0.470,
    10: 0.520,
    14: 0.620,
}


@pytest.mark.parametrize("row", DATA["label_scaling"], ids=lambda row: f"to {row['d2']} mm")
def test_label_carries_over_as_in_the_check_rows(row: dict[str, Any]) -> None:
    room = label_room(length_m=row["L1"], diameter_m=row["d1"] / 1e3)
    assert length_in_room(room_m3=room, diameter_m=row["d2"] / 1e3) == pytest.approx(row["L2"], rel=1e-12)


@pytest.mark.parametrize("size", SIZES)
def test_label_pairs_in_japanese_sizes_follow_the_law(size: float) -> None:
    # reels of that market print pairs such as "No. 2 - 150 m, No. 3 - 100 m": size times length is
    # constant, because the size number is proportional to mass per length
    room = label_room(length_m=300.0, diameter_m=SIZES[1] / 1e3)
    length = length_in_room(room_m3=room, diameter_m=SIZES[size] / 1e3)
    assert length * size == pytest.approx(300.0, rel=0.03)


@pytest.mark.parametrize("row", DATA["spool"], ids=lambda row: row["name"])
def test_geometry_as_in_the_check_rows(row: dict[str, Any]) -> None:
    expected = {
        PACKING_SQUARE: row["L_square_volume"],
        PACKING_NESTED: row["L_hex_volume"],
        0.60: row["L_phi_0p60"],
        0.70: row["L_phi_0p70"],
        0.80: row["L_phi_0p80"],
    }
    room = geometric_room(
        arbor_diameter_m=row["Di"], fill_diameter_m=row["Do"], width_m=row["W"], packing=list(expected)
    )
    lengths = length_in_room(room_m3=room, diameter_m=row["d"])
    assert lengths == pytest.approx(list(expected.values()), rel=1e-12)


def test_more_than_half_of_the_line_lies_in_the_outer_half() -> None:
    row = DATA["spool"][1]
    outer = lip_gap_share(
        rim_diameter_m=row["Do"], arbor_diameter_m=row["Di"], lip_gap_m=(row["Do"] - row["Di"]) / 4
    )
    assert outer == pytest.approx(DATA["fraction_line_in_outer_half_depth"], rel=1e-12)


SPOOLS = st.tuples(
    st.floats(0.015, 0.05), st.floats(0.003, 0.03), st.floats(0.008, 0.03), st.floats(0.5, 0.9)
)


@given(SPOOLS, st.floats(0.0, 1.0))
def test_fill_diameter_undoes_room(spool: tuple[float, float, float, float], share: float) -> None:
    arbor, depth, width, packing = spool
    fill = arbor + share * depth
    sides = {"arbor_diameter_m": arbor, "width_m": width}
    room = geometric_room(**sides, fill_diameter_m=fill, packing=packing)
    assert fill_diameter(**sides, room_m3=room, packing=packing) == pytest.approx(fill, rel=1e-9)
    if share > 0.01:
        assert calibrated_packing(**sides, room_m3=room, fill_diameter_m=fill) == pytest.approx(
            packing, rel=1e-9
        )


@given(SPOOLS, st.floats(0.0, 1.0))
def test_lip_gap_share_is_the_difference_of_two_fills(
    spool: tuple[float, float, float, float], share: float
) -> None:
    arbor, depth, width, packing = spool
    gap = share * depth / 2
    rooms = geometric_room(
        arbor_diameter_m=arbor,
        fill_diameter_m=np.array([arbor + depth, max(arbor + depth - 2 * gap, arbor)]),
        width_m=width,
        packing=packing,
    )
    left = lip_gap_share(rim_diameter_m=arbor + depth, arbor_diameter_m=arbor, lip_gap_m=gap)
    assert left == pytest.approx(1.0 - rooms[1] / rooms[0], abs=1e-9)


def test_remark_where_label_and_dimensions_disagree() -> None:
    packing = calibrated_packing(room_m3=2e-5, arbor_diameter_m=0.03, fill_diameter_m=0.045, width_m=0.016)
    assert remarks("spool.calibrated_packing", packing=packing)


@pytest.mark.parametrize(
    ("change", "names"),
    [
        ({"packing": 0.95}, "packing of the line"),
        ({"fill_diameter_m": 0.02}, "depth of line"),
        ({"width_m": 0.0}, "spool width"),
        ({"arbor_diameter_m": -0.03}, "arbor diameter"),
    ],
)
def test_refuses_a_spool_that_cannot_be(change: dict[str, float], names: str) -> None:
    spool = {"arbor_diameter_m": 0.03, "fill_diameter_m": 0.045, "width_m": 0.016, "packing": 0.7} | change
    with pytest.raises(ImpossibleInput, match=names):
        geometric_room(**spool)


def test_refuses_a_gap_deeper_than_the_spool() -> None:
    with pytest.raises(ImpossibleInput, match="lip gap"):
        lip_gap_share(rim_diameter_m=0.045, arbor_diameter_m=0.03, lip_gap_m=0.01)
