"""Flight of a lure that pulls line off the reel, for one rig or many at once.

Along the path the lure is slowed by its own drag, by gravity, and by the line: line at
rest must be brought to the lure's speed, and the line in the air rubs against it:

m dv/dt = -1/2 rho Cd A |v - wind| (v - wind) - m g z - [kappa lambda v² + 1/2 rho pi d Ct s v²] v/|v|

with s the length of path flown, lambda the line's mass per length. A fixed-step
Runge-Kutta integrator of fourth order runs all candidates together.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import STANDARD_GRAVITY_M_S2, Array, array
from rigbuilder.mechanics.errors import ImpossibleInput, require

AIR_DENSITY = 1.2041  # dry air at 20 °C and 1 atm [kg/m3] PUBLISHED: standard atmosphere tables
STEPS = 16  # steps in the time that a flight without air would take [1]
MOST_STEPS = 4000  # a lure still aloft after this many is not a lure [1]

PICKUP = (0.5, 1.0, 1.0)  # share of lambda v² that starting the line costs, for far / usual / short casts [1]
LINE_FRICTION = (0.001, 0.003, 0.01)  # skin friction of line in air, for far / usual / short casts [1]


@dataclass(frozen=True, slots=True, eq=False)
class Flight:
    """How casts end; every field has the shape of the inputs broadcast together."""

    distance_m: Array  # along the water from below the rod tip
    time_s: Array
    speed_m_s: Array  # on meeting the water


def vacuum_distance(*, speed_m_s: ArrayLike, angle_rad: ArrayLike, height_m: ArrayLike) -> Array:
    """Distance without air and line, (v cos a / g) [v sin a + sqrt(v² sin² a + 2 g h)].

    Parameters
    ----------
    speed_m_s : float or array
        Speed at release. [m/s]
    angle_rad : float or array
        Angle above the horizontal at release. [rad]
    height_m : float or array
        Height of release above the water. [m]

    Returns
    -------
    array
        Distance, shape of the inputs broadcast together. [m]

    Raises
    ------
    ImpossibleInput
        A speed that is not positive, a negative height, an angle outside ±pi/2.

    References
    ----------
    COMPUTED: parabola of a free throw.
    """
    _require_throw(speed_m_s=speed_m_s, angle_rad=angle_rad, height_m=height_m)
    level = array(np.multiply(speed_m_s, np.cos(angle_rad)))
    return level * _vacuum_time(speed_m_s=speed_m_s, angle_rad=angle_rad, height_m=height_m)


def fly(
    *,
    mass_kg: ArrayLike,
    drag_area_m2: ArrayLike,
    speed_m_s: ArrayLike,
    angle_rad: ArrayLike,
    height_m: ArrayLike,
    line_density_kg_m: ArrayLike,
    line_diameter_m: ArrayLike,
    wind_m_s: ArrayLike = 0.0,
    pickup: ArrayLike = PICKUP[1],
    line_friction: ArrayLike = LINE_FRICTION[1],
    air_density_kg_m3: ArrayLike = AIR_DENSITY,
    steps: int = STEPS,
) -> Flight:
    """Flight of lures until they meet the water.

    Parameters
    ----------
    mass_kg : float or array
        Mass of the lure. [kg]
    drag_area_m2 : float or array
        Drag coefficient times frontal area, Cd A. [m2]
    speed_m_s : float or array
        Speed at release; no measured values are published, so it is the person's skill. [m/s]
    angle_rad : float or array
        Angle above the horizontal at release. [rad]
    height_m : float or array
        Height of release above the water. [m]
    line_density_kg_m : float or array
        Mass per length of the line as it flies; 0 for no line. [kg/m]
    line_diameter_m : float or array
        Line diameter; 0 for no line. [m]
    wind_m_s : float or array
        Wind along the cast, negative for a headwind; acts on the lure. [m/s]
    pickup : float or array
        kappa: 1 if starting the line from rest loses half the energy, 0.5 if none. [1]
    line_friction : float or array
        Skin friction coefficient of the line in air, 0.001 / 0.003 / 0.01. [1]
    air_density_kg_m3 : float or array
        Density of the air. [kg/m3]
    steps : int
        Steps in the time that the flight would take without air. [1]

    Returns
    -------
    Flight
        Distance, time and final speed. [m, s, m/s]

    Raises
    ------
    ImpossibleInput
        A mass, speed or air density that is not positive; a negative area, height, line or
        coefficient; an angle outside ±pi/2; a lure so light that it does not come down.

    Notes
    -----
    Sideways belly and the reel's brake are left out: compare casts (±15 %), do not trust their
    metres (±30 %). The default steps err by less than 2e-4 of the distance for ordinary lures.

    References
    ----------
    COMPUTED: Newton's law; skin friction of line as in J. Appl. Mech. 2004, 71:745 (PUBLISHED).
    """
    _require_throw(speed_m_s=speed_m_s, angle_rad=angle_rad, height_m=height_m)
    _require_flying(
        mass_kg=mass_kg,
        drag_area_m2=drag_area_m2,
        line_density_kg_m=line_density_kg_m,
        line_diameter_m=line_diameter_m,
        pickup=pickup,
        line_friction=line_friction,
        air_density_kg_m3=air_density_kg_m3,
        wind_m_s=wind_m_s,
    )
    require(quantity="number of steps", value=float(steps), at_least=8.0)
    forces = _per_mass(
        mass_kg=mass_kg,
        drag_area_m2=drag_area_m2,
        start_kg_m=np.multiply(pickup, line_density_kg_m),
        skin_m=np.multiply(line_diameter_m, line_friction),
        air_density_kg_m3=air_density_kg_m3,
    )
    flat = np.broadcast_arrays(*forces, wind_m_s, speed_m_s, angle_rad, height_m)
    return _flown(flat=flat, steps=steps)


@dataclass(frozen=True, slots=True, eq=False)
class _Air:
    """What slows each lure, per mass: own drag [1/m], starting the line [1/m], its friction [1/m2]."""

    lure: Array
    start: Array
    friction: Array
    wind: Array

    def rates(self, state: Array) -> Array:
        """Time derivative of (x, z, vx, vz, s)."""
        _, _, level, up, flown = state
        past = level - self.wind
        own = self.lure * np.sqrt(past * past + up * up)
        speed = np.sqrt(level * level + up * up)
        line = (self.start + self.friction * flown) * speed
        result = np.empty_like(state)
        result[0], result[1], result[4] = level, up, speed
        result[2] = -own * past - line * level
        result[3] = -own * up - line * up - STANDARD_GRAVITY_M_S2
        return result


def _march(*, air: _Air, state: Array, step: Array) -> tuple[Array, Array, Array]:
    """Runge-Kutta steps until every lure is down; landing placed inside its step."""
    landed = np.zeros(step.shape, dtype=bool)
    ends = np.zeros((3, step.size))
    for count in range(MOST_STEPS):
        first = air.rates(state)
        second = air.rates(state + 0.5 * step * first)
        third = air.rates(state + 0.5 * step * second)
        fourth = air.rates(state + step * third)
        after = state + step / 6.0 * (first + 2.0 * (second + third) + fourth)
        down = (after[1] <= 0.0) & (after[3] < 0.0) & ~landed
        if down.any():
            share = _landing(before=state, after=after, step=step)
            where = _hermite(
                before=state, after=after, first=first, last=air.rates(after), step=step, at=share
            )
            ends[:, down] = np.stack([where[0], (count + share) * step, np.hypot(where[2], where[3])])[
                :, down
            ]
            landed |= down
            if landed.all():
                return ends[0], ends[1], ends[2]
        state = after
    raise ImpossibleInput(
        "time in the air in s", float(MOST_STEPS * step[~landed].min()), "one in which the lure comes down"
    )


def _landing(*, before: Array, after: Array, step: Array) -> Array:
    """Share of the step at which the height is 0: Newton on its cubic from the straight line's crossing."""
    fall = np.minimum(after[1] - before[1], -1e-300)
    share = np.clip(-before[1] / fall, 0.0, 1.0)
    rise0, rise1 = before[3] * step, after[3] * step
    bend3 = rise0 + rise1 - 2.0 * fall
    bend2 = 3.0 * fall - 2.0 * rise0 - rise1
    for _ in range(4):
        height = before[1] + share * (rise0 + share * (bend2 + share * bend3))
        slope = np.minimum(rise0 + share * (2.0 * bend2 + 3.0 * share * bend3), -1e-300)
        share = np.clip(share - height / slope, 0.0, 1.0)
    return array(share)


