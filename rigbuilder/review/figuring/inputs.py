"""What the formulas are fed with: label, unit and source of every input, and its values for a batch."""

from collections.abc import Mapping
from dataclasses import dataclass

from rigbuilder.mechanics.arrays import Array
from rigbuilder.review.figuring import dragging, resting, seeing, striking, surging, towing
from rigbuilder.review.figuring.given import LABEL_GAP_M
from rigbuilder.review.figuring.group import Column, Group, Known, columns
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.spread import alike, exactly
from rigbuilder.sources import COMMON_PRACTICE, FROM_MEMORY, Kind, Source


@dataclass(frozen=True, slots=True)
class InputRow:
    """One input: plain label, SI unit, and how it is known."""

    label: str
    unit: str
    source: Source


_CARD = Source(Kind.PRACTICE, "as the card says, or as assumed from practice")
_TABLE = Source(Kind.MEMORY, "from the table of what no label carries")
_LINE = Source(Kind.MEMORY, "from label and material of the line")
_SPOOL = Source(Kind.PRACTICE, "from the reel's label, or usual for its size")
_SPRATTE = Source(Kind.PUBLISHED, "acuity of a sunfish", "Spratte et al. 2021, J. Exp. Biol. 224:jeb243068")

# fmt: off
INPUTS: Mapping[str, InputRow] = {
    "main_test_n": InputRow("test of the main line", "N", _CARD),
    "leader_test_n": InputRow("test of the leader", "N", _CARD),
    "leader_m": InputRow("length of the leader", "m", _CARD),
    "cast_m": InputRow("length of the cast", "m", _CARD),
    "water_depth_m": InputRow("depth of the water", "m", _CARD),
    "clarity_m": InputRow("clarity of the water", "m", _CARD),
    "current_mps": InputRow("current", "m/s", _CARD),
    "wind_mps": InputRow("wind", "m/s", COMMON_PRACTICE),
    "fish_kg": InputRow("weight of the fish", "kg", _CARD),
    "rod_length_m": InputRow("length of the rod", "m", _CARD),
    "rod_label_n": InputRow("top of the rod's line label", "N", _CARD),
    "rod_stiffness_n_m": InputRow("stiffness of the rod's tip", "N/m", _TABLE),
    "tip_height_m": InputRow("height of the rod tip while winding", "m", FROM_MEMORY),
    "lure_kg": InputRow("weight that is cast", "kg", _CARD),
    "submerged": InputRow("weight in water over weight in air", "1", _TABLE),
    "drag_area_m2": InputRow("drag area of the lure in water (area × drag coefficient)", "m2", _TABLE),
    "air_area_m2": InputRow("drag area of the lure in air (area × drag coefficient)", "m2", _TABLE),
    "speed_mps": InputRow("speed of the retrieve", "m/s", _TABLE),
    "running_depth_m": InputRow("running depth on the box", "m", _CARD),
    "barrel_m": InputRow("diameter of the bare spool", "m", _TABLE),
    "flange_m": InputRow("diameter of the spool's lip", "m", _TABLE),
    "gear_ratio": InputRow("gear ratio", "1", _SPOOL),
    "label_length_m": InputRow("length on the reel's label", "m", _SPOOL),
    "label_diameter_m": InputRow("diameter of the line that the label counts in", "m", _SPOOL),
    "label_gap_m": InputRow("lip gap of a spool filled to its label", "m", COMMON_PRACTICE),
    "trim_m": InputRow("line trimmed over a season", "m", COMMON_PRACTICE),
    "main_mass_kg_m": InputRow("mass of a metre of main line", "kg/m", _LINE),
    "main_axial_n": InputRow("stiffness (modulus × section) of the wet main line, pulled fast", "N", _LINE),
    "end_axial_n": InputRow("stiffness (modulus × section) of the line at the lure", "N", _LINE),
    "end_diameter_m": InputRow("diameter of the line at the lure", "m", _LINE),
    "backing_test_n": InputRow("test of the backing", "N", _CARD),
    "wet_weight_n_m": InputRow("weight in water of a metre of main line", "N/m", _LINE),
    "end_wet_weight_n_m": InputRow("weight in water of a metre of the line at the lure", "N/m", _LINE),
    "modulus_pa": InputRow("stiffness of the material", "Pa", _LINE),
    "bend_memory": InputRow("how well the material remembers a bend, nylon 1", "1", FROM_MEMORY),
    "guide_friction": InputRow("friction of the line on the rings", "1", _LINE),
    "set_share": InputRow("drag that is really there over drag set", "1", FROM_MEMORY),
    "rod_angle_rad": InputRow("angle of the line over the bent rod", "rad", FROM_MEMORY),
    "run_m": InputRow("line that a fish takes beyond the cast", "m", FROM_MEMORY),
    "sweep_end_rad": InputRow("angle of the rod at the end of the sweep", "rad", FROM_MEMORY),
    "loose_m": InputRow("line that lies loose before the strike", "m", FROM_MEMORY),
    "arm_nm": InputRow("turning moment of the arms", "N m", FROM_MEMORY),
    "tension_n": InputRow("pull in the line while the lure is worked", "N", FROM_MEMORY),
    "in_air": InputRow("share of the line that hangs in air", "1", FROM_MEMORY),
    "short_m": InputRow("line out at short range", "m", FROM_MEMORY),
    "surge_mps": InputRow("speed of a surging fish", "m/s", FROM_MEMORY),
    "pause_s": InputRow("time that the lure lies still", "s", FROM_MEMORY),
    "slack_n": InputRow("pull in slack line", "N", FROM_MEMORY),
    "on_water": InputRow("share of the cast that lies on the water", "1", FROM_MEMORY),
    "strumming": InputRow("factor on the water's drag on the line, high where it hums", "1", FROM_MEMORY),
    "printed_depth": InputRow("real running depth over printed", "1", FROM_MEMORY),
    "sideways": InputRow("drag of a sinking lure over that of one pulled", "1", FROM_MEMORY),
    "eye_rad": InputRow("smallest angle that a fish's eye resolves", "rad", _SPRATTE),
    "noticed": InputRow("smallest contrast noticed", "1", FROM_MEMORY),
}
# fmt: on

