"""Where it breaks and what the drag is set to: against sampling, closed forms and what practice says."""

import math

import numpy as np
import pytest

from rigbuilder.mechanics.uncertainty import Range as Ranges
from rigbuilder.plans.chain import ChainPlan, chain_plan
from rigbuilder.plans.dragplan import DragPlan, drag_plan, drag_remarks
from rigbuilder.plans.fill import fill_plan
from rigbuilder.review.figuring.dragging import ROD_ANGLE_RAD
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import Kind
from rigbuilder.units.systems import UnitSystem
from tests.unit.plans.cases import LBF_N, case_of

METRIC = Speaker(UnitSystem.METRIC)


def chain_of(technique: str, changes: dict[str, object] | None = None) -> ChainPlan:
    return chain_plan(case_of(technique, changes), METRIC)


def drag_of(technique: str, changes: dict[str, object] | None = None) -> DragPlan:
    case = case_of(technique, changes)
    return drag_plan(case, fill_plan(case))


@pytest.mark.parametrize("technique", ["spinnerbait", "drop shot", "walking bait"])
def test_the_chances_are_those_of_sampling(technique: str) -> None:
    """Brute force: 200 000 chains of independent normal links, as the method states them."""
    plan = chain_of(technique)
    draw = np.random.default_rng(11)
    links = [Ranges(*one.link.strength_n) for one in plan.links]
    pulled = np.stack([draw.normal(float(r.mean()), float(r.deviation()), 200_000) for r in links])
    first = np.bincount(pulled.argmin(axis=0), minlength=len(links)) / pulled.shape[1]
    for share, one in zip(first, plan.links, strict=True):
        assert one.link.goes_first == pytest.approx(share, abs=0.012)
    low, high = np.quantile(pulled.min(axis=0), (0.05, 0.95))
    assert plan.whole.value.low == pytest.approx(low, rel=0.03)
    assert plan.whole.value.high == pytest.approx(high, rel=0.03)


@pytest.mark.parametrize(("technique", "hangs"), [("walking bait", True), ("musky-jerk", True),
                                                 ("frog", False), ("spinnerbait", False)])  # fmt: skip
def test_trebles_hang_on_split_rings(technique: str, hangs: bool) -> None:
    links = {one.link.name: one for one in chain_of(technique).links}
    assert ("split ring" in links) is hangs
    if hangs:
        ring, hook = links["split ring"], links["hook"]
        assert ring.sources[0].kind is Kind.MEMORY
        assert "treble" in ring.lost
        assert hook.link.strength_n.typical < ring.link.strength_n.typical
        assert ring.link.goes_first < hook.link.goes_first


def test_a_hook_called_thin_bears_what_thin_wire_bears() -> None:
    usual, thin = (
        chain_of("flipping jig", {"lure.hook": hook}).links[0].link for hook in ("4/0", "4/0 light wire")
    )
    fine = chain_of("drop shot").links[0].link
    assert thin.strength_n == fine.strength_n
    assert thin.strength_n.high < usual.strength_n.low
    assert chain_of("flipping jig", {"lure.hook": "2/0"}).links[0].link.strength_n == usual.strength_n


def test_the_knot_is_the_planned_fuse() -> None:
    plan = chain_of("spinnerbait")
    assert plan.fuse.link.name == "knot at the lure"
    assert plan.verdict.severity == "right"


def test_a_main_line_that_goes_first_is_a_risk() -> None:
    plan = chain_of("spinnerbait", {"main.condition": "kinked"})
    assert plan.fuse.link.name in ("main line", "knot at the lure")
    weak = chain_of(
        "spinnerbait",
        {"main.condition": "worn", "main.type": "nylon", "main.test": "8 lb",
         "leader": {"type": "fluorocarbon", "test": "30 lb", "length": "30 cm"}, "hardware.swivel": "60 lb"},
    )  # fmt: skip
    assert weak.fuse.link.name == "main line"
    assert weak.verdict.severity == "risk"
    assert "stays in the water" in weak.fuse.lost


def test_a_bite_leader_makes_the_joint_the_fuse() -> None:
    plan = chain_of(
        "spinnerbait",
        {"main.type": "nylon", "main.test": "10 lb", "hardware.swivel": None,
         "leader": {"type": "fluorocarbon", "test": "60 lb", "length": "30 cm", "knot": "albright"}},
    )  # fmt: skip
    assert plan.fuse.link.name == "joint of leader and main line"
    assert "on purpose" in plan.verdict.text


def test_every_link_says_how_it_is_known_and_what_goes_with_it() -> None:
    for technique in ("musky-jerk", "carolina", "frog"):
        for one in chain_of(technique).links:
            assert one.sources
            assert one.lost


