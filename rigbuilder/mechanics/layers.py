"""Winding a spool turn by turn and layer by layer: the second opinion on every fill.

Nothing here uses the volume formula. Every layer holds a whole number of turns, every
turn is a circle through the middle of the line, and a layer is only begun when the one
below is full.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from rigbuilder.mechanics.errors import require


class Lay(StrEnum):
    """How a layer lies on the one below."""

    SQUARE = "square"  # turn upon turn
    NESTED = "nested"  # turns in the grooves below; in a tight width every second layer is one turn shorter


@dataclass(frozen=True, slots=True)
class Winding:
    """What lies on the spool after winding."""

    turns: float
    layers: int
    length_m: float
    fill_diameter_m: float


def full_spool(
    *, arbor_diameter_m: float, rim_diameter_m: float, width_m: float, diameter_m: float, lay: Lay
) -> Winding:
    """Wind perfect layers until the next would stand above the rim.

    Parameters
    ----------
    arbor_diameter_m, rim_diameter_m : float
        Diameters of the bare spool and of its rim. [m]
    width_m : float
        Width between the flanges. [m]
    diameter_m : float
        Line diameter. [m]
    lay : Lay
        Square or nested. [text]

    Returns
    -------
    Winding
        Turns, layers, length and diameter over the line. [1, 1, m, m]

    Raises
    ------
    ImpossibleInput
        A dimension that is not positive, or a line thicker than the spool is wide.

    References
    ----------
    PUBLISHED: layer sum of rope drums (winch handbooks: 20 in flange, 10 in barrel, 12 in wide,
    half-inch rope give about 940 ft).
    """
    turns_across = _turns_across(width_m=width_m, diameter_m=diameter_m)
    require(quantity="arbor diameter in m", value=arbor_diameter_m, above=0.0)
    require(quantity="depth of the spool in m", value=rim_diameter_m - arbor_diameter_m, above=0.0)
    rise_m = diameter_m if lay is Lay.SQUARE else diameter_m * np.sqrt(3.0) / 2.0
    depth_m = (rim_diameter_m - arbor_diameter_m) / 2.0
    layers = max(int(np.floor((depth_m - diameter_m) / rise_m + 1e-9)) + 1, 0)
    number = np.arange(layers)
    radius = arbor_diameter_m / 2.0 + diameter_m / 2.0 + number * rise_m
    turns = np.full(layers, float(turns_across))
    if lay is Lay.NESTED and width_m / diameter_m - turns_across < 0.5 - 1e-9:
        turns[1::2] -= 1.0  # no room for the half turn by which the next layer is shifted
    over = 2.0 * (radius[-1] + diameter_m / 2.0) if layers else arbor_diameter_m
    return Winding(float(turns.sum()), layers, float((2.0 * np.pi * radius * turns).sum()), float(over))


def wind(
    *,
    arbor_diameter_m: float,
    width_m: float,
    packing: float,
    lines_m: Sequence[tuple[float, float]],
) -> tuple[Winding, ...]:
    """Wind lines one after another, turn by turn, at a given packing.

    Parameters
    ----------
    arbor_diameter_m : float
        Diameter of the bare spool. [m]
    width_m : float
        Width between the flanges. [m]
    packing : float
        Share of the winding that is line; sets how far the layers rise. [1]
    lines_m : sequence of (length, diameter)
        Lines in the order in which they go on, backing first. [m]

    Returns
    -------
    tuple of Winding
        One for each line: its turns, the layers that it began, its length, and the diameter
        over the line once it is on. [1, 1, m, m]

    Raises
    ------
    ImpossibleInput
        A dimension or packing that is not positive, a negative length, or a line thicker than
        the spool is wide.

    Notes
    -----
    A line starts on a new layer. Its turns lie side by side as closely as the width allows in
    whole turns; layers rise so that line fills ``packing`` of the room. The last layer counts
    to the diameter by the share of it that is covered.

    References
    ----------
    COMPUTED: sum of circles; no volume formula.
    """
    require(quantity="arbor diameter in m", value=arbor_diameter_m, above=0.0)
    require(quantity="packing of the line", value=packing, above=0.0)
    surface_m = arbor_diameter_m / 2.0
    windings = []
    for length_m, diameter_m in lines_m:
        require(quantity="line length in m", value=length_m, at_least=0.0)
        turns_across = _turns_across(width_m=width_m, diameter_m=diameter_m)
        rise_m = np.pi * diameter_m**2 * turns_across / (4.0 * packing * width_m)
        left_m, turns, layers, covered = length_m, 0.0, 0, 0.0
        while left_m > 0.0:
            turn_m = 2.0 * np.pi * (surface_m + (layers + 0.5) * rise_m)
            covered = min(left_m / turn_m, float(turns_across)) / turns_across
            left_m -= turn_m * turns_across
            turns += covered * turns_across
            layers += 1
        surface_m += rise_m * (layers - 1 + covered if layers else 0.0)
        windings.append(Winding(turns, layers, length_m, 2.0 * surface_m))
    return tuple(windings)


def _turns_across(*, width_m: float, diameter_m: float) -> int:
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    require(quantity="spool width in m", value=width_m, at_least=diameter_m)
    return int(np.floor(width_m / diameter_m + 1e-9))
