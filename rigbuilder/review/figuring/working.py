"""How one figure came about: formula, inputs with their values, result, sources."""

from dataclasses import dataclass

from rigbuilder.reference.ranges import Range
from rigbuilder.review.facts import Facts
from rigbuilder.review.figuring.inputs import INPUTS
from rigbuilder.review.figuring.table import FACTS
from rigbuilder.sources import Source


@dataclass(frozen=True, slots=True)
class Ingredient:
    """One input of a figure; ``value`` is ``None`` where the rig has no such part."""

    name: str
    label: str
    value: Range | None
    unit: str
    sources: tuple[Source, ...]


@dataclass(frozen=True, slots=True)
class Working:
    """One figure with everything that led to it. SI units."""

    name: str
    label: str
    formula: str
    inputs: tuple[Ingredient, ...]
    result: Range | None
    unit: str
    sources: tuple[Source, ...]


def working(name: str, facts: Facts) -> Working:
    """Return the working of one figure of one rig.

    Raises:
        KeyError: for a name that is no figure.
    """
    row = FACTS[name]
    inputs = tuple(_input(key, facts) for key in row.inputs)
    result = facts.columns.value(name, facts.row)
    return Working(name, row.label, row.formula, inputs, result, row.unit, row.sources)


def _input(name: str, facts: Facts) -> Ingredient:
    value = facts.columns.value(name, facts.row)
    if name in FACTS:
        figure = FACTS[name]
        return Ingredient(name, figure.label, value, figure.unit, figure.sources)
    row = INPUTS[name]
    return Ingredient(name, row.label, value, row.unit, (row.source,))
