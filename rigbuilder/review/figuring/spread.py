"""Ranges of many rigs at once: triples, and how those of a result follow from those of its inputs.

A *triple* is an array of shape (3, rigs): low, typical and high of one quantity for
every rig of a batch. The method is that of ``mechanics.uncertainty``; only the work is
arranged otherwise: all the moved inputs are laid on one more axis, so that a formula
is called once for a whole batch and all its ends.
"""

from collections.abc import Callable, Mapping, Sequence

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array
from rigbuilder.mechanics.uncertainty import quadrature

Triples = dict[str, Array]
Formula = Callable[..., Mapping[str, Array]]


def exactly(value: ArrayLike, rigs: int) -> Array:
    """Return the triple of a value that is known: one for all rigs, or one for each."""
    return np.broadcast_to(np.asarray(value, dtype=float), (3, rigs))


def triple(rows: Sequence[tuple[float, float, float]]) -> Array:
    """Return rows of (low, typical, high) as one triple."""
    return np.array(rows, dtype=float).reshape(-1, 3).T


def alike(low: float, typical: float, high: float, rigs: int) -> Array:
    """Return the triple of one range that holds for every rig."""
    return np.repeat([[low], [typical], [high]], rigs, axis=1)


def spread(formula: Formula, inputs: Mapping[str, Array]) -> Triples:
    """Return the triples of all results of a formula.

    ``formula`` takes its inputs by keyword, each of shape (rigs,) or (ends, rigs), and
    returns arrays that broadcast to (ends, rigs). ``inputs`` are triples.
    """
    moving = [name for name, value in inputs.items() if (value[0] != value[2]).any()]
    ends = 1 + 2 * len(moving)
    laid: dict[str, Array] = {name: value[1] for name, value in inputs.items()}
    for place, name in enumerate(moving):
        value = inputs[name]
        stack = np.repeat(value[1][None], ends, axis=0)
        stack[1 + 2 * place : 3 + 2 * place] = value[::2]
        laid[name] = stack
    results = formula(**laid)
    rigs = next(iter(inputs.values())).shape[1]
    table = np.stack([np.broadcast_to(result, (ends, rigs)) for result in results.values()], axis=1)
    if not moving:
        return {name: exactly(row, rigs) for name, row in zip(results, table[0], strict=True)}
    found = quadrature(typical=table[0], ends=table[1:].reshape(len(moving), 2, *table.shape[1:]))
    columns = np.stack([found.low, found.typical, found.high], axis=1)
    return dict(zip(results, columns, strict=True))
