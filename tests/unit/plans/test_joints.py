"""Joints: every place of a rig has its knots, judged by the review's own rules, the proposed one first."""

import pytest

from rigbuilder.plans.joints import Candidate, Joint, joints
from rigbuilder.review.core import Severity
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import UnitSystem
from tests.unit.plans.cases import case_of

METRIC = Speaker(UnitSystem.METRIC)


def joint_of(technique: str, key: str, changes: dict[str, object] | None = None) -> Joint:
    found = {joint.key: joint for joint in joints(case_of(technique, changes), METRIC)}
    return found[key]


def knot(joint: Joint, name: str) -> Candidate:
    return next(one for one in joint.candidates if one.knot.name == name)


def test_every_joint_from_spool_to_lure_is_there() -> None:
    assert [one.key for one in joints(case_of("walking bait"), METRIC)] == [
        "arbor", "backing", "leader", "lure",
    ]  # fmt: skip
    assert [one.key for one in joints(case_of("carolina"), METRIC)] == [
        "arbor", "backing", "swivel reel side", "swivel lure side", "lure",
    ]  # fmt: skip
    assert [one.key for one in joints(case_of("spinnerbait", {"backing": None}), METRIC)] == ["arbor", "lure"]


@pytest.mark.parametrize(
    ("technique", "key", "changes", "proposed"),
    [
        ("walking bait", "leader", {}, "fg"),
        ("frog", "lure", {}, "double palomar"),
        ("spinnerbait", "lure", {}, "double-loop clinch"),
        ("spinnerbait", "lure", {"main.type": "nylon", "main.test": "10 lb"}, "improved clinch"),
        ("walking bait", "backing", {}, "double uni"),
        ("musky-jerk", "lure", {}, "crimped sleeve"),
    ],
)
def test_what_practice_ties_is_proposed(
    technique: str, key: str, changes: dict[str, object], proposed: str
) -> None:
    found = joint_of(technique, key, changes).proposed
    assert found is not None
    assert found.knot.name == proposed
    assert "practice" in found.reason


def test_a_nylon_knot_in_braid_is_refused_with_its_reason() -> None:
    clinch = knot(joint_of("frog", "lure"), "improved clinch")
    assert clinch.severity is Severity.FAULT
    assert not clinch.suits
    assert "slips" in clinch.against


def test_a_ratio_outside_the_knots_span_is_said_with_figures() -> None:
    joint = joint_of("walking bait", "leader")
    albright = knot(joint, "albright")
    assert joint.ratio is not None
    assert joint.ratio.typical == pytest.approx(1.05, abs=0.1)
    assert not albright.suits
    assert "2 to 8" in albright.against


def test_a_long_leader_wants_a_joint_that_passes_the_rings() -> None:
    assert joint_of("drop shot", "leader").through_guides
    assert not joint_of("walking bait", "leader").through_guides
    proposed = joint_of("drop shot", "leader").proposed
    assert proposed is not None
    assert "rings" in proposed.reason


def test_light_line_is_tied_not_crimped() -> None:
    assert not knot(joint_of("spinnerbait", "lure"), "crimped sleeve").suits


def test_wire_takes_wire_joints() -> None:
    suiting = {one.knot.name for one in joint_of("musky-jerk", "lure").candidates if one.suits}
    assert suiting == {"crimped sleeve", "haywire twist"}


def test_a_joint_is_never_stronger_than_its_weaker_line() -> None:
    for technique in ("walking bait", "drop shot", "carolina"):
        case = case_of(technique)
        weaker = min(
            case.facts.main_straight_n.high, (case.facts.leader_straight_n or case.facts.main_straight_n).high
        )
        for joint in joints(case, METRIC):
            if joint.key == "leader":
                assert all(one.strength_n.high <= weaker * 1.001 for one in joint.candidates)


def test_a_twist_in_wire_is_judged_by_the_wire() -> None:
    joint = joint_of("musky-jerk", "leader")
    twist = knot(joint, "haywire twist")
    assert twist.share.low >= 0.8
    assert "loop in the leader" in twist.reason


def test_strength_is_the_weaker_lines_break_times_the_knots_share() -> None:
    case = case_of("spinnerbait")
    palomar = knot(joint_of("spinnerbait", "lure"), "palomar")
    expected = case.facts.main_straight_n.typical * palomar.share.typical
    assert palomar.strength_n.typical == pytest.approx(expected)
    assert palomar.strength_n.low < palomar.strength_n.typical < palomar.strength_n.high


def test_the_order_is_suiting_first_then_practice_then_strength() -> None:
    for technique in ("walking bait", "drop shot", "frog", "carolina", "musky-jerk"):
        for joint in joints(case_of(technique), METRIC):
            severities = [one.severity for one in joint.candidates]
            assert severities == sorted(severities)
            assert all(one.sources and one.reason and one.knot.steps for one in joint.candidates)
