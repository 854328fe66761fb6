"""Still lines in closed form."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rigbuilder.review.questions.catenary import held_line, hung_line, rising_line

weights = st.floats(1e-5, 5e-3)
tensions = st.floats(2e-3, 2.0)


@given(weight=weights, tension=tensions, span=st.floats(1.0, 40.0), depth=st.floats(0.01, 3.0))
@settings(max_examples=60)
def test_a_hung_line_is_even_and_no_deeper_than_it_may_sink(
    weight: float, tension: float, span: float, depth: float
) -> None:
    x, z = hung_line(weight_n_m=weight, span_m=span, tension_n=tension, depth_m=depth, points=33)
    assert z == pytest.approx(z[::-1], abs=1e-9)
    assert z[0] == pytest.approx(0.0, abs=1e-6 * max(1.0, depth))
    assert z.min() >= -depth - 1e-9
    assert (np.diff(x) > 0).all()


def test_a_taut_hung_line_sags_as_the_shallow_formula_says() -> None:
    # w L² / 8 H, any textbook of statics.
    _, z = hung_line(weight_n_m=1e-3, span_m=10.0, tension_n=0.5, depth_m=5.0, points=33)
    assert -z.min() == pytest.approx(1e-3 * 10.0**2 / (8 * 0.5), rel=1e-3)


@given(wet=st.floats(-1e-3, 5e-3), dry=weights, tension=st.floats(0.1, 1.5), span=st.floats(0.5, 40.0))
@settings(max_examples=40)
def test_a_held_line_meets_both_ends(wet: float, dry: float, tension: float, span: float) -> None:
    x, z = held_line(
        wet_n_m=wet, dry_n_m=dry, tension_n=tension, start_m=-3.0, end_m=2.0, span_m=span, points=49
    )
    assert (x[0], x[-1]) == pytest.approx((0.0, span))
    assert (z[0], z[-1]) == pytest.approx((-3.0, 2.0), abs=1e-9)


def test_a_held_line_in_air_sags_as_the_shallow_formula_says() -> None:
    _, z = held_line(
        wet_n_m=1e-3, dry_n_m=1e-3, tension_n=0.5, start_m=1.0, end_m=1.0, span_m=10.0, points=49
    )
    assert 1.0 - z.min() == pytest.approx(1e-3 * 10.0**2 / (8 * 0.5), rel=1e-2)


@given(pull=st.floats(0.05, 5.0), lift=st.floats(0.0, 2.0), weight=weights, rise=st.floats(0.3, 2.5))
@settings(max_examples=40)
def test_a_rising_line_starts_at_the_slope_of_its_pull(
    pull: float, lift: float, weight: float, rise: float
) -> None:
    x, z = rising_line(horizontal_n=pull, vertical_n=lift, weight_n_m=weight, rise_m=rise, points=400)
    assert z[-1] == pytest.approx(rise)
    slope = (z[1] - z[0]) / (x[1] - x[0])
    assert slope == pytest.approx(lift / pull, abs=0.02 + 0.02 * lift / pull)