_ASSUMED = {
    "set_share": dragging.SET,
    "rod_angle_rad": dragging.ROD_ANGLE_RAD,
    "run_m": dragging.RUN_M,
    "sweep_end_rad": striking.SWEEP_END_RAD,
    "loose_m": striking.LOOSE_M,
    "arm_nm": striking.ARM_NM,
    "tension_n": striking.TENSION_N,
    "in_air": striking.IN_AIR,
    "short_m": surging.SHORT_M,
    "surge_mps": surging.SURGE_MPS,
    "pause_s": resting.PAUSE_S,
    "slack_n": resting.SLACK_N,
    "on_water": resting.ON_WATER,
    "strumming": towing.STRUMMING,
    "printed_depth": towing.PRINTED_DEPTH,
    "sideways": towing.SIDEWAYS,
    "eye_rad": seeing.EYE_RAD,
    "noticed": seeing.NOTICED,
    "label_gap_m": LABEL_GAP_M,
}


def entering(rows: Rows, known: Known) -> Group:
    """Return every input of every row."""
    count, given = rows.count, rows.given
    trim = rows.reference.filling.limits.trimming_m
    main_tests = [rig.main.test_n or 0.0 for rig in rows.rigs]
    leader_tests = [(rig.leader.test_n or 0.0) if rig.leader else 0.0 for rig in rows.rigs]
    backing_tests = [(rig.backing.test_n or 0.0) if rig.backing else 0.0 for rig in rows.rigs]
    lines: dict[str, Array] = {
        "main_test_n": exactly(main_tests, count),
        "label_diameter_m": rows.label_diameter_m,
        "main_mass_kg_m": rows.main.mass_kg_m,
        "main_axial_n": rows.main.axial_n,
        "end_axial_n": rows.end.axial_n,
        "end_diameter_m": rows.end.diameter_m,
        "wet_weight_n_m": rows.wet_weight_n_m,
        "end_wet_weight_n_m": rows.end_wet_weight_n_m,
        "modulus_pa": rows.main.modulus_pa,
        "bend_memory": rows.main.bend_memory,
        "guide_friction": rows.main.guide_friction,
        "trim_m": alike(trim.low, trim.middle, trim.high, count),
    }
    assumed = {name: alike(*ends, count) for name, ends in _ASSUMED.items()}
    said = {name: given[name] for name in given.triples if name in INPUTS}
    partly = {
        "leader_test_n": Column(exactly(leader_tests, count), rows.has_leader),
        "leader_m": Column(rows.leader_m, rows.has_leader),
        "backing_test_n": Column(exactly(backing_tests, count), rows.has_backing),
    }
    return columns(lines | assumed | said) | partly
