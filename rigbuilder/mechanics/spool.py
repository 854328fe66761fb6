"""How much line a spool holds.

All functions count the room on a spool as length times diameter squared, L d² [m3]:
that is what a label such as "150 m of 0.30 mm" states, and it carries over from line
to line without knowing how tightly it is wound.
"""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require

PACKING_SQUARE = np.pi / 4.0  # every turn exactly above another [1] COMPUTED
PACKING_NESTED = np.pi / (2.0 * np.sqrt(3.0))  # every turn in the groove below [1] COMPUTED: densest possible
PACKING_RANGE = (0.55, 0.70, 0.80)  # wound line, low / typical / high [1] PUBLISHED: coil-winding glossaries


def label_room(*, length_m: ArrayLike, diameter_m: ArrayLike) -> Array:
    """Room that a capacity stands for, L d².

    Parameters
    ----------
    length_m : float or array
        Length on the label. [m]
    diameter_m : float or array
        Diameter on the label. [m]

    Returns
    -------
    array
        Room, shape of the inputs broadcast together. [m3]

    Raises
    ------
    ImpossibleInput
        A negative length or a diameter that is not positive.

    References
    ----------
    COMPUTED: volume of a round line but for the constant pi/4 and the packing.
    """
    require(quantity="line length in m", value=length_m, at_least=0.0)
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    return array(np.multiply(length_m, np.square(diameter_m, dtype=float)))


def length_in_room(*, room_m3: ArrayLike, diameter_m: ArrayLike) -> Array:
    """Length of line that fits, L2 = L1 (d1 / d2)².

    Parameters
    ----------
    room_m3 : float or array
        Room as length times diameter squared. [m3]
    diameter_m : float or array
        Diameter of the line to wind. [m]

    Returns
    -------
    array
        Length, shape of the inputs broadcast together. [m]

    Raises
    ------
    ImpossibleInput
        A negative room or a diameter that is not positive.

    Notes
    -----
    An error of 10 % in either diameter is one of 20 % in the length.

    References
    ----------
    COMMON PRACTICE: capacity law; COMPUTED: equal volume and equal packing.
    """
    require(quantity="room on the spool in m³", value=room_m3, at_least=0.0)
    require(quantity="line diameter in m", value=diameter_m, above=0.0)
    return array(np.divide(room_m3, np.square(diameter_m, dtype=float)))


def geometric_room(
    *, arbor_diameter_m: ArrayLike, fill_diameter_m: ArrayLike, width_m: ArrayLike, packing: ArrayLike
) -> Array:
    """Room between arbor and line surface, (Df² - Da²) W phi.

    Parameters
    ----------
    arbor_diameter_m : float or array
        Diameter of the bare spool. [m]
    fill_diameter_m : float or array
        Diameter over the wound line. [m]
    width_m : float or array
        Width between the flanges. [m]
    packing : float or array
        Share of the winding that is line: 0.55 / 0.70 / 0.80. [1]

    Returns
    -------
    array
        Room as length times diameter squared, shape of the inputs broadcast together. [m3]

    Raises
    ------
    ImpossibleInput
        A diameter, width or packing that is not positive, a packing above the densest
        possible, or a fill below the arbor.

    References
    ----------
    COMPUTED: volume of the winding; packing limits pi/4 (square) and pi/(2 sqrt 3) (nested) exact.
    """
    _require_spool(arbor_diameter_m=arbor_diameter_m, width_m=width_m, packing=packing)
    depth_m = np.subtract(fill_diameter_m, arbor_diameter_m)
    require(quantity="depth of line on the spool in m", value=depth_m, at_least=0.0)
    squares = np.square(fill_diameter_m, dtype=float) - np.square(arbor_diameter_m, dtype=float)
    return array(squares * np.multiply(width_m, packing))


