"""The figures that rules read, each low / typical / high.

The figures of many rigs live together in columns; a :class:`Facts` is the view on one
rig's row of them. Columns that belong together are computed for all rigs at once when
the first of them is read.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Protocol, Self, overload

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import Range


@dataclass(frozen=True, slots=True)
class Link:
    """One link of the chain from hook to arbor: what it bears [N] and how likely it goes first."""

    part: Part
    name: str
    strength_n: Range
    goes_first: float


class Columns(Protocol):
    """Where the figures of a batch of rigs live."""

    def value(self, name: str, row: int) -> Range | None:
        """Return one figure of one rig, ``None`` where the rig has none."""
        ...

    def links(self, row: int) -> tuple[Link, ...]:
        """Return the links of one rig's chain, from the hook upwards."""
        ...

    def remarks(self, row: int) -> tuple[str, ...]:
        """Return what must be said where a formula was used outside its range."""
        ...


class Figure:
    """A figure that a rig may lack. SI units; the name carries them."""

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name

    @overload
    def __get__(self, facts: None, owner: type) -> Self: ...
    @overload
    def __get__(self, facts: "Facts", owner: type) -> Range | None: ...
    def __get__(self, facts: "Facts | None", owner: type) -> "Self | Range | None":
        if facts is None:
            return self
        return facts.columns.value(self.name, facts.row)


class SureFigure:
    """A figure that every rig has. SI units; the name carries them."""

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name

    @overload
    def __get__(self, facts: None, owner: type) -> Self: ...
    @overload
    def __get__(self, facts: "Facts", owner: type) -> Range: ...
    def __get__(self, facts: "Facts | None", owner: type) -> "Self | Range":
        if facts is None:
            return self
        found = facts.columns.value(self.name, facts.row)
        if found is None:
            raise LookupError(f"every rig has {self.name}, yet this one lacks it")
        return found


@dataclass(frozen=True, slots=True, eq=False)
class Facts:
    """The figures of one rig. ``None`` where the card leaves too little to compute one.

    What each figure means, its formula and its sources stand in ``figuring.table.FACTS``.
    """

    columns: Columns
    row: int

    main_diameter_m = SureFigure()
    leader_diameter_m = Figure()
    backing_diameter_m = Figure()
    main_straight_n = SureFigure()
    leader_straight_n = Figure()
    chain_n = SureFigure()
    rod_limit_n = SureFigure()
    reel_limit_n = SureFigure()

    drag_n = Figure()
    drag_on_scale_n = Figure()
    drag_worst_n = Figure()
    drag_share = Figure()
    drag_ceiling_n = SureFigure()
    drag_recommended_n = SureFigure()

    room_m3 = SureFigure()
    spool_holds_m = SureFigure()
    reach_m = SureFigure()
    main_wound_m = SureFigure()
    backing_m = Figure()
    lip_gap_m = SureFigure()
    fill_share = SureFigure()
    main_turns = SureFigure()
    backing_turns = Figure()
    main_mass_kg = SureFigure()
    backing_mass_kg = Figure()
    retrieve_m = SureFigure()

    hook_force_n = SureFigure()
    hook_share = SureFigure()
    peak_force_n = Figure()
    peak_share = Figure()
    tug_share = SureFigure()

    nose_pull_n = Figure()
    nose_share = Figure()
    coil_strain = SureFigure()
    straighten_n = SureFigure()

    depth_m = Figure()
    layback_m = Figure()
    drop_s = Figure()
    cast_distance_m = SureFigure()
    cast_share = SureFigure()
    glint_ratio = Figure()
    sight_m = SureFigure()

    @classmethod
    def names(cls) -> Iterator[str]:
        """Return the names of all figures, in the order in which they stand here."""
        return (name for name, value in vars(cls).items() if isinstance(value, Figure | SureFigure))

    @property
    def links(self) -> tuple[Link, ...]:
        """Return the links of the chain, from the hook upwards."""
        return self.columns.links(self.row)

    @property
    def weakest(self) -> Link:
        """Return the link that is most likely to go first."""
        return max(self.links, key=lambda link: link.goes_first)

    @property
    def remarks(self) -> tuple[str, ...]:
        """Return plain sentences for the figures whose formula was used outside its range."""
        return self.columns.remarks(self.row)
