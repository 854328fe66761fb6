"""How far a line can be seen through the water: a ranking, with distances within a factor of three."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require

SECCHI_SUM = 8.69  # (c + K) times Secchi depth [1] MEMORY: Tyler 1968
SECCHI_DIFFUSE = 1.7  # K times Secchi depth [1] MEMORY: Poole & Atkins 1929
BLACK_TARGET = (
    4.8  # range of a large black target times c [1] PUBLISHED: Hou et al. 2007, Opt. Express 15:2791
)
SECCHI_SPREAD = 1.5  # beam attenuation from a Secchi depth is known within times or divided by this [1]
# PUBLISHED: Spratte et al. 2021, J. Exp. Biol. 224:jeb243068
SUNFISH_ACUITY = (  # (Weber contrast [1], smallest angle [deg])
    (1.0, 0.17),
    (0.67, 0.34),
    (0.41, 0.42),
)


def attenuation_from_secchi(*, secchi_depth_m: ArrayLike) -> Array:
    """Beam attenuation from how deep a white disc is seen, c = (8.69 - 1.7) / Z.

    Parameters
    ----------
    secchi_depth_m : float or array
        Depth at which a white disc vanishes: the clarity of the water. [m]

    Returns
    -------
    array
        Beam attenuation, shape of the input. [1/m]

    Raises
    ------
    ImpossibleInput
        A depth that is not positive.

    Notes
    -----
    Clarity 0.5 to 8 m; within a factor of 1.5 either way, worse in very clear or very turbid water.

    References
    ----------
    MEMORY: Tyler 1968 (c + K) and Poole & Atkins 1929 (K).
    """
    require(quantity="clarity of the water in m", value=secchi_depth_m, above=0.0)
    return array((SECCHI_SUM - SECCHI_DIFFUSE) / array(secchi_depth_m))


def diffuse_attenuation(*, secchi_depth_m: ArrayLike) -> Array:
    """Attenuation of daylight with depth, K = 1.7 / Z.

    Parameters
    ----------
    secchi_depth_m : float or array
        Depth at which a white disc vanishes. [m]

    Returns
    -------
    array
        Diffuse attenuation, shape of the input. [1/m]

    Raises
    ------
    ImpossibleInput
        A depth that is not positive.

    References
    ----------
    MEMORY: Poole & Atkins 1929.
    """
    require(quantity="clarity of the water in m", value=secchi_depth_m, above=0.0)
    return array(SECCHI_DIFFUSE / array(secchi_depth_m))


def contrast(*, inherent_contrast: ArrayLike, attenuation_1_m: ArrayLike, distance_m: ArrayLike) -> Array:
    """Contrast left after a distance through water, C0 exp(-c r).

    Parameters
    ----------
    inherent_contrast : float or array
        Contrast seen at no distance. [1]
    attenuation_1_m : float or array
        Beam attenuation c on a level view; c + K looking down. [1/m]
    distance_m : float or array
        Distance. [m]

    Returns
    -------
    array
        Contrast, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        A negative input.

    References
    ----------
    PUBLISHED: Duntley; Preisendorfer 1986, Limnol. Oceanogr. 31:909 (abstract).
    """
    require(quantity="contrast at no distance", value=inherent_contrast, at_least=0.0)
    require(quantity="attenuation of the water in 1/m", value=attenuation_1_m, at_least=0.0)
    require(quantity="distance in m", value=distance_m, at_least=0.0)
    left = np.exp(-np.multiply(attenuation_1_m, distance_m))
    return array(np.multiply(inherent_contrast, left))


def black_target_range(*, attenuation_1_m: ArrayLike) -> Array:
    """How far a large black target shows on a level view, 4.8 / c.

    Parameters
    ----------
    attenuation_1_m : float or array
        Beam attenuation. [1/m]

    Returns
    -------
    array
        Distance, shape of the input. [m]

    Raises
    ------
    ImpossibleInput
        An attenuation that is not positive.

    References
    ----------
    PUBLISHED: Hou et al. 2007, Opt. Express 15:2791.
    """
    require(quantity="attenuation of the water in 1/m", value=attenuation_1_m, above=0.0)
    return array(BLACK_TARGET / array(attenuation_1_m))


def resolvable_distance(*, diameter_m: ArrayLike, smallest_angle_rad: ArrayLike) -> Array:
    """Distance at which a line is as wide as the smallest angle that an eye resolves, d / theta.

    Parameters
    ----------
    diameter_m : float or array
        Line diameter. [m]
    smallest_angle_rad : float or array
        Smallest angle of the fish's eye: a sunfish 0.17 degrees (0.13 to 0.32) at full contrast. [rad]

    Returns
    -------
    array
        Distance, shape of the inputs broadcast together. [m]

    Raises
    ------
    ImpossibleInput
        A diameter or angle that is not positive.

    References
    ----------
    PUBLISHED: Spratte et al. 2021, J. Exp. Biol. 224:jeb243068 (acuity).
    """
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    require(quantity="smallest angle of the eye in rad", value=smallest_angle_rad, above=0.0)
    return array(np.divide(diameter_m, smallest_angle_rad))


def detection_distance(
    *,
    diameter_m: ArrayLike,
    smallest_angle_rad: ArrayLike,
    inherent_contrast: ArrayLike,
    threshold_contrast: ArrayLike,
    attenuation_1_m: ArrayLike,
) -> Array:
    """Distance at which a long line is still noticed, though too thin to be resolved.

    Solves C0 d / (theta r) exp(-c r) = C_T:  r = W(c C0 d / (theta C_T)) / c.

    Parameters
    ----------
    diameter_m : float or array
        Line diameter. [m]
    smallest_angle_rad : float or array
        Smallest angle of the fish's eye. [rad]
    inherent_contrast : float or array
        Contrast of the line at no distance; not published for any line. [1]
    threshold_contrast : float or array
        Smallest contrast that the eye notices; not published for bass. [1]
    attenuation_1_m : float or array
        Beam attenuation of the water. [1/m]

    Returns
    -------
    array
        Distance, shape of the inputs broadcast together. [m]

    Raises
    ------
    ImpossibleInput
        An input that is not positive (contrast at no distance may be 0).

    Notes
    -----
    A factor of three either way: for ranking lines and waters only.

    References
    ----------
    DERIVED: same structure as the visual range of Aksnes & Utne 1997, Sarsia 82:137.
    """
    near_m = resolvable_distance(diameter_m=diameter_m, smallest_angle_rad=smallest_angle_rad)
    require(quantity="contrast at no distance", value=inherent_contrast, at_least=0.0)
    require(quantity="smallest contrast noticed", value=threshold_contrast, above=0.0)
    require(quantity="attenuation of the water in 1/m", value=attenuation_1_m, above=0.0)
    reach = near_m * np.divide(inherent_contrast, threshold_contrast)
    return array(_lambert_w(array(np.multiply(reach, attenuation_1_m))) / array(attenuation_1_m))


def _lambert_w(argument: Array) -> Array:
    """Solution w of w exp(w) = argument >= 0: Newton's method on w + ln w = ln argument."""
    positive = np.maximum(argument, 1e-300)
    logarithm = np.log(positive)
    guess = np.log1p(positive)
    for _ in range(5):  # quadratic: 1e-12 of w after four steps for arguments up to 1e12
        guess = guess * (1.0 + logarithm - np.log(guess)) / (1.0 + guess)
    return np.where(argument > 0.0, guess, 0.0)