def fill_diameter(
    *, room_m3: ArrayLike, arbor_diameter_m: ArrayLike, width_m: ArrayLike, packing: ArrayLike
) -> Array:
    """Diameter over the line once a given room is taken, sqrt(Da² + room / (W phi)).

    Parameters
    ----------
    room_m3 : float or array
        Line wound, as length times diameter squared. [m3]
    arbor_diameter_m : float or array
        Diameter of the bare spool. [m]
    width_m : float or array
        Width between the flanges. [m]
    packing : float or array
        Share of the winding that is line. [1]

    Returns
    -------
    array
        Diameter over the line, shape of the inputs broadcast together. [m]

    Raises
    ------
    ImpossibleInput
        A negative room, or a spool that cannot be (see :func:`geometric_room`).

    References
    ----------
    COMPUTED: inverse of :func:`geometric_room`.
    """
    require(quantity="line on the spool in m³", value=room_m3, at_least=0.0)
    _require_spool(arbor_diameter_m=arbor_diameter_m, width_m=width_m, packing=packing)
    square = np.square(arbor_diameter_m, dtype=float) + np.divide(room_m3, np.multiply(width_m, packing))
    return array(np.sqrt(square))


def calibrated_packing(
    *, room_m3: ArrayLike, arbor_diameter_m: ArrayLike, fill_diameter_m: ArrayLike, width_m: ArrayLike
) -> Array:
    """Packing that makes measured spool dimensions agree with the reel's label.

    Parameters
    ----------
    room_m3 : float or array
        Capacity on the label, as length times diameter squared. [m3]
    arbor_diameter_m : float or array
        Diameter of the bare spool. [m]
    fill_diameter_m : float or array
        Diameter to which the label's line fills the spool. [m]
    width_m : float or array
        Width between the flanges. [m]

    Returns
    -------
    array
        Packing, shape of the inputs broadcast together; above 0.907 label and dimensions disagree. [1]

    Raises
    ------
    ImpossibleInput
        A dimension or room that is not positive, or a fill that is not above the arbor.

    References
    ----------
    COMPUTED: label room over the room between arbor and fill.
    """
    require(quantity="room on the spool in m³", value=room_m3, above=0.0)
    require(quantity="arbor diameter in m", value=arbor_diameter_m, above=0.0)
    require(quantity="spool width in m", value=width_m, above=0.0)
    depth_m = np.subtract(fill_diameter_m, arbor_diameter_m)
    require(quantity="depth of line on the spool in m", value=depth_m, above=0.0)
    squares = np.square(fill_diameter_m, dtype=float) - np.square(arbor_diameter_m, dtype=float)
    return array(np.divide(room_m3, squares * array(width_m)))


def lip_gap_share(*, rim_diameter_m: ArrayLike, arbor_diameter_m: ArrayLike, lip_gap_m: ArrayLike) -> Array:
    """Share of a brim-full spool that a lip gap leaves empty, 4 g (Do - g) / (Do² - Da²).

    Parameters
    ----------
    rim_diameter_m : float or array
        Diameter of the spool's rim. [m]
    arbor_diameter_m : float or array
        Diameter of the bare spool. [m]
    lip_gap_m : float or array
        Distance from rim down to the line. [m]

    Returns
    -------
    array
        Share, shape of the inputs broadcast together. [1]

    Raises
    ------
    ImpossibleInput
        A rim that is not above the arbor, or a gap outside the depth of the spool.

    References
    ----------
    DERIVED: difference of two fills by the volume formula.
    """
    require(quantity="arbor diameter in m", value=arbor_diameter_m, above=0.0)
    depth_m = np.subtract(rim_diameter_m, arbor_diameter_m) / 2.0
    require(quantity="depth of the spool in m", value=depth_m, above=0.0)
    require(quantity="lip gap in m", value=lip_gap_m, at_least=0.0)
    require(
        quantity="depth left under the lip gap in m", value=np.subtract(depth_m, lip_gap_m), at_least=-1e-12
    )
    squares = np.square(rim_diameter_m, dtype=float) - np.square(arbor_diameter_m, dtype=float)
    return array(4.0 * np.multiply(lip_gap_m, np.subtract(rim_diameter_m, lip_gap_m)) / squares)


def _require_spool(*, arbor_diameter_m: ArrayLike, width_m: ArrayLike, packing: ArrayLike) -> None:
    require(quantity="arbor diameter in m", value=arbor_diameter_m, above=0.0)
    require(quantity="spool width in m", value=width_m, above=0.0)
    require(quantity="packing of the line", value=packing, above=0.0, at_most=float(PACKING_NESTED) + 1e-9)
