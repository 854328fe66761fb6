"""The shipped material data of line types, gathered into arrays: one row for each line of a batch."""

from collections.abc import Callable, Sequence

import numpy as np

from rigbuilder.mechanics.uncertainty import Range
from rigbuilder.model.rig import Line
from rigbuilder.reference.lines import Estimate, LineTypeData
from rigbuilder.reference.load import Reference
from rigbuilder.reference.words import Condition, LabelConvention

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
    """Material properties of many lines at once, each as a range of arrays of shape (lines,)."""

    def __init__(self, lines: Sequence[Line], reference: Reference) -> None:
        self._lines = lines
        self.rows: list[LineTypeData] = [reference.line_types[line.type] for line in lines]
        self.braided = np.array([row.is_strength_per_mass for row in self.rows])

    def get(self, name: str) -> Range:
        """Return one property by its name in the line type table."""
        return self._gather(lambda row: getattr(row, name))

    def honesty(self) -> Range:
        """Return true dry break over printed test, by each line's label convention. [1]"""
        values = [
            row.label_honesty[line.convention or row.usual_convention]
            for row, line in zip(self.rows, self._lines, strict=True)
        ]
        return ranges([(value.low, value.typical, value.high) for value in values])

    def condition(self) -> Range:
        """Return the share of strength that each line's state leaves. [1]"""
        return ranges([CONDITION[line.condition] for line in self._lines])

    def _gather(self, pick: Callable[[LineTypeData], Estimate]) -> Range:
        picked = [pick(row) for row in self.rows]
        return ranges([(value.low, value.typical, value.high) for value in picked])


def ranges(rows: Sequence[tuple[float, float, float]]) -> Range:
    """Return rows of (low, typical, high) as one range of arrays."""
    table = np.asarray(rows, dtype=float).reshape(-1, 3)
    return Range(table[:, 0], table[:, 1], table[:, 2])


def convention_of(line: Line, reference: Reference) -> LabelConvention:
    """Return the label convention by which a line's test is read."""
    return line.convention or reference.line_types[line.type].usual_convention
