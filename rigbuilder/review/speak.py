"""SI figures as words in the unit system that the person reads."""

from dataclasses import dataclass

from rigbuilder.reference.ranges import Range, Span
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.systems import UnitSystem, show_si


def an(noun: str) -> str:
    """Return a noun of the trade with its article: a frog, an umbrella rig."""
    return f"{'an' if noun[:1].casefold() in set('aeiou') else 'a'} {noun}"


@dataclass(frozen=True, slots=True)
class Speaker:
    """Puts figures into words; one per unit system."""

    system: UnitSystem = UnitSystem.IMPERIAL

    def _one(self, value: float, dimension: Dimension, kind: str) -> str:
        return show_si(value, dimension, self.system, kind=kind)

    def span(self, low: float, high: float, dimension: Dimension, kind: str = "") -> str:
        """Return ``14–25 lb``: both ends, the unit once."""
        first, second = self._one(low, dimension, kind), self._one(high, dimension, kind)
        if first == second:
            return first
        number, _, unit = first.rpartition(" ")
        return f"{number}–{second}" if unit and second.endswith(f" {unit}") else f"{first}–{second}"

    def spread(self, value: Range, dimension: Dimension, kind: str = "") -> str:
        """Return ``12 lb (10–13)``: the typical value with its range."""
        typical = self._one(value.typical, dimension, kind)
        low, high = self._one(value.low, dimension, kind), self._one(value.high, dimension, kind)
        if low == high:
            return typical
        unit = " " + typical.rpartition(" ")[2]
        return f"{typical} ({low.removesuffix(unit)}–{high.removesuffix(unit)})"

    def test(self, force_n: float) -> str:
        """Return a printed strength."""
        return self._one(force_n, Dimension.FORCE, "test")

    def tests(self, span: Span) -> str:
        """Return a printed range of strengths [N]."""
        return self.span(span.low, span.high, Dimension.FORCE, "test")

    def force(self, force_n: float) -> str:
        """Return a pull."""
        return self._one(force_n, Dimension.FORCE, "drag")

    def forces(self, value: Range) -> str:
        """Return a pull with its range [N]."""
        return self.spread(value, Dimension.FORCE, "drag")

    def lure(self, mass_kg: float) -> str:
        """Return the weight of a lure."""
        return self._one(mass_kg, Dimension.MASS, "lure")

    def lures(self, span: Span) -> str:
        """Return a range of lure weights [kg]."""
        return self.span(span.low, span.high, Dimension.MASS, "lure")

    def fish(self, mass_kg: float) -> str:
        """Return the weight of a fish."""
        return self._one(mass_kg, Dimension.MASS, "fish")

    def cast(self, length_m: float) -> str:
        """Return the length of a cast."""
        return self._one(length_m, Dimension.LENGTH, "cast")

    def line(self, length_m: float) -> str:
        """Return a length of line on a reel."""
        return self._one(length_m, Dimension.LENGTH, "line")

    def leader(self, length_m: float) -> str:
        """Return the length of a leader."""
        return self._one(length_m, Dimension.LENGTH, "leader")

    def depth(self, length_m: float) -> str:
        """Return a depth of water."""
        return self._one(length_m, Dimension.LENGTH, "depth")

    def diameter(self, length_m: float) -> str:
        """Return the diameter of a line."""
        return self._one(length_m, Dimension.LENGTH, "diameter")
