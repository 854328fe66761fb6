"""Japanese line sizes: numbers for nylon-like line by diameter, PE numbers for braid by mass."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.braid import TEX_KG_M
from rigbuilder.mechanics.errors import require
from rigbuilder.sources import FROM_MEMORY, Kind, Source

SIZE_ONE_DIAMETER_M = 0.165e-3
"""Standard diameter of size No. 1 [m]; PUBLISHED: JAFS 2010, quoted at second hand."""

PE_ONE_KG_M = 200.0 / 9.0 * TEX_KG_M
"""Mass of PE No. 1, 200 denier = 22.22 tex [kg/m]; PUBLISHED: JAFS, quoted at second hand."""

_JAFS = Source(Kind.PUBLISHED, "standard diameters of fishing line", "JAFS 2010, quoted at second hand")


@dataclass(frozen=True, slots=True)
class StandardSize:
    """One row of the table of standard diameters."""

    number: float
    diameter_m: float
    source: Source


STANDARD_SIZES: tuple[StandardSize, ...] = tuple(
    StandardSize(number=number, diameter_m=millimetres * 1e-3, source=source)
    for number, millimetres, source in (
        (0.2, 0.074, FROM_MEMORY),
        (0.3, 0.090, FROM_MEMORY),
        (0.4, 0.104, _JAFS),
        (0.5, 0.117, FROM_MEMORY),
        (0.6, 0.128, _JAFS),
        (0.8, 0.148, _JAFS),
        (1.0, 0.165, _JAFS),
        (1.2, 0.185, _JAFS),
        (1.5, 0.205, _JAFS),
        (2.0, 0.235, _JAFS),
        (2.5, 0.260, _JAFS),
        (3.0, 0.285, _JAFS),
        (3.5, 0.310, FROM_MEMORY),
        (4.0, 0.330, _JAFS),
        (5.0, 0.370, FROM_MEMORY),
        (6.0, 0.405, _JAFS),
        (7.0, 0.435, FROM_MEMORY),
        (8.0, 0.470, _JAFS),
        (10.0, 0.520, _JAFS),
        (12.0, 0.570, FROM_MEMORY),
        (14.0, 0.620, _JAFS),
        (16.0, 0.660, FROM_MEMORY),
        (18.0, 0.700, _JAFS),
        (20.0, 0.740, FROM_MEMORY),
    )
)


def size_diameter(*, size: ArrayLike) -> Array:
    """Diameter of a Japanese size number by its law, 0.165 √N mm.

    Parameters
    ----------
    size : float or array
        Size number, more than 0; 0.4 to 20 is checked. [1]

    Returns
    -------
    array
        Diameter, same shape. [m]

    Raises
    ------
    ImpossibleInput
        For a size that is not positive.

    Notes
    -----
    Within 2.5 % of the standard diameters; the law means equal mass per number.

    References
    ----------
    DERIVED: law of equal mass through size No. 1; PUBLISHED: JAFS 2010 for that size.
    """
    require(quantity="size number", value=size, above=0.0)
    return array(SIZE_ONE_DIAMETER_M * np.sqrt(array(size)))


def size_from_diameter(*, diameter_m: ArrayLike) -> Array:
    """Japanese size number of a diameter, by the law.

    Parameters
    ----------
    diameter_m : float or array
        Diameter, more than 0. [m]

    Returns
    -------
    array
        Size number, not rounded to a standard one, same shape. [1]

    Raises
    ------
    ImpossibleInput
        For a diameter that is not positive.

    References
    ----------
    DERIVED: inverse of :func:`size_diameter`.
    """
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    return array((array(diameter_m) / SIZE_ONE_DIAMETER_M) ** 2)


def standard_diameter(*, size: float) -> StandardSize:
    """Diameter of a Japanese size number as the standard has it, or by the law between its rows.

    Parameters
    ----------
    size : float
        Size number, more than 0. [1]

    Returns
    -------
    StandardSize
        Number, diameter and how it is known: a row of the standard, from memory, or computed. [m]

    Raises
    ------
    ImpossibleInput
        For a size that is not positive.

    References
    ----------
    PUBLISHED: JAFS 2010, quoted at second hand; some rows from MEMORY, as each says.
    """
    for row in STANDARD_SIZES:
        if abs(row.number - size) < 1e-9:
            return row
    computed = Source(Kind.COMPUTED, f"0.165 mm × √{size:g}, law of equal mass per size number")
    return StandardSize(number=size, diameter_m=float(size_diameter(size=size)), source=computed)


def pe_linear_density(*, size: ArrayLike) -> Array:
    """Mass per metre of a braid of a PE size number.

    Parameters
    ----------
    size : float or array
        PE size number, more than 0. [1]

    Returns
    -------
    array
        Mass per metre with coating and pigment, same shape. [kg/m]

    Raises
    ------
    ImpossibleInput
        For a size that is not positive.

    References
    ----------
    PUBLISHED: JAFS, 200 denier for each number, quoted at second hand.
    """
    require(quantity="PE size number", value=size, above=0.0)
    return array(PE_ONE_KG_M * array(size))


def pe_size(*, linear_density_kg_m: ArrayLike) -> Array:
    """PE size number of a braid of a mass per metre.

    Parameters
    ----------
    linear_density_kg_m : float or array
        Mass per metre, more than 0. [kg/m]

    Returns
    -------
    array
        Size number, not rounded to a standard one, same shape. [1]

    Raises
    ------
    ImpossibleInput
        For a mass that is not positive.

    References
    ----------
    DERIVED: inverse of :func:`pe_linear_density`.
    """
    require(quantity="mass per metre in kg/m", value=linear_density_kg_m, above=0.0)
    return array(array(linear_density_kg_m) / PE_ONE_KG_M)
