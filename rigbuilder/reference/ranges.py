"""Spans and low / typical / high ranges as the shipped tables use them."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import BeforeValidator

# Exact by the international definitions of the pound, ounce, inch and standard gravity.
LBF_N = 4.4482216152605
OZ_KG = 0.028349523125
INCH_M = 0.0254
YARD_M = 0.9144


@dataclass(frozen=True, slots=True)
class Span:
    """Lowest and highest value, both included, in the unit that the field's name carries."""

    low: float
    high: float

    def __post_init__(self) -> None:
        if not (math.isfinite(self.low) and math.isfinite(self.high) and self.low <= self.high):
            raise ValueError(f"a span needs low <= high, found {self.low} to {self.high}")

    def __iter__(self) -> Iterator[float]:
        return iter((self.low, self.high))

    def __contains__(self, value: float) -> bool:
        return self.low <= value <= self.high

    @property
    def middle(self) -> float:
        """The middle of the span."""
        return (self.low + self.high) / 2

    def scaled(self, factor: float) -> "Span":
        """Return the span in another unit (``factor`` > 0)."""
        return Span(self.low * factor, self.high * factor)

    def clamp(self, value: float) -> float:
        """Return the value of the span that is nearest to ``value``."""
        return min(max(value, self.low), self.high)


@dataclass(frozen=True, slots=True)
class Range:
    """A physical estimate: low, typical and high, in the unit that the field's name carries."""

    low: float
    typical: float
    high: float

    def __post_init__(self) -> None:
        values = (self.low, self.typical, self.high)
        if not all(math.isfinite(value) for value in values) or not self.low <= self.typical <= self.high:
            raise ValueError(f"a range needs low <= typical <= high, found {values}")

    def __iter__(self) -> Iterator[float]:
        return iter((self.low, self.typical, self.high))

    def __contains__(self, value: float) -> bool:
        return self.low <= value <= self.high

    def scaled(self, factor: float) -> "Range":
        """Return the range in another unit (``factor`` > 0)."""
        return Range(self.low * factor, self.typical * factor, self.high * factor)

    @classmethod
    def exactly(cls, value: float) -> "Range":
        """Return the range of a value that is known exactly."""
        return cls(value, value, value)


def _from_list(kind: type[Span] | type[Range], count: int) -> BeforeValidator:
    def read(found: Any) -> Any:
        if isinstance(found, kind):
            return found
        if (
            isinstance(found, list | tuple)
            and len(found) == count
            and all(isinstance(part, int | float) and not isinstance(part, bool) for part in found)
        ):
            return kind(*(float(part) for part in found))
        wanted = "[low, high]" if count == 2 else "[low, typical, high]"
        raise ValueError(f"expected {wanted} in numbers, found {found!r}")

    return BeforeValidator(read)


SpanField = Annotated[Span, _from_list(Span, 2)]
RangeField = Annotated[Range, _from_list(Range, 3)]
