"""The one kind of number that mechanics computes with: double precision, any shape."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

Array = NDArray[np.float64]

STANDARD_GRAVITY_M_S2 = 9.80665
"""Standard acceleration of free fall [m/s²]; exact by definition (CGPM 1901)."""


def array(value: ArrayLike) -> Array:
    """Return the value as an array of doubles; a float becomes an array without dimensions."""
    return np.asarray(value, dtype=np.float64)
