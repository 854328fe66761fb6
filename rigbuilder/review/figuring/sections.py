"""Cross-sections: diameter, stiffness and strength of every line of a batch, from what its label says."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics import braid, section, sizes
from rigbuilder.mechanics.arrays import Array
from rigbuilder.mechanics.uncertainty import Range, combine, known
from rigbuilder.model.rig import Line
from rigbuilder.reference.lines import LineTypeData
from rigbuilder.reference.load import Reference
from rigbuilder.review.figuring.material import Materials

_PRINTED = (0.95, 1.0, 1.05)  # printed or standard diameters: most lines pass within 5 %, from memory
_MEASURED = (0.98, 1.0, 1.02)  # a caliper at the bench, from memory
_MEASURED_STRENGTH = (0.93, 1.0, 1.07)  # a pull scale at the bench, from memory
_N_M_KG_PER_N_TEX = 1e6  # 1 N/tex = 1e6 N m/kg, exact


@dataclass(frozen=True, slots=True)
class Sections:
    """Ranges of arrays, one entry a line: outside diameter [m], linear density [kg/m], breaks [N], EA [N]."""

    diameter_m: Range
    linear_density_kg_m: Range
    axial_stiffness_n: Range
    dry_break_n: Range
    wet_break_n: Range
    density_kg_m3: Range


def sections(lines: Sequence[Line], reference: Reference) -> Sections:
    """Return the sections of many lines in one pass."""
    material = Materials(lines, reference)
    labelled = np.array([line.test_n or 1.0 for line in lines])
    honesty, strength = material.honesty(), material.get("strength")
    density, fill = material.get("density_kg_m3"), material.get("fill")
    dry = _measured(combine(_product, inputs={"a": known(labelled), "b": honesty}), lines)
    outside = _replaced(_from_strength(material, dry, strength, density, fill), lines, material)
    mass = combine(_linear_density, inputs={"diameter_m": outside, "density": density, "fill": fill})
    wet = combine(
        _product,
        inputs={"a": dry, "b": material.get("wet_strength_factor"), "c": material.condition()},
    )
    stiffness = combine(
        _axial_stiffness,
        inputs={
            "linear_density": mass,
            "density": density,
            "modulus": material.get("modulus_pa"),
            "wet": material.get("wet_modulus_factor"),
            "rate": material.get("rate_factor"),
        },
    )
    return Sections(outside, mass, stiffness, dry, wet, density)


def _product(a: ArrayLike, b: ArrayLike, c: ArrayLike = 1.0) -> Array:
    return np.asarray(a) * np.asarray(b) * np.asarray(c)


def _linear_density(diameter_m: Array, density: Array, fill: Array) -> Array:
    return np.asarray(section.linear_density(diameter_m=diameter_m, density_kg_m3=density) * fill)


def _axial_stiffness(linear_density: Array, density: Array, modulus: Array, wet: Array, rate: Array) -> Array:
    return linear_density / density * modulus * wet * rate


def _from_strength(material: Materials, dry: Range, strength: Range, density: Range, fill: Range) -> Range:
    """Return outside diameters from breaking strength: by stress, or by mass for braids."""

    def diameter(break_n: Array, strength: Array, density: Array, fill: Array) -> Array:
        single = section.diameter_from_strength(strength_n=break_n, stress_pa=strength)
        mass = braid.mass_from_strength(strength_n=break_n, tenacity_n_tex=strength / _N_M_KG_PER_N_TEX)
        solid = braid.solid_diameter(linear_density_kg_m=mass, density_kg_m3=density)
        outer = braid.outside_diameter(solid_diameter_m=solid, packing=fill)
        return np.where(material.braided, outer, single)

    return combine(diameter, inputs={"break_n": dry, "strength": strength, "density": density, "fill": fill})


def _measured(labelled: Range, lines: Sequence[Line]) -> Range:
    found = [line.measured_strength_n for line in lines]
    return _chosen(labelled, found, _MEASURED_STRENGTH)


def _replaced(estimate: Range, lines: Sequence[Line], material: Materials) -> Range:
    """Put printed, sized or measured diameters in place of the estimate; a measurement wins."""
    printed = [line.diameter_m or _sized(line) for line in lines]
    known_better = _chosen(estimate, printed, _PRINTED)
    pe = [_pe_outside(line, row) for line, row in zip(lines, material.rows, strict=True)]
    known_better = _chosen(known_better, pe, (0.9, 1.0, 1.12))
    return _chosen(known_better, [line.measured_diameter_m for line in lines], _MEASURED)


def _sized(line: Line) -> float | None:
    if line.size is None or line.size.scale != "No.":
        return None
    return float(sizes.size_diameter(size=line.size.number))


def _pe_outside(line: Line, row: LineTypeData) -> float | None:
    """Return the outside diameter of a braid sold by its PE number, unless its diameter is printed."""
    if line.size is None or line.size.scale != "PE" or line.diameter_m is not None:
        return None
    mass = sizes.pe_linear_density(size=line.size.number)
    solid = braid.solid_diameter(linear_density_kg_m=mass, density_kg_m3=row.density_kg_m3.typical)
    return float(braid.outside_diameter(solid_diameter_m=solid, packing=row.fill.typical))


def _chosen(estimate: Range, better: Sequence[float | None], spread: tuple[float, float, float]) -> Range:
    has = np.array([value is not None for value in better])
    if not has.any():
        return estimate
    value = np.array([value or 1.0 for value in better])
    low, typical, high = (np.where(has, value * factor, end) for factor, end in
                          zip(spread, (estimate.low, estimate.typical, estimate.high), strict=True))  # fmt: skip
    return Range(low, typical, high)