def test_a_measured_line_says_so() -> None:
    plan = chain_of("spinnerbait", {"main.measured": {"strength": "19 lb"}})
    main = next(one for one in plan.links if one.link.name == "main line")
    assert "measured" in main.sources[0].text


def test_the_pull_over_the_rod_follows_the_capstan_equation() -> None:
    plan = drag_of("spinnerbait")
    friction = dict(plan.over_rod.inputs)["friction on the rings"]
    expected = plan.straight.value.typical * math.exp(friction.typical * ROD_ANGLE_RAD[1])
    assert plan.over_rod.value.typical == pytest.approx(expected)
    assert plan.over_rod.sources[0].kind is Kind.PUBLISHED


def test_an_emptying_spool_follows_constant_torque() -> None:
    """T = M / r with r² falling linearly with the line taken (closed form of the spool)."""
    case = case_of("drop shot", {"reel.spool": {"arbor": "30 mm", "rim": "45 mm", "width": "16 mm"}})
    fill = fill_plan(case)
    plan = drag_plan(case, fill)
    full, core = fill.main.over_m.typical / 2, fill.main.under_m.typical / 2
    for point in plan.emptied:
        share = point.out_m / fill.main.length_m.typical
        radius = math.sqrt(full**2 - share * (full**2 - core**2))
        assert point.growth.typical == pytest.approx(full / radius)
    assert plan.emptied[0].growth.typical == 1.0
    assert [p.growth.typical for p in plan.emptied] == sorted(p.growth.typical for p in plan.emptied)


def test_the_setting_is_practices_share_of_the_weakest_label() -> None:
    plan = drag_of("drop shot")  # 8 lb leader, 20 to 26 per cent
    assert plan.percent is not None
    low, high = plan.percent
    assert plan.weakest_label_n == pytest.approx(8 * LBF_N)
    assert plan.straight.value.low == pytest.approx(low / 100 * 8 * LBF_N)
    assert plan.straight.value.high == pytest.approx(high / 100 * 8 * LBF_N)


def test_never_more_than_chain_reel_or_rod_bear() -> None:
    for technique in ("frog", "walking bait", "musky-jerk", "punching", "trout-spoon"):
        plan = drag_of(technique)
        assert plan.straight.value.high <= plan.reel.value.typical + 1e-9
        assert plan.straight.value.high <= plan.rod.value.high + 1e-9
        assert plan.straight.value.typical <= plan.ceiling.value.typical + 1e-9
    weak = drag_of("frog", {"reel.drag": "8 lb"})
    assert weak.straight.value.high == pytest.approx(8 * LBF_N)


@pytest.mark.parametrize(
    ("drag", "severity", "words"),
    [("1.8 lb", "right", "within"), ("0.5 lb", "note", "below"), ("4 lb", "note", "above"),
     ("5.9 lb", "risk", "may be more"), ("12 lb", "fault", "in any case")],
)  # fmt: skip
def test_the_present_setting_is_judged(drag: str, severity: str, words: str) -> None:
    found = drag_remarks(drag_of("drop shot", {"drag": drag}), METRIC)[-1]
    assert found.severity == severity
    assert words in found.text


# Line classes [kg, US lb] and the length of leader and double line [m] that the IGFA's rules allow
# (IGFA line classes and angling rules 2021). The kilogram governs a class.
CLASSES = (
    (1, 2),
    (2, 4),
    (3, 6),
    (4, 8),
    (6, 12),
    (8, 16),
    (10, 20),
    (15, 30),
    (24, 50),
    (37, 80),
    (60, 130),
)


@pytest.mark.parametrize(("kilograms", "pounds"), CLASSES)
def test_a_class_line_breaks_at_or_below_its_class(kilograms: int, pounds: int) -> None:
    case = case_of(
        "spinnerbait",
        {"main.type": "nylon", "main.test": f"{kilograms} kg", "main.convention": "class"},
    )
    assert case.facts.main_straight_n.high <= kilograms * 9.80665 * 1.0 + 1e-6
    assert kilograms * 9.80665 / LBF_N == pytest.approx(pounds, rel=0.11)


@pytest.mark.parametrize("technique", ["drop shot", "carolina", "walking bait", "musky-jerk"])
def test_usual_freshwater_leaders_stay_within_the_record_rules_or_say_their_length(technique: str) -> None:
    """Freshwater, all classes: leader at most 1.82 m (6 ft). The drop shot's long one is not for records."""
    leader = case_of(technique).leader
    assert leader is not None
    assert leader.length_m is not None
    assert (leader.length_m <= 1.8288) is (technique != "drop shot")
