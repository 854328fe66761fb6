"""What a label was understood to say, part by part."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal

from rigbuilder.units.quantity import Quantity

LabelKind = Literal["rod", "reel", "line", "lure"]


@dataclass(frozen=True, slots=True)
class Capacity:
    """One line capacity of a reel: so much length of a line given by test, diameter or size.

    ``line`` names the line type if the label does (None: not said).
    """

    length: Quantity
    test: Quantity | None = None
    diameter: Quantity | None = None
    size: Quantity | None = None
    line: str | None = None

    def as_dict(self) -> dict[str, Any]:
        """The measures that the label gives, as printed by the label command."""
        given = {"test": self.test, "diameter": self.diameter, "size": self.size, "length": self.length}
        return {key: _plain(value) for key, value in given.items() if value is not None}


Value = Quantity | str | int | float | tuple[Capacity, ...]


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch of the label, the key it gives and what it says in plain words."""

    start: int
    end: int
    key: str
    meaning: str


@dataclass(frozen=True, slots=True)
class Doubt:
    """A stretch of the label that may mean several things, and why."""

    text: str
    why: str
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Understanding:
    """A label read: sure values, the parts they came from, and what stayed open."""

    kind: LabelKind
    values: Mapping[str, Value]
    parts: tuple[Part, ...] = ()
    not_understood: tuple[str, ...] = ()
    doubtful: tuple[Doubt, ...] = ()

    @property
    def understood(self) -> dict[str, Any]:
        """The values in plain form: quantities as ``{"low", "high", "unit"}`` in the unit printed."""
        return {key: _plain(value) for key, value in self.values.items()}

    def as_dict(self) -> dict[str, Any]:
        """Plain dicts, lists, numbers and texts, as the label command prints them."""
        return {
            "kind": self.kind,
            "understood": self.understood,
            "not_understood": list(self.not_understood),
            "doubtful": [{"text": doubt.text, "why": doubt.why} for doubt in self.doubtful],
        }

    def as_json(self) -> str:
        """The same as JSON text."""
        return json.dumps(self.as_dict(), ensure_ascii=False, indent=2)


def _plain(value: Value) -> object:
    if isinstance(value, Quantity):
        return {"low": _number(value.low), "high": _number(value.high), "unit": value.unit.symbol}
    if isinstance(value, tuple):
        return [capacity.as_dict() for capacity in value]
    return _number(value) if isinstance(value, float) else value


def _number(value: float) -> float:
    return int(value) if value.is_integer() else value
