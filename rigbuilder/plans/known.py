"""What a plan says and how it is known: figures with their working, things taken for granted, remarks."""

from dataclasses import dataclass

import numpy as np

from rigbuilder.mechanics.arrays import Array
from rigbuilder.reference.ranges import Range
from rigbuilder.review.figuring.spread import Formula, spread
from rigbuilder.sources import Source
from rigbuilder.units.dimensions import Dimension


@dataclass(frozen=True, slots=True)
class Known:
    """One figure of a plan in SI units: its range, how it came about, on what it rests."""

    name: str
    label: str
    value: Range
    unit: str
    formula: str
    inputs: tuple[tuple[str, Range], ...]
    sources: tuple[Source, ...]


@dataclass(frozen=True, slots=True)
class Taken:
    """Something that no label says and that was taken for granted; ``field`` is where a card may say it."""

    field: str
    label: str
    value: Range
    dimension: Dimension | None
    kind: str
    why: str
    source: Source


@dataclass(frozen=True, slots=True)
class Remark:
    """A plain sentence of a plan: how bad it is (fault, risk, note, right), and its words."""

    severity: str
    text: str


def spread_one(formula: Formula, inputs: dict[str, Range]) -> dict[str, Range]:
    """Return the ranges of all results of a formula whose inputs vary independently."""
    triples = {name: np.array([[value.low], [value.typical], [value.high]]) for name, value in inputs.items()}
    return {name: range_of(found) for name, found in spread(formula, triples).items()}


def range_of(found: Array, column: int = 0) -> Range:
    """Return one column of a triple as a range."""
    low, typical, high = (float(value) for value in found[:, column])
    return Range(low, typical, high)


def at_least(value: Range, floor: float) -> Range:
    """Return a range none of whose ends lies below ``floor``."""
    return Range(max(value.low, floor), max(value.typical, floor), max(value.high, floor))


def at_most(value: Range, ceiling: float) -> Range:
    """Return a range none of whose ends lies above ``ceiling``."""
    return Range(min(value.low, ceiling), min(value.typical, ceiling), min(value.high, ceiling))