def _hermite(
    *,
    before: Array,
    after: Array,
    first: Array,
    last: Array,
    step: Array,
    at: Array,
) -> Array:
    """State at a share of the step, cubic through both ends and their rates."""
    change, rate0, rate1 = after - before, first * step, last * step
    bend = 3.0 * change - 2.0 * rate0 - rate1
    return array(before + at * (rate0 + at * (bend + at * (rate0 + rate1 - 2.0 * change))))


def _vacuum_time(*, speed_m_s: ArrayLike, angle_rad: ArrayLike, height_m: ArrayLike) -> Array:
    up = array(np.multiply(speed_m_s, np.sin(angle_rad)))
    fallen = np.sqrt(up * up + 2.0 * STANDARD_GRAVITY_M_S2 * array(height_m))
    return array((up + fallen) / STANDARD_GRAVITY_M_S2)


def _require_throw(*, speed_m_s: ArrayLike, angle_rad: ArrayLike, height_m: ArrayLike) -> None:
    require(quantity="speed of the cast in m/s", value=speed_m_s, above=0.0)
    require(quantity="angle of the cast in rad", value=angle_rad, at_least=-np.pi / 2, at_most=np.pi / 2)
    require(quantity="height of the rod tip in m", value=height_m, at_least=0.0)


def _flown(*, flat: Sequence[Array], steps: int) -> Flight:
    """Fly from broadcast forces per mass, wind, speed, angle and height."""
    shape = flat[0].shape
    lure, start, friction, wind, speed, angle, height = (np.ravel(value).astype(float) for value in flat)
    air = _Air(lure=lure, start=start, friction=friction, wind=wind)
    state = np.stack(
        [np.zeros_like(speed), height, speed * np.cos(angle), speed * np.sin(angle), 0.0 * speed]
    )
    whole = _vacuum_time(speed_m_s=speed, angle_rad=angle, height_m=height)
    first_rate = 2.0 * (lure * (speed + np.abs(wind)) + start * speed) + friction * speed * whole * speed
    step = np.minimum(whole / steps, 1.0 / np.maximum(first_rate, 1e-12))
    distance, time, final = _march(air=air, state=state, step=step)
    return Flight(distance.reshape(shape), time.reshape(shape), final.reshape(shape))


