"""A rod from the values of its fields: its line range in newtons, and whether that means braid."""

from collections.abc import Mapping
from typing import Any

from rigbuilder.model.rig import LineSize, Rod
from rigbuilder.reference.ranges import LBF_N, Span

# Common practice: a braid number is sold as anything from 10 to 20 lb; a nylon-scale number as 4 lb.
_ROD_SIZE_LB = {"PE": (10.0, 20.0), "No.": (4.0, 4.0)}
# A lower bound of 30 lb or more is no nylon label: such rods are marked for braid.
_BRAID_LABEL_FROM_N = 30 * LBF_N * (1 - 1e-9)


def rod_of(values: Mapping[str, Any]) -> Rod:
    """Return the rod that these SI values by card path describe."""
    line, for_braid = values.get("rod.line"), values.get("rod.line_for") == "braid"
    if isinstance(line, tuple) and isinstance(line[0], LineSize):
        low_lb, high_lb = _ROD_SIZE_LB[line[0].scale]
        for_braid = for_braid or line[0].scale == "PE"
        line = Span(line[0].number * low_lb * LBF_N, line[1].number * high_lb * LBF_N)
    if line is not None and values.get("rod.line_for") is None and line.low >= _BRAID_LABEL_FROM_N:
        for_braid = True
    return Rod(
        length_m=values.get("rod.length"),
        power=values.get("rod.power"),
        action=values.get("rod.action"),
        line_n=line,
        line_for_braid=for_braid,
        lure_kg=values.get("rod.lure"),
    )
