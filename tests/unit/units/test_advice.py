"""What juniors type into a field of the form, and the help that they get."""

import pytest

from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import QuantityError, parse

TYPED = [
    ("12", Dimension.FORCE, "has no unit (12 lb or 12 kg?)"),
    ("12-14", Dimension.FORCE, "has no unit (12-14 lb or 12-14 kg?)"),
    ("3/8", Dimension.MASS, "has no unit (3/8 oz or 3/8 g?)"),
    ("200", Dimension.LENGTH, "has no unit (200 yd or 200 m?)"),
    (".28", Dimension.LENGTH, "has no unit (.28 mm?)"),
    ("7 3", Dimension.LENGTH, "has no unit (7'3\"?)"),
    ("7.3", Dimension.LENGTH, "has no unit (7'3\"?)"),
    ("7", Dimension.LENGTH, "has no unit"),
    ("20", Dimension.TEMPERATURE, "has no unit (20 C or 20 F?)"),
    ("1.5", Dimension.SIZE, "has no sort of number (PE 1.5 or No. 1.5?)"),
    ("20°", Dimension.TEMPERATURE, "does not say which degrees, C or F"),
    ("20 degrees", Dimension.TEMPERATURE, "does not say which degrees, C or F"),
    ("12 lbz", Dimension.FORCE, "has the unit lbz, which is not known (lb?)"),
    ("10 grm", Dimension.MASS, "has the unit grm, which is not known (g?)"),
    ("2 knots", Dimension.SPEED, "has the unit knots, which is not known"),
    ("2 rod lengths", Dimension.LENGTH, "has the unit rod, which is not known"),
    ("lb 12", Dimension.FORCE, "has its unit before the number; write 12 lb"),
    ("about 12 lb", Dimension.FORCE, "has more in it than a number and its unit; write 12 lb"),
    ("12 lb mono", Dimension.FORCE, "has something after the quantity that is not understood (mono)"),
    ("12+ lb", Dimension.FORCE, "gives only the lower end; write one value or a range"),
    ("30 %", Dimension.FORCE, "is a percentage"),
    ("-12 lb", Dimension.FORCE, "is negative"),
    ("5/0", Dimension.MASS, "looks like the size of a hook"),
    ("tight", Dimension.FORCE, "is not a number with a unit"),
    ("  ", Dimension.FORCE, "is empty"),
]


@pytest.mark.parametrize(("text", "dimension", "reason"), TYPED)
def test_an_error_says_what_to_type_instead(text: str, dimension: Dimension, reason: str) -> None:
    with pytest.raises(QuantityError) as caught:
        parse(text, dimension)
    assert caught.value.reason == reason


@pytest.mark.parametrize("text", ["10 bis 30 g", "10 à 30 g", "10 to 30 g", "10 thru 30 g", "10–30 Gramm"])
def test_a_range_may_be_joined_by_a_word(text: str) -> None:
    quantity = parse(text, Dimension.MASS)
    assert (quantity.low, quantity.high, quantity.unit.symbol) == (10, 30, "g")
