"""Every figure with its label, unit, formula in words, inputs and sources: what documents and windows read.

Inputs name other figures or entries of ``inputs.INPUTS``.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from rigbuilder.sources import COMMON_PRACTICE, FROM_MEMORY, Kind, Source
from rigbuilder.units.dimensions import Dimension

RANGE_METHOD = Source(
    Kind.PUBLISHED,
    "ranges combined to first order, root of the sum of squares",
    "JCGM 100:2008 (GUM), clause 5.1.2",
)
_DIMENSIONS = {"m": Dimension.LENGTH, "N": Dimension.FORCE, "kg": Dimension.MASS, "m/s": Dimension.SPEED}


@dataclass(frozen=True, slots=True)
class FactRow:
    """One figure: plain label, SI unit, kind of display, formula in words, inputs by name, sources."""

    label: str
    unit: str
    kind: str
    formula: str
    inputs: tuple[str, ...]
    sources: tuple[Source, ...]

    @property
    def dimension(self) -> Dimension | None:
        """Return what kind of quantity it is, ``None`` for shares, counts, times and room."""
        return _DIMENSIONS.get(self.unit)


def _computed(text: str) -> Source:
    return Source(Kind.COMPUTED, text)


def _published(text: str, where: str) -> Source:
    return Source(Kind.PUBLISHED, text, where)


_CAPSTAN = _published("Euler–Eytelwein equation; friction of nylon on rings is a wide range",
                      "CRC Materials Science & Engineering Handbook 2001, Table 399")  # fmt: skip
_DRAG = _published("drag across a cylinder: the lower of Sucker & Brauer 1975 and Cheng 2013",
                   "J. Hydraul. Eng. 139:602; Nellis & Klein 2021")  # fmt: skip
_PACKING = _computed("equal volume: length times diameter squared stays the same")
_TORQUE = _computed("the drag's turning moment stays the same while the radius shrinks")
_CHAIN = _computed("weakest of independent, normally distributed links; checked by sampling")
_SPRINGS = _computed("springs in series after the slack is taken in")
_ACUITY = _published("acuity of a sunfish", "Spratte et al. 2021, J. Exp. Biol. 224:jeb243068")
_FRESNEL = _published("Fresnel equations over a round line", "Born & Wolf, Principles of Optics")
_MATERIAL = Source(Kind.MEMORY, "the line's material from the table of line types, each with its own source")
_ERNST = _published("equivalent modulus of a sagging cable, Ernst 1965",
                    "Appl. Sci. 2020 10:6263; Materials 2021 14:5502")  # fmt: skip
_AIR = _published("skin friction of line in air", "J. Appl. Mech. 2004, 71:745")
_SURGE = _published("water that a fish carries along, 1.2 times its mass", "Webb 1982, J. Exp. Biol. 96:93")

_SPOOL = ("label_length_m", "label_diameter_m")

# A table reads best as one, so rows are not spread over a line for each value.
# fmt: off
FACTS: Mapping[str, FactRow] = {
    "main_diameter_m": FactRow("diameter of the main line", "m", "diameter",
        "measured, else printed or by size number, else sqrt(4 × test / (pi × breaking stress)); "
        "braid: by its mass, widened by its packing", ("main_test_n",), (_MATERIAL, RANGE_METHOD)),
    "leader_diameter_m": FactRow("diameter of the leader", "m", "diameter", "as for the main line",
        ("leader_test_n",), (_MATERIAL, RANGE_METHOD)),
    "backing_diameter_m": FactRow("diameter of the backing", "m", "diameter", "as for the main line",
        ("backing_test_n",), (_MATERIAL, RANGE_METHOD)),
    "main_straight_n": FactRow("what the straight, wet main line bears", "N", "",
        "label × honesty of the label × wetness × wear, or the strength measured", ("main_test_n",),
        (_MATERIAL, RANGE_METHOD)),
    "leader_straight_n": FactRow("what the straight, wet leader bears", "N", "",
        "label × honesty of the label × wetness × wear, or the strength measured", ("leader_test_n",),
        (_MATERIAL, RANGE_METHOD)),
    "chain_n": FactRow("what the whole chain bears", "N", "",
        "the weakest of hook, knots, leader, joint and line",
        ("main_straight_n", "leader_straight_n"), (_CHAIN, COMMON_PRACTICE)),
    "rod_limit_n": FactRow("drag that the rod bears", "N", "drag",
        "a third to two thirds of the top of its line label",
        ("rod_label_n",), (COMMON_PRACTICE,)),
    "reel_limit_n": FactRow("the reel's largest drag", "N", "drag",
        "printed, else usual for reels of its size", (),
        (FROM_MEMORY,)),
    "drag_n": FactRow("drag, straight off the reel", "N", "drag", "what was set, ± a fifth", ("set_share",),
        (FROM_MEMORY,)),
    "drag_on_scale_n": FactRow("drag over the bent rod", "N", "drag",
        "drag × exp(friction × angle over the rod)",
        ("drag_n", "guide_friction", "rod_angle_rad"), (_CAPSTAN, RANGE_METHOD)),
    "drag_worst_n": FactRow("drag over the bent rod with cast and run out", "N", "drag",
        "drag × exp(friction × angle over the rod) × full radius / radius left",
        ("drag_n", "guide_friction", "rod_angle_rad", "cast_m", "run_m", "fill_diameter_m",
         "main_diameter_m"),
        (_TORQUE, _CAPSTAN, RANGE_METHOD)),
    "drag_share": FactRow("drag as a share of the weakest label", "1", "share",
        "drag / weakest printed strength",
        ("drag_n",), (_computed("ratio"),)),
    "drag_ceiling_n": FactRow("highest setting that the chain bears", "N", "drag",
        "what the chain bears / (exp(friction × angle over the rod) × full radius / radius left)",
        ("chain_n", "guide_friction", "rod_angle_rad", "run_m"), (_TORQUE, _CAPSTAN, RANGE_METHOD)),
    "drag_recommended_n": FactRow("drag to set, straight off the reel", "N", "drag",
        "practice's share of the weakest label, never above what the chain bears", ("drag_ceiling_n",),
        (COMMON_PRACTICE,)),
    "room_m3": FactRow("room on the spool, as length times diameter squared", "m3", "",
        "label length × label diameter²",
        _SPOOL, (_PACKING, COMMON_PRACTICE)),
    "spool_holds_m": FactRow("length of this line that the spool holds", "m", "line",
        "label length × (label diameter / diameter)²", (*_SPOOL, "main_diameter_m"),
        (_PACKING, RANGE_METHOD)),
    "reach_m": FactRow("main line that is needed", "m", "line",
        "1.5 × cast, or cast + 23 m if that is more, + what is trimmed over a season", ("cast_m", "trim_m"),
        (COMMON_PRACTICE,)),
    "main_wound_m": FactRow("main line on the spool", "m", "line",
        "as the card says; else what is needed over backing, or a full spool", ("reach_m", "spool_holds_m"),
        (COMMON_PRACTICE,)),
    "backing_m": FactRow("backing that fills up the spool", "m", "line",
        "(room − main length × diameter²) / backing diameter²",
        ("room_m3", "main_wound_m", "main_diameter_m", "backing_diameter_m"), (_PACKING, RANGE_METHOD)),
    "lip_gap_m": FactRow("gap between line and lip", "m", "gap",
        "(flange − sqrt(barrel² + used / room × (full² − barrel²))) / 2; below 0 line stands above the lip",
        ("flange_m", "barrel_m", "fill_share", "label_gap_m"), (_PACKING, FROM_MEMORY, RANGE_METHOD)),
    "fill_share": FactRow("how full the spool is", "1", "share",
        "line on the spool / room, both as length × diameter²",
        ("room_m3", "main_wound_m", "main_diameter_m", "backing_diameter_m"), (_PACKING, RANGE_METHOD)),
    "fill_diameter_m": FactRow("diameter over the line", "m", "lure",
        "sqrt(barrel² + used / room × (full² − barrel²))",
        ("barrel_m", "flange_m", "fill_share"), (_PACKING, RANGE_METHOD)),
    "core_diameter_m": FactRow("diameter under the main line", "m", "lure",
        "sqrt(barrel² + backing / room × (full² − barrel²))", ("barrel_m", "flange_m", "backing_m"),
        (_PACKING, RANGE_METHOD)),
    "used_m3": FactRow("room that the lines take", "m3", "", "sum of length × diameter²",
        ("main_wound_m", "main_diameter_m", "backing_m", "backing_diameter_m"), (_PACKING, RANGE_METHOD)),
    "main_turns": FactRow("turns of the handle for the main line", "turns", "",
        "length / (pi × gear ratio × mean diameter of the winding)",
        ("main_wound_m", "gear_ratio", "core_diameter_m", "fill_diameter_m"), (_PACKING, RANGE_METHOD)),
    "backing_turns": FactRow("turns of the handle for the backing", "turns", "",
        "length / (pi × gear ratio × mean diameter of the winding)",
        ("backing_m", "gear_ratio", "barrel_m", "core_diameter_m"), (_PACKING, RANGE_METHOD)),
    "main_mass_kg": FactRow("weight of the main line", "kg", "", "length × mass per metre",
        ("main_wound_m", "main_mass_kg_m"), (_computed("length times mass per length"), RANGE_METHOD)),
    "backing_mass_kg": FactRow("weight of the backing", "kg", "", "length × mass per metre",
        ("backing_m", "backing_diameter_m"), (_computed("length times mass per length"), RANGE_METHOD)),
    "retrieve_m": FactRow("retrieve per turn at this fill", "m", "retrieve",
        "pi × diameter over the line × gear ratio, or as printed × diameter / full diameter",
        ("fill_diameter_m", "gear_ratio"), (_computed("circumference times gear ratio"), RANGE_METHOD)),
    "hook_force_n": FactRow("pull at the hook at the length of the cast", "N", "drag",
        "(travel of the tip − slack) × stiffness of line, leader and rod, less friction; "
        "never more than drag, chain or arms",
        ("cast_m", "main_axial_n", "end_axial_n", "rod_stiffness_n_m", "rod_length_m", "sweep_end_rad",
         "loose_m", "wind_mps", "current_mps", "tension_n", "in_air", "arm_nm", "drag_on_scale_n", "chain_n"),
        (_SPRINGS, FROM_MEMORY, RANGE_METHOD)),
    "hook_share": FactRow("pull at the hook against the usual rig", "1", "share",
        "pull at the hook / that of the technique's usual rig at the same distance", ("hook_force_n",),
        (_SPRINGS, FROM_MEMORY, RANGE_METHOD)),
    "tug_share": FactRow("share of a small tug that moves the rod tip", "1", "share",
        "stiffness of sagging line and rod in series / stiffness of the rod",
        ("main_axial_n", "cast_m", "wet_weight_n_m", "tension_n", "in_air", "rod_stiffness_n_m"),
        (_ERNST, FROM_MEMORY, RANGE_METHOD)),
    "peak_force_n": FactRow("jerk when a fish surges at short range, before the drag gives", "N", "drag",
        "speed × sqrt(stiffness × 1.2 × mass of the fish)",
        ("fish_kg", "surge_mps", "short_m", "main_axial_n", "end_axial_n", "rod_stiffness_n_m"),
        (_computed("kinetic energy into a spring"), _SURGE, FROM_MEMORY, RANGE_METHOD)),
    "peak_share": FactRow("that jerk against the usual rig", "1", "share", "jerk / that of the usual rig",
        ("peak_force_n",), (_computed("ratio"), RANGE_METHOD)),
    "nose_pull_n": FactRow("pull of wetted line on the nose", "N", "nose",
        "weight of line in water × length that hangs from the nose; nothing while the surface film holds it",
        ("wet_weight_n_m", "end_wet_weight_n_m", "leader_m", "cast_m", "pause_s", "slack_n", "on_water"),
        (_computed("catenary from its lowest point"), _DRAG, FROM_MEMORY, RANGE_METHOD)),
    "nose_share": FactRow("that pull against the lure's weight", "1", "share",
        "pull on the nose / weight of the lure",
        ("nose_pull_n", "lure_kg"), (_computed("ratio"), RANGE_METHOD)),
    "coil_strain": FactRow("strain of the line on the spool", "1", "share",
        "line diameter / (coil diameter + line diameter); nothing in braid, whose fibres slide",
        ("main_diameter_m", "core_diameter_m", "fill_diameter_m"),
        (_computed("plane sections stay plane"), RANGE_METHOD)),
    "straighten_n": FactRow("pull that draws the coils straight", "N", "nose",
        "stiffness of the material × pi × diameter⁴ / 64 / coil radius² × how well it remembers (nylon 1)",
        ("main_diameter_m", "modulus_pa", "bend_memory", "core_diameter_m", "fill_diameter_m"),
        (_computed("bending energy against work of the pull"), FROM_MEMORY, RANGE_METHOD)),
    "depth_m": FactRow("running depth with the whole cast out", "m", "depth",
        "shape of the line integrated from lure to rod tip; range from the closed form for light line; "
        "a diver is held to its printed depth on the usual line",
        ("cast_m", "speed_mps", "lure_kg", "submerged", "drag_area_m2", "running_depth_m", "main_diameter_m",
         "wet_weight_n_m", "tip_height_m", "strumming", "printed_depth"),
        (_DRAG, _computed("steady shape of a towed line"), FROM_MEMORY, RANGE_METHOD)),
    "layback_m": FactRow("how far the lure runs behind the tip", "m", "cast", "level reach of the same shape",
        ("depth_m", "cast_m", "tip_height_m"), (_computed("steady shape of a towed line"), RANGE_METHOD)),
    "drop_s": FactRow("time to sink to the bottom on free line", "s", "",
        "depth × mean of 1 / speed, the lure drawing its line after it",
        ("water_depth_m", "lure_kg", "submerged", "drag_area_m2", "sideways", "wet_weight_n_m"),
        (_computed("weight in water against drag"), FROM_MEMORY, RANGE_METHOD)),
    "cast_distance_m": FactRow("length of a cast", "m", "cast",
        "flight of the lure drawing its line, at the speed that sends the usual rig as far as usual; ± 30 %",
        ("lure_kg", "air_area_m2", "main_mass_kg_m", "main_diameter_m"),
        (_computed("Newton's law"), _AIR, FROM_MEMORY)),
    "cast_share": FactRow("cast against the usual rig", "1", "share",
        "length of the cast / that of the usual rig",
        ("cast_distance_m",), (_computed("Newton's law"), _AIR, FROM_MEMORY)),
    "glint_ratio": FactRow("glint against nylon as thick", "1", "share",
        "light thrown back by a round line / by one of nylon", (), (_FRESNEL, _MATERIAL)),
    "sight_m": FactRow("distance at which the line may be noticed", "m", "depth",
        "contrast × diameter / (smallest angle × distance) × exp(−attenuation × distance) = contrast noticed",
        ("end_diameter_m", "clarity_m", "eye_rad", "noticed"), (_ACUITY, FROM_MEMORY, RANGE_METHOD)),
}
# fmt: on
