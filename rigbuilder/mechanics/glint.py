"""How much light a line throws back, and how strongly it bends what lies behind it."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require

WATER_INDEX = 1.333  # fresh water, yellow light, relative to air [1] PUBLISHED: refractiveindex.info
GAUSS_POINTS = 24  # over the width of the line; the average is then exact to 1e-6 of its value [1]


def normal_reflectance(*, line_index: ArrayLike, water_index: ArrayLike = WATER_INDEX) -> Array:
    """Light returned by a surface met head-on, [(n - nw) / (n + nw)]².

    Parameters
    ----------
    line_index : float or array
        Refractive index of the line: PVDF 1.42, nylon 1.53 to 1.58. [1]
    water_index : float or array
        Refractive index of the water. [1]

    Returns
    -------
    array
        Reflectance of one surface, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        An index below 1.

    References
    ----------
    PUBLISHED: Fresnel equations (Born & Wolf, Principles of Optics).
    """
    _require_indices(line_index=line_index, water_index=water_index)
    ratio = np.subtract(line_index, water_index) / np.add(line_index, water_index)
    return array(np.square(ratio))


def reflectance(
    *, line_index: ArrayLike, sine_of_incidence: ArrayLike, water_index: ArrayLike = WATER_INDEX
) -> Array:
    """Unpolarised light returned by a surface met at an angle.

    Parameters
    ----------
    line_index : float or array
        Refractive index of the line. [1]
    sine_of_incidence : float or array
        Sine of the angle between ray and the surface's normal. [1]
    water_index : float or array
        Refractive index of the water. [1]

    Returns
    -------
    array
        Reflectance of one surface, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        An index below 1 or a sine outside 0 to 1.

    Notes
    -----
    Where the line's index is below the water's, rays past the critical angle return wholly.

    References
    ----------
    PUBLISHED: Fresnel equations (Born & Wolf, Principles of Optics).
    """
    _require_indices(line_index=line_index, water_index=water_index)
    require(quantity="sine of the angle of incidence", value=sine_of_incidence, at_least=0.0, at_most=1.0)
    relative = np.divide(line_index, water_index)
    outside = np.sqrt(1.0 - np.square(sine_of_incidence))
    inside = np.sqrt(np.maximum(1.0 - np.square(np.divide(sine_of_incidence, relative)), 0.0))
    with np.errstate(invalid="ignore"):
        across = (outside - relative * inside) / (outside + relative * inside)
        along = (inside - relative * outside) / (inside + relative * outside)
        returned = (across**2 + along**2) / 2.0
    grazing = np.where(relative == 1.0, 0.0, 1.0)  # both rays along the surface: 0 / 0 above
    return np.where(np.isnan(returned), grazing, returned)


def cylinder_glint(*, line_index: ArrayLike, water_index: ArrayLike = WATER_INDEX) -> Array:
    """Light returned by a round line lit from the side, averaged over its width.

    Parameters
    ----------
    line_index : float or array
        Refractive index of the line. [1]
    water_index : float or array
        Refractive index of the water. [1]

    Returns
    -------
    array
        Mean reflectance of the lit surface, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        An index below 1.

    Notes
    -----
    Grazing edges return nearly everything whatever the material, so that nylon shows about
    twice, not five times, the glint of PVDF. A line that is not clear shows by other means.

    References
    ----------
    COMPUTED: Fresnel reflectance integrated over the width, sin i = offset / radius.
    """
    _require_indices(line_index=line_index, water_index=water_index)
    nodes, weights = np.polynomial.legendre.leggauss(GAUSS_POINTS)
    angle = (nodes + 1.0) * np.pi / 4.0  # offset = sin(angle): puts nodes where the edge is steep
    line, water = (array(index)[..., None] for index in (line_index, water_index))
    returned = reflectance(line_index=line, water_index=water, sine_of_incidence=np.sin(angle))
    return array((returned * np.cos(angle) * weights).sum(axis=-1) * np.pi / 4.0)


def focal_length_ratio(*, line_index: ArrayLike, water_index: ArrayLike = WATER_INDEX) -> Array:
    """Focal length of the line as a lens over its diameter, m / [4 (m - 1)] with m = n / nw.

    Parameters
    ----------
    line_index : float or array
        Refractive index of the line, above that of the water. [1]
    water_index : float or array
        Refractive index of the water. [1]

    Returns
    -------
    array
        Focal length in diameters, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        An index below 1, or a line that is not denser to light than the water.

    References
    ----------
    COMPUTED: paraxial cylinder lens.
    """
    _require_indices(line_index=line_index, water_index=water_index)
    relative = np.divide(line_index, water_index)
    require(quantity="refractive index of the line over that of the water", value=relative, above=1.0)
    return array(relative / (4.0 * (relative - 1.0)))


def _require_indices(*, line_index: ArrayLike, water_index: ArrayLike) -> None:
    require(quantity="refractive index of the line", value=line_index, at_least=1.0)
    require(quantity="refractive index of the water", value=water_index, at_least=1.0)
