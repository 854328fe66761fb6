"""The figures that rules read, each low / typical / high."""

from dataclasses import dataclass

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import Range


@dataclass(frozen=True, slots=True)
class Link:
    """One link of the chain from hook to arbor: what it bears [N] and how likely it goes first."""

    part: Part
    name: str
    strength_n: Range
    goes_first: float


@dataclass(frozen=True, slots=True)
class Facts:
    """The figures of one rig. ``None`` where the card leaves too little to compute it."""

    main_diameter_m: Range
    leader_diameter_m: Range | None
    main_straight_n: Range
    leader_straight_n: Range | None
    links: tuple[Link, ...]
    chain_n: Range
    drag_n: Range | None = None
    hook_force_n: Range | None = None
    hook_share: Range | None = None
    peak_force_n: Range | None = None
    nose_pull_n: Range | None = None
    straighten_n: Range | None = None
    coil_strain: Range | None = None
    spool_holds_m: Range | None = None
    backing_m: Range | None = None
    lip_gap_m: Range | None = None
    depth_m: Range | None = None
    cast_share: Range | None = None

    @property
    def weakest(self) -> Link:
        """Return the link that is most likely to go first."""
        return max(self.links, key=lambda link: link.goes_first)
