"""Whether fish can see the line: its glint against nylon's, and how far it may be noticed."""

from functools import cache

import numpy as np

from rigbuilder.mechanics import glint, sight
from rigbuilder.mechanics.arrays import Array
from rigbuilder.reference.words import LineType
from rigbuilder.review.figuring.group import Column, Group, Known, columns
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.spread import alike, spread, triple

# Contrast of a line against water at no distance [1]: published for none, from memory.
CLEAR_CONTRAST = (0.1, 0.3, 0.6)  # of clear nylon; other clear lines by their glint
OPAQUE_CONTRAST = (0.3, 0.6, 1.0)
# Smallest angle that a sunfish's eye resolves [rad].
# Published: Spratte et al. 2021, J. Exp. Biol. 224:jeb243068.
EYE_RAD = (np.radians(0.13), np.radians(0.17), np.radians(0.32))
NOTICED = (0.02, 0.05, 0.15)  # smallest contrast that a fish notices [1], published for no bass, from memory
ATTENUATION = (1 / sight.SECCHI_SPREAD, 1.0, sight.SECCHI_SPREAD)  # of what follows from clarity [1]


def seeing(rows: Rows, known: Known) -> Group:
    """Return glint and distance of notice of the line at the lure of every row."""
    types = [(rig.leader or rig.main).type for rig in rows.rigs]
    data = {kind: rows.reference.line_types[kind] for kind in {*types, LineType.NYLON}}
    nylon = data[LineType.NYLON].refractive_index
    opaque = np.array([data[kind].opaque for kind in types])
    by_type = {
        kind: _ratio(tuple(row.refractive_index.value), tuple(nylon.value)) for kind, row in data.items()
    }
    ratio = triple([by_type[kind] for kind in types])
    typical = np.where(opaque, 1.0, ratio[1])
    contrast = np.where(
        opaque, np.array(OPAQUE_CONTRAST)[:, None], np.array(CLEAR_CONTRAST)[:, None] * typical
    )
    found = spread(
        _notice,
        {
            "diameter_m": rows.end.diameter_m,
            "clarity_m": rows.given["clarity_m"],
            "contrast": contrast,
            "eye_rad": alike(*EYE_RAD, rows.count),
            "noticed": alike(*NOTICED, rows.count),
            "attenuation": alike(*ATTENUATION, rows.count),
        },
    )
    return columns(found) | {"glint_ratio": Column(ratio, ~opaque)}


def _notice(
    *,
    diameter_m: Array,
    clarity_m: Array,
    contrast: Array,
    eye_rad: Array,
    noticed: Array,
    attenuation: Array,
) -> dict[str, Array]:
    """Detection of a line too thin to be resolved, a factor of three either way."""
    water = sight.attenuation_from_secchi(secchi_depth_m=clarity_m) * attenuation
    return {
        "sight_m": sight.detection_distance(
            diameter_m=diameter_m, smallest_angle_rad=eye_rad, inherent_contrast=contrast,
            threshold_contrast=noticed, attenuation_1_m=water,
        )
    }  # fmt: skip


@cache
def _ratio(index: tuple[float, ...], nylon: tuple[float, ...]) -> tuple[float, float, float]:
    """Glint of a line over that of typical nylon of the same diameter."""
    found = glint.cylinder_glint(line_index=list(index)) / glint.cylinder_glint(line_index=nylon[1])
    low, typical, high = (float(value) for value in found)
    return (min(low, typical), typical, max(typical, high))
