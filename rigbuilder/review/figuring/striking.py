"""The hook-set at the length of the cast, and what of a tug is felt."""

import numpy as np

from rigbuilder.mechanics import axialfriction, cylinder, feel, hookset, still
from rigbuilder.mechanics.arrays import STANDARD_GRAVITY_M_S2, Array
from rigbuilder.mechanics.cast import AIR_DENSITY
from rigbuilder.review.figuring.group import Group, Known, columns
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.spread import alike, spread
from rigbuilder.review.figuring.twins import Twins

AIR_VISCOSITY_PA_S = 1.81e-5  # dry air at 20 °C [Pa s], published: standard atmosphere tables

# How people strike and fish, all from memory; low / typical / high.
SWEEP_END_RAD = (0.9, 1.4, 1.9)  # angle between rod and line at the end of the sweep [rad]
SWEEP_START_RAD = 0.35  # the same at its start [rad]
GRIP_M = 0.4  # rod behind the hands [m]
LOOSE_M = (0.05, 0.2, 0.6)  # line that lies loose when the strike begins [m]
ARM_NM = (25.0, 45.0, 80.0)  # turning moment that two hands put on a rod in a quick sweep [N m]
TENSION_N = (0.15, 0.4, 1.0)  # pull in the line while a lure is worked [N]
IN_AIR = (0.2, 0.4, 0.7)  # share of the line out that hangs in air [1]
STRIKE_MPS, STRIKE_S = 5.0, 0.2  # speed and time of the pull along the line [m/s, s]
FRICTION = (0.5, 1.0, 7.0)  # range of the friction formula, see mechanics.axialfriction [1]

_SLACKEST = 1.0 / 3.0  # bow over span beyond which a line gives way instead of bowing more [1]


def striking(rows: Rows, known: Known) -> Group:
    """Return pull at the hook and share of a tug of every row."""
    count, given = rows.count, rows.given
    own = {
        "axial_n": rows.main.axial_n,
        "end_axial_n": rows.end.axial_n,
        "rod_n_m": given["rod_stiffness_n_m"],
        "limit_n": _limit(rows, known),
    }
    twins = Twins(rows, own)
    shared = {
        "sweep_rad": alike(*SWEEP_END_RAD, count),
        "loose_m": alike(*LOOSE_M, count),
        "arm_nm": alike(*ARM_NM, count),
        "tension_n": alike(*TENSION_N, count),
        "in_air": alike(*IN_AIR, count),
        "blown_n_m": _across(given["wind_mps"], rows.main.diameter_m[1], AIR_DENSITY, AIR_VISCOSITY_PA_S),
        "friction": alike(*FRICTION, count),
    }
    found = spread(_Strike(rows, twins), own | twins.inputs | shared)
    found["tug_share"] = np.minimum(found["tug_share"], 1.0)
    return columns({name: np.maximum(value, 0.0) for name, value in found.items()})


def _limit(rows: Rows, known: Known) -> Array:
    """Pull at which something gives [N]: the drag over the bent rod, or the chain where no drag is said."""
    over = np.where(rows.has_drag, known("drag_on_scale_n"), np.inf)
    return np.minimum(over, known("chain_n"))


