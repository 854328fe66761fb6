"""Reels, rods, lures and hooks: limits of practice, and what no label carries."""

from rigbuilder.reference.ranges import INCH_M, LBF_N, OZ_KG, Range, RangeField, Span, SpanField
from rigbuilder.reference.rows import Row
from rigbuilder.reference.words import Action, HookClass, LineType, Power, ReelKind
from rigbuilder.sources import Kind, Source

_REFERENCE_MASS_KG = 0.010


class SpinningLimit(Row):
    """The stiffest line that a spinning reel of some sizes throws without springing off."""

    size: SpanField
    label: str
    nylon_max_lb: float
    fluorocarbon_max_lb: float
    braid_lb: SpanField
    spool_m: SpanField
    use: str

    def max_lb(self, line: LineType) -> float:
        """Return the largest label test [lb] of a line type that the size throws."""
        if line.is_braided:
            return self.braid_lb.high
        return self.fluorocarbon_max_lb if line is LineType.FLUOROCARBON else self.nylon_max_lb

    def max_n(self, line: LineType) -> float:
        """Return the largest label test [N] of a line type that the size throws."""
        return self.max_lb(line) * LBF_N


class CastingLimits(Row):
    """The thinnest line and lightest lure for casting reels."""

    braid_min_lb: float
    braid_min_shallow_lb: float
    nylon_min_lb: float
    nylon_min_shallow_lb: float
    big_bait_oz: float
    big_bait_braid_min_lb: float
    fluorocarbon_backlash_lb: float
    lure_min_oz: float
    lure_min_shallow_oz: float
    why: str


class ReelData(Row):
    """Typical dimensions, ratio and drag of one kind and size of reel."""

    reel: ReelKind
    size: str
    numbers: SpanField
    barrel_m: RangeField
    flange_m: RangeField
    width_m: RangeField
    capacity_nylon_12lb_m: RangeField
    ratio: RangeField
    drag_lb: RangeField
    mass_kg: RangeField

    @property
    def drag_n(self) -> Range:
        """Largest drag in newtons."""
        return self.drag_lb.scaled(LBF_N)


class WorkingLine(Row):
    """The least main line for one kind of fishing."""

    id: str
    length_yd: float

    @property
    def length_m(self) -> float:
        """The length in metres."""
        return self.length_yd * 36 * INCH_M


class PowerData(Row):
    """What a power word usually means; stiffness is from memory whatever the labels rest on."""

    power: Power
    stiffness_n_m: RangeField
    casting_line_lb: SpanField
    casting_lure_oz: SpanField
    spinning_line_lb: SpanField
    spinning_lure_oz: SpanField
    stiffness_kind: Kind

    @property
    def stiffness_source(self) -> Source:
        """How the stiffness is known."""
        return Source(self.stiffness_kind)

    def line_lb(self, reel: ReelKind) -> Span:
        """Return the usual line label [lb] of a rod for this kind of reel."""
        return self.casting_line_lb if reel is ReelKind.BAITCASTING else self.spinning_line_lb

    def lure_kg(self, reel: ReelKind) -> Span:
        """Return the usual lure label [kg] of a rod for this kind of reel."""
        label = self.casting_lure_oz if reel is ReelKind.BAITCASTING else self.spinning_lure_oz
        return label.scaled(OZ_KG)


class RodTable(Row):
    """Stiffness by power, length and action."""

    reference_length_m: float
    length_exponent: float
    action_factor: dict[Action, float]
    powers: tuple[PowerData, ...]

    def power(self, power: Power) -> PowerData:
        """Return the row of a power."""
        return next(row for row in self.powers if row.power is power)

    def stiffness_n_m(self, *, power: Power, length_m: float, action: Action = Action.FAST) -> Range:
        """Return tip force over tip travel [N/m] for a rod of this power, length [m] and action."""
        by_length = (self.reference_length_m / length_m) ** self.length_exponent
        return self.power(power).stiffness_n_m.scaled(by_length * self.action_factor[action])


class LureData(Row):
    """What no lure box says, by class of lure. Areas are drag coefficient times frontal area [m2].

    ``plain_hook`` marks rigs whose line is tied to a bare hook rather than to a lure's eye.
    """

    name: str
    submerged: RangeField
    drag_area_10g_m2: RangeField
    air_area_10g_m2: RangeField
    speed_m_s: RangeField
    dives: bool
    spins: bool
    trebles: int
    plain_hook: bool = False

    def drag_area_m2(self, mass_kg: float) -> Range:
        """Return drag coefficient times area in water [m2] for a lure of this mass [kg]."""
        return self.drag_area_10g_m2.scaled((mass_kg / _REFERENCE_MASS_KG) ** (2 / 3))

    def air_area_m2(self, mass_kg: float) -> Range:
        """Return drag coefficient times area in air [m2] for a lure of this mass [kg]."""
        return self.air_area_10g_m2.scaled((mass_kg / _REFERENCE_MASS_KG) ** (2 / 3))


class HookData(Row):
    """A class of hooks: the straight pull [N] that opens it, and usual sizes.

    ``split_ring_n`` is the pull that opens the split rings on which such hooks usually hang.
    """

    hook_class: HookClass
    opens_n: RangeField
    split_ring_n: RangeField | None = None
    usual_sizes: tuple[str, ...]
