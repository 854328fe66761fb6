"""What must be said where a formula was used outside the range in which it was checked."""

from rigbuilder.mechanics.validity import remarks as validity_remarks
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.towing import across_reynolds


def remarks(rows: Rows, row: int) -> tuple[str, ...]:
    """Return plain sentences for one row; nothing is said of figures that the rig does not have."""
    rig, given = rows.rigs[row], rows.given
    said = [
        *validity_remarks("sight.attenuation_from_secchi", secchi_depth_m=given["clarity_m"][1, row]),
        *validity_remarks("water.density", temperature_c=_asked_temperature(rows, row)),
    ]
    if given.towed[row]:
        said += validity_remarks("shape.steady_shape", reynolds=across_reynolds(rows)[row])
    for line in (rig.main, rig.leader):
        if line is not None and line.size is not None and line.size.scale == "No.":
            said += validity_remarks("sizes.size_diameter", size=line.size.number)
    return tuple(dict.fromkeys(said))


def _asked_temperature(rows: Rows, row: int) -> float:
    asked = rows.rigs[row].water.temperature_c
    return float(rows.given["temperature_c"][1, row]) if asked is None else asked
