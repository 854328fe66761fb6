"""Backing, top line and lip gap: the balance, and its round trip through turn-by-turn winding."""

import json
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.fillbalance import Fill, SpoolShape, balance, nearest_fill, shape_from_label
from rigbuilder.mechanics.layers import wind

DATA = json.loads((Path(__file__).parent / "data_second" / "tackle.json").read_text(encoding="utf-8"))
LABEL = {"label_length_m": 150.0, "label_diameter_m": 3e-4, "label_lip_gap_m": 0.0015}
SPOOL = shape_from_label(**LABEL, arbor_diameter_m=0.03, rim_diameter_m=0.048, width_m=0.016)
LINES = {"backing_diameter_m": 3e-4, "top_diameter_m": 1.5e-4}

SPOOLS = st.builds(
    lambda arbor, depth, width, packing: SpoolShape(arbor, arbor + 2 * depth, width, packing),
    st.floats(0.015, 0.05),
    st.floats(0.004, 0.015),
    st.floats(0.008, 0.03),
    st.floats(0.55, 0.85),
)
DIAMETERS = st.floats(1e-4, 5e-4)


def test_backing_as_in_the_check_row() -> None:
    # 150 m of .30 on the label; 100 m of .15 over .30 backing leave room for 125 m
    row = DATA["backing"]
    fill = balance(spool=SPOOL, **LINES, top_length_m=row["main_L"], lip_gap_m=0.0015)
    assert fill.backing_length_m == pytest.approx(row["backing_L"], rel=1e-12)
    assert SPOOL.room_m3(lip_gap_m=0.0015) == pytest.approx(row["total_Ld2"] * 1e-6, rel=1e-12)


@given(SPOOLS, DIAMETERS, DIAMETERS, st.floats(0.05, 0.9), st.floats(0.0, 0.4))
def test_any_two_give_the_third(
    spool: SpoolShape, backing_d: float, top_d: float, share: float, gap_share: float
) -> None:
    lines = {"backing_diameter_m": backing_d, "top_diameter_m": top_d}
    gap = gap_share * float(np.subtract(spool.rim_diameter_m, spool.arbor_diameter_m)) / 2
    top = share * float(spool.room_m3(lip_gap_m=gap)) / top_d**2
    fill = balance(spool=spool, **lines, top_length_m=top, lip_gap_m=gap)
    assert fill.possible
    by_backing = balance(spool=spool, **lines, backing_length_m=fill.backing_length_m, lip_gap_m=gap)
    assert by_backing.top_length_m == pytest.approx(top, rel=1e-9)
    by_lengths = balance(spool=spool, **lines, backing_length_m=fill.backing_length_m, top_length_m=top)
    assert by_lengths.lip_gap_m == pytest.approx(gap, abs=1e-9)
    used = float(fill.backing_length_m) * backing_d**2 + top * top_d**2
    assert used == pytest.approx(float(spool.room_m3(lip_gap_m=gap)), rel=1e-9)


@given(SPOOLS, DIAMETERS, DIAMETERS, st.floats(0.1, 0.9), st.floats(0.05, 0.4))
def test_round_trip_turn_by_turn(
    spool: SpoolShape, backing_d: float, top_d: float, share: float, gap_share: float
) -> None:
    depth = float(np.subtract(spool.rim_diameter_m, spool.arbor_diameter_m)) / 2
    gap = gap_share * depth
    top = share * float(spool.room_m3(lip_gap_m=gap)) / top_d**2
    fill = balance(
        spool=spool, backing_diameter_m=backing_d, top_diameter_m=top_d, top_length_m=top, lip_gap_m=gap
    )
    *_, wound = wind(
        arbor_diameter_m=float(spool.arbor_diameter_m),
        width_m=float(spool.width_m),
        packing=float(spool.packing),
        lines_m=[(float(fill.backing_length_m), backing_d), (top, top_d)],
    )
    left = (float(spool.rim_diameter_m) - wound.fill_diameter_m) / 2
    layer = np.pi / (4 * float(spool.packing)) * max(backing_d, top_d)
    assert left == pytest.approx(gap, abs=layer)
    volume = float(spool.room_m3(lip_gap_m=left))
    assert volume == pytest.approx(float(spool.room_m3(lip_gap_m=gap)), rel=0.02)


def test_more_top_line_means_less_backing_and_a_smaller_gap() -> None:
    by_gap = balance(spool=SPOOL, **LINES, top_length_m=[80.0, 120.0, 160.0], lip_gap_m=0.0015)
    assert np.all(np.diff(by_gap.backing_length_m) < 0.0)
    by_backing = balance(spool=SPOOL, **LINES, top_length_m=[80.0, 120.0, 160.0], backing_length_m=50.0)
    assert np.all(np.diff(by_backing.lip_gap_m) < 0.0)


def test_a_wish_that_does_not_fit_comes_out_negative_and_the_nearest_fits() -> None:
    wish = balance(spool=SPOOL, **LINES, top_length_m=900.0, lip_gap_m=0.0015)
    assert wish.backing_length_m < 0.0
    assert not wish.possible
    fill = nearest_fill(spool=SPOOL, fill=wish, **LINES, smallest_lip_gap_m=0.0015)
    assert fill.possible
    assert fill.backing_length_m == 0.0
    assert fill.top_length_m == pytest.approx(600.0)  # 150 m of .30 are 600 m of .15
    assert fill.lip_gap_m == pytest.approx(0.0015)


def test_line_above_the_rim_is_cut_to_what_fits_backing_first() -> None:
    wish = balance(spool=SPOOL, **LINES, top_length_m=100.0, backing_length_m=400.0)
    assert wish.lip_gap_m < 0.0
    fill = nearest_fill(spool=SPOOL, fill=wish, **LINES, smallest_lip_gap_m=0.0015)
    assert fill.top_length_m == pytest.approx(100.0)
    assert fill.backing_length_m == pytest.approx(125.0)


def test_a_possible_wish_stays_as_it_is() -> None:
    wish = balance(spool=SPOOL, **LINES, top_length_m=[100.0, 200.0], lip_gap_m=0.002)
    fill = nearest_fill(spool=SPOOL, fill=wish, **LINES, smallest_lip_gap_m=0.001)
    assert fill.top_length_m == pytest.approx(wish.top_length_m)
    assert fill.backing_length_m == pytest.approx(wish.backing_length_m)
    assert fill.lip_gap_m == pytest.approx([0.002, 0.002])


@pytest.mark.parametrize(
    "given_two",
    [{"top_length_m": 1.0}, {"top_length_m": 1.0, "backing_length_m": 1.0, "lip_gap_m": 0.001}, {}],
)
def test_exactly_two_must_be_pinned(given_two: dict[str, float]) -> None:
    with pytest.raises(ImpossibleInput, match="number of pinned quantities"):
        balance(spool=SPOOL, **LINES, **given_two)


def test_refuses_what_cannot_be() -> None:
    with pytest.raises(ImpossibleInput, match="top line in m"):
        balance(spool=SPOOL, **LINES, top_length_m=-1.0, lip_gap_m=0.001)
    with pytest.raises(ImpossibleInput, match="depth of the spool"):
        SpoolShape(0.05, 0.045, 0.016, 0.7)
    with pytest.raises(ImpossibleInput, match="under the lip gap"):
        balance(spool=SPOOL, **LINES, top_length_m=1.0, lip_gap_m=0.03)


def test_fill_knows_what_is_possible_element_by_element() -> None:
    fill = Fill(np.array([10.0, -1.0]), np.array([5.0, 5.0]), np.array([0.001, 0.001]))
    assert fill.possible.tolist() == [True, False]
