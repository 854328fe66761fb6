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

_LEAST_N, _MOST = 0.05, 20.0  # keep a share finite where the usual rig pulls nothing [N, 1]
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
        "slack_m": _slack(rows),
        "arm_n": alike(*ARM_NM, count) / given["rod_length_m"],
        "rubbing_n": _rubbing(rows),
    }
    found = spread(_Strike(rows, twins), own | twins.inputs | shared) | _tug(rows)
    return columns({name: np.maximum(value, 0.0) for name, value in found.items()})


def _limit(rows: Rows, known: Known) -> Array:
    """Pull at which something gives [N]: the drag over the bent rod, or the chain where no drag is said."""
    over = np.where(rows.has_drag, known("drag_on_scale_n"), np.inf)
    return np.minimum(over, known("chain_n"))


def _slack(rows: Rows) -> Array:
    """Line that must be taken in first: what lies loose, and what sag and bow hide [m].

    Weight and wind bend the part in air, weight and current the part in water.
    """
    given, cast, diameter = rows.given, _cast(rows), rows.main.diameter_m[1]
    in_air = rows.main.mass_kg_m[1] * STANDARD_GRAVITY_M_S2
    flow = _across(given["current_mps"][1], diameter, rows.water_density, rows.water_viscosity)
    in_water = np.hypot(rows.wet_weight_n_m[1], flow)

    def slack(*, loose_m: Array, tension_n: Array, share: Array, blown_n_m: Array) -> dict[str, Array]:
        hidden = np.zeros_like(cast)
        for load, part in ((np.hypot(in_air, blown_n_m), share), (in_water, 1.0 - share)):
            span = cast * part
            bow = still.cross_flow_bow(force_n_m=load, span_m=span, tension_n=tension_n)
            hidden = hidden + hookset.slack_in_bow(bow_m=np.minimum(bow, _SLACKEST * span), span_m=span)
        return {"slack_m": loose_m + hidden}

    inputs = {
        "loose_m": alike(*LOOSE_M, rows.count),
        "tension_n": alike(*TENSION_N, rows.count),
        "share": alike(*IN_AIR, rows.count),
        "blown_n_m": _across(given["wind_mps"], diameter, AIR_DENSITY, AIR_VISCOSITY_PA_S),
    }
    return spread(slack, inputs)["slack_m"]


def _rubbing(rows: Rows) -> Array:
    """Friction of the water on the line that is pulled along itself [N]."""
    straight = axialfriction.axial_friction(
        diameter_m=rows.main.diameter_m[1], length_m=_cast(rows), speed_m_s=STRIKE_MPS, time_s=STRIKE_S,
        viscosity_pa_s=rows.water_viscosity, density_kg_m3=rows.water_density,
    )  # fmt: skip
    return straight * (1.0 - IN_AIR[1]) * alike(*FRICTION, rows.count)


def _tug(rows: Rows) -> dict[str, Array]:
    """Share of a small tug that comes through the sagging line to the rod."""
    cast, dry = _cast(rows), rows.main.mass_kg_m[1] * STANDARD_GRAVITY_M_S2
    wet = np.abs(rows.wet_weight_n_m[1])

    def felt(*, axial_n: Array, rod_n_m: Array, tension_n: Array, share: Array) -> dict[str, Array]:
        through = feel.tug_share(
            axial_stiffness_n=axial_n, length_m=cast, tension_n=tension_n, rod_stiffness_n_m=rod_n_m,
            weight_n_m=dry * share + wet * (1.0 - share),
        )  # fmt: skip
        return {"tug_share": through}

    inputs = {
        "axial_n": rows.main.axial_n,
        "rod_n_m": rows.given["rod_stiffness_n_m"],
        "tension_n": alike(*TENSION_N, rows.count),
        "share": alike(*IN_AIR, rows.count),
    }
    return {"tug_share": np.minimum(spread(felt, inputs)["tug_share"], 1.0)}


def _cast(rows: Rows) -> Array:
    return np.asarray(np.maximum(rows.given["cast_m"][1], 1.0))


class _Strike:
    """The strike of each row and of its usual rig, so that what both share cancels in their ratio."""

    def __init__(self, rows: Rows, twins: Twins) -> None:
        self._usual, self._twins = rows.usual, twins
        self._cast = _cast(rows)
        self._leader = np.minimum(rows.leader_m[1], 0.9 * self._cast)
        self._rod = np.maximum(rows.given["rod_length_m"][1] - GRIP_M, 0.3)

    def __call__(
        self, *, axial_n: Array, end_axial_n: Array, rod_n_m: Array, limit_n: Array,
        usual_axial_n: Array, usual_end_axial_n: Array, usual_rod_n_m: Array, usual_limit_n: Array,
        sweep_rad: Array, slack_m: Array, arm_n: Array, rubbing_n: Array,
    ) -> dict[str, Array]:  # fmt: skip
        travel = hookset.tip_travel(
            rod_length_m=self._rod, start_angle_rad=SWEEP_START_RAD, end_angle_rad=sweep_rad
        )
        stiff = self._stiffness(axial_n, end_axial_n, rod_n_m, self._leader)
        own = self._pull(travel, slack_m, stiff, rubbing_n, np.minimum(limit_n, arm_n))
        follow, twin = self._twins.follow, self._usual
        usual_stiff = self._stiffness(
            follow("axial_n", axial_n, usual_axial_n),
            follow("end_axial_n", end_axial_n, usual_end_axial_n),
            follow("rod_n_m", rod_n_m, usual_rod_n_m),
            self._leader[twin],
        )
        limit = np.minimum(follow("limit_n", limit_n, usual_limit_n), arm_n[..., twin])
        usual = self._pull(travel[..., twin], slack_m[..., twin], usual_stiff, rubbing_n[..., twin], limit)
        return {"hook_force_n": own, "hook_share": np.minimum((own + _LEAST_N) / (usual + _LEAST_N), _MOST)}

    def _pull(self, travel: Array, slack: Array, stiffness: Array, rubbing: Array, limit: Array) -> Array:
        return hookset.hook_force(
            tip_travel_m=travel, slack_m=slack, stiffness_n_m=stiffness, friction_n=rubbing, limit_n=limit
        )

    def _stiffness(self, axial: Array, end: Array, rod: Array, leader: Array) -> Array:
        return hookset.rig_stiffness(
            main_axial_stiffness_n=axial, main_length_m=self._cast - leader,
            leader_axial_stiffness_n=end, leader_length_m=leader, rod_stiffness_n_m=rod,
        )  # fmt: skip


def _across(speed: Array, diameter: Array, density: Array | float, viscosity: Array | float) -> Array:
    """Force of a flow across the line [N/m]; nothing where nothing flows."""
    force = cylinder.normal_force(
        speed_m_s=np.maximum(speed, 1e-6),
        diameter_m=diameter,
        density_kg_m3=density,
        viscosity_pa_s=viscosity,
    )
    return np.asarray(force)
