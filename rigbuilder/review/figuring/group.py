"""A group of figures: columns that one formula gives together."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from rigbuilder.mechanics.arrays import Array
from rigbuilder.review.figuring.rows import Rows

Known = Callable[[str], Array]
"""Gives the triple of any figure by its name, computing its group when it is first asked for."""


@dataclass(frozen=True, slots=True, eq=False)
class Column:
    """One figure of all rows: its triple, and which rows have it."""

    triple: Array
    there: NDArray[np.bool_]


Group = dict[str, Column]
GroupFunction = Callable[[Rows, Known], Group]


def columns(triples: dict[str, Array], there: NDArray[np.bool_] | None = None) -> Group:
    """Return triples as columns, all of them there or all for the same rows."""
    return {
        name: Column(value, np.ones(value.shape[1], dtype=bool) if there is None else there)
        for name, value in triples.items()
    }


def missing(names: tuple[str, ...], rigs: int) -> Group:
    """Return columns that no rig has."""
    return {name: Column(np.zeros((3, rigs)), np.zeros(rigs, dtype=bool)) for name in names}
