"""The shipped material data of line types, gathered into triples: one column for each line of a batch."""

from collections.abc import Sequence

import numpy as np

from rigbuilder.mechanics.arrays import Array
from rigbuilder.model.rig import Line
from rigbuilder.reference.lines import Estimate, LineTypeData
from rigbuilder.reference.load import Reference
from rigbuilder.reference.words import Condition, LabelConvention, LineType
from rigbuilder.review.figuring.spread import triple

# Strength left by the state of the line, low / typical / high, from memory; a kink goes past the
# break strain of any strand (mechanics.bending), a tied-in overhand knot costs about half.
CONDITION: dict[Condition | None, tuple[float, float, float]] = {
    None: (1.0, 1.0, 1.0),
    Condition.FRESH: (1.0, 1.0, 1.0),
    Condition.USED: (0.8, 0.9, 1.0),
    Condition.WORN: (0.5, 0.7, 0.85),
    Condition.KINKED: (0.3, 0.5, 0.7),
}


class Materials:
    """Material properties of many lines at once, each as a triple of shape (3, lines)."""

    def __init__(self, lines: Sequence[Line], reference: Reference) -> None:
        self._lines = lines
        kinds = list(dict.fromkeys(line.type for line in lines))
        place = {kind: index for index, kind in enumerate(kinds)}
        self._kinds: list[LineTypeData] = [reference.line_types[kind] for kind in kinds]
        self._place = np.array([place[line.type] for line in lines], dtype=int)
        self.braided = np.array([row.is_strength_per_mass for row in self._kinds])[self._place]

    def get(self, name: str) -> Array:
        """Return one property by its name in the line type table."""
        return triple([ends(getattr(row, name)) for row in self._kinds])[:, self._place]

    def each(self, name: str) -> list[bool]:
        """Return one yes-or-no property of every line."""
        values = [bool(getattr(row, name)) for row in self._kinds]
        return [values[place] for place in self._place]

    def typical(self, name: str, line: int) -> float:
        """Return the typical value of a property of one line."""
        estimate: Estimate = getattr(self._kinds[self._place[line]], name)
        return estimate.typical

    def honesty(self) -> Array:
        """Return true dry break over printed test, by each line's label convention. [1]"""
        known: dict[tuple[LineType, LabelConvention | None], tuple[float, float, float]] = {}
        rows = []
        for line, place in zip(self._lines, self._place, strict=True):
            key = (line.type, line.convention)
            if key not in known:
                row = self._kinds[place]
                known[key] = ends(row.label_honesty[line.convention or row.usual_convention])
            rows.append(known[key])
        return triple(rows)

    def condition(self) -> Array:
        """Return the share of strength that each line's state leaves. [1]"""
        return triple([CONDITION[line.condition] for line in self._lines])


def ends(value: Estimate) -> tuple[float, float, float]:
    """Return an estimate as low, typical, high."""
    return (value.low, value.typical, value.high)


def convention_of(line: Line, reference: Reference) -> LabelConvention:
    """Return the label convention by which a line's test is read."""
    return line.convention or reference.line_types[line.type].usual_convention
