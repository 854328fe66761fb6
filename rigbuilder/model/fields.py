"""Every field of a card, as data: what it holds, in which unit, within which limits.

The reader, the form, the JSON Schema and the messages all work from this one
table. Limits are there to catch slips of the pen, not to judge a rig.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum, StrEnum, auto

from rigbuilder.reference.words import (
    Action,
    Condition,
    Cover,
    FishTeeth,
    LabelConvention,
    LineType,
    Power,
    Presentation,
    Pressure,
    ReelKind,
    Rest,
    Stand,
    WaterKind,
    Wind,
)
from rigbuilder.units.dimensions import Dimension


class Part(StrEnum):
    """The parts of a rig to which reasons are pinned."""

    LURE = "lure"
    ROD = "rod"
    REEL = "reel"
    MAIN = "main"
    BACKING = "backing"
    LEADER = "leader"
    KNOTS = "knots"
    DRAG = "drag"
    WATER = "water"


class Holds(Enum):
    """What kind of thing a field holds."""

    TEXT = auto()
    QUANTITY = auto()
    SPAN = auto()
    TEST = auto()
    CHOICE = auto()
    TECHNIQUE = auto()
    KNOT = auto()
    RATIO = auto()
    LABEL = auto()
    CAPACITY = auto()


@dataclass(frozen=True, slots=True)
class Field:
    """One field. ``lowest`` and ``highest`` are in SI; ``units`` are symbols, the imperial one first."""

    path: str
    part: Part
    label: str
    holds: Holds
    dimension: Dimension | None = None
    units: tuple[str, str] = ("", "")
    lowest: float = 0.0
    highest: float = 0.0
    choices: tuple[str, ...] = ()
    example: str = ""
    required: bool = False


def _choice(path: str, part: Part, label: str, words: type[StrEnum], *, required: bool = False) -> Field:
    return Field(
        path, part, label, Holds.CHOICE, choices=tuple(str(word) for word in words), required=required
    )


def _length(path: str, part: Part, label: str, units: tuple[str, str], low: float, high: float) -> Field:
    return Field(path, part, label, Holds.QUANTITY, Dimension.LENGTH, units, low, high)


def _force(path: str, part: Part, label: str, high: float) -> Field:
    return Field(path, part, label, Holds.QUANTITY, Dimension.FORCE, ("lb", "kg"), 0.05, high)


def _mass(path: str, part: Part, label: str, high: float, *, required: bool = False) -> Field:
    return Field(path, part, label, Holds.QUANTITY, Dimension.MASS, ("oz", "g"), 0.0, high, required=required)


def _line(path: str, part: Part, *, required: bool) -> tuple[Field, ...]:
    """Return the fields that every length of line has; ``path`` is its group."""
    words = LineType if part is Part.LEADER else [kind for kind in LineType if kind is not LineType.WIRE]
    return (
        Field(
            f"{path}.type", part, "Type", Holds.CHOICE, choices=tuple(map(str, words)), required=required
        ),
        Field(
            f"{path}.test", part, "Test", Holds.TEST, Dimension.FORCE, ("lb", "kg"), 0.2, 2500.0,
            example="16 lb, 7 kg, PE 1.5 or No. 3", required=required,
        ),
        _length(f"{path}.diameter", part, "Diameter", ("mm", "mm"), 2e-5, 4e-3),
        _choice(f"{path}.convention", part, "Test is read as", LabelConvention),
    )  # fmt: skip


def _worn(path: str, part: Part) -> tuple[Field, ...]:
    return (
        _choice(f"{path}.condition", part, "Condition", Condition),
        _length(f"{path}.measured.diameter", part, "Measured diameter", ("mm", "mm"), 2e-5, 4e-3),
        _force(f"{path}.measured.strength", part, "Measured strength", 2500.0),
    )


FIELDS: tuple[Field, ...] = (
    Field("name", Part.LURE, "Name", Holds.TEXT, required=True),
    Field("lure.technique", Part.LURE, "Technique", Holds.TECHNIQUE, required=True),
    _mass("lure.weight", Part.LURE, "Weight", 1.0, required=True),
    _choice("presentation", Part.LURE, "Presentation", Presentation),
    _mass("lure.trailer", Part.LURE, "Trailer", 0.5),
    _mass("lure.sinker", Part.LURE, "Sinker", 1.0),
    Field("lure.hook", Part.LURE, "Hook", Holds.TEXT, example="#6 treble, 4/0 worm hook"),
    _choice("lure.buoyancy", Part.LURE, "Left alone, it", Rest),
    Field("lure.depth", Part.LURE, "Runs at", Holds.SPAN, Dimension.LENGTH, ("ft", "m"), 0.0, 100.0),
    Field("rod.label", Part.ROD, "Rod label", Holds.LABEL, example="7'3\" H F 30-65 lb 1/2-1 1/4 oz"),
    _length("rod.length", Part.ROD, "Length", ("ft", "m"), 0.5, 6.0),
    _choice("rod.power", Part.ROD, "Power", Power),
    _choice("rod.action", Part.ROD, "Action", Action),
    Field("rod.line", Part.ROD, "Line range", Holds.TEST, Dimension.FORCE, ("lb", "kg"), 0.2, 2500.0,
          example="14-25 lb, 6-12 kg or PE 1-2"),
    Field("rod.line_for", Part.ROD, "Range is for", Holds.CHOICE, choices=("nylon", "braid")),
    Field("rod.lure", Part.ROD, "Lure range", Holds.SPAN, Dimension.MASS, ("oz", "g"), 0.0, 2.0,
          example="3/8-1 oz or 10-30 g"),
    Field("reel.label", Part.REEL, "Reel label", Holds.LABEL, example="14/120 lb/yd 7.1:1 15 lb"),
    _choice("reel.kind", Part.REEL, "Kind", ReelKind),
    Field("reel.capacity", Part.REEL, "Capacity", Holds.CAPACITY, example="12/120 lb/yd or 0.30 mm/150 m"),
    Field("reel.ratio", Part.REEL, "Gear ratio", Holds.RATIO, lowest=2.0, highest=15.0, example="7.1:1"),
    _force("reel.drag", Part.REEL, "Most drag", 1000.0),
    _length("reel.retrieve", Part.REEL, "Line per turn", ("in", "cm"), 0.1, 3.0),
    Field("reel.size", Part.REEL, "Size", Holds.TEXT, example="2500"),
    _length("reel.spool.arbor", Part.REEL, "Bare spool across", ("mm", "mm"), 0.004, 0.2),
    _length("reel.spool.rim", Part.REEL, "Rim across", ("mm", "mm"), 0.008, 0.3),
    _length("reel.spool.width", Part.REEL, "Width inside", ("mm", "mm"), 0.003, 0.2),
    *_line("main", Part.MAIN, required=True),
    _length("main.length", Part.MAIN, "Length", ("yd", "m"), 0.5, 3000.0),
    *_worn("main", Part.MAIN),
    *_line("backing", Part.BACKING, required=False),
    _length("backing.length", Part.BACKING, "Length", ("yd", "m"), 0.5, 3000.0),
    Field("backing.knot", Part.BACKING, "Joined by", Holds.KNOT),
    *_line("leader", Part.LEADER, required=False),
    _length("leader.length", Part.LEADER, "Length", ("in", "cm"), 0.02, 60.0),
    Field("leader.knot", Part.LEADER, "Joined by", Holds.KNOT),
    *_worn("leader", Part.LEADER),
    Field("knots.lure", Part.KNOTS, "To the lure", Holds.KNOT),
    Field("knots.arbor", Part.KNOTS, "On the arbor", Holds.KNOT),
    _force("hardware.swivel", Part.KNOTS, "Swivel", 2500.0),
    _force("hardware.snap", Part.KNOTS, "Snap", 2500.0),
    _force("drag", Part.DRAG, "Drag set to", 1000.0),
    _length("fill.backing", Part.BACKING, "Backing wished for", ("yd", "m"), 0.5, 3000.0),
    _length("fill.main", Part.MAIN, "Main line wished for", ("yd", "m"), 0.5, 3000.0),
    _length("fill.lip_gap", Part.REEL, "Lip gap wished for", ("mm", "mm"), 0.0002, 0.05),
    _choice("water.kind", Part.WATER, "Water", WaterKind),
    Field("water.temperature", Part.WATER, "Temperature", Holds.QUANTITY, Dimension.TEMPERATURE,
          ("F", "C"), -2.0, 40.0),
    _length("water.clarity", Part.WATER, "Clear to", ("ft", "m"), 0.01, 60.0),
    _length("water.depth", Part.WATER, "Depth", ("ft", "m"), 0.05, 300.0),
    Field("water.current", Part.WATER, "Current", Holds.QUANTITY, Dimension.SPEED, ("mph", "m/s"), 0.0, 6.0),
    _choice("water.cover", Part.WATER, "Cover", Cover),
    _choice("water.pressure", Part.WATER, "Fish pressure", Pressure),
    _choice("water.wind", Part.WATER, "Wind", Wind),
    Field("water.air", Part.WATER, "Air", Holds.QUANTITY, Dimension.TEMPERATURE, ("F", "C"), -40.0, 55.0),
    _choice("from", Part.WATER, "Fishing from", Stand),
    _length("cast", Part.WATER, "Cast", ("yd", "m"), 0.3, 300.0),
    Field("fish.weight", Part.WATER, "Fish", Holds.QUANTITY, Dimension.MASS, ("lb", "kg"), 0.005, 200.0),
    _choice("fish.teeth", Part.WATER, "Toothed fish", FishTeeth),
)  # fmt: skip

BY_PATH: Mapping[str, Field] = {field.path: field for field in FIELDS}
GROUPS = (
    *("lure", "rod", "reel", "reel.spool", "main", "backing", "leader"),
    *("knots", "hardware", "fill", "water", "fish"),
)
