"""Line types: the material behind the label."""

from collections.abc import Mapping
from enum import StrEnum

from rigbuilder.reference.ranges import RangeField
from rigbuilder.reference.rows import Row
from rigbuilder.reference.words import LabelConvention, LineType


class Build(StrEnum):
    """How a line's cross-section is filled."""

    SOLID = "solid"
    BRAIDED = "braided"
    SHEATHED = "sheathed core"


class Estimate(Row):
    """One property as low / typical / high, with its unit and how it is known."""

    value: RangeField
    unit: str
    note: str = ""

    @property
    def low(self) -> float:
        """The low end."""
        return self.value.low

    @property
    def typical(self) -> float:
        """The value to plan with."""
        return self.value.typical

    @property
    def high(self) -> float:
        """The high end."""
        return self.value.high


class LineTypeData(Row):
    """One line type. Every physical property is an :class:`Estimate` of its own.

    ``strength`` is the stress at a straight break over the solid cross-section [Pa]
    for single strands, and force per mass of line [N m/kg] for braids (multiply
    by kg/m). ``label_honesty`` is true dry break over label, by convention.
    """

    type: LineType
    name: str
    build: Build
    what: str
    pros: tuple[str, ...]
    cons: tuple[str, ...]
    best_for: tuple[str, ...]
    never_for: tuple[str, ...]
    care: str
    density_kg_m3: Estimate
    fill: Estimate
    modulus_pa: Estimate
    wet_modulus_factor: Estimate
    rate_factor: Estimate
    strength: Estimate
    wet_strength_factor: Estimate
    break_extension: Estimate
    refractive_index: Estimate
    opaque: bool
    guide_friction: Estimate
    bend_memory: Estimate
    packing: Estimate
    price_factor: Estimate
    label_honesty: Mapping[LabelConvention, Estimate]
    usual_convention: LabelConvention

    @property
    def is_strength_per_mass(self) -> bool:
        """Whether ``strength`` is force per mass of line (braids) and not stress."""
        return self.strength.unit == "N m/kg"
