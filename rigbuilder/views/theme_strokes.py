"""How lines are drawn, apart from their colour: dash and marker.

Kept for all themes alike, so that a line type or a chart role is known by its
dash where colour is not seen, on a printed sheet for instance.
"""

from collections.abc import Mapping
from types import MappingProxyType

from rigbuilder.views.theme import Stroke

# Dash patterns in pen widths (dash, gap, ...); markers are names of paint.signs.
_HABITS: Mapping[str, tuple[tuple[float, ...], str]] = {
    "present": ((), "disc"),
    "usual": ((7.0, 3.0), "ring"),
    "candidate": ((4.0, 2.0), "diamond"),
    "other a": ((9.0, 2.5, 1.5, 2.5), "square"),
    "other b": ((1.5, 2.5), "triangle"),
    "other c": ((5.0, 2.0, 1.5, 2.0, 1.5, 2.0), "cross"),
    "nylon": ((6.0, 2.5), "ring"),
    "copolymer": ((6.0, 2.5, 1.5, 2.5), "square"),
    "fluorocarbon": ((2.0, 2.0), "diamond"),
    "braid": ((), "disc"),
    "fused braid": ((12.0, 2.5), "triangle"),
    "hybrid": ((9.0, 2.0, 3.0, 2.0), "cross"),
    "lead-core": ((3.0, 1.5, 1.0, 1.5), "square"),
    "wire": ((1.0, 1.5), "cross"),
}


def strokes(colours: Mapping[str, str]) -> Mapping[str, Stroke]:
    """Return the strokes of a theme from its colours; every role must have one."""
    return MappingProxyType(
        {role: Stroke(colours[role], dash, marker) for role, (dash, marker) in _HABITS.items()}
    )
