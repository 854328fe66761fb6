"""What a rod or reel label adds to a card: values for the fields that the card itself leaves open."""

from typing import Any

from rigbuilder.model.labels.understood import Capacity as PrintedCapacity
from rigbuilder.model.labels.understood import Understanding
from rigbuilder.model.rig import Capacity, LineSize
from rigbuilder.reference.ranges import Span
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import Quantity

_SINGLE = frozenset({"rod.length", "reel.drag", "reel.retrieve"})
_PATHS = {
    "rod": ("length", "power", "action", "line", "lure", "line_for"),
    "reel": ("kind", "size", "ratio", "retrieve", "drag"),
}


def size_of(quantity: Quantity, value: float) -> LineSize:
    """Return a size number with its scale."""
    return LineSize(scale=quantity.unit.symbol, number=value)


def _value(path: str, found: Any) -> Any:
    if not isinstance(found, Quantity):
        return found
    if found.unit.dimension is Dimension.SIZE:
        return size_of(found, found.low), size_of(found, found.high)
    return found.middle_si if path in _SINGLE else Span(found.si_low, found.si_high)


def _capacity(printed: PrintedCapacity) -> Capacity:
    size = None if printed.size is None else size_of(printed.size, printed.size.low)
    return Capacity(
        length_m=printed.length.middle_si,
        test_n=None if printed.test is None else printed.test.middle_si,
        diameter_m=None if printed.diameter is None else printed.diameter.middle_si,
        size=size,
        line=printed.line,
    )


def capacities(understanding: Understanding) -> tuple[Capacity, ...]:
    """Return the capacities that a reel label states."""
    found = understanding.values.get("capacity", ())
    return tuple(_capacity(entry) for entry in found) if isinstance(found, tuple) else ()


def label_values(understanding: Understanding) -> dict[str, Any]:
    """Return card path → SI value for everything that a rod or reel label states clearly."""
    kind = understanding.kind
    values = {
        f"{kind}.{key}": _value(f"{kind}.{key}", understanding.values[key])
        for key in _PATHS[kind]
        if key in understanding.values
    }
    if kind == "reel" and capacities(understanding):
        values["reel.capacity"] = capacities(understanding)
    return values
