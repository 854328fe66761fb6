"""Forces of flowing water or air on a thin round line.

Drag across a line is much larger than along it; both follow the Reynolds
number of the flow across the line.
"""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require
from rigbuilder.mechanics.validity import row

LEAST_NUSSELT = 0.5
"""Axial friction far down a line that moves along itself, in units of πμV [1].

DERIVED: the laminar solution for a cylinder started along its axis gives 0.68
to 0.48 between 1 m and 10 m behind its start.
"""


def reynolds(
    *, speed_m_s: ArrayLike, diameter_m: ArrayLike, density_kg_m3: ArrayLike, viscosity_pa_s: ArrayLike
) -> Array:
    """Reynolds number of the flow past a line.

    Parameters
    ----------
    speed_m_s : float or array
        Speed of the flow; its sign is ignored. [m/s]
    diameter_m : float or array
        Outside diameter. [m]
    density_kg_m3 : float or array
        Density of water or air. [kg/m³]
    viscosity_pa_s : float or array
        Dynamic viscosity of water or air. [Pa s]

    Returns
    -------
    array
        Reynolds number, broadcast shape. [1]

    References
    ----------
    PUBLISHED: definition, any textbook of fluid mechanics.
    """
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    require(quantity="viscosity in Pa s", value=viscosity_pa_s, above=0.0)
    return array(density_kg_m3) * np.abs(array(speed_m_s)) * array(diameter_m) / array(viscosity_pa_s)


def sucker_brauer_drag(*, reynolds: ArrayLike) -> Array:
    """Drag coefficient across a cylinder after Sucker and Brauer.

    Parameters
    ----------
    reynolds : float or array
        Reynolds number, more than 0; the fit serves 1e-4 to 2e5. [1]

    Returns
    -------
    array
        Drag coefficient on the area length × diameter, same shape. [1]

    Notes
    -----
    Good below Re 20, up to 9 % high between 40 and 200.

    References
    ----------
    PUBLISHED: Sucker and Brauer 1975, as given in White 1991 and by Nellis and
    Klein, Introduction to Engineering Heat Transfer, Cambridge 2021.
    """
    re = array(reynolds)
    return array(1.18 + 6.8 * re**-0.89 + 1.96 * re**-0.5 - 0.0004 * re / (1.0 + 3.64e-7 * re**2))


def cheng_drag(*, reynolds: ArrayLike) -> Array:
    """Drag coefficient across a cylinder after Cheng.

    Parameters
    ----------
    reynolds : float or array
        Reynolds number, more than 0 and up to 2e5. [1]

    Returns
    -------
    array
        Drag coefficient on the area length × diameter, same shape. [1]

    Notes
    -----
    Good above Re 20, up to 20 % high below 2.

    References
    ----------
    PUBLISHED: Cheng 2013, Journal of Hydraulic Engineering 139:602.
    """
    re = array(reynolds)
    return array(11.0 * re**-0.75 - 0.9 * np.expm1(-1000.0 / re) - 1.2 * np.expm1(-((re / 4500.0) ** 0.7)))


def drag_coefficient(*, reynolds: ArrayLike) -> Array:
    """Drag coefficient across a smooth, straight, resting line: the one to use.

    Parameters
    ----------
    reynolds : float or array
        Reynolds number of the flow across the line; 0.1 to 1000 is checked. [1]

    Returns
    -------
    array
        Drag coefficient on the area length × diameter, same shape. [1]

    Notes
    -----
    The lower of the two fits, which cross near Re 19: within 7 % of a
    Navier–Stokes solution below Re 20, 10 % high at 40. A line that hums
    (above Re 47) may have half as much again. Beyond the range of a fit its
    value at the bound is taken, which keeps still water finite.

    References
    ----------
    PUBLISHED: Sucker and Brauer 1975; Cheng 2013. DERIVED: the choice of the
    lower one, from a numerical solution at Re 0.5 to 40.
    """
    require(quantity="Reynolds number", value=reynolds, at_least=0.0)
    fits = (("sucker_brauer_drag", sucker_brauer_drag), ("cheng_drag", cheng_drag))
    first, second = (fit(reynolds=row(f"cylinder.{name}", "reynolds").clamp(reynolds)) for name, fit in fits)
    return array(np.minimum(first, second))


