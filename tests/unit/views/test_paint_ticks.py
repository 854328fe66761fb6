"""Ticks, bounds and written numbers."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rigbuilder.views.paint.spec import Axis, Scale
from rigbuilder.views.paint.ticks import (
    axis_ticks,
    bounds,
    linear_ticks,
    log_ticks,
    nice_step,
    number,
    tick_texts,
)

LOG = Axis("d", "mm", Scale.LOG)


@pytest.mark.parametrize(
    ("low", "high", "most", "expected"),
    [
        (0, 10, 5, (0, 2, 4, 6, 8, 10)),
        (0, 1, 4, (0, 0.25, 0.5, 0.75, 1.0)),
        (3, 47, 5, (10, 20, 30, 40)),
        (-2, 2, 4, (-2, -1, 0, 1, 2)),
        (0, 60000, 6, (0, 10000, 20000, 30000, 40000, 50000, 60000)),
    ],
)
def test_round_ticks(low: float, high: float, most: int, expected: tuple[float, ...]) -> None:
    assert linear_ticks(low, high, most) == pytest.approx(expected)


@given(low=st.floats(-1e6, 1e6), span=st.floats(1e-3, 1e6), most=st.integers(1, 10))
@settings(max_examples=100)
def test_ticks_lie_inside_and_are_few(low: float, span: float, most: int) -> None:
    ticks = linear_ticks(low, low + span, most)
    step = nice_step(span, most)
    assert len(ticks) <= most + 1
    assert all(low - 1e-6 * step <= tick <= low + span + 1e-6 * step for tick in ticks)


@pytest.mark.parametrize(
    ("low", "high", "expected"),
    [
        (0.1, 1, (0.1, 0.2, 0.3, 0.5, 0.7, 1.0)),
        (1, 1000, (1, 3, 10, 30, 100, 300, 1000)),
        (1e-3, 1e3, (1e-3, 1e-2, 1e-1, 1, 10, 100, 1000)),
    ],
)
def test_logarithmic_ticks(low: float, high: float, expected: tuple[float, ...]) -> None:
    assert log_ticks(low, high) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("axis", "values", "expected"),
    [
        (Axis("y"), [17.0, 46.0], (0, 50)),
        (Axis("y"), [95.0, 102.0], (94, 102)),
        (Axis("y"), [], (0, 10)),
        (Axis("y"), [5.0, 5.0], (0, 10)),
        (Axis("y", low=0, high=1), [5.0], (0, 1)),
        (Axis("y"), [float("nan"), 3.0, 9.0], (0, 10)),
        (LOG, [0.12, 0.7], (0.1, 1.0)),
        (LOG, [0.0, 0.3], (0.2, 5.0)),
    ],
)
def test_bounds_hold_the_data(axis: Axis, values: list[float], expected: tuple[float, float]) -> None:
    assert bounds(axis, values) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("value", "step", "expected"),
    [
        (0.0, None, "0"),
        (2.0, 0.5, "2.0"),
        (0.25, 0.25, "0.25"),
        (-3.0, 1.0, "−3"),
        (12345.0, None, "12345"),
        (0.00012, None, "0.00012"),
        (53.378, None, "53.4"),
    ],
)
def test_numbers_as_a_person_writes_them(value: float, step: float | None, expected: str) -> None:
    assert number(value, step) == expected


def test_ticks_in_chosen_units_win() -> None:
    axis = Axis("test", "lb", ticks=(4, 8, 12, 99))
    assert axis_ticks(axis, 0, 20) == (4, 8, 12)
    assert tick_texts(axis, (4, 8, 12)) == ("4", "8", "12")


@pytest.mark.parametrize("span", [0.0, -1.0, float("nan"), float("inf")])
def test_impossible_spans_are_refused(span: float) -> None:
    with pytest.raises(ValueError, match="positive span"):
        nice_step(span, 5)
    with pytest.raises(ValueError, match="above zero"):
        log_ticks(0, 1)
