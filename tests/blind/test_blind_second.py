"""The second set of blind rigs as a regression: each is judged as its writer expected (see changes.md)."""

from pathlib import Path
from typing import Any

import pytest

from tests.blind.scoring import cases, outcomes

SECOND = Path(__file__).parent / "second_rigs.json"
CASES = cases(SECOND)


def test_the_set_is_whole_and_half_of_it_is_wrong() -> None:
    right = sum(1 for case in CASES if case["expect"].get("must_not_fault"))
    assert len(CASES) == 278
    assert 0.4 <= right / len(CASES) <= 0.65


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_rig_of_the_second_set_is_judged_as_expected(case: dict[str, Any]) -> None:
    assert [f"{found.kind} {found.part}: {found.expected}; {found.found}" for found in outcomes(case)] == []
