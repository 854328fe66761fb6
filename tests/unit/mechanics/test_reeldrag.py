"""The drag of an emptying spool against check rows and the winding itself."""

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.layers import wind
from rigbuilder.mechanics.reeldrag import drag_at, drag_growth, drag_torque, radius_after

DATA = json.loads((Path(__file__).parent / "data_second" / "tackle.json").read_text(encoding="utf-8"))
SPOOL = {"full_radius_m": 0.022, "diameter_m": 3e-4, "packing": 0.70, "width_m": 0.018}


@pytest.mark.parametrize("row", DATA["drag"], ids=lambda row: f"r {row['r_mm']} mm")
def test_pull_as_in_the_check_rows(row: dict[str, Any]) -> None:
    assert drag_at(torque_nm=row["M_Nm"], radius_m=row["r_mm"] / 1e3) == pytest.approx(row["T_N"], rel=1e-12)


@pytest.mark.parametrize("row", DATA["radius_vs_line_out"], ids=lambda row: f"{row['L_out']} m out")
def test_radius_and_growth_as_in_the_check_rows(row: dict[str, Any]) -> None:
    radius = radius_after(**SPOOL, line_out_m=row["L_out"])
    assert radius * 1e3 == pytest.approx(row["r_mm"], rel=1e-12)
    assert drag_growth(set_radius_m=0.022, radius_m=radius) == pytest.approx(row["T_ratio"], rel=1e-12)


def test_radius_is_that_of_the_spool_wound_turn_by_turn() -> None:
    # wind 200 m, then see what is left when 80 m have run out: the first 120 m
    lines = [(120.0, 3e-4), (80.0, 3e-4)]
    left, full = wind(arbor_diameter_m=0.03, width_m=0.018, packing=0.70, lines_m=lines)
    radius = radius_after(**SPOOL | {"full_radius_m": full.fill_diameter_m / 2}, line_out_m=80.0)
    assert radius * 2 == pytest.approx(left.fill_diameter_m, abs=2e-4)  # a layer is 0.27 mm high


@given(st.floats(0.0, 120.0), st.floats(0.5, 30.0))
def test_drag_grows_as_the_spool_empties(out: float, more: float) -> None:
    radii = radius_after(**SPOOL, line_out_m=[out, out + more])
    torque = drag_torque(drag_n=20.0, radius_m=0.022)
    early, late = drag_at(torque_nm=torque, radius_m=radii)
    assert early * (1 + 1e-12) >= 20.0
    assert early < late


def test_refuses_more_line_than_there_can_be() -> None:
    with pytest.raises(ImpossibleInput, match="radius left"):
        radius_after(**SPOOL, line_out_m=5000.0)
    with pytest.raises(ImpossibleInput, match="drag in N"):
        drag_torque(drag_n=-2.0, radius_m=0.02)
