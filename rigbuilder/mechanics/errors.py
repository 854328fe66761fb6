"""What mechanics says when an input cannot exist."""

from math import isfinite

import numpy as np
from numpy.typing import ArrayLike, NDArray


class ImpossibleInput(ValueError):  # noqa: N818 - named for what a person did, not for the programmer
    """An input that no real line, lure, rod, reel or water can have.

    ``quantity`` is the plain name with its unit, ``value`` what was found and
    ``limits`` what is possible, in words ("more than 0").
    """

    def __init__(self, quantity: str, value: float, limits: str) -> None:
        super().__init__(quantity, value, limits)
        self.quantity = quantity
        self.value = value
        self.limits = limits

    def __str__(self) -> str:
        return f"The {self.quantity} cannot be {self.value:g}: it must be {self.limits}."


def require(
    *,
    quantity: str,
    value: ArrayLike,
    above: float | None = None,
    at_least: float | None = None,
    at_most: float | None = None,
    below: float | None = None,
) -> None:
    """Refuse values that are not finite or lie outside what is possible.

    Parameters
    ----------
    quantity : str
        Plain name of the quantity with its unit, as a person reads it. [text]
    value : float or array
        What was given, any shape. [unit of the quantity]
    above, at_least, at_most, below : float, optional
        Exclusive and inclusive bounds; a missing one does not bind. [unit of the quantity]

    Returns
    -------
    None
        Nothing when every value is possible. [none]

    Raises
    ------
    ImpossibleInput
        Naming the first value that is not possible.

    References
    ----------
    DERIVED: comparison with the bounds given by the caller.
    """
    # Almost every call passes: the two ends tell so without an array for each bound.
    values = np.atleast_1d(np.asarray(value, dtype=float))
    if not values.size or _holds(
        float(values.min()), float(values.max()), above=above, at_least=at_least, at_most=at_most, below=below
    ):
        return
    possible: NDArray[np.bool_] = np.isfinite(values)
    if above is not None:
        possible &= values > above
    if at_least is not None:
        possible &= values >= at_least
    if at_most is not None:
        possible &= values <= at_most
    if below is not None:
        possible &= values < below
    limits = _limits_in_words(above=above, at_least=at_least, at_most=at_most, below=below)
    raise ImpossibleInput(quantity, float(values[~possible][0]), limits)


def _holds(
    lowest: float,
    highest: float,
    *,
    above: float | None,
    at_least: float | None,
    at_most: float | None,
    below: float | None,
) -> bool:
    """Tell whether all values between two ends are possible; not-a-number, which is its own end, is not."""
    return (
        isfinite(lowest)
        and isfinite(highest)
        and (above is None or lowest > above)
        and (at_least is None or lowest >= at_least)
        and (at_most is None or highest <= at_most)
        and (below is None or highest < below)
    )


def _limits_in_words(**bounds: float | None) -> str:
    phrases = {"above": "more than", "at_least": "at least", "at_most": "at most", "below": "less than"}
    said = [f"{phrases[name]} {bound:g}" for name, bound in bounds.items() if bound is not None]
    return " and ".join(said) if said else "a finite number"
