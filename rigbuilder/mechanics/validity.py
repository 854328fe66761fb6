"""Where each formula may be trusted: one table that dispatch, remarks and documentation read.

A value outside its row still gives a result; :func:`remarks` then says so in a
plain sentence. To register a formula, add its row to ``TABLE``; ``formula`` is
"module.function" and ``argument`` the name of the quantity in that function.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.sources import Kind, Source


@dataclass(frozen=True, slots=True)
class Validity:
    """The range over which one quantity of one formula is backed by its source."""

    formula: str
    argument: str
    quantity: str  # plain name for a person
    lowest: float
    highest: float
    unit: str
    source: Source

    def holds(self, value: ArrayLike) -> bool:
        """Whether every value lies within the range (bounds included)."""
        values = array(value)
        return bool(np.all((values >= self.lowest) & (values <= self.highest)))

    def clamp(self, value: ArrayLike) -> Array:
        """The values, those outside moved to the nearest bound."""
        return np.minimum(np.maximum(array(value), self.lowest), self.highest)


# A table reads best as one, so rows are not spread over a line for each value.
# fmt: off
TABLE: tuple[Validity, ...] = (
    Validity("water.density", "temperature_c", "water temperature", 0.0, 35.0, "°C",
             Source(Kind.COMPUTED, "compared with IAPWS-95 and TEOS-10 over this range: within 0.005 kg/m³")),
    Validity("water.density", "salinity_g_kg", "salinity", 0.0, 40.0, "g/kg",
             Source(Kind.PUBLISHED, "one-atmosphere equation of state of sea water", "UNESCO 1983, EOS-80")),
    Validity("water.viscosity", "temperature_c", "water temperature", 0.0, 35.0, "°C",
             Source(Kind.COMPUTED, "compared with IAPWS 2008 over this range: within 0.02 %")),
    Validity("water.viscosity", "salinity_g_kg", "salinity", 0.0, 40.0, "g/kg",
             Source(Kind.MEMORY, "salt part after Sharqawy and others 2010, remembered: ±1.5 %")),
    Validity("water.surface_tension", "temperature_c", "water temperature", 0.0, 35.0, "°C",
             Source(Kind.PUBLISHED, "surface tension of ordinary water", "IAPWS R1-76")),
    Validity("cylinder.sucker_brauer_drag", "reynolds", "Reynolds number of the line",
             1e-4, 2e5, "1",
             Source(Kind.PUBLISHED, "fit of Sucker & Brauer 1975", "Nellis & Klein 2021")),
    Validity("cylinder.cheng_drag", "reynolds", "Reynolds number of the line", 1e-4, 2e5, "1",
             Source(Kind.PUBLISHED, "fit of Cheng 2013", "J. Hydraul. Eng. 139:602")),
    Validity("cylinder.drag_coefficient", "reynolds", "Reynolds number of the line", 0.1, 1000.0, "1",
             Source(Kind.PUBLISHED, "the lower of Sucker & Brauer 1975 and Cheng 2013",
                    "J. Hydraul. Eng. 139:602; Nellis & Klein 2021")),
    Validity("cylinder.nusselt", "reynolds", "Reynolds number of the line", 1.0, 1000.0, "1",
             Source(Kind.COMPUTED, "Churchill–Bernstein at Pr = 1, within 5 % of a flow solution up to 40")),
    Validity("shape.steady_shape", "reynolds", "Reynolds number of the line", 1.0, 1000.0, "1",
             Source(Kind.COMPUTED, "smooth round line in steady, uniform flow")),
    Validity("sizes.size_diameter", "size", "Japanese size number", 0.4, 20.0, "1",
             Source(Kind.PUBLISHED, "standard diameters of fishing line, equal-mass law", "JAFS 2010")),
    Validity("still.cross_flow_bow", "bow_ratio", "bow divided by length of line", 0.0, 1.0 / 12.0, "1",
             Source(Kind.COMPUTED, "small bow: within 1 % of an evenly loaded cable over this range")),
    Validity("surface.tilt", "tilt_rad", "tilt of the lure", 0.0, 0.175, "rad",
             Source(Kind.COMPUTED, "small tilt, up to 10°, of a lure that floats level")),
    Validity("still.parabola_sag", "sag_ratio", "sag divided by span", 0.0, 1.0 / 12.0, "1",
             Source(Kind.COMPUTED, "within 1 % of the exact catenary over this range")),
    Validity("feel.ernst_ratio", "sag_ratio", "sag divided by span", 0.0, 1.0 / 12.0, "1",
             Source(Kind.PUBLISHED, "equivalent modulus of a taut line, not of a slack one",
                    "Appl. Sci. 2020 10:6263")),
    Validity("hookset.slack_in_bow", "bow_ratio", "bow divided by span", 0.0, 1.0 / 12.0, "1",
             Source(Kind.COMPUTED, "within 2 % of the exact arc over this range")),
    Validity("axialfriction.friction_function", "reduced_time", "reduced time of the pull",
             0.0, 1e5, "1",
             Source(Kind.COMPUTED, "fit to the exact laminar solution, within 2e-5")),
    Validity("bending.pin_efficiency", "diameter_ratio", "diameter of the pin over that of the line",
             1.0, 50.0, "1",
             Source(Kind.MEMORY, "pin rule of wire rope, remembered: a trend only")),
    Validity("knotstats.efficiency", "variation", "coefficient of variation of a strength", 0.0, 0.15, "1",
             Source(Kind.COMPUTED, "delta rule within 1 % of sampling over this range")),
    Validity("strength.chain_strength", "variation", "coefficient of variation of a link's strength",
             0.0, 0.3, "1",
             Source(Kind.COMPUTED, "normal links, beyond which negative strengths would count")),
    Validity("fish.tail_force", "mass_kg", "mass of the fish", 0.05, 10.0, "kg",
             Source(Kind.PUBLISHED, "scaled from a measured trout", "J. Exp. Biol. 119:71")),
    Validity("guides.guide_ratio", "friction", "friction coefficient of the guides", 0.05, 0.35, "1",
             Source(Kind.PUBLISHED, "nylon and acetal, dry and wet",
                    "CRC Materials Science & Engineering Handbook 2001, Table 399")),
    Validity("spool.calibrated_packing", "packing", "packing of the line", 0.5, 0.9069, "1",
             Source(Kind.COMPUTED, "from loosely wound line to the densest winding possible")),
    Validity("sight.attenuation_from_secchi", "secchi_depth_m", "clarity of the water", 0.5, 8.0, "m",
             Source(Kind.MEMORY, "Secchi relations, remembered: within a factor of 1.5")),
)
# fmt: on


def rows(formula: str) -> tuple[Validity, ...]:
    """All rows of one formula; a formula without a row is a KeyError."""
    found = tuple(row for row in TABLE if row.formula == formula)
    if not found:
        raise KeyError(formula)
    return found


def row(formula: str, argument: str) -> Validity:
    """The row of one quantity of one formula, for functions that dispatch on it."""
    for candidate in rows(formula):
        if candidate.argument == argument:
            return candidate
    raise KeyError(argument)


def remarks(formula: str, **values: ArrayLike) -> tuple[str, ...]:
    """Plain sentences for the quantities that lie outside a formula's range.

    ``values`` are named as the rows' ``argument``; each may be a float or an array.
    """
    said = []
    for argument, value in values.items():
        limits = row(formula, argument)
        if not limits.holds(value):
            said.append(_sentence(limits, np.atleast_1d(array(value))))
    return tuple(said)


def _sentence(limits: Validity, values: Array) -> str:
    outside = values[(values < limits.lowest) | (values > limits.highest) | np.isnan(values)]
    unit = "" if limits.unit == "1" else f" {limits.unit}"
    return (
        f"The {limits.quantity} of {outside[0]:.4g}{unit} lies outside {limits.lowest:.4g} to "
        f"{limits.highest:.4g}{unit}, where this formula was checked; take the figure as a rough guide."
    )
