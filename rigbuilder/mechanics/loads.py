"""What the water does to each metre of line, as the line-shape integrator asks for it."""

from dataclasses import dataclass
from typing import Protocol

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics import cylinder
from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.crossing import crossing
from rigbuilder.mechanics.errors import require
from rigbuilder.mechanics.validity import row

_RANGE = row("cylinder.sucker_brauer_drag", "reynolds")


def _log_reynolds() -> Array:
    """Even steps, and the very points where the lower of the two drag correlations changes: kinks."""

    def gap(log_reynolds: Array) -> Array:
        reynolds = np.exp(log_reynolds)
        return cylinder.sucker_brauer_drag(reynolds=reynolds) - cylinder.cheng_drag(reynolds=reynolds)

    even = np.linspace(np.log(_RANGE.lowest), np.log(_RANGE.highest), 4801)
    before = np.flatnonzero(np.diff(np.sign(gap(even))))
    rising = np.sign(gap(even[before + 1]))  # crossings are sought upwards: turn falling gaps over
    kinks = crossing(function=lambda at: gap(at) * rising, low=even[before], high=even[before + 1])
    return array(np.sort(np.concatenate([even, kinks])))


# Drag coefficient and Nusselt number over the logarithm of the Reynolds number, as one complex
# table so that one interpolation serves both; spaced so that it is within 1e-5 of the formulas.
_LOG_REYNOLDS = _log_reynolds()
_COEFFICIENTS = cylinder.drag_coefficient(reynolds=np.exp(_LOG_REYNOLDS)) + 1j * cylinder.nusselt(
    reynolds=np.exp(_LOG_REYNOLDS)
)


class Load(Protocol):
    """Forces of the water on a metre of line at a given angle to the flow."""

    @property
    def broadside_n_m(self) -> Array:
        """Force on a metre of line square to the flow [N/m]; sets where the steps go."""

    def forces(self, sine: Array, cosine: Array) -> tuple[Array, Array]:
        """Normal and tangential force [N/m] for sine and cosine of the line's angle."""


@dataclass(frozen=True, slots=True)
class ViscousLoad:
    """The recommended load: both drags follow the Reynolds number across the line."""

    reynolds: Array
    pressure_n_m: Array  # ½ρdV² times the factor on normal drag
    friction_n_m: Array  # πμV times the factor on tangential drag

    @property
    def broadside_n_m(self) -> Array:
        """Force on a metre of line square to the flow, taken with a drag coefficient of 1.2 [N/m]."""
        return self.pressure_n_m * 1.2

    def forces(self, sine: Array, cosine: Array) -> tuple[Array, Array]:
        """Normal and tangential force [N/m] for sine and cosine of the line's angle."""
        steep = np.abs(sine)
        log_reynolds = np.log(np.maximum(self.reynolds * steep, _RANGE.lowest))
        coefficients = np.interp(log_reynolds, _LOG_REYNOLDS, _COEFFICIENTS)
        normal = self.pressure_n_m * coefficients.real * sine * steep
        return normal, self.friction_n_m * coefficients.imag * cosine


@dataclass(frozen=True, slots=True)
class ConstantLoad:
    """Fixed coefficients, as the textbooks of towed cables use them; for comparison."""

    across_n_m: Array  # ½ρdV² × normal coefficient
    along_n_m: Array  # ½ρπdV² × tangential coefficient

    @property
    def broadside_n_m(self) -> Array:
        """Force on a metre of line square to the flow [N/m]."""
        return self.across_n_m

    def forces(self, sine: Array, cosine: Array) -> tuple[Array, Array]:
        """Normal and tangential force [N/m] for sine and cosine of the line's angle."""
        return self.across_n_m * sine * np.abs(sine), self.along_n_m * cosine * np.abs(cosine)


def viscous_load(
    *,
    diameter_m: ArrayLike,
    speed_m_s: ArrayLike,
    density_kg_m3: ArrayLike,
    viscosity_pa_s: ArrayLike,
    normal_factor: ArrayLike = 1.0,
    tangential_factor: ArrayLike = 1.0,
) -> ViscousLoad:
    """Load of water on a thin line, from the recommended correlations.

    Parameters
    ----------
    diameter_m : float or array
        Outside diameter of the line. [m]
    speed_m_s : float or array
        Speed of the line through the water, or of the current past it. [m/s]
    density_kg_m3 : float or array
        Density of the water. [kg/m³]
    viscosity_pa_s : float or array
        Dynamic viscosity of the water. [Pa s]
    normal_factor : float or array
        Factor on drag across the line: 0.9 to 1.5, the high end when it hums. [1]
    tangential_factor : float or array
        Factor on drag along the line: 0.4 to 2. [1]

    Returns
    -------
    ViscousLoad
        Forces per metre at any angle, broadcast shape. [N/m]

    Raises
    ------
    ImpossibleInput
        For a diameter, density or viscosity that is not positive, or a negative speed or factor.

    Notes
    -----
    Smooth straight line, Re 1 to 1000, steady uniform flow.

    References
    ----------
    PUBLISHED: drag across the line, see :func:`cylinder.drag_coefficient`.
    DERIVED: friction along it, see :func:`cylinder.nusselt`.
    """
    require(quantity="speed in m/s", value=speed_m_s, at_least=0.0)
    require(quantity="water density in kg/m³", value=density_kg_m3, above=0.0)
    require(quantity="factor on drag", value=normal_factor, at_least=0.0)
    require(quantity="factor on drag", value=tangential_factor, at_least=0.0)
    number = cylinder.reynolds(
        speed_m_s=speed_m_s,
        diameter_m=diameter_m,
        density_kg_m3=density_kg_m3,
        viscosity_pa_s=viscosity_pa_s,
    )
    speed = array(speed_m_s)
    return ViscousLoad(
        reynolds=number,
        pressure_n_m=0.5 * array(density_kg_m3) * array(diameter_m) * speed**2 * array(normal_factor),
        friction_n_m=np.pi * array(viscosity_pa_s) * speed * array(tangential_factor),
    )


def constant_load(
    *,
    diameter_m: ArrayLike,
    speed_m_s: ArrayLike,
    density_kg_m3: ArrayLike,
    normal_coefficient: ArrayLike,
    tangential_coefficient: ArrayLike,
) -> ConstantLoad:
    """Load of water on a line with fixed coefficients.

    Parameters
    ----------
    diameter_m : float or array
        Outside diameter of the line. [m]
    speed_m_s : float or array
        Speed of the line through the water, or of the current past it. [m/s]
    density_kg_m3 : float or array
        Density of the water. [kg/m³]
    normal_coefficient : float or array
        Drag coefficient across, on length × diameter; 1.2 in textbooks. [1]
    tangential_coefficient : float or array
        Friction coefficient along, on the wetted surface; 0.005 to 0.02 for ships' cables. [1]

    Returns
    -------
    ConstantLoad
        Forces per metre at any angle, broadcast shape. [N/m]

    Raises
    ------
    ImpossibleInput
        For a diameter that is not positive or a negative speed.

    References
    ----------
    MEMORY: Pode 1951, Wilson 1960, Berteaux 1976.
    """
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    require(quantity="speed in m/s", value=speed_m_s, at_least=0.0)
    pressure = 0.5 * array(density_kg_m3) * array(diameter_m) * array(speed_m_s) ** 2
    return ConstantLoad(
        across_n_m=pressure * array(normal_coefficient),
        along_n_m=pressure * np.pi * array(tangential_coefficient),
    )
