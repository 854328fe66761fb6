"""Ratios to the usual rig: what both rigs share moves both, and cancels."""

import numpy as np

from rigbuilder.mechanics.arrays import Array
from rigbuilder.review.figuring.rows import Rows


class Twins:
    """What the usual rigs bring to a ratio: where it is of the same kind, it moves with the rig's own.

    ``inputs`` are the usual rigs' triples, named ``usual_…``.
    """

    def __init__(self, rows: Rows, own: dict[str, Array]) -> None:
        usual = rows.usual
        pairs = [(rig, rows.rigs[other]) for rig, other in zip(rows.rigs, usual, strict=True)]
        self._typical = {name: value[1] for name, value in own.items()}
        self._same = {name: (value == value[:, usual]).all(axis=0) for name, value in own.items()}
        self._same["axial_n"] = np.array([rig.main.type is twin.main.type for rig, twin in pairs])
        self._same["end_axial_n"] = np.array(
            [(rig.leader or rig.main).type is (twin.leader or twin.main).type for rig, twin in pairs]
        )
        self.inputs = {
            f"usual_{name}": np.where(self._same[name], value[1, usual], value[:, usual])
            for name, value in own.items()
        }

    def follow(self, name: str, own: Array, usual: Array) -> Array:
        """Return the usual rig's value, moved as the rig's own is moved where both are of one kind."""
        return np.where(self._same[name], usual * own / self._typical[name], usual)
