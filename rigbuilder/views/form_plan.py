"""The form as data: sections in the order in which a rig is read, from the lure back to the angler."""

from dataclasses import dataclass
from enum import Enum, auto

from rigbuilder.model.fields import BY_PATH, Holds, Part


class Kind(Enum):
    """How a field is shown."""

    TEXT = auto()
    LABEL = auto()
    CHOICE = auto()
    SEARCH = auto()
    SEGMENTS = auto()


@dataclass(frozen=True, slots=True)
class Row:
    """One field of the form. ``wide`` rows have their label above; ``short`` renames long options."""

    path: str
    basic: bool = False
    segments: bool = False
    wide: bool = False
    label: str = ""
    short: tuple[tuple[str, str], ...] = ()

    @property
    def kind(self) -> Kind:
        """Return how the field is shown, from what it holds."""
        holds = BY_PATH[self.path].holds
        if self.segments:
            return Kind.SEGMENTS
        if holds is Holds.LABEL:
            return Kind.LABEL
        if holds in (Holds.TECHNIQUE, Holds.KNOT):
            return Kind.SEARCH
        return Kind.CHOICE if holds is Holds.CHOICE else Kind.TEXT

    @property
    def title(self) -> str:
        """Return the label of the row."""
        return self.label or BY_PATH[self.path].label


@dataclass(frozen=True, slots=True)
class Section:
    """One section: its fields, the parts whose reasons it counts, what of it may be pinned."""

    key: str
    title: str
    parts: frozenset[Part]
    rows: tuple[Row, ...]
    group: str = ""
    pins: tuple[str, ...] = ()
    open_at_first: bool = True

    @property
    def basic(self) -> tuple[Row, ...]:
        """Return the rows that are always in sight while the section is open."""
        return tuple(row for row in self.rows if row.basic)

    @property
    def further(self) -> tuple[Row, ...]:
        """Return the rows that are folded away at first."""
        return tuple(row for row in self.rows if not row.basic)


def _line(group: str) -> tuple[Row, ...]:
    return (
        Row(f"{group}.diameter"),
        Row(f"{group}.convention"),
        Row(f"{group}.condition"),
        Row(f"{group}.measured.diameter", label="Measured"),
        Row(f"{group}.measured.strength", label="Breaks at"),
    )


SECTIONS: tuple[Section, ...] = (
    Section(
        "lure",
        "Lure",
        frozenset({Part.LURE}),
        (
            Row("lure.technique", basic=True),
            Row("lure.weight", basic=True),
            Row("presentation", basic=True, segments=True, wide=True, short=(("heavy cover", "cover"),)),
            Row("lure.trailer"),
            Row("lure.sinker"),
            Row("lure.hook"),
            Row("lure.buoyancy", segments=True, wide=True),
            Row("lure.depth"),
        ),
    ),
    Section(
        "rod",
        "Rod",
        frozenset({Part.ROD}),
        (
            Row("rod.label", basic=True, wide=True, label="As printed on the rod"),
            Row("rod.length"),
            Row("rod.power"),
            Row("rod.action"),
            Row("rod.line"),
            Row("rod.line_for", segments=True),
            Row("rod.lure"),
        ),
    ),
    Section(
        "reel",
        "Reel",
        frozenset({Part.REEL}),
        (
            Row("reel.label", basic=True, wide=True, label="As printed on the reel"),
            Row("reel.kind"),
            Row("reel.capacity"),
            Row("reel.ratio"),
            Row("reel.drag"),
            Row("reel.retrieve"),
            Row("reel.size"),
            Row("reel.spool.arbor", label="Bare spool"),
            Row("reel.spool.rim", label="Rim"),
            Row("reel.spool.width", label="Width inside"),
            Row("fill.lip_gap", label="Gap wished"),
        ),
    ),
    Section(
        "main",
        "Main line",
        frozenset({Part.MAIN}),
        (
            Row("main.type", basic=True),
            Row("main.test", basic=True),
            Row("main.length"),
            Row("fill.main", label="Wished for"),
            *_line("main"),
        ),
    ),
    Section(
        "backing",
        "Backing",
        frozenset({Part.BACKING}),
        (
            Row("backing.type", basic=True),
            Row("backing.test", basic=True),
            Row("backing.knot", basic=True),
            Row("backing.length"),
            Row("fill.backing", label="Wished for"),
            Row("backing.diameter"),
            Row("backing.convention"),
        ),
        group="backing",
        pins=("backing",),
        open_at_first=False,
    ),
    Section(
        "leader",
        "Leader",
        frozenset({Part.LEADER}),
        (
            Row("leader.type", basic=True),
            Row("leader.test", basic=True),
            Row("leader.length"),
            Row("leader.knot"),
            *_line("leader"),
        ),
        group="leader",
        pins=("leader",),
    ),
    Section(
        "knots",
        "Knots and drag",
        frozenset({Part.KNOTS, Part.DRAG}),
        (
            Row("knots.lure", basic=True),
            Row("drag", basic=True),
            Row("knots.arbor"),
            Row("hardware.swivel"),
            Row("hardware.snap"),
        ),
        pins=("knots", "drag"),
    ),
    Section(
        "water",
        "Water, cast and fish",
        frozenset({Part.WATER}),
        (
            Row("water.cover", basic=True),
            Row("cast", basic=True),
            Row("water.clarity"),
            Row("water.depth"),
            Row("water.pressure", segments=True, wide=True),
            Row("water.kind"),
            Row("water.temperature"),
            Row("water.current"),
            Row("water.wind", segments=True, wide=True),
            Row("water.air"),
            Row("from", segments=True),
            Row("fish.weight"),
            Row("fish.teeth"),
        ),
    ),
)

SECTION_OF = {row.path: section for section in SECTIONS for row in section.rows}
