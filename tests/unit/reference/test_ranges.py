"""Spans and ranges: order, scaling, reading from lists."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

from rigbuilder.reference.ranges import Range, RangeField, Span, SpanField

numbers = st.floats(min_value=-1e6, max_value=1e6)
factors = st.floats(min_value=1e-3, max_value=1e3)


@given(numbers, numbers, factors)
def test_scaling_keeps_order_and_membership(a: float, b: float, factor: float) -> None:
    span = Span(min(a, b), max(a, b))
    scaled = span.scaled(factor)
    assert scaled.low <= scaled.high
    assert span.middle * factor == pytest.approx(scaled.middle)
    assert span.low in span
    assert span.clamp(a) == a


@given(st.lists(numbers, min_size=3, max_size=3), factors)
def test_a_range_keeps_its_order_when_scaled(values: list[float], factor: float) -> None:
    low, typical, high = sorted(values)
    assert list(Range(low, typical, high).scaled(factor)) == sorted(value * factor for value in values)


@pytest.mark.parametrize("values", [(2.0, 1.0), (math.nan, 1.0), (0.0, math.inf)])
def test_a_span_upside_down_or_not_finite_is_refused(values: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="low <= high"):
        Span(*values)


@pytest.mark.parametrize("values", [(1.0, 3.0, 2.0), (2.0, 1.0, 3.0), (0.0, math.nan, 1.0)])
def test_a_range_out_of_order_is_refused(values: tuple[float, float, float]) -> None:
    with pytest.raises(ValueError, match="low <= typical <= high"):
        Range(*values)


@pytest.mark.parametrize("found", [[1], [1, 2, 3, 4], ["1", "2"], [True, False], "1-2", None])
def test_a_table_must_give_a_span_as_two_numbers(found: object) -> None:
    with pytest.raises(ValidationError, match=r"\[low, high\]"):
        TypeAdapter(SpanField).validate_python(found)


def test_tables_are_read() -> None:
    assert TypeAdapter(SpanField).validate_python([1, 2.5]) == Span(1, 2.5)
    assert TypeAdapter(RangeField).validate_python([1, 2, 3]) == Range(1, 2, 3)
    assert Range.exactly(4) == Range(4, 4, 4)
