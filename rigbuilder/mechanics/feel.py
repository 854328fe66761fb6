"""How much of a tug comes through a line that sags.

A slack line answers a tug by changing its curve before it stretches. The
equivalent modulus puts both into one spring.
"""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require

TAUT_LIMIT = 1.0 / 12.0  # sag / span up to which the equivalent modulus holds [1]; Appl. Sci. 2020 10:6263


def sag_ratio(*, weight_n_m: ArrayLike, span_m: ArrayLike, tension_n: ArrayLike) -> Array:
    """Sag of a level line as a fraction of its span, w L / (8 T).

    Parameters
    ----------
    weight_n_m : float or array
        Weight per length in the medium around the line; negative when it floats up. [N/m]
    span_m : float or array
        Level distance between the ends. [m]
    tension_n : float or array
        Level pull in the line. [N]

    Returns
    -------
    array
        Sag over span without sign, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        A span or tension that is not positive.

    References
    ----------
    COMPUTED: parabola of a shallow line.
    """
    require(quantity="weight of the line in N/m", value=weight_n_m)
    require(quantity="span in m", value=span_m, above=0.0)
    require(quantity="line tension in N", value=tension_n, above=0.0)
    return array(np.abs(weight_n_m) * np.divide(span_m, tension_n) / 8.0)


def is_slack(*, weight_n_m: ArrayLike, span_m: ArrayLike, tension_n: ArrayLike) -> NDArray[np.bool_]:
    """Whether the line hangs too deep for the equivalent modulus: "slack line, no feel".

    Parameters
    ----------
    weight_n_m : float or array
        Weight per length in the medium around the line. [N/m]
    span_m : float or array
        Level distance between the ends. [m]
    tension_n : float or array
        Level pull in the line. [N]

    Returns
    -------
    array of bool
        True where sag / span reaches one twelfth, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        A span or tension that is not positive.

    References
    ----------
    PUBLISHED: limit of the equivalent modulus to taut cables, Appl. Sci. 2020 10:6263.
    """
    return sag_ratio(weight_n_m=weight_n_m, span_m=span_m, tension_n=tension_n) >= TAUT_LIMIT


def ernst_ratio(
    *, axial_stiffness_n: ArrayLike, weight_n_m: ArrayLike, span_m: ArrayLike, tension_n: ArrayLike
) -> Array:
    """Stiffness of a sagging line over that of the straight one, 1 / [1 + (w L)² EA / (12 T³)].

    Parameters
    ----------
    axial_stiffness_n : float or array
        EA of the line. [N]
    weight_n_m : float or array
        Weight per length in the medium around the line; the sign does not matter. [N/m]
    span_m : float or array
        Level distance between the ends. [m]
    tension_n : float or array
        Level pull in the line before the tug. [N]

    Returns
    -------
    array
        Ratio between 0 and 1, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        A stiffness, span or tension that is not positive.

    Notes
    -----
    Valid for small tugs on a line with sag / span below 1/12, there within 5 %
    of the elastic catenary; :func:`is_slack` tells where it ends.

    References
    ----------
    PUBLISHED: Ernst 1965, equivalent modulus of a cable (read second-hand); limits in
    Appl. Sci. 2020 10:6263 and Materials 2021 14:5502.
    """
    require(quantity="axial stiffness of the line in N", value=axial_stiffness_n, above=0.0)
    require(quantity="weight of the line in N/m", value=weight_n_m)
    require(quantity="span in m", value=span_m, above=0.0)
    require(quantity="line tension in N", value=tension_n, above=0.0)
    weight_n = np.multiply(weight_n_m, span_m)
    softness = np.multiply(weight_n**2, axial_stiffness_n) / (12.0 * array(tension_n) ** 3)
    return array(1.0 / (1.0 + softness))


def tug_share(
    *,
    axial_stiffness_n: ArrayLike,
    length_m: ArrayLike,
    weight_n_m: ArrayLike,
    tension_n: ArrayLike,
    rod_stiffness_n_m: ArrayLike,
    friction_n: ArrayLike = 0.0,
    tug_m: ArrayLike = 0.01,
) -> Array:
    """Share of a small tug felt at the rod, compared with a line that neither gives nor sags.

    The rod alone would answer a tug x with k_rod x. Through the line it answers
    with the series stiffness of rod and sagging line, less the friction on the way.

    Parameters
    ----------
    axial_stiffness_n : float or array
        EA of the line. [N]
    length_m : float or array
        Length of line out. [m]
    weight_n_m : float or array
        Weight per length in the medium around the line. [N/m]
    tension_n : float or array
        Level pull in the line before the tug. [N]
    rod_stiffness_n_m : float or array
        Tip stiffness of the rod. [N/m]
    friction_n : float or array
        Force that water and guides keep from a small tug. [N]
    tug_m : float or array
        How far the lure is moved. [m]

    Returns
    -------
    array
        Share between 0 and 1, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        A stiffness, length, tension or tug that is not positive, or a negative friction.

    References
    ----------
    DERIVED: springs in series with the equivalent modulus of Ernst 1965; ranking only.
    """
    require(quantity="rod stiffness in N/m", value=rod_stiffness_n_m, above=0.0)
    require(quantity="tug in m", value=tug_m, above=0.0)
    require(quantity="friction in N", value=friction_n, at_least=0.0)
    ratio = ernst_ratio(
        axial_stiffness_n=axial_stiffness_n,
        weight_n_m=weight_n_m,
        span_m=length_m,
        tension_n=tension_n,
    )
    line = np.divide(axial_stiffness_n, length_m) * ratio
    whole = 1.0 / (1.0 / line + 1.0 / array(rod_stiffness_n_m))
    felt_n = np.maximum(whole * array(tug_m) - array(friction_n), 0.0)
    return array(felt_n / np.multiply(rod_stiffness_n_m, tug_m))
