"""How hard a fish can pull. Two estimates; they differ by a factor, and the range says so."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require

TROUT_MASS_KG = 0.0605  # [kg] PUBLISHED: Johnsrude & Webb 1985, J. Exp. Biol. 119:71
TROUT_TAIL_FORCE_N = 2.2  # [N] same source: largest force at the tail base
WATER_CARRIED = 1.2  # apparent mass over body mass [1] PUBLISHED: Webb 1982, J. Exp. Biol. 96:93
FAST_START_M_S2 = (7.5, 16.5)  # acceleration of fast starts [m/s2] PUBLISHED: Johnsrude & Webb 1985


def tail_force(*, mass_kg: ArrayLike) -> Array:
    """Pull of a fish scaled up from a measured trout, F = 2.2 N (m / 0.0605 kg)^(2/3).

    Parameters
    ----------
    mass_kg : float or array
        Mass of the fish. [kg]

    Returns
    -------
    array
        Force, shape of the input. [N]

    Raises
    ------
    ImpossibleInput
        A mass that is not positive.

    Notes
    -----
    Muscle force grows with cross-section, hence the power 2/3. Order of magnitude:
    show one half to twice the value. Current and jerks come on top.

    References
    ----------
    PUBLISHED: Johnsrude & Webb 1985, J. Exp. Biol. 119:71; scaling DERIVED.
    """
    require(quantity="mass of the fish in kg", value=mass_kg, above=0.0)
    scale = array(mass_kg) / TROUT_MASS_KG
    return array(TROUT_TAIL_FORCE_N * scale ** (2.0 / 3.0))


def acceleration_force(*, mass_kg: ArrayLike, acceleration_m_s2: ArrayLike) -> Array:
    """Force behind a fast start, 1.2 m a: fish and the water that it carries along.

    Parameters
    ----------
    mass_kg : float or array
        Mass of the fish. [kg]
    acceleration_m_s2 : float or array
        Acceleration; fast starts of trout reach 7.5 to 16.5. [m/s2]

    Returns
    -------
    array
        Force, shape of the inputs broadcast together. [N]

    Raises
    ------
    ImpossibleInput
        A mass that is not positive or a negative acceleration.

    References
    ----------
    PUBLISHED: Webb 1982, J. Exp. Biol. 96:93 (apparent mass).
    """
    require(quantity="mass of the fish in kg", value=mass_kg, above=0.0)
    require(quantity="acceleration in m/s²", value=acceleration_m_s2, at_least=0.0)
    return array(WATER_CARRIED * np.multiply(mass_kg, acceleration_m_s2))
