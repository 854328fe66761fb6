"""Friction over the guides against check rows and the equation of the rope on a post."""

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.guides import drag_for_pull, guide_ratio, pull_at_fish, pull_when_winding
from rigbuilder.mechanics.validity import remarks

DATA = json.loads((Path(__file__).parent / "data_second" / "tackle.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("row", DATA["capstan"], ids=lambda row: f"mu {row['mu']} {row['theta_deg']} deg")
def test_ratio_as_in_the_check_rows(row: dict[str, Any]) -> None:
    ratio = guide_ratio(friction=row["mu"], turning_rad=np.radians(row["theta_deg"]))
    assert ratio == pytest.approx(row["ratio"], rel=1e-12)


def test_only_the_sum_of_the_angles_matters() -> None:
    row = DATA["multi_guide"]
    each = guide_ratio(friction=row["mu"], turning_rad=np.radians(row["angles_deg"]))
    assert each.prod() == pytest.approx(row["ratio"], rel=1e-12)
    assert guide_ratio(friction=row["mu"], turning_rad=np.radians(row["total_deg"])) == pytest.approx(
        each.prod()
    )


def test_twenty_newtons_over_a_right_angle() -> None:
    # numerical integration of dT/d(theta) = mu T
    pull = pull_at_fish(drag_n=20.0, friction=0.15, turning_rad=np.pi / 2)
    assert pull == pytest.approx(DATA["capstan_ode_20N_90deg_mu0.15"], rel=1e-10)
    assert pull == pytest.approx(DATA["capstan_formula"], rel=1e-12)


@given(st.floats(0.1, 200.0), st.floats(0.0, 0.5), st.floats(0.0, 3.2))
def test_setting_straight_and_pull_over_the_rod_undo_each_other(pull: float, mu: float, angle: float) -> None:
    setting = drag_for_pull(pull_n=pull, friction=mu, turning_rad=angle)
    assert setting <= pull
    assert pull_at_fish(drag_n=setting, friction=mu, turning_rad=angle) == pytest.approx(pull)
    assert pull_when_winding(load_n=pull, friction=mu, turning_rad=angle) >= pull


def test_straight_rod_costs_nothing() -> None:
    assert drag_for_pull(pull_n=[10.0, 20.0], friction=0.35, turning_rad=0.0) == pytest.approx([10.0, 20.0])


def test_remarks_and_refusals() -> None:
    assert remarks("guides.guide_ratio", friction=0.6)
    with pytest.raises(ImpossibleInput, match="friction coefficient"):
        guide_ratio(friction=-0.1, turning_rad=1.0)
    with pytest.raises(ImpossibleInput, match="drag in N"):
        pull_at_fish(drag_n=-1.0, friction=0.1, turning_rad=1.0)
