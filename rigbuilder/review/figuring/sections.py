"""Cross-sections: diameter, stiffness and strength of every line of a batch, from what its label says."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, fields

import numpy as np
from numpy.typing import NDArray

from rigbuilder.mechanics import braid, section, sizes
from rigbuilder.mechanics.arrays import Array
from rigbuilder.model.rig import Line
from rigbuilder.reference.load import Reference
from rigbuilder.review.figuring.material import Materials
from rigbuilder.review.figuring.spread import exactly, product, spread

PRINTED = (0.95, 1.0, 1.05)  # printed or standard diameters: most lines pass within 5 %, from memory
PE_OUTSIDE = (0.9, 1.0, 1.12)  # outside diameter from a PE number, by the packing of the braid, from memory
MEASURED = (0.98, 1.0, 1.02)  # a caliper at the bench, from memory
MEASURED_STRENGTH = (0.93, 1.0, 1.07)  # a pull scale at the bench, from memory
_N_M_KG_PER_N_TEX = 1e6  # 1 N/tex = 1e6 N m/kg, exact


@dataclass(frozen=True, slots=True)
class Sections:
    """Triples, one column a line: outside diameter [m], mass [kg/m], EA [N], breaks [N], and materials."""

    diameter_m: Array
    mass_kg_m: Array
    axial_n: Array
    wet_break_n: Array
    density_kg_m3: Array
    modulus_pa: Array
    bend_memory: Array
    guide_friction: Array

    def at(self, wanted: slice | NDArray[np.int_]) -> "Sections":
        """Return the sections of some of the lines, by their places."""
        return Sections(*(getattr(self, field.name)[:, wanted] for field in fields(self)))


def sections(lines: Sequence[Line], reference: Reference) -> Sections:
    """Return the sections of many lines in one pass."""
    material = Materials(lines, reference)
    labelled = exactly([line.test_n or 1.0 for line in lines], len(lines))
    measured = _known([line.measured_strength_n for line in lines], MEASURED_STRENGTH)
    known = _known_diameters(lines, material)
    modulus = material.get("modulus_pa")
    inputs = {
        "break_n": _first(measured, labelled * material.honesty()),
        "known_m": np.nan_to_num(known, nan=1.0),
        "strength": material.get("strength"),
        "density": material.get("density_kg_m3"),
        "fill": material.get("fill"),
        "pulled_pa": product(modulus, material.get("wet_modulus_factor"), material.get("rate_factor")),
    }
    found = spread(_from_label(material.braided, ~np.isnan(known[1])), inputs)
    return Sections(
        **found,
        wet_break_n=product(inputs["break_n"], material.get("wet_strength_factor"), material.condition()),
        density_kg_m3=inputs["density"],
        modulus_pa=modulus,
        bend_memory=material.get("bend_memory"),
        guide_friction=material.get("guide_friction"),
    )


def _from_label(braided: NDArray[np.bool_], known: NDArray[np.bool_]) -> Callable[..., dict[str, Array]]:
    """Diameter, mass, and EA of wet line pulled at the speed of a strike.

    What is not printed or measured follows from the breaking strength: the solid
    section by stress, that of braids by mass; the outside of braids by their packing.
    """

    def line(
        *, break_n: Array, known_m: Array, strength: Array, density: Array, fill: Array, pulled_pa: Array
    ) -> dict[str, Array]:
        single = section.diameter_from_strength(strength_n=break_n, stress_pa=strength)
        mass = braid.mass_from_strength(strength_n=break_n, tenacity_n_tex=strength / _N_M_KG_PER_N_TEX)
        fibres = braid.solid_diameter(linear_density_kg_m=mass, density_kg_m3=density)
        solid = np.where(known, known_m * np.sqrt(fill), np.where(braided, fibres, single))
        area = section.area(diameter_m=solid)
        return {
            "diameter_m": braid.outside_diameter(solid_diameter_m=solid, packing=fill),
            "mass_kg_m": area * density,
            "axial_n": area * pulled_pa,
        }

    return line


def _known_diameters(lines: Sequence[Line], material: Materials) -> Array:
    """Printed, sized or measured diameters, not-a-number where there is none; a measurement wins."""
    measured = _known([line.measured_diameter_m for line in lines], MEASURED)
    outside = [_pe_outside(line, material, place) for place, line in enumerate(lines)]
    printed = _known([line.diameter_m or _sized(line) for line in lines], PRINTED)
    return _first(measured, _first(_known(outside, PE_OUTSIDE), printed))


def _sized(line: Line) -> float | None:
    if line.size is None or line.size.scale != "No.":
        return None
    return float(sizes.size_diameter(size=line.size.number))


def _pe_outside(line: Line, material: Materials, place: int) -> float | None:
    """Return the outside diameter of a braid sold by its PE number, unless its diameter is printed."""
    if line.size is None or line.size.scale != "PE" or line.diameter_m is not None:
        return None
    mass = sizes.pe_linear_density(size=line.size.number)
    density, fill = material.typical("density_kg_m3", place), material.typical("fill", place)
    solid = braid.solid_diameter(linear_density_kg_m=mass, density_kg_m3=density)
    return float(braid.outside_diameter(solid_diameter_m=solid, packing=fill))


def _known(values: Sequence[float | None], by: tuple[float, float, float]) -> Array:
    return np.outer(by, [np.nan if value is None else value for value in values])


def _first(better: Array, otherwise: Array) -> Array:
    return np.where(np.isnan(better), otherwise, better)
