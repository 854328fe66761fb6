"""The columns of a batch: groups of figures, each computed for all rigs when first asked for."""

from collections.abc import Mapping, Sequence

from rigbuilder.mechanics.arrays import Array
from rigbuilder.model.rig import Rig
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import Range
from rigbuilder.reference.techniques import Technique
from rigbuilder.review.facts import Facts, Link
from rigbuilder.review.figuring.chain import OwnKnots
from rigbuilder.review.figuring.dragging import dragging, strength
from rigbuilder.review.figuring.group import Column, GroupFunction
from rigbuilder.review.figuring.inputs import INPUTS, entering
from rigbuilder.review.figuring.outside import remarks
from rigbuilder.review.figuring.resting import coiling, hanging
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.seeing import seeing
from rigbuilder.review.figuring.spooling import spooling
from rigbuilder.review.figuring.striking import striking
from rigbuilder.review.figuring.surging import surging
from rigbuilder.review.figuring.throwing import throwing
from rigbuilder.review.figuring.towing import dropping, towing

_SPOOL = (
    *("room_m3", "used_m3", "spool_holds_m", "reach_m", "main_wound_m", "backing_m", "lip_gap_m"),
    *("fill_share", "main_turns", "backing_turns", "main_mass_kg", "backing_mass_kg", "retrieve_m"),
    *("fill_diameter_m", "core_diameter_m"),
)
_DRAG = (
    *("drag_n", "drag_on_scale_n", "drag_worst_n", "drag_share", "drag_ceiling_n", "drag_recommended_n"),
    *("rod_limit_n", "reel_limit_n"),
)
_LINES = (
    *("main_diameter_m", "leader_diameter_m", "backing_diameter_m"),
    *("main_straight_n", "leader_straight_n", "chain_n"),
)
GROUPS: Mapping[GroupFunction, tuple[str, ...]] = {
    strength: _LINES,
    spooling: _SPOOL,
    dragging: _DRAG,
    striking: ("hook_force_n", "hook_share", "tug_share"),
    surging: ("peak_force_n", "peak_share"),
    hanging: ("nose_pull_n", "nose_share"),
    coiling: ("coil_strain", "straighten_n"),
    towing: ("depth_m", "layback_m"),
    dropping: ("drop_s",),
    throwing: ("cast_distance_m", "cast_share"),
    seeing: ("glint_ratio", "sight_m"),
    entering: tuple(INPUTS),
}
"""Which figures each group gives."""

_GROUP_OF: Mapping[str, GroupFunction] = {name: group for group, names in GROUPS.items() for name in names}


class Batch:
    """The figures of many rigs, in columns (``facts.Columns``)."""

    def __init__(
        self, rigs: Sequence[Rig], techniques: Sequence[Technique], reference: Reference, own: OwnKnots
    ) -> None:
        self.rows = Rows(rigs, techniques, reference, own)
        self._columns: dict[str, Column] = {}
        self._tables: dict[str, list[Range | None]] = {}

    def triple(self, name: str) -> Array:
        """Return one figure of all rows, computing its group when it is first asked for."""
        return self._column(name).triple

    def value(self, name: str, row: int) -> Range | None:
        """Return one figure of one rig, ``None`` where the rig has none."""
        column = self._column(name)
        if not column.there[row]:
            return None
        low, typical, high = column.triple[:, row].tolist()
        return Range(low, typical, high)  # which refuses what is not finite or not in order

    def links(self, row: int) -> tuple[Link, ...]:
        """Return the links of one rig's chain, from the hook upwards."""
        return self.rows.chain.links(row)

    def remarks(self, row: int) -> tuple[str, ...]:
        """Return what must be said where a formula was used outside its range."""
        return remarks(self.rows, row)

    def compute_all(self) -> None:
        """Compute every figure now."""
        for name in Facts.names():
            self._column(name)

    def _column(self, name: str) -> Column:
        if name not in self._columns:
            found = _GROUP_OF[name](self.rows, self.triple)
            self._columns.update(found)
        return self._columns[name]