def nusselt(*, reynolds: ArrayLike) -> Array:
    """Axial friction number: drag along a yawed line in units of π × viscosity × speed.

    Parameters
    ----------
    reynolds : float or array
        Reynolds number of the flow across the line; 1 to 1000 is checked. [1]

    Returns
    -------
    array
        Nusselt number at Prandtl number 1, at least 0.5, same shape. [1]

    Notes
    -----
    The speed along a long yawed cylinder spreads through the water like heat
    in a fluid of Prandtl number 1, so a published heat-transfer formula gives
    the friction; within 5 % of a numerical solution at Re 1 to 40.

    References
    ----------
    PUBLISHED: Churchill and Bernstein 1977. DERIVED: its use for axial
    friction, and the floor of 0.5.
    """
    require(quantity="Reynolds number", value=reynolds, at_least=0.0)
    re = array(reynolds)
    across = 0.62 * np.sqrt(re) / (1.0 + 0.4 ** (2.0 / 3.0)) ** 0.25
    return array(np.maximum(LEAST_NUSSELT, 0.3 + across * (1.0 + (re / 282000.0) ** 0.625) ** 0.8))


def normal_force(
    *,
    speed_m_s: ArrayLike,
    angle_rad: ArrayLike = np.pi / 2.0,
    diameter_m: ArrayLike,
    density_kg_m3: ArrayLike,
    viscosity_pa_s: ArrayLike,
) -> Array:
    """Drag across the line, per metre of line.

    Parameters
    ----------
    speed_m_s : float or array
        Speed of the flow. [m/s]
    angle_rad : float or array
        Angle between line and flow; its sign is kept. [rad]
    diameter_m : float or array
        Outside diameter. [m]
    density_kg_m3 : float or array
        Density of water or air. [kg/m³]
    viscosity_pa_s : float or array
        Dynamic viscosity of water or air. [Pa s]

    Returns
    -------
    array
        Force across the line, signed as the angle, broadcast shape. [N/m]

    Notes
    -----
    Only the speed across the line counts (independence principle).

    References
    ----------
    PUBLISHED: independence principle, Packwood 1990, Ocean Engineering 17:393.
    """
    speed_across = array(speed_m_s) * np.sin(array(angle_rad))
    re = reynolds(
        speed_m_s=speed_across,
        diameter_m=diameter_m,
        density_kg_m3=density_kg_m3,
        viscosity_pa_s=viscosity_pa_s,
    )
    pressure = 0.5 * array(density_kg_m3) * speed_across * np.abs(speed_across)
    return pressure * array(diameter_m) * drag_coefficient(reynolds=re)


def tangential_force(
    *,
    speed_m_s: ArrayLike,
    angle_rad: ArrayLike = 0.0,
    diameter_m: ArrayLike,
    density_kg_m3: ArrayLike,
    viscosity_pa_s: ArrayLike,
) -> Array:
    """Viscous drag along the line, per metre of line.

    Parameters
    ----------
    speed_m_s : float or array
        Speed of the flow. [m/s]
    angle_rad : float or array
        Angle between line and flow. [rad]
    diameter_m : float or array
        Outside diameter. [m]
    density_kg_m3 : float or array
        Density of water or air. [kg/m³]
    viscosity_pa_s : float or array
        Dynamic viscosity of water or air. [Pa s]

    Returns
    -------
    array
        Force along the line, broadcast shape. [N/m]

    Notes
    -----
    A fixed friction coefficient taken from ships' cables halves the drag of
    thin line; show ×0.4 to ×2 of this figure as its range.

    References
    ----------
    DERIVED: see :func:`nusselt`; size and course agree with the rope values of
    Fridman 1986, table 3.3.
    """
    angle = array(angle_rad)
    re = reynolds(
        speed_m_s=array(speed_m_s) * np.sin(angle),
        diameter_m=diameter_m,
        density_kg_m3=density_kg_m3,
        viscosity_pa_s=viscosity_pa_s,
    )
    return np.pi * array(viscosity_pa_s) * array(speed_m_s) * np.cos(angle) * nusselt(reynolds=re)


def shedding_frequency(*, speed_m_s: ArrayLike, diameter_m: ArrayLike, reynolds: ArrayLike) -> Array:
    """Frequency at which a line hums in a flow across it.

    Parameters
    ----------
    speed_m_s : float or array
        Speed of the flow across the line. [m/s]
    diameter_m : float or array
        Outside diameter. [m]
    reynolds : float or array
        Reynolds number of that flow. [1]

    Returns
    -------
    array
        Frequency, 0 below Re 47, where nothing is shed, broadcast shape. [Hz]

    References
    ----------
    MEMORY: Roshko's form of the Strouhal number, 0.212 (1 − 21.2/Re).
    """
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    require(quantity="Reynolds number", value=reynolds, at_least=0.0)
    re = array(reynolds)
    strouhal = 0.212 * (1.0 - 21.2 / np.maximum(re, 47.0))
    return np.where(re < 47.0, 0.0, strouhal * np.abs(array(speed_m_s)) / array(diameter_m))
