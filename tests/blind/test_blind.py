"""The blind rigs as a regression: each is judged as the people who wrote it expected (see changes.md)."""

from typing import Any

import pytest

from tests.blind.scoring import cases, outcomes

CASES = cases()


def test_the_set_is_large_and_half_of_it_is_wrong() -> None:
    right = sum(1 for case in CASES if case["expect"].get("must_not_fault"))
    assert len(CASES) >= 120
    assert 0.4 <= right / len(CASES) <= 0.6


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_blind_rig_is_judged_as_expected(case: dict[str, Any]) -> None:
    assert [f"{found.kind} {found.part}: {found.expected}; {found.found}" for found in outcomes(case)] == []
