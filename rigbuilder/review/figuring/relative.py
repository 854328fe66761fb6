"""Diameters on one spool, one against another.

A diameter that is only known from a test may be off by a quarter. But on a spool the
line is held against the line that the reel's label counts in: where both are smooth and
both are read by their tests, they are off together, and only the difference between two
labels is left. That is worth 10 to 20 % of length on a reel (common practice), so 5 % of
either diameter.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from rigbuilder.mechanics.arrays import Array
from rigbuilder.model.rig import Line

LABELS_APART = (0.95, 1.0, 1.05)  # diameter of one smooth label line against another [1], common practice


@dataclass(frozen=True, slots=True, eq=False)
class OnSpool:
    """Diameters on the spools of a batch as they stand to each other, triples of a column a row [m]."""

    label_m: Array
    main_m: Array
    backing_m: Array


def is_read_by_test(line: Line) -> bool:
    """Tell whether a smooth line's diameter is known from its test alone."""
    printed = line.diameter_m or line.measured_diameter_m or line.size
    return line.type.is_single_strand and printed is None


def beside_label(diameter_m: Array, lines: Sequence[Line], label_lines: Sequence[Line]) -> Array:
    """Return the diameters of lines, or of label lines, as they stand to each other on the spool [m].

    ``diameter_m`` has the shape (3, lines); low and high draw together where both
    the line and its reel's label line are read by their tests.
    """
    together = np.array(
        [
            is_read_by_test(line) and is_read_by_test(label)
            for line, label in zip(lines, label_lines, strict=True)
        ]
    )
    apart = np.multiply.outer(np.array(LABELS_APART), diameter_m[1])
    return np.where(together, apart, diameter_m)
