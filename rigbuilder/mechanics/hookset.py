"""The hook-set: rod sweep, slack and sag first, then springs in series."""

import numpy as np
from numpy.typing import ArrayLike

from rigbuilder.mechanics.arrays import Array, array
from rigbuilder.mechanics.errors import require
from rigbuilder.mechanics.stretch import springs_in_series


def tip_travel(*, rod_length_m: ArrayLike, start_angle_rad: ArrayLike, end_angle_rad: ArrayLike) -> Array:
    """Line taken in by sweeping a stiff rod, L (cos a0 - cos a1).

    Parameters
    ----------
    rod_length_m : float or array
        Length of rod in front of the hands. [m]
    start_angle_rad, end_angle_rad : float or array
        Angle between rod and line, 0 with the rod pointing at the lure. [rad]

    Returns
    -------
    array
        Line taken in, shape of the inputs broadcast together. [m]

    Raises
    ------
    ImpossibleInput
        A length that is not positive or an angle outside 0 to pi.

    Notes
    -----
    The bend of the rod is not in here: it is the rod's own spring in the series.

    References
    ----------
    COMPUTED: rotation about the hands with the lure far away.
    """
    require(quantity="rod length in m", value=rod_length_m, above=0.0)
    require(quantity="rod angle at the start in rad", value=start_angle_rad, at_least=0.0, at_most=np.pi)
    require(quantity="rod angle at the end in rad", value=end_angle_rad, at_least=0.0, at_most=np.pi)
    travel = array(rod_length_m) * (np.cos(start_angle_rad) - np.cos(end_angle_rad))
    return array(travel)


def slack_in_bow(*, bow_m: ArrayLike, span_m: ArrayLike) -> Array:
    """Line hidden in a sideways bow from current or wind, 8 b² / (3 L).

    Parameters
    ----------
    bow_m : float or array
        Depth of the bow at its middle. [m]
    span_m : float or array
        Straight distance between the ends. [m]

    Returns
    -------
    array
        Extra length, shape of the inputs broadcast together. [m]

    Raises
    ------
    ImpossibleInput
        A negative bow or a span that is not positive.

    References
    ----------
    COMPUTED: arc length of a shallow parabola.
    """
    require(quantity="bow of the line in m", value=bow_m, at_least=0.0)
    require(quantity="span in m", value=span_m, above=0.0)
    return array(8.0 * np.square(bow_m) / (3.0 * array(span_m)))


def hook_force(
    *,
    tip_travel_m: ArrayLike,
    slack_m: ArrayLike,
    stiffness_n_m: ArrayLike,
    friction_n: ArrayLike = 0.0,
    limit_n: ArrayLike = np.inf,
) -> Array:
    """Force at the hook: k (tip travel - slack), less friction, capped by what slips first.

    Parameters
    ----------
    tip_travel_m : float or array
        Line taken in by rod, arms and feet. [m]
    slack_m : float or array
        Slack, sag and bow that must be taken in first. [m]
    stiffness_n_m : float or array
        Main line, leader and rod in series. [N/m]
    friction_n : float or array
        Friction of the water along the line. [N]
    limit_n : float or array
        Pull at which the drag slips or the arm gives in; infinity if neither is given. [N]

    Returns
    -------
    array
        Force at the hook, never negative, shape of the inputs broadcast together. [N]

    Raises
    ------
    ImpossibleInput
        A negative travel, slack, friction or limit, or a stiffness that is not positive.

    Notes
    -----
    No hook-point force is published by hook type: compare rigs, do not read newtons.

    References
    ----------
    COMPUTED: springs in series after slack; DERIVED by the project.
    """
    require(quantity="travel of the rod tip in m", value=tip_travel_m, at_least=0.0)
    require(quantity="slack in m", value=slack_m, at_least=0.0)
    require(quantity="stiffness of line and rod in N/m", value=stiffness_n_m, above=0.0)
    require(quantity="friction in N", value=friction_n, at_least=0.0)
    limits = array(limit_n)
    require(quantity="limit of the pull in N", value=np.where(limits == np.inf, 0.0, limits), at_least=0.0)
    taken_m = np.maximum(np.subtract(tip_travel_m, slack_m), 0.0)
    pull_n = np.minimum(taken_m * array(stiffness_n_m), limits)
    return array(np.maximum(pull_n - array(friction_n), 0.0))


def rig_stiffness(
    *,
    main_axial_stiffness_n: ArrayLike,
    main_length_m: ArrayLike,
    leader_axial_stiffness_n: ArrayLike,
    leader_length_m: ArrayLike,
    rod_stiffness_n_m: ArrayLike,
) -> Array:
    """Stiffness of main line, leader and rod pulled together.

    Parameters
    ----------
    main_axial_stiffness_n : float or array
        EA of the main line as it is pulled: wet, at the speed of the hook-set. [N]
    main_length_m : float or array
        Main line outside the rod tip. [m]
    leader_axial_stiffness_n : float or array
        EA of the leader as it is pulled; any positive value where there is none. [N]
    leader_length_m : float or array
        Leader; 0 where there is none. [m]
    rod_stiffness_n_m : float or array
        Tip stiffness of the rod. [N/m]

    Returns
    -------
    array
        Stiffness, shape of the inputs broadcast together. [N/m]

    Raises
    ------
    ImpossibleInput
        A stiffness that is not positive or a negative length.

    References
    ----------
    COMPUTED: 1/k = sum of L_i / (EA)_i + 1/k_rod.
    """
    require(quantity="axial stiffness of the main line in N", value=main_axial_stiffness_n, above=0.0)
    require(quantity="axial stiffness of the leader in N", value=leader_axial_stiffness_n, above=0.0)
    require(quantity="length of the main line in m", value=main_length_m, at_least=0.0)
    require(quantity="length of the leader in m", value=leader_length_m, at_least=0.0)
    with np.errstate(divide="ignore"):
        main = np.divide(main_axial_stiffness_n, main_length_m)
        leader = np.divide(leader_axial_stiffness_n, leader_length_m)
    return springs_in_series(stiffnesses_n_m=(main, leader, rod_stiffness_n_m))
