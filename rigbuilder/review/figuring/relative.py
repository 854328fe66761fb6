"""Diameters on one spool, one against another.

A diameter that is only known from a test may be off by a quarter. But on a spool the
line is held against the line that the reel's label counts in: where both are smooth and
both are read by their tests, they are off together, and only the difference between two
labels is left. That is worth 10 to 20 % of length on a reel (common practice), so 5 % of
either diameter. And a soft braid flattens into the gaps that a round strand leaves, so
that it takes the room of a thinner line than its outside says.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from rigbuilder.mechanics.arrays import Array
from rigbuilder.model.rig import Line
from rigbuilder.reference.load import Reference

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


def read_by_test(lines: Sequence[Line]) -> NDArray[np.bool_]:
    """Tell of each line whether its diameter is known from its test alone; many may be one and the same."""
    known = {id(line): line for line in lines}
    told = {key: is_read_by_test(line) for key, line in known.items()}
    return np.array([told[id(line)] for line in lines])


def drawn_together(diameter_m: Array, together: NDArray[np.bool_]) -> Array:
    """Return diameters with what lines and label lines have in common left out of their range [m].

    ``diameter_m`` has the shape (3, lines) and may be that of the lines or of the label
    lines; its ends draw together where both of a pair are read by their tests.
    """
    apart = np.multiply.outer(np.array(LABELS_APART), diameter_m[1])
    return np.where(together, apart, diameter_m)


def beside_label(
    diameter_m: Array,
    lines: Sequence[Line],
    label_lines: Sequence[Line],
    together: NDArray[np.bool_],
    reference: Reference,
) -> Array:
    """Return the diameters of lines as they stand to their label lines on the spool [m].

    A line that packs more closely than the label's line counts as thinner, by the root
    of the two packings. Printed and measured diameters are compared as they are, which is
    how capacities are printed.
    """
    packing = {kind: row.packing.typical for kind, row in reference.line_types.items()}
    pairs = zip(lines, label_lines, strict=True)
    closer = np.sqrt(
        [
            1.0 if line.diameter_m or line.measured_diameter_m else packing[label.type] / packing[line.type]
            for line, label in pairs
        ]
    )
    return np.asarray(drawn_together(diameter_m, together) * closer)
