"""Backing, top line and lip gap: pin any two and the third follows.

The balance is linear in room (length times diameter squared):
backing L_b d_b² + top line L_t d_t² = W phi [(Do - 2 g)² - Da²].

A wish that the spool cannot meet is not an error: the answer comes out negative (a
backing below 0, or a lip gap below 0, where line stands above the rim), and
:func:`nearest_fill` says what can be had instead.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require
from rigbuilder.mechanics.spool import calibrated_packing, label_room


@dataclass(frozen=True, slots=True, eq=False)
class SpoolShape:
    """Dimensions of a spool, floats or arrays that broadcast together."""

    arbor_diameter_m: ArrayLike
    rim_diameter_m: ArrayLike
    width_m: ArrayLike
    packing: ArrayLike

    def __post_init__(self) -> None:
        require(quantity="arbor diameter in m", value=self.arbor_diameter_m, above=0.0)
        depth_m = np.subtract(self.rim_diameter_m, self.arbor_diameter_m)
        require(quantity="depth of the spool in m", value=depth_m, above=0.0)
        require(quantity="spool width in m", value=self.width_m, above=0.0)
        require(quantity="packing of the line", value=self.packing, above=0.0)

    def room_m3(self, *, lip_gap_m: ArrayLike) -> Array:
        """Room up to a lip gap, as length times diameter squared. [m3]"""
        squares = np.square(self.across_m(lip_gap_m)) - np.square(self.arbor_diameter_m)
        return array(squares * np.multiply(self.width_m, self.packing))

    def across_m(self, lip_gap_m: ArrayLike) -> Array:
        """Diameter over the line at a lip gap. [m]"""
        return array(np.subtract(self.rim_diameter_m, np.multiply(2.0, lip_gap_m)))

    def lip_gap_m(self, *, room_m3: ArrayLike) -> Array:
        """Lip gap once a room is taken; negative where line stands above the rim. [m]"""
        share = np.divide(room_m3, np.multiply(self.width_m, self.packing))
        across = np.sqrt(np.square(self.arbor_diameter_m) + share)
        return array(np.subtract(self.rim_diameter_m, across) / 2.0)


def shape_from_label(
    *,
    label_length_m: ArrayLike,
    label_diameter_m: ArrayLike,
    label_lip_gap_m: ArrayLike,
    arbor_diameter_m: ArrayLike,
    rim_diameter_m: ArrayLike,
    width_m: ArrayLike,
) -> SpoolShape:
    """Spool whose packing is set by its label: what it says fits, fits up to the label's lip gap.

    Parameters
    ----------
    label_length_m, label_diameter_m : float or array
        Capacity printed on the reel. [m]
    label_lip_gap_m : float or array
        Lip gap that the label's line is taken to leave. [m]
    arbor_diameter_m, rim_diameter_m, width_m : float or array
        Dimensions of the spool. [m]

    Returns
    -------
    SpoolShape
        The spool; a packing above 0.907 shows that label and dimensions disagree. [m, m, m, 1]

    Raises
    ------
    ImpossibleInput
        A length or dimension that cannot be.

    References
    ----------
    COMPUTED: packing = L d² / {W [(Do - 2 g)² - Da²]}.
    """
    require(quantity="lip gap of the label's fill in m", value=label_lip_gap_m, at_least=0.0)
    packing = calibrated_packing(
        room_m3=label_room(length_m=label_length_m, diameter_m=label_diameter_m),
        arbor_diameter_m=arbor_diameter_m,
        fill_diameter_m=np.subtract(rim_diameter_m, np.multiply(2.0, label_lip_gap_m)),
        width_m=width_m,
    )
    return SpoolShape(
        arbor_diameter_m=arbor_diameter_m, rim_diameter_m=rim_diameter_m, width_m=width_m, packing=packing
    )


@dataclass(frozen=True, slots=True, eq=False)
class Fill:
    """One filling of a spool: lengths of both lines and the lip gap that they leave."""

    backing_length_m: Array
    top_length_m: Array
    lip_gap_m: Array

    @property
    def possible(self) -> NDArray[np.bool_]:
        """Whether nothing is negative: no line above the rim, no backing that cannot be."""
        smallest = np.minimum(np.minimum(self.backing_length_m, self.top_length_m), self.lip_gap_m)
        return np.asarray(smallest >= -1e-9)


def balance(
    *,
    spool: SpoolShape,
    backing_diameter_m: ArrayLike,
    top_diameter_m: ArrayLike,
    backing_length_m: ArrayLike | None = None,
    top_length_m: ArrayLike | None = None,
    lip_gap_m: ArrayLike | None = None,
) -> Fill:
    """The fill for which backing, top line and lip gap balance; give exactly two of the three.

    Parameters
    ----------
    spool : SpoolShape
        The spool. [m, m, m, 1]
    backing_diameter_m, top_diameter_m : float or array
        Diameters of the two lines. [m]
    backing_length_m, top_length_m, lip_gap_m : float or array, optional
        Two are given, the third is found. [m]

    Returns
    -------
    Fill
        All three; the one found is negative where the wish cannot be met. [m]

    Raises
    ------
    ImpossibleInput
        Not exactly two given, a negative one, or a diameter that is not positive.

    References
    ----------
    COMPUTED: equal volume.
    """
    wishes = {"backing": backing_length_m, "top line": top_length_m, "lip gap": lip_gap_m}
    given = [(name, wish) for name, wish in wishes.items() if wish is not None]
    require(quantity="number of pinned quantities", value=float(len(given)), at_least=2.0, at_most=2.0)
    for name, wish in given:
        require(quantity=f"{name} in m", value=wish, at_least=0.0)
    require(quantity="diameter of the backing in m", value=backing_diameter_m, above=0.0)
    require(quantity="diameter of the top line in m", value=top_diameter_m, above=0.0)
    backing_area, top_area = np.square(backing_diameter_m), np.square(top_diameter_m)
    if lip_gap_m is not None:
        require(quantity="diameter left under the lip gap in m", value=spool.across_m(lip_gap_m), above=0.0)
    if lip_gap_m is not None and top_length_m is not None:
        room, top = spool.room_m3(lip_gap_m=lip_gap_m), array(top_length_m)
        return Fill(array((room - top * top_area) / backing_area), top, array(lip_gap_m))
    if lip_gap_m is not None and backing_length_m is not None:
        room, backing = spool.room_m3(lip_gap_m=lip_gap_m), array(backing_length_m)
        return Fill(backing, array((room - backing * backing_area) / top_area), array(lip_gap_m))
    backing, top = (array(wish) for wish in (backing_length_m, top_length_m) if wish is not None)
    gap = spool.lip_gap_m(room_m3=backing * backing_area + top * top_area)
    return Fill(backing, top, gap)


def nearest_fill(
    *,
    spool: SpoolShape,
    fill: Fill,
    backing_diameter_m: ArrayLike,
    top_diameter_m: ArrayLike,
    smallest_lip_gap_m: ArrayLike,
) -> Fill:
    """The nearest fill that the spool holds: backing gives way first, then the top line.

    Parameters
    ----------
    spool : SpoolShape
        The spool. [m, m, m, 1]
    fill : Fill
        What was wished for, perhaps impossible. [m]
    backing_diameter_m, top_diameter_m : float or array
        Diameters of the two lines. [m]
    smallest_lip_gap_m : float or array
        Lip gap that must stay. [m]

    Returns
    -------
    Fill
        A possible fill; equal to the wish where that was possible with this lip gap. [m]

    Raises
    ------
    ImpossibleInput
        A negative lip gap or a diameter that is not positive.

    References
    ----------
    COMPUTED: equal volume, lengths cut to what fits.
    """
    require(quantity="lip gap in m", value=smallest_lip_gap_m, at_least=0.0)
    require(quantity="diameter of the backing in m", value=backing_diameter_m, above=0.0)
    require(quantity="diameter of the top line in m", value=top_diameter_m, above=0.0)
    backing_area, top_area = np.square(backing_diameter_m), np.square(top_diameter_m)
    room = np.maximum(spool.room_m3(lip_gap_m=np.maximum(smallest_lip_gap_m, fill.lip_gap_m)), 0.0)
    top = np.clip(fill.top_length_m, 0.0, room / top_area)
    backing = np.clip(fill.backing_length_m, 0.0, np.maximum(room - top * top_area, 0.0) / backing_area)
    gap = spool.lip_gap_m(room_m3=top * top_area + backing * backing_area)
    return Fill(array(backing), array(top), gap)