class _Strike:
    """The strike of each row and of its usual rig, so that what both share cancels in their ratio."""

    def __init__(self, rows: Rows, twins: Twins) -> None:
        given = rows.given
        self._usual, self._twins = rows.usual, twins
        self._cast = np.maximum(given["cast_m"][1], 1.0)
        self._leader = np.minimum(rows.leader_m[1], 0.9 * self._cast)
        self._rod = given["rod_length_m"][1]
        self._current = given["current_mps"][1]
        self._diameter, self._air = rows.main.diameter_m[1], rows.main.mass_kg_m[1] * STANDARD_GRAVITY_M_S2
        self._wet = np.abs(rows.wet_weight_n_m[1])
        self._density, self._viscosity = rows.water_density, rows.water_viscosity
        self._rubbing = axialfriction.axial_friction(
            diameter_m=self._diameter, length_m=self._cast, speed_m_s=STRIKE_MPS, time_s=STRIKE_S,
            viscosity_pa_s=self._viscosity, density_kg_m3=self._density,
        )  # fmt: skip
        self._flow = _across(self._current, self._diameter, self._density, self._viscosity)

    def __call__(
        self, *, axial_n: Array, end_axial_n: Array, rod_n_m: Array, limit_n: Array,
        usual_axial_n: Array, usual_end_axial_n: Array, usual_rod_n_m: Array, usual_limit_n: Array,
        sweep_rad: Array, loose_m: Array, arm_nm: Array, tension_n: Array, in_air: Array,
        blown_n_m: Array, friction: Array,
    ) -> dict[str, Array]:  # fmt: skip
        travel = hookset.tip_travel(
            rod_length_m=np.maximum(self._rod - GRIP_M, 0.3),
            start_angle_rad=SWEEP_START_RAD,
            end_angle_rad=sweep_rad,
        )
        slack = loose_m + self._slack(tension_n, in_air, blown_n_m)
        arm = arm_nm / self._rod
        rubbing = self._rubbing * friction * (1.0 - in_air)
        stiff = self._stiffness(axial_n, end_axial_n, rod_n_m, self._leader)
        own = self._pull(travel, slack, stiff, rubbing, np.minimum(limit_n, arm))
        follow = self._twins.follow
        twin = self._stiffness(
            follow("axial_n", axial_n, usual_axial_n),
            follow("end_axial_n", end_axial_n, usual_end_axial_n),
            follow("rod_n_m", rod_n_m, usual_rod_n_m),
            self._leader[self._usual],
        )
        usual = self._pull(
            travel[..., self._usual], slack[..., self._usual], twin, rubbing[..., self._usual],
            np.minimum(follow("limit_n", limit_n, usual_limit_n), arm[..., self._usual]),
        )  # fmt: skip
        return {
            "hook_force_n": own,
            "hook_share": np.minimum(own / np.maximum(usual, 0.05), 20.0),
            "tug_share": self._tug(axial_n, rod_n_m, tension_n, in_air),
        }

    def _pull(self, travel: Array, slack: Array, stiffness: Array, rubbing: Array, limit: Array) -> Array:
        return hookset.hook_force(
            tip_travel_m=travel, slack_m=slack, stiffness_n_m=stiffness, friction_n=rubbing, limit_n=limit
        )

    def _stiffness(self, axial: Array, end: Array, rod: Array, leader: Array) -> Array:
        return hookset.rig_stiffness(
            main_axial_stiffness_n=axial, main_length_m=self._cast - leader,
            leader_axial_stiffness_n=end, leader_length_m=leader, rod_stiffness_n_m=rod,
        )  # fmt: skip

    def _slack(self, tension: Array, in_air: Array, blown: Array) -> Array:
        """Line hidden in sag and bow: by weight and wind in air, by weight and current in water."""
        load_air, load_wet = np.hypot(self._air, blown), np.hypot(self._wet, self._flow)
        total = np.zeros_like(self._cast)
        for load, share in ((load_air, in_air), (load_wet, 1.0 - in_air)):
            span = self._cast * share
            bow = still.cross_flow_bow(force_n_m=load, span_m=span, tension_n=tension)
            total = total + hookset.slack_in_bow(bow_m=np.minimum(bow, _SLACKEST * span), span_m=span)
        return total

    def _tug(self, axial: Array, rod: Array, tension: Array, in_air: Array) -> Array:
        share: Array = feel.tug_share(
            axial_stiffness_n=axial, length_m=self._cast, tension_n=tension, rod_stiffness_n_m=rod,
            weight_n_m=self._air * in_air + self._wet * (1.0 - in_air),
        )  # fmt: skip
        return share


def _across(speed: Array, diameter: Array, density: Array | float, viscosity: Array | float) -> Array:
    """Force of a flow across the line [N/m]; nothing where nothing flows."""
    force = cylinder.normal_force(
        speed_m_s=np.maximum(speed, 1e-6),
        diameter_m=diameter,
        density_kg_m3=density,
        viscosity_pa_s=viscosity,
    )
    return np.asarray(force)
