"""A rig: what a card means, in SI units, frozen.

Whatever a card leaves unsaid and nothing can stand for is ``None`` here; what
stands for it openly is put in by ``assume``. Names carry their unit.
"""

from datetime import date

from rigbuilder.model.base import Frozen, NotNegative, Positive
from rigbuilder.reference.ranges import SpanField
from rigbuilder.reference.words import (
    Action,
    Condition,
    Cover,
    FishTeeth,
    LabelConvention,
    LineType,
    LogEvent,
    Power,
    Presentation,
    Pressure,
    ReelKind,
    Rest,
    WaterKind,
    Wind,
)


class LineSize(Frozen):
    """A size number as printed: a braid's ``PE`` number or a nylon-scale ``No.``."""

    scale: str
    number: Positive


class Price(Frozen):
    """What a spool of line costs: ``amount`` in ``currency`` for ``length_m`` metres."""

    amount: NotNegative
    currency: str
    length_m: Positive


class Line(Frozen):
    """A length of line by its label: strengths [N], diameters and lengths [m]."""

    type: LineType
    test_n: Positive | None = None
    size: LineSize | None = None
    diameter_m: Positive | None = None
    length_m: Positive | None = None
    condition: Condition | None = None
    convention: LabelConvention | None = None
    measured_diameter_m: Positive | None = None
    measured_strength_n: Positive | None = None
    price: Price | None = None


class Leader(Line):
    """The length between main line and lure, with the knot that joins it on."""

    knot: str | None = None


class Backing(Line):
    """Filler line under the main line, with the knot that joins it to the main line."""

    knot: str | None = None


class Lure(Frozen):
    """The lure and what leaves the rod tip with it: masses [kg], depth it runs at [m]."""

    technique: str
    weight_kg: Positive
    trailer_kg: NotNegative | None = None
    sinker_kg: NotNegative | None = None
    hook: str | None = None
    buoyancy: Rest | None = None
    depth_m: SpanField | None = None

    @property
    def total_kg(self) -> float:
        """Return the mass that the rod casts [kg]."""
        return self.weight_kg + (self.trailer_kg or 0.0) + (self.sinker_kg or 0.0)


class Rod(Frozen):
    """A rod by its label: length [m], line range [N], lure range [kg]."""

    length_m: Positive | None = None
    power: Power | None = None
    action: Action | None = None
    line_n: SpanField | None = None
    line_for_braid: bool = False
    lure_kg: SpanField | None = None


class Capacity(Frozen):
    """One capacity printed on a reel: so many metres of this test, diameter or size of line."""

    length_m: Positive
    test_n: Positive | None = None
    diameter_m: Positive | None = None
    size: LineSize | None = None
    line: LineType | None = None


class Spool(Frozen):
    """A spool by caliper: across the bare arbor, across the rim, inside width [m]."""

    arbor_m: Positive | None = None
    rim_m: Positive | None = None
    width_m: Positive | None = None


class FillWish(Frozen):
    """How the spool is wished to be filled: lengths and lip gap [m]; what is ``None`` may follow.

    ``taped`` spools grip braid without backing; ``season_refills`` is how often a year the
    main line is renewed.
    """

    backing_m: Positive | None = None
    main_m: Positive | None = None
    lip_gap_m: Positive | None = None
    taped: bool = False
    season_refills: Positive | None = None


class Reel(Frozen):
    """A reel by its label: retrieve per turn [m], greatest drag [N]."""

    kind: ReelKind
    capacity: tuple[Capacity, ...] = ()
    ratio: Positive | None = None
    retrieve_m: Positive | None = None
    drag_n: Positive | None = None
    size: str | None = None
    spool: Spool = Spool()


class Knots(Frozen):
    """The knot at the lure and the one at the arbor, by their names in the reference."""

    lure: str | None = None
    arbor: str | None = None


class Hardware(Frozen):
    """Strength printed on the swivel and the snap [N]; ``None`` where there is none."""

    swivel_n: Positive | None = None
    snap_n: Positive | None = None


class Water(Frozen):
    """The water and the weather: temperatures [°C], depths [m], current [m/s]."""

    kind: WaterKind | None = None
    temperature_c: float | None = None
    clarity_m: Positive | None = None
    depth_m: Positive | None = None
    current_mps: NotNegative | None = None
    cover: Cover | None = None
    pressure: Pressure | None = None
    wind: Wind | None = None
    air_c: float | None = None


class Fish(Frozen):
    """The fish that is meant: mass [kg] and whether toothed fish are about."""

    mass_kg: Positive | None = None
    teeth: FishTeeth | None = None


class Silenced(Frozen):
    """One rule that this card asks not to hear, and why."""

    rule: str
    why: str


class LogEntry(Frozen):
    """Something that was done to the line or happened to it."""

    on: date
    what: LogEvent
    note: str = ""


class Rig(Frozen):
    """One rod, rigged: everything that a review looks at.

    ``said`` holds the paths of the fields that the card states or that its
    labels state for it; ``pinned`` the groups (leader, knots, backing, drag)
    that keep their place whatever line is tried.
    """

    name: str
    presentation: Presentation
    lure: Lure
    rod: Rod
    reel: Reel
    main: Line
    backing: Backing | None = None
    leader: Leader | None = None
    knots: Knots = Knots()
    hardware: Hardware = Hardware()
    drag_n: Positive | None = None
    water: Water = Water()
    from_shore: bool | None = None
    cast_m: Positive | None = None
    fish: Fish = Fish()
    fill: FillWish = FillWish()
    silenced: tuple[Silenced, ...] = ()
    log: tuple[LogEntry, ...] = ()
    said: frozenset[str] = frozenset()
    pinned: frozenset[str] = frozenset()

    @property
    def technique(self) -> str:
        """Return the id of the technique."""
        return self.lure.technique

    def says(self, path: str) -> bool:
        """Tell whether the person said what stands at ``path``, or it was assumed."""
        return path in self.said
