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


def triple(rows: Sequence[tuple[float, ...]]) -> Array:
    """Return rows of (low, typical, high) as one triple."""
    return np.array(rows, dtype=float).reshape(-1, 3).T


def alike(low: float, typical: float, high: float, rigs: int) -> Array:
    """Return the triple of one range that holds for every rig."""
    return np.repeat([[low], [typical], [high]], rigs, axis=1)


def product(*factors: Array) -> Array:
    """Return the triple of a product of positive factors: what ``spread`` would give, in closed form."""
    typical = np.ones(factors[0].shape[1])
    up, down = np.zeros_like(typical), np.zeros_like(typical)
    for factor in factors:
        typical = typical * factor[1]
        steps = np.log(factor[::2] / factor[1])
        down, up = down + steps[0] ** 2, up + steps[1] ** 2
    return np.stack([typical * np.exp(-np.sqrt(down)), typical, typical * np.exp(np.sqrt(up))])


def ordered(value: Array) -> Array:
    """Return a triple whose ends may be crossed or lie on one side of its middle as a proper one."""
    return np.stack([value.min(axis=0), value[1], value.max(axis=0)])


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
    table = np.empty((len(results), ends, rigs))
    for row, result in zip(table, results.values(), strict=True):
        row[:] = result
    if not moving:
        return {name: exactly(rows[0], rigs) for name, rows in zip(results, table, strict=True)}
    columns = np.empty((len(results), 3, rigs))
    # Results that are positive throughout are counted in their logarithms, apart from the others.
    positive = table.min(axis=(1, 2)) > 0.0
    for some in (positive, ~positive):
        if some.any():
            columns[some] = _ranges(table[some], len(moving))
    return dict(zip(results, columns, strict=True))


def _ranges(table: Array, moving: int) -> Array:
    """Return (results, 3, rigs) from (results, ends, rigs), whose first end has every input typical."""
    sides = np.moveaxis(table[:, 1:].reshape(len(table), moving, 2, -1), 0, 2)
    found = quadrature(typical=table[:, 0], ends=sides)
    return np.stack([found.low, found.typical, found.high], axis=1)
