"""Factors against Pint, an independent unit library."""

import pint
import pytest

from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.units import UNITS, Unit, unit

PINT = pint.UnitRegistry()
PINT_NAMES = {
    (Dimension.LENGTH, "m"): ("meter", "meter"),
    (Dimension.LENGTH, "cm"): ("centimeter", "meter"),
    (Dimension.LENGTH, "mm"): ("millimeter", "meter"),
    (Dimension.LENGTH, "ft"): ("foot", "meter"),
    (Dimension.LENGTH, "in"): ("inch", "meter"),
    (Dimension.LENGTH, "yd"): ("yard", "meter"),
    (Dimension.MASS, "kg"): ("kilogram", "kilogram"),
    (Dimension.MASS, "g"): ("gram", "kilogram"),
    (Dimension.MASS, "oz"): ("ounce", "kilogram"),
    (Dimension.MASS, "lb"): ("pound", "kilogram"),
    (Dimension.FORCE, "lb"): ("pound_force", "newton"),
    (Dimension.FORCE, "kg"): ("kilogram_force", "newton"),
    (Dimension.FORCE, "N"): ("newton", "newton"),
    (Dimension.TEMPERATURE, "C"): ("degC", "degC"),
    (Dimension.TEMPERATURE, "F"): ("degF", "degC"),
    (Dimension.SPEED, "m/s"): ("meter / second", "meter / second"),
    (Dimension.SPEED, "km/h"): ("kilometer / hour", "meter / second"),
    (Dimension.SPEED, "mph"): ("mile / hour", "meter / second"),
}
MEASURED = [
    u for dimension, units in UNITS.items() if dimension is not Dimension.SIZE for u in units.values()
]


@pytest.mark.parametrize("measured", MEASURED, ids=lambda u: f"{u.dimension}-{u.symbol}")
@pytest.mark.parametrize("value", [0.28, 1.0, 17.0, 150.0])
def test_factor_agrees_with_pint(measured: Unit, value: float) -> None:
    name, si_name = PINT_NAMES[measured.dimension, measured.symbol]
    expected = PINT.Quantity(value, name).to(si_name).magnitude
    assert measured.to_si(value) == pytest.approx(expected, rel=1e-12, abs=1e-12)
    assert measured.from_si(expected) == pytest.approx(value, rel=1e-12)


def test_exact_definitions() -> None:
    # NIST SP 811 (2008), appendix B.8: exact values of pound, inch and pound-force.
    assert unit("lb", Dimension.MASS).factor == 0.45359237
    assert unit("in", Dimension.LENGTH).factor == 0.0254
    assert unit("lb", Dimension.FORCE).factor == 4.4482216152605


def test_every_dimension_has_units_of_its_own() -> None:
    assert set(UNITS) == set(Dimension)
    for dimension, units in UNITS.items():
        assert all(u.dimension is dimension and u.symbol == symbol for symbol, u in units.items())
