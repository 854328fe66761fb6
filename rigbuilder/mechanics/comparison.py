"""One cast, depth or pull against another."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require


def compared_with(*, distance_m: ArrayLike, reference_m: ArrayLike) -> Array:
    """Distance as a per cent difference from a reference cast.

    Parameters
    ----------
    distance_m : float or array
        Distance of the cast. [m]
    reference_m : float or array
        Distance of the reference, such as the technique's usual rig. [m]

    Returns
    -------
    array
        Difference, +10 for one tenth farther, shape of the inputs broadcast together. [%]

    Raises
    ------
    ImpossibleInput
        A negative distance or a reference that is not positive.

    References
    ----------
    COMPUTED: ratio.
    """
    require(quantity="cast in m", value=distance_m, at_least=0.0)
    require(quantity="reference cast in m", value=reference_m, above=0.0)
    return array(100.0 * (np.divide(distance_m, reference_m) - 1.0))
