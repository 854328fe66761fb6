"""The fixed vocabularies of the trade, exactly as they stand on cards."""

from enum import StrEnum


class LineType(StrEnum):
    """What a line is made of; wire occurs as leader only."""

    NYLON = "nylon"
    COPOLYMER = "copolymer"
    FLUOROCARBON = "fluorocarbon"
    BRAID = "braid"
    FUSED_BRAID = "fused braid"
    HYBRID = "hybrid"
    LEAD_CORE = "lead-core"
    WIRE = "wire"

    @property
    def is_braided(self) -> bool:
        """Whether the line is of gel-spun polyethylene, laid or fused."""
        return self is _BRAID or self is _FUSED_BRAID

    @property
    def is_single_strand(self) -> bool:
        """Whether the line is one extruded plastic strand."""
        return self in (LineType.NYLON, LineType.COPOLYMER, LineType.FLUOROCARBON, LineType.HYBRID)


# Looked up once: the line chart asks a hundred thousand times in a second, and enum look-ups are slow.
_BRAID, _FUSED_BRAID = LineType.BRAID, LineType.FUSED_BRAID


class Rank(StrEnum):
    """How well practice thinks a line type suits a technique."""

    FIRST_CHOICE = "first choice"
    WORKS = "works"
    POOR = "poor"
    NEVER = "never"


class Presentation(StrEnum):
    """How a lure is worked."""

    FLOATING = "floating"
    SINKING = "sinking"
    FINESSE = "finesse"
    HEAVY_COVER = "heavy cover"


class Power(StrEnum):
    """How much load bends a rod, lightest first."""

    ULTRALIGHT = "ultralight"
    LIGHT = "light"
    MEDIUM_LIGHT = "medium light"
    MEDIUM = "medium"
    MEDIUM_HEAVY = "medium heavy"
    HEAVY = "heavy"
    EXTRA_HEAVY = "extra heavy"
    EXTRA_EXTRA_HEAVY = "extra extra heavy"


class Action(StrEnum):
    """Where along its length a rod bends first, slowest first."""

    SLOW = "slow"
    MODERATE = "moderate"
    MODERATE_FAST = "moderate fast"
    FAST = "fast"
    EXTRA_FAST = "extra fast"


class ReelKind(StrEnum):
    """The three kinds of reel."""

    BAITCASTING = "baitcasting"
    SPINNING = "spinning"
    SPINCAST = "spincast"


class Cover(StrEnum):
    """What stands in the water where the lure goes."""

    OPEN = "open"
    SPARSE_GRASS = "sparse grass"
    THICK_GRASS = "thick grass"
    MATTED_GRASS = "matted grass"
    LILY_PADS = "lily pads"
    WOOD = "wood"
    ROCK = "rock"
    DOCKS = "docks"


class Pressure(StrEnum):
    """How hard the water is fished."""

    LOW = "low"
    MEDIUM = "medium"
    HIGH = "high"


class Wind(StrEnum):
    """How hard it blows."""

    CALM = "calm"
    BREEZE = "breeze"
    STRONG = "strong"


class Condition(StrEnum):
    """What state the line is in."""

    FRESH = "fresh"
    USED = "used"
    WORN = "worn"
    KINKED = "kinked"


class WaterKind(StrEnum):
    """How salty the water is."""

    FRESH = "fresh"
    BRACKISH = "brackish"
    SALT = "salt"


class Stand(StrEnum):
    """Where the angler stands."""

    SHORE = "shore"
    BOAT = "boat"


class FishTeeth(StrEnum):
    """Whether fish that bite through line are about."""

    UNKNOWN = "unknown"
    NONE = "none"
    PRESENT = "present"


class HookClass(StrEnum):
    """Kinds of hook by how hard they are to set and to open."""

    LIGHT_TREBLE = "light treble"
    HEAVY_TREBLE = "heavy treble"
    LIGHT_WIRE_SINGLE = "light wire single"
    MEDIUM_SINGLE = "medium single"
    HEAVY_SINGLE = "heavy single"
    WEEDLESS_DOUBLE = "weedless double"

    @property
    def is_treble(self) -> bool:
        """Whether the lure hangs on trebles."""
        return self in (HookClass.LIGHT_TREBLE, HookClass.HEAVY_TREBLE)


class Rest(StrEnum):
    """What a lure does when it is left alone."""

    FLOATS = "floats"
    SUSPENDS = "suspends"
    SINKS = "sinks"


class RetrieveLoad(StrEnum):
    """How the line is loaded while the lure is worked."""

    STEADY = "steady"
    STOP_GO = "stop-go"
    VERTICAL = "vertical"
    DRAG = "drag"
    PITCH = "pitch"


class LeaderNeed(StrEnum):
    """Whether practice wants a leader."""

    NONE = "none"
    OPTIONAL = "optional"
    USUAL = "usual"
    USUAL_ON_BRAID = "usual on braid"
    REQUIRED = "required"


class BraidDirect(StrEnum):
    """Whether braid may be tied straight to the lure."""

    YES = "yes"
    ACCEPTABLE = "acceptable"
    DISCOURAGED = "discouraged"
    NO = "no"


class JointPlace(StrEnum):
    """Where along the line a knot is tied."""

    TERMINAL = "terminal"
    LOOP = "loop"
    SWIVEL = "swivel"
    LINE_TO_LEADER = "line to leader"
    LEADER_SECTIONS = "leader sections"
    DOUBLING = "doubling"
    BACKING = "backing"
    ARBOR = "arbor"
    WIRE = "wire"
    DROPPER = "dropper"
    STOP = "stop"


class GuidePassage(StrEnum):
    """How a knot gets through the rod's guides."""

    NOT_MEANT = "not meant"
    POOR = "poor"
    FAIR = "fair"
    GOOD = "good"
    BEST = "best"


class LogEvent(StrEnum):
    """What may be noted on a card about its line."""

    FILLED = "filled"
    CUT_BACK = "cut back"
    KINK_FOUND = "kink found"
    CONDITIONED = "conditioned"
    REVERSED = "reversed"
    BROKE = "broke"
    RETIED = "retied"
    OUTING = "outing"


class Ring(StrEnum):
    """Core: bass lure fishing. Second ring: everything else that comes in as data."""

    CORE = "core"
    SECOND = "second ring"


class LabelConvention(StrEnum):
    """What a printed test promises."""

    US_TEST = "US test"
    JAPANESE_SIZE = "Japanese size"
    CLASS = "class"
    EUROPEAN = "European"
