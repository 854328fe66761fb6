"""Equivalent modulus of a sagging line against the exact elastic catenary."""

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.feel import TAUT_LIMIT, ernst_ratio, is_slack, sag_ratio, tug_share
from rigbuilder.mechanics.validity import remarks

DATA = json.loads((Path(__file__).parent / "data_second" / "elastic.json").read_text(encoding="utf-8"))
LINE = {"axial_stiffness_n": 141.37, "weight_n_m": 7.894e-4}


@pytest.mark.parametrize("row", DATA["ernst"], ids=lambda row: row["name"])
def test_ratio_as_in_the_check_rows(row: dict[str, Any]) -> None:
    ratio = ernst_ratio(axial_stiffness_n=row["EA"], weight_n_m=row["w"], span_m=row["L"], tension_n=row["T"])
    assert ratio == pytest.approx(row["ratio_ernst"], rel=1e-12)
    # exact elastic catenary, solved numerically: the formula holds within 1 %
    assert ratio == pytest.approx(row["ratio_exact_elastic_catenary"], rel=0.01)


@pytest.mark.parametrize("row", DATA["sag"], ids=lambda row: f"{row['name']} {row['medium']}")
def test_sag_ratio_is_that_of_the_exact_catenary(row: dict[str, Any]) -> None:
    ratio = sag_ratio(weight_n_m=row["w"], span_m=row["L"], tension_n=row["H"])
    assert ratio == pytest.approx(row["sag_exact"] / row["L"], rel=1e-3)


def elastic_catenary_span(tension: float, *, axial: float, weight: float, unstretched: float) -> float:
    """Span of a level elastic catenary, Irvine 1981, Cable Structures (closed form)."""
    return float(
        tension * unstretched / axial
        + 2.0 * tension / weight * np.arcsinh(weight * unstretched / (2 * tension))
    )


@pytest.mark.parametrize("sag", [0.01, 0.03, 0.06, 1.0 / 12.0])
def test_within_five_per_cent_of_the_elastic_catenary_up_to_its_limit(sag: float) -> None:
    span, weight, axial = 20.0, 7.894e-4, 141.37
    tension = weight * span / (8.0 * sag)
    extra = (weight * span / tension) ** 2 / 24.0
    unstretched = span * (1.0 + extra) / (1.0 + tension / axial)
    step = tension * 1e-4
    spans = [
        elastic_catenary_span(tension + side, axial=axial, weight=weight, unstretched=unstretched)
        for side in (-step, step)
    ]
    exact = 2.0 * step / (spans[1] - spans[0])
    ratio = ernst_ratio(axial_stiffness_n=axial, weight_n_m=weight, span_m=span, tension_n=tension)
    assert axial / span * ratio == pytest.approx(exact, rel=0.05)


@given(st.floats(0.02, 5.0), st.floats(1.01, 10.0))
def test_a_tighter_line_carries_more(tension: float, factor: float) -> None:
    loose, tight = (ernst_ratio(**LINE, span_m=20.0, tension_n=pull) for pull in (tension, tension * factor))
    assert 0.0 < loose < tight <= 1.0


def test_floating_line_feels_as_a_sinking_one_of_the_same_net_weight() -> None:
    up = ernst_ratio(axial_stiffness_n=141.0, weight_n_m=-1e-4, span_m=20.0, tension_n=0.1)
    down = ernst_ratio(axial_stiffness_n=141.0, weight_n_m=1e-4, span_m=20.0, tension_n=0.1)
    assert up == down


def test_share_of_a_tug_ranks_lines_as_their_stiffness_does() -> None:
    # nylon and fluorocarbon .30 mm, braid .15 mm: EA as in the check rows, all in air at 1 N
    shares = tug_share(
        axial_stiffness_n=[141.37, 176.71, 1060.3],
        length_m=20.0,
        weight_n_m=[7.89e-4, 1.233e-3, 1.68e-4],
        tension_n=1.0,
        rod_stiffness_n_m=40.0,
    )
    assert np.all(np.diff(shares) > 0.0)
    # without sag the share is that of two springs: k_line / (k_line + k_rod)
    assert shares[0] == pytest.approx(7.0685 / 47.0685, rel=5e-3)


def test_friction_swallows_a_small_tug() -> None:
    share = tug_share(
        **LINE, length_m=20.0, tension_n=1.0, rod_stiffness_n_m=40.0, tug_m=0.001, friction_n=0.5
    )
    assert share == 0.0


def test_says_slack_and_remarks_beyond_the_limit() -> None:
    assert is_slack(weight_n_m=7.894e-4, span_m=20.0, tension_n=[0.02, 0.2]).tolist() == [True, False]
    assert remarks("feel.ernst_ratio", sag_ratio=TAUT_LIMIT / 2) == ()
    assert "sag divided by span" in remarks("feel.ernst_ratio", sag_ratio=0.2)[0]
    assert np.isfinite(ernst_ratio(**LINE, span_m=20.0, tension_n=0.002))


def test_refuses_a_line_without_tension() -> None:
    with pytest.raises(ImpossibleInput, match="line tension in N"):
        ernst_ratio(**LINE, span_m=20.0, tension_n=0.0)
    with pytest.raises(ImpossibleInput, match="friction"):
        tug_share(**LINE, length_m=20.0, tension_n=1.0, rod_stiffness_n_m=40.0, friction_n=-1.0)
