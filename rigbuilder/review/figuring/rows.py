"""The rigs of a batch laid out in rows: their lines in section, their settings, and their usual rigs.

Behind the rigs asked for stands, once for each distinct setting, the technique's usual rig
on the same day and at the same distance: what is told as a share of the usual rig is a
division of two rows.
"""

from collections.abc import Sequence
from functools import cached_property

import numpy as np

from rigbuilder.mechanics import section, water
from rigbuilder.mechanics.arrays import Array
from rigbuilder.model.rig import Line, Rig
from rigbuilder.reference.load import Reference
from rigbuilder.reference.techniques import Technique
from rigbuilder.review.figuring.chain import Chains, OwnKnots, chains
from rigbuilder.review.figuring.given import Given, given
from rigbuilder.review.figuring.relative import OnSpool, beside_label, drawn_together, read_by_test
from rigbuilder.review.figuring.sections import Sections, sections
from rigbuilder.review.figuring.spread import exactly, ordered
from rigbuilder.review.figuring.usual import usual_rig


class Rows:
    """Everything that the groups of figures start from; every array has a column for each row."""

    def __init__(
        self, rigs: Sequence[Rig], techniques: Sequence[Technique], reference: Reference, own: OwnKnots
    ) -> None:
        self._own, self.reference = own, reference
        partners, usual = _partners(rigs, techniques, reference)
        self.rigs = (*rigs, *partners)
        self.techniques = (*techniques, *(reference.techniques[rig.technique] for rig in partners))
        self.count = len(self.rigs)
        self.usual = np.concatenate([usual + len(rigs), np.arange(len(rigs), self.count)])
        """Row of each row's usual rig; a usual rig is its own."""
        self.has_leader = np.array([rig.leader is not None for rig in self.rigs])
        self.has_backing = np.array([rig.backing is not None for rig in self.rigs])
        self.has_drag = np.array([rig.drag_n is not None for rig in self.rigs])

    @cached_property
    def given(self) -> Given:
        """What the rigs and the tables say besides the lines."""
        return given(self.rigs, self.techniques, self.reference)

    @cached_property
    def _sections(self) -> Sections:
        mains: list[Line] = [rig.main for rig in self.rigs]
        ends: list[Line] = [rig.leader or rig.main for rig in self.rigs]
        backings: list[Line] = [rig.backing or rig.main for rig in self.rigs]
        lines = [*mains, *ends, *backings, *self.given.spool_line]
        distinct = {id(line): line for line in lines}
        place = {key: index for index, key in enumerate(distinct)}
        found = sections(list(distinct.values()), self.reference)
        return found.at(np.array([place[id(line)] for line in lines], dtype=int))

    @cached_property
    def main(self) -> Sections:
        """Main lines."""
        return self._sections.at(slice(0, self.count))

    @cached_property
    def end(self) -> Sections:
        """The lines that are tied to the lures: leaders, or main lines without one."""
        return self._sections.at(slice(self.count, 2 * self.count))

    @cached_property
    def backing(self) -> Sections:
        """Backing lines; the main line stands where there is none."""
        return self._sections.at(slice(2 * self.count, 3 * self.count))

    @cached_property
    def label_diameter_m(self) -> Array:
        """Diameter of the line that the reel's label counts in."""
        return self._sections.diameter_m[:, 3 * self.count :][:, self.given.index]

    @cached_property
    def on_spool(self) -> OnSpool:
        """The label's line, main line and backing as they stand to each other on the spool."""
        mains: list[Line] = [rig.main for rig in self.rigs]
        backings: list[Line] = [rig.backing or rig.main for rig in self.rigs]
        labels: list[Line] = [self.given.spool_line[place] for place in self.given.index]
        labelled = read_by_test(self.given.spool_line)[self.given.index]
        of_main, of_backing = (labelled & read_by_test(lines) for lines in (mains, backings))
        return OnSpool(
            label_m=drawn_together(self.label_diameter_m, of_main),
            main_m=beside_label(self.main.diameter_m, mains, labels, of_main, self.reference),
            backing_m=beside_label(self.backing.diameter_m, backings, labels, of_backing, self.reference),
        )

    @cached_property
    def chain(self) -> Chains:
        """The chains from hook to arbor."""
        return chains(
            self.rigs, self.techniques, self.main.wet_break_n, self.end.wet_break_n, self.reference, self._own
        )

    @cached_property
    def leader_m(self) -> Array:
        """Length of the leader [m], 0 where there is none."""
        return exactly([(rig.leader.length_m or 0.0) if rig.leader else 0.0 for rig in self.rigs], self.count)

    @cached_property
    def water_density(self) -> Array:
        """Density of the water [kg/m³]."""
        temperature, salt = self.given["temperature_c"][1], self.given["salinity_g_kg"][1]
        return water.density(temperature_c=temperature, salinity_g_kg=salt)

    @cached_property
    def water_viscosity(self) -> Array:
        """Viscosity of the water [Pa s]."""
        temperature, salt = self.given["temperature_c"][1], self.given["salinity_g_kg"][1]
        return water.viscosity(temperature_c=temperature, salinity_g_kg=salt)

    @cached_property
    def wet_weight_n_m(self) -> Array:
        """Weight of a metre of wetted main line in water [N/m]; negative floats."""
        return _wet_weight(self.main, self.water_density)

    @cached_property
    def end_wet_weight_n_m(self) -> Array:
        """Weight of a metre of the wetted line at the lure in water [N/m]; negative floats."""
        return _wet_weight(self.end, self.water_density)


def _wet_weight(line: Sections, water_density: Array) -> Array:
    """Return the weight of wetted line in water [N/m], mass and density moving as one."""
    weight = section.wet_weight(
        linear_density_kg_m=line.mass_kg_m,
        density_kg_m3=line.density_kg_m3,
        water_density_kg_m3=water_density,
    )
    return ordered(weight)


def _partners(
    rigs: Sequence[Rig], techniques: Sequence[Technique], reference: Reference
) -> tuple[list[Rig], np.ndarray[tuple[int, ...], np.dtype[np.int_]]]:
    """Return the usual rigs that the batch needs, and which of them each rig is held against."""
    partners: list[Rig] = []
    places: dict[tuple[object, ...], int] = {}
    index = []
    for rig, technique in zip(rigs, techniques, strict=True):
        key = (technique.id, rig.cast_m, id(rig.water), id(rig.fish))
        if key not in places:
            places[key] = len(partners)
            usual = usual_rig(technique.id, reference)
            same_day = {"cast_m": rig.cast_m or usual.cast_m, "water": rig.water, "fish": rig.fish}
            partners.append(usual.model_copy(update=same_day))
        index.append(places[key])
    return partners, np.array(index, dtype=int)
