"""The search for crossings, many cases at once."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.mechanics.crossing import crossing


@given(roots=st.lists(st.floats(0.01, 9.99), min_size=1, max_size=6))
def test_finds_every_root(roots: list[float]) -> None:
    wanted = np.array(roots)
    found = crossing(
        function=lambda places: places**3 - wanted**3,
        low=np.zeros_like(wanted),
        high=np.full_like(wanted, 10.0),
        points=11,
        passes=4,
    )
    np.testing.assert_allclose(found, wanted, atol=1e-3)


def test_without_a_crossing_the_bound_on_its_side_comes_back() -> None:
    low, high = np.zeros(2), np.ones(2)
    offsets = np.array([-5.0, 5.0])  # always below zero, always above
    found = crossing(function=lambda places: places + offsets, low=low, high=high)
    np.testing.assert_allclose(found, [1.0, 0.0])


def test_of_several_crossings_the_first_counts() -> None:
    found = crossing(function=lambda x: np.sin(x - 1.0), low=np.zeros(1), high=np.full(1, 10.0), points=21)
    np.testing.assert_allclose(found, [1.0], atol=1e-3)
