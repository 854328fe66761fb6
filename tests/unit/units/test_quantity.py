"""Text as printed to quantities and back."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rigbuilder.units.dimensions import EXAMPLES, MEASURES, Dimension
from rigbuilder.units.quantity import Quantity, QuantityError, parse, show
from rigbuilder.units.units import UNITS, unit

L, M, F, T, S, Z = (
    Dimension.LENGTH,
    Dimension.MASS,
    Dimension.FORCE,
    Dimension.TEMPERATURE,
    Dimension.SPEED,
    Dimension.SIZE,
)

READ = [
    ("3/8-1 oz", M, 0.375, 1, "oz"),
    ("1 1/4 oz", M, 1.25, 1.25, "oz"),
    ("1-1/4 oz", M, 1.25, 1.25, "oz"),
    ("1¼ oz", M, 1.25, 1.25, "oz"),
    ("½–1¼ oz", M, 0.5, 1.25, "oz"),
    ("1/2-1-1/2 oz", M, 0.5, 1.5, "oz"),
    ("1⁄4oz", M, 0.25, 0.25, "oz"),
    ("CW 10-30 g", M, 10, 30, "g"),
    ("WG: 5-20g", M, 5, 20, "g"),
    ("10~30g", M, 10, 30, "g"),
    ("10 to 30 grams", M, 10, 30, "g"),
    ("2,5 kg", M, 2.5, 2.5, "kg"),
    ("5 lb 4 oz", M, 5.25, 5.25, "lb"),
    ("7'3\"", L, 7.25, 7.25, "ft"),
    ("7′3″", L, 7.25, 7.25, "ft"),
    ("7’3”", L, 7.25, 7.25, "ft"),
    ("7'3''", L, 7.25, 7.25, "ft"),
    ("7'3", L, 7.25, 7.25, "ft"),
    ("7 ft 3 in", L, 7.25, 7.25, "ft"),
    ("7ft. 3in.", L, 7.25, 7.25, "ft"),
    ("7 feet 3 inches", L, 7.25, 7.25, "ft"),
    ("7'-3\"", L, 7.25, 7.25, "ft"),
    ("7' 2 1/2\"", L, 7 + 2.5 / 12, 7 + 2.5 / 12, "ft"),
    ("6'-7'6\"", L, 6, 7.5, "ft"),
    ("6-8 ft", L, 6, 8, "ft"),
    ("2.21 m", L, 2.21, 2.21, "m"),
    ("2,21m", L, 2.21, 2.21, "m"),
    ("221 cm", L, 221, 221, "cm"),
    ("0.28 mm", L, 0.28, 0.28, "mm"),
    (".28mm", L, 0.28, 0.28, "mm"),
    ("0,28 mm", L, 0.28, 0.28, "mm"),
    ("0.285 mm", L, 0.285, 0.285, "mm"),
    ("1.250 mm", L, 1.25, 1.25, "mm"),
    ("0,285 mm", L, 0.285, 0.285, "mm"),
    ("1200 yd", L, 1200, 1200, "yd"),
    ('2 3/4"', L, 2.75, 2.75, "in"),
    ("14-25 lb", F, 14, 25, "lb"),
    ("14–25 lb", F, 14, 25, "lb"),
    ("14—25 lb", F, 14, 25, "lb"),
    ("14−25 lb", F, 14, 25, "lb"),
    ("14 lb-25 lb", F, 14, 25, "lb"),
    ("6–12 kg", F, 6, 12, "kg"),
    ("12#", F, 12, 12, "lb"),
    ("12 lbs", F, 12, 12, "lb"),
    ("12lb.", F, 12, 12, "lb"),
    ("12-pound", F, 12, 12, "lb"),
    ("16 lb test", F, 16, 16, "lb"),
    ("12\u202flb", F, 12, 12, "lb"),
    ("12\u00a0lb", F, 12, 12, "lb"),
    ("１２ｌｂ", F, 12, 12, "lb"),
    ("53.4 N", F, 53.4, 53.4, "N"),
    ("12 lb (5.4 kg)", F, 12, 12, "lb"),
    ("PE 1.0-2.0", Z, 1, 2, "PE"),
    ("PE1.5", Z, 1.5, 1.5, "PE"),
    ("No. 3", Z, 3, 3, "No."),
    ("#3", Z, 3, 3, "No."),
    ("3号", Z, 3, 3, "No."),
    ("18 C", T, 18, 18, "C"),
    ("18 °C", T, 18, 18, "C"),
    ("64°F", T, 64, 64, "F"),
    ("-5 to 3 C", T, -5, 3, "C"),
    ("7 m/s", S, 7, 7, "m/s"),
    ("30 km/h", S, 30, 30, "km/h"),
]


@pytest.mark.parametrize(("text", "dimension", "low", "high", "symbol"), READ)
def test_reads_what_labels_print(
    text: str, dimension: Dimension, low: float, high: float, symbol: str
) -> None:
    quantity = parse(text, dimension)
    assert (quantity.low, quantity.high) == (pytest.approx(low), pytest.approx(high))
    assert quantity.unit is unit(symbol, dimension)
    assert parse(show(quantity), dimension) == quantity


REFUSED = [
    ("1,200 yd", L, "could mean 1200 or 1.2"),
    ("1.200 m", L, "could mean 1200 or 1.2"),
    ("1,125 oz", M, "could mean 1125 or 1.125"),
    ("1.200,5 m", L, "two separators"),
    ("25-14 lb", F, "runs backwards, from 25 down to 14"),
    ("1 - 1/4 oz", M, "write 1 1/4 if one number is meant"),
    ("7'13\"", L, "13 in, but 12 in make one ft"),
    ("12", F, "has no unit"),
    ("nan lb", F, "not a number"),
    ("inf lb", F, "not a number"),
    ("1e5 lb", F, "has the unit e, which is not known"),
    ("", F, "is empty"),
    ("lb", F, "not a number"),
    ("1/0 oz", M, "divides by nothing"),
    ("9" * 40 + " lb", F, "too many digits"),
    ("1000000 lb", F, "beyond anything"),
    ("9" * 500, L, "too long"),
    ("2 kg - 3 lb", F, "mixes kg and lb"),
    ("12 lb (9 kg)", F, "disagree"),
    ("12 lb and more", F, "not understood"),
    ("-3 m", L, "is negative"),
]


@pytest.mark.parametrize(("text", "dimension", "reason"), REFUSED)
def test_refuses_and_says_why(text: str, dimension: Dimension, reason: str) -> None:
    with pytest.raises(QuantityError) as caught:
        parse(text, dimension)
    assert reason in caught.value.reason
    assert caught.value.expected == EXAMPLES[dimension]
    assert str(caught.value).endswith("is expected.")


@pytest.mark.parametrize(
    ("text", "dimension", "measure"),
    [
        ("7'3\"", M, L),
        ("3/8 oz", L, M),
        ("12 lb", L, M),
        ("PE 1.5", F, Z),
        ("18 C", M, T),
        ("7 mph", L, S),
        ("0.28 mm", F, L),
    ],
)
def test_wrong_dimension_names_both(text: str, dimension: Dimension, measure: Dimension) -> None:
    with pytest.raises(QuantityError) as caught:
        parse(text, dimension)
    assert str(caught.value) == f"“{text}” is {MEASURES[measure]}; {EXAMPLES[dimension]} is expected."


def test_a_bare_number_takes_the_assumed_unit() -> None:
    assert parse("12-20", F, assume="lb") == Quantity(12, 20, unit("lb", F))
    assert parse("5 kg", F, assume="lb").unit.symbol == "kg"
    with pytest.raises(QuantityError, match="write 7'3\" if feet and inches"):
        parse("7-3", L, assume="ft")


def test_both_decimal_marks_mean_the_same() -> None:
    for text in ("2.5 kg", "0.001 mm", "12.75 lb", ".5 oz"):
        dimension = F if "lb" in text or "kg" in text else M if "oz" in text else L
        assert parse(text, dimension) == parse(text.replace(".", ","), dimension)


def test_si_of_single_value_and_range() -> None:
    single, ranged = parse("12 lb", F), parse("12-20 lb", F)
    assert single.si == pytest.approx(53.378659)  # 12 x 4.448 221 615 260 5 N
    assert not single.is_range
    assert ranged.is_range
    assert ranged.middle_si == pytest.approx(16 * 4.4482216152605)
    with pytest.raises(ValueError, match="12-20 lb is a range"):
        _ = ranged.si


@pytest.mark.parametrize(("low", "high"), [(math.nan, 1.0), (1.0, math.inf), (2.0, 1.0)])
def test_a_quantity_refuses_nonsense(low: float, high: float) -> None:
    with pytest.raises(ValueError, match=r"finite|backwards"):
        Quantity(low, high, unit("lb", F))


_LIMITS = {T: (-50.0, 150.0), S: (0.0, 40.0), L: (0.0, 5000.0), M: (0.0, 900.0), F: (0.0, 900.0)}


@st.composite
def quantities(draw: st.DrawFn) -> Quantity:
    dimension = draw(st.sampled_from(list(Dimension)))
    chosen = draw(st.sampled_from(list(UNITS[dimension].values())))
    least, most = _LIMITS.get(dimension, (0.0, 100.0))
    numbers = st.one_of(
        st.floats(least, most).map(lambda x: x if abs(x) > 1e-4 else 0.0),  # below: absurd, refused
        st.integers(int(least), int(most)).map(float),
        st.integers(0, 640).map(lambda n: n / 64),
        st.integers(0, 4000).map(lambda n: n / 1000),
        st.integers(0, 160).map(lambda n: 6 + n / 16 / 12),
    )
    low, high = sorted((draw(numbers), draw(numbers)))
    return Quantity(low, high if draw(st.booleans()) else low, chosen)


@given(quantities())
@settings(max_examples=300)
def test_what_is_shown_reads_back_exactly(quantity: Quantity) -> None:
    assert parse(show(quantity), quantity.unit.dimension) == quantity


@given(st.text(max_size=130), st.sampled_from(list(Dimension)), st.sampled_from([None, "lb", "m"]))
@settings(max_examples=200)
def test_any_text_is_read_or_refused(text: str, dimension: Dimension, assume: str | None) -> None:
    assume = assume if assume in UNITS[dimension] else None
    try:
        quantity = parse(text, dimension, assume=assume)
    except QuantityError:
        return
    assert math.isfinite(quantity.si_low)
    assert math.isfinite(quantity.si_high)
