"""Closed forms that the shape of a towed line tends to: for plain explanations and as checks."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require


def light_line_depth(
    *,
    pull_down_n: ArrayLike,
    drag_n: ArrayLike,
    broadside_n_m: ArrayLike,
    length_m: ArrayLike,
) -> Array:
    """Depth on a line so light and smooth that only drag across it counts.

    Depth grows only with the logarithm of the line out: the plain explanation,
    and a check on the integrator.

    Parameters
    ----------
    pull_down_n : float or array
        Downward pull of the lure, more than 0. [N]
    drag_n : float or array
        Drag of the lure. [N]
    broadside_n_m : float or array
        Drag of a metre of line square to the flow, constant coefficient, more than 0. [N/m]
    length_m : float or array
        Line in the water. [m]

    Returns
    -------
    array
        Depth of the lure below the point where the line enters the water. [m]

    Raises
    ------
    ImpossibleInput
        For a pull, broadside drag or length that is not positive.

    Notes
    -----
    Within −19 to +9 % of the full model for usual lures.

    References
    ----------
    DERIVED: cable equations without line weight and tangential drag.
    """
    require(quantity="downward pull of the lure in N", value=pull_down_n, above=0.0)
    require(quantity="drag of the line in N/m", value=broadside_n_m, above=0.0)
    require(quantity="line length in m", value=length_m, above=0.0)
    pull, drag = array(pull_down_n), array(drag_n)
    tension = np.hypot(pull, drag)
    length_of_bend = tension / array(broadside_n_m)
    at_lure = drag / pull
    return array(
        length_of_bend * (np.arcsinh(at_lure + array(length_m) / length_of_bend) - np.arcsinh(at_lure))
    )


def critical_angle(*, wet_weight_n_m: ArrayLike, broadside_n_m: ArrayLike) -> Array:
    """Angle to which a very long towed line settles.

    Parameters
    ----------
    wet_weight_n_m : float or array
        Weight in water; negative floats. [N/m]
    broadside_n_m : float or array
        Drag of a metre of line square to the flow, constant coefficient, more than 0. [N/m]

    Returns
    -------
    array
        Angle above the horizontal toward the rod; negative for a floating line. [rad]

    Raises
    ------
    ImpossibleInput
        For a broadside drag that is not positive.

    References
    ----------
    DERIVED: balance of weight and drag across the line; the critical angle of Pode 1951.
    """
    require(quantity="drag of the line in N/m", value=broadside_n_m, above=0.0)
    ratio = np.abs(array(wet_weight_n_m)) / (2.0 * array(broadside_n_m))
    # sqrt(1 + k²) − k, written so that nothing cancels for a heavy line
    cosine = 1.0 / (ratio + np.sqrt(1.0 + ratio**2))
    return array(np.sign(wet_weight_n_m) * np.arccos(cosine))