def _per_mass(
    *,
    mass_kg: ArrayLike,
    drag_area_m2: ArrayLike,
    start_kg_m: ArrayLike,
    skin_m: ArrayLike,
    air_density_kg_m3: ArrayLike,
) -> tuple[Array, Array, Array]:
    half_air = array(air_density_kg_m3) / 2.0
    return (
        array(half_air) * array(drag_area_m2) / array(mass_kg),
        array(start_kg_m) / array(mass_kg),
        half_air * np.pi * array(skin_m) / array(mass_kg),
    )


def _require_flying(
    *,
    mass_kg: ArrayLike,
    drag_area_m2: ArrayLike,
    line_density_kg_m: ArrayLike,
    line_diameter_m: ArrayLike,
    pickup: ArrayLike,
    line_friction: ArrayLike,
    air_density_kg_m3: ArrayLike,
    wind_m_s: ArrayLike,
) -> None:
    for quantity, value in (
        ("drag area of the lure in m²", drag_area_m2),
        ("mass of the line in kg/m", line_density_kg_m),
        ("line diameter in m", line_diameter_m),
        ("share of speed lost to starting the line", pickup),
        ("friction of the line in air", line_friction),
    ):
        require(quantity=quantity, value=value, at_least=0.0)
    require(quantity="mass of the lure in kg", value=mass_kg, above=0.0)
    require(quantity="density of the air in kg/m³", value=air_density_kg_m3, above=0.0)
    require(quantity="wind in m/s", value=wind_m_s)
