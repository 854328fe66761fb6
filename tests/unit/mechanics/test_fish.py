"""Pull of a fish against the measured trout and the check rows."""

import json
from pathlib import Path
from typing import Any

import pytest

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.fish import FAST_START_M_S2, acceleration_force, tail_force
from rigbuilder.mechanics.validity import remarks

DATA = json.loads((Path(__file__).parent / "data_second" / "fish.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("row", DATA["fish_force"], ids=lambda row: f"{row['m']} kg")
def test_pull_as_in_the_check_rows(row: dict[str, Any]) -> None:
    force = tail_force(mass_kg=row["m"])
    assert force == pytest.approx(row["F_isometric_N"], rel=1e-12)
    assert force / (row["m"] * 9.80665) == pytest.approx(row["F_over_weight"], rel=1e-12)
    starts = acceleration_force(mass_kg=row["m"], acceleration_m_s2=list(FAST_START_M_S2))
    assert starts == pytest.approx([row["F_accel_lo"], row["F_accel_hi"]], rel=1e-12)


def test_measured_trout() -> None:
    # Johnsrude & Webb 1985, J. Exp. Biol. 119:71: 60.5 g trout, 2.2 N at the tail base
    assert tail_force(mass_kg=0.0605) == pytest.approx(2.2)


def test_the_two_estimates_agree_within_their_factor_of_two_for_a_bass() -> None:
    slow, fast = acceleration_force(mass_kg=1.0, acceleration_m_s2=list(FAST_START_M_S2))
    assert slow / 2.0 < tail_force(mass_kg=1.0) < fast * 2.0


def test_remarks_and_refusals() -> None:
    assert remarks("fish.tail_force", mass_kg=40.0)
    assert remarks("fish.tail_force", mass_kg=2.0) == ()
    with pytest.raises(ImpossibleInput, match="mass of the fish"):
        tail_force(mass_kg=0.0)
