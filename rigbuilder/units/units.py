"""The units that labels are printed in, with their exact factors.

``si = factor * x + offset``; SI here means m, kg, N, degrees Celsius and m/s.
The factors of the pound (0.453 592 37 kg), the yard (0.9144 m) and standard
gravity (9.806 65 m/s^2) are exact by definition: NIST Special Publication 811
(2008), appendix B.8.
"""

from dataclasses import dataclass
from fractions import Fraction

from rigbuilder.units.dimensions import Dimension

POUND_KG = Fraction("0.45359237")
INCH_M = Fraction("0.0254")
STANDARD_GRAVITY_M_S2 = Fraction("9.80665")


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit as printed; ``lb`` and ``kg`` occur both as mass and as force."""

    symbol: str
    dimension: Dimension
    factor: float
    offset: float = 0.0

    def to_si(self, value: float) -> float:
        """The SI value of ``value`` of this unit."""
        return self.factor * value + self.offset

    def from_si(self, si_value: float) -> float:
        """How many of this unit make ``si_value``."""
        return (si_value - self.offset) / self.factor


def _table(dimension: Dimension, **factors: Fraction) -> dict[str, Unit]:
    return {symbol: Unit(symbol, dimension, float(factor)) for symbol, factor in factors.items()}


_FAHRENHEIT_STEP_C = Fraction(5, 9)

UNITS: dict[Dimension, dict[str, Unit]] = {
    Dimension.LENGTH: _table(
        Dimension.LENGTH,
        m=Fraction(1),
        cm=Fraction(1, 100),
        mm=Fraction(1, 1000),
        ft=12 * INCH_M,
        **{"in": INCH_M},
        yd=36 * INCH_M,
    ),
    Dimension.MASS: _table(
        Dimension.MASS, kg=Fraction(1), g=Fraction(1, 1000), oz=POUND_KG / 16, lb=POUND_KG
    ),
    Dimension.FORCE: _table(
        Dimension.FORCE, lb=POUND_KG * STANDARD_GRAVITY_M_S2, kg=STANDARD_GRAVITY_M_S2, N=Fraction(1)
    ),
    Dimension.TEMPERATURE: {
        "C": Unit("C", Dimension.TEMPERATURE, 1.0),
        "F": Unit("F", Dimension.TEMPERATURE, float(_FAHRENHEIT_STEP_C), float(-32 * _FAHRENHEIT_STEP_C)),
    },
    Dimension.SPEED: {
        "m/s": Unit("m/s", Dimension.SPEED, 1.0),
        "km/h": Unit("km/h", Dimension.SPEED, float(Fraction(1000, 3600))),
        "mph": Unit("mph", Dimension.SPEED, float(5280 * 12 * INCH_M / 3600)),
    },
    Dimension.SIZE: {
        "PE": Unit("PE", Dimension.SIZE, 1.0),
        "No.": Unit("No.", Dimension.SIZE, 1.0),
    },
}


def unit(symbol: str, dimension: Dimension) -> Unit:
    """The unit with this symbol; KeyError if the dimension has none such."""
    return UNITS[dimension][symbol]
