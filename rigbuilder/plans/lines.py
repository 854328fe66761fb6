"""The lines of a plan in section: how thick each is and what it weighs on a spool."""

from dataclasses import dataclass

import numpy as np

from rigbuilder.mechanics.arrays import Array
from rigbuilder.model.rig import Line
from rigbuilder.plans.known import range_of
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import Range
from rigbuilder.review.figuring.sections import sections


@dataclass(frozen=True, slots=True)
class Thickness:
    """Diameter [m], and the mass of line that fills a room of length times diameter squared [kg/m³]."""

    diameter_m: Range
    kg_per_room_m3: Range


def thickness(line: Line, reference: Reference) -> Thickness:
    """Return how thick a line is by its label, size number or measurement, and what it weighs."""
    found = sections([line], reference)
    # The thickest braid is the most loosely packed, so the ends may have to change places.
    per_room = np.sort(found.mass_kg_m / found.diameter_m**2, axis=0)
    return Thickness(range_of(found.diameter_m), range_of(per_room))


def beside_label(thick: Thickness, diameter_m: Array, column: int) -> Thickness:
    """Return a thickness with the diameter as it stands to the line of the reel's label.

    Lines that are read by their tests alone err together with the label's line; what is
    left is the difference between two labels (``review.figuring.relative``).
    """
    found = range_of(diameter_m, column)
    closer = (thick.diameter_m.typical / found.typical) ** 2
    return Thickness(found, thick.kg_per_room_m3.scaled(closer))


def straight_break(line: Line, reference: Reference) -> Range:
    """Return what the straight, wet line bears in its present state [N]."""
    return range_of(sections([line], reference).wet_break_n)
