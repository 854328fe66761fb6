"""Techniques: what practice puts on the rod for each way of fishing a lure."""

from collections.abc import Mapping

from rigbuilder.reference.ranges import INCH_M, LBF_N, OZ_KG, Span, SpanField
from rigbuilder.reference.rows import Frozen, Row
from rigbuilder.reference.words import (
    Action,
    BraidDirect,
    HookClass,
    LeaderNeed,
    LineType,
    Power,
    Presentation,
    Rank,
    ReelKind,
    Rest,
    RetrieveLoad,
    Ring,
)


class LinePractice(Frozen):
    """How one line type suits a technique as main line; ``derived_default`` marks inferred ranks."""

    rank: Rank
    test_lb: SpanField | None = None
    reason: str
    derived_default: bool = False

    @property
    def test_n(self) -> Span | None:
        """The usual label tests in newtons."""
        return None if self.test_lb is None else self.test_lb.scaled(LBF_N)


class LeaderPractice(Frozen):
    """The leader that practice uses: ``need`` on this technique's usual line, ``need_on_braid`` on braid."""

    need: LeaderNeed
    need_on_braid: LeaderNeed
    materials: tuple[LineType, ...] = ()
    test_lb: SpanField | None = None
    length_m: SpanField | None = None
    stronger_than_main: bool = False
    below_float: bool = False
    short_fluorocarbon_ok_m: float | None = None
    note: str = ""

    @property
    def test_n(self) -> Span | None:
        """The usual leader label tests in newtons."""
        return None if self.test_lb is None else self.test_lb.scaled(LBF_N)

    def need_on(self, main: LineType) -> LeaderNeed:
        """Return how much a leader is wanted on a main line of this type.

        What is usual on braid is optional on a single strand; what is required
        (teeth, float, bottom rig) is required on anything.
        """
        if main.is_braided:
            return self.need_on_braid
        return LeaderNeed.OPTIONAL if self.need is LeaderNeed.USUAL_ON_BRAID else self.need


class RodPractice(Frozen):
    """The rod: powers and actions in ascending order, and what its label usually says."""

    powers: tuple[Power, ...]
    actions: tuple[Action, ...]
    length_in: SpanField
    line_lb: SpanField
    lure_oz: SpanField

    @property
    def length_m(self) -> Span:
        """Usual rod lengths in metres."""
        return self.length_in.scaled(INCH_M)

    @property
    def line_n(self) -> Span:
        """Usual line label in newtons."""
        return self.line_lb.scaled(LBF_N)

    @property
    def lure_kg(self) -> Span:
        """Usual lure label in kilograms."""
        return self.lure_oz.scaled(OZ_KG)


class ReelPractice(Frozen):
    """The reel: kinds in order of use, sizes as the trade counts them per kind, gear ratio."""

    kinds: tuple[ReelKind, ...]
    sizes: Mapping[ReelKind, SpanField]
    ratio: SpanField


class DragPractice(Frozen):
    """How the drag is set; ``percent`` of the weakest label, ``None`` where it is locked or set by feel."""

    percent: SpanField | None = None
    drag_lb: SpanField
    locked: bool = False
    note: str = ""

    @property
    def drag_n(self) -> Span:
        """Usual drag settings in newtons."""
        return self.drag_lb.scaled(LBF_N)


class BaseRig(Frozen):
    """The line that practice would put on first; the whole card ships in ``usual/``."""

    main: LineType
    main_lb: float
    leader: LineType | None = None
    leader_lb: float | None = None
    leader_m: float | None = None
    lure_knot: str
    leader_knot: str | None = None


class Technique(Row):
    """One technique with everything that practice says about its tackle.

    ``trolled``: the line is let out behind a boat and never cast off the spool.
    """

    id: str
    name: str
    title: str
    aliases: tuple[str, ...] = ()
    ring: Ring
    species: tuple[str, ...]
    toothed: bool = False
    trolled: bool = False
    presentations: tuple[Presentation, ...]
    hook: str
    hook_class: HookClass
    rest: Rest
    retrieve: str
    retrieve_load: tuple[RetrieveLoad, ...]
    lure_class: str
    lure_oz: SpanField
    distance_m: SpanField
    depth_m: SpanField
    fish_kg: SpanField
    lines: Mapping[LineType, LinePractice]
    leader: LeaderPractice
    braid_direct: BraidDirect
    braid_direct_why: str = ""
    rod: RodPractice
    reel: ReelPractice
    drag: DragPractice
    base: BaseRig
    mistakes: tuple[str, ...] = ()
    disagreements: tuple[str, ...] = ()

    @property
    def lure_kg(self) -> Span:
        """Usual total lure weight in kilograms."""
        return self.lure_oz.scaled(OZ_KG)

    @property
    def presentation(self) -> Presentation:
        """The usual presentation."""
        return self.presentations[0]

    @property
    def is_surface(self) -> bool:
        """Whether the lure is worked on the surface."""
        return Presentation.FLOATING in self.presentations

    @property
    def names(self) -> tuple[str, ...]:
        """Every name under which a card may call the technique."""
        return (self.name, *self.aliases)
