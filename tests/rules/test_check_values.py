"""Check values of common practice: what experienced anglers would expect to come out.

Every figure here is common practice; there is no source outside the trade to hold it against.
"""

import pytest

from rigbuilder.model.document import put_all
from rigbuilder.model.reading import read
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.reference.words import LineType, Presentation
from rigbuilder.review.chart import Cell, Grade, chart
from rigbuilder.review.conditions import Bounds
from rigbuilder.review.engine import Report, review
from rigbuilder.review.middle import middle_ways

Changes = dict[str, str | None]
NYLON, FLUOROCARBON, BRAID = LineType.NYLON, LineType.FLUOROCARBON, LineType.BRAID
GOOD = (Grade.FIRST_CHOICE, Grade.WORKS)


def reported(technique: str, changes: Changes) -> Report:
    """Review the usual rig with changes."""
    reference = load()
    rig = read(put_all(usual_document(reference.technique(technique).id), changes), reference).rig
    assert rig is not None
    return review(rig, reference, House.shipped())


def aim(technique: str, kind: LineType, changes: Changes) -> Bounds:
    """Return the tests that suit under these conditions."""
    found = reported(technique, changes).case.aim.for_type(kind)
    assert found is not None
    return found


def cell(technique: str, kind: LineType, test_lb: float, changes: Changes | None = None) -> Cell:
    """Return one cell of the line chart."""
    case = reported(technique, changes or {}).case
    cells = chart(case.rig, case.reference, case.house)
    return next(found for found in cells if found.type is kind and abs(found.test_lb - test_lb) < 0.1)


@pytest.mark.parametrize(
    ("changes", "lowest", "highest"),
    [
        ({"fish.weight": "0.5 kg"}, 14, 17),
        ({"water.cover": "open"}, 14, 17),
        ({"water.pressure": "high"}, 14, 17),
        ({"lure.weight": "3/8 oz"}, 14, 17),
        (
            {
                "lure.weight": "3/8 oz",
                "fish.weight": "0.5 kg",
                "water.cover": "open",
                "water.pressure": "high",
            },
            14,
            14,
        ),
        ({"fish.weight": "5 kg"}, 25, 25),
        ({"lure.weight": "1 oz"}, 25, 25),
        ({"lure.weight": "1 oz", "fish.weight": "5 kg"}, 25, 25),
    ],
)
def test_flipping_on_fluorocarbon_moves_between_14_and_25(
    changes: Changes, lowest: float, highest: float
) -> None:
    assert lowest <= aim("flipping jig", FLUOROCARBON, changes).aim_lb <= highest


def test_flipping_where_one_rod_must_do_for_both() -> None:
    reference = load()
    flipping = reference.technique("flipping jig")
    ways = middle_ways(flipping, flipping, reference, House.shipped())
    way = next(way for way in ways if way.type is FLUOROCARBON)
    assert (min(way.tests_lb), max(way.tests_lb)) == (16, 18)
    light, heavy = way.ends
    assert (light.wish_lb, heavy.wish_lb) == (14, 25)
    assert "falls slower" in light.cost
    assert "less in hand" in heavy.cost


@pytest.mark.parametrize(
    ("kind", "test_lb", "grades"),
    [
        (BRAID, 40, GOOD),
        (BRAID, 50, GOOD),
        (BRAID, 65, (Grade.FIRST_CHOICE,)),
        (BRAID, 15, (Grade.POOR, Grade.NEVER)),
        (FLUOROCARBON, 17, (Grade.NEVER,)),
        (FLUOROCARBON, 30, (Grade.POOR,)),
    ],
)
def test_punching_mats(kind: LineType, test_lb: float, grades: tuple[Grade, ...]) -> None:
    assert cell("punching rig", kind, test_lb).grade in grades


FINESSE = ("drop shot", "shaky head", "tube")


@pytest.mark.parametrize("technique", FINESSE)
def test_finesse_on_fluorocarbon_is_8_lb_first_and_6_when_bites_stop(technique: str) -> None:
    assert aim(technique, FLUOROCARBON, {}).aim_lb == 8
    assert aim(technique, FLUOROCARBON, {"water.pressure": "high"}).aim_lb == 6
    lightest = {"drop shot": "1/8 oz", "shaky head": "1/16 oz", "tube": "1/8 oz"}[technique]
    assert aim(technique, FLUOROCARBON, {"lure.weight": lightest}).aim_lb <= 8


@pytest.mark.parametrize("technique", FINESSE)
def test_finesse_on_fluorocarbon_ends_at_10_lb(technique: str) -> None:
    assert cell(technique, FLUOROCARBON, 8).grade is Grade.FIRST_CHOICE
    assert cell(technique, FLUOROCARBON, 10).grade in GOOD


@pytest.mark.parametrize("technique", FINESSE)
@pytest.mark.parametrize("test_lb", [12, 14])
def test_12_to_14_lb_fluorocarbon_springs_off_a_spinning_reel(technique: str, test_lb: float) -> None:
    found = cell(technique, FLUOROCARBON, test_lb)
    assert found.grade is Grade.POOR
    assert "line-too-stiff-for-spinning-reel" in [f.rule.name for f in found.report.findings]


@pytest.mark.parametrize("test_lb", [10, 12])
def test_suspending_jerkbaits_take_10_to_12_lb_fluorocarbon(test_lb: float) -> None:
    assert cell("suspending jerkbait", FLUOROCARBON, test_lb).grade is Grade.FIRST_CHOICE


def test_about_14_lb_for_square_bills_and_small_spinnerbaits() -> None:
    assert aim("square-bill crankbait", FLUOROCARBON, {}).aim_lb == 14
    assert 14 <= aim("spinnerbait", FLUOROCARBON, {"lure.weight": "1/4 oz"}).aim_lb <= 15
    assert cell("spinnerbait", FLUOROCARBON, 14, {"lure.weight": "1/4 oz"}).grade in GOOD


def test_heavy_spinnerbait_wants_18_to_20_lb() -> None:
    heavy: Changes = {"lure.weight": "3/4 oz"}
    assert 18 <= aim("spinnerbait", FLUOROCARBON, heavy).aim_lb <= 20
    for test_lb in (18, 20):
        assert cell("spinnerbait", FLUOROCARBON, test_lb, heavy).grade is Grade.FIRST_CHOICE
    for test_lb in (10, 12, 14):
        assert cell("spinnerbait", FLUOROCARBON, test_lb, heavy).grade is Grade.POOR


def test_small_square_bill_on_25_lb_fluorocarbon_neither_casts_nor_lands_where_it_should() -> None:
    assert cell("square-bill crankbait", FLUOROCARBON, 25, {"lure.weight": "1/4 oz"}).grade is Grade.POOR


def test_short_casts_with_small_trebles_take_nylon_before_fluorocarbon() -> None:
    short: Changes = {"cast": "10 m"}
    assert cell("square-bill crankbait", NYLON, 14, short).grade is Grade.FIRST_CHOICE
    assert cell("square-bill crankbait", FLUOROCARBON, 14, short).grade is Grade.WORKS


@pytest.mark.parametrize(
    ("technique", "changes"), [("square-bill crankbait", {"cast": "38 m"}), ("deep-diving crankbait", {})]
)
def test_long_casts_and_deep_divers_are_the_other_way_round(technique: str, changes: Changes) -> None:
    order = list(Grade)
    test_lb = 12
    fluorocarbon, nylon = (cell(technique, kind, test_lb, changes).grade for kind in (FLUOROCARBON, NYLON))
    assert fluorocarbon is Grade.FIRST_CHOICE
    assert order.index(nylon) > order.index(fluorocarbon)


@pytest.mark.parametrize("technique", ["walking bait", "prop bait", "popper", "buzzbait", "hollow-body frog"])
def test_no_fluorocarbon_on_surface_lures(technique: str) -> None:
    case = reported(technique, {}).case
    cells = chart(case.rig, case.reference, case.house)
    assert {found.grade for found in cells if found.type is FLUOROCARBON} == {Grade.NEVER}


@pytest.mark.parametrize(
    ("technique", "changes"),
    [
        ("drop shot", {}),
        ("shaky head", {"cast": "35 m"}),
        ("swim jig", {"water.cover": "sparse grass", "water.clarity": "3 m", "main.type": "braid",
                      "main.test": "40 lb", "leader.type": "fluorocarbon", "leader.test": "20 lb",
                      "leader.length": "36 in", "leader.knot": "fg", "drag": "4 lb",
                      "knots.lure": "double-loop clinch"}),
    ],
)  # fmt: skip
def test_braid_in_front_of_a_fluorocarbon_leader(technique: str, changes: Changes) -> None:
    report = reported(technique, changes)
    assert report.case.is_braided()
    assert report.case.leader is not None
    assert report.case.leader.type is FLUOROCARBON
    assert report.verdict.word in ("right", "note")


def test_finesse_leaders_are_one_to_three_arm_spans() -> None:
    arm_span_m = 1.6  # a junior's to a grown angler's, 1.4 to 1.9
    for technique in load().techniques.values():
        base = technique.base
        if Presentation.FINESSE in technique.presentations and base.main is BRAID and base.leader_m:
            assert 0.5 * arm_span_m <= base.leader_m <= 3 * arm_span_m, technique.name


def test_a_rod_marked_14_to_25_lb_breaks_10_lb_line_off() -> None:
    rod: Changes = {"rod.label": "7'0\" MH F 14-25 lb 1/8-1/2 oz", "main.test": "10 lb"}
    found = [f for f in reported("texas rig", rod).findings if f.rule.name == "test-below-rod"]
    assert [f.severity.word for f in found] == ["risk"]


@pytest.mark.parametrize("test", ["4 lb", "40 lb"])
def test_line_outside_the_rods_range_either_way_is_spoken_of(test: str) -> None:
    names = [f.rule.name for f in reported("texas rig", {"main.test": test}).findings]
    assert {"test-below-rod", "test-above-rod"} & set(names)


def test_a_kink_is_cut_back_above_and_never_fished_on() -> None:
    report = reported("texas rig", {"main.condition": "kinked"})
    (kinked,) = [f for f in report.findings if f.rule.name == "line-kinked"]
    assert kinked.severity.word == "fault"
    said = [remedy.say for mend in kinked.rule.mends for remedy in mend(report.case)]
    assert any("Cut back above" in words for words in said)


def test_backing_joint_lies_a_good_cast_deeper_than_any_cast() -> None:
    short = reported("walking bait", {"main.length": "45 yd", "cast": "40 yd"})
    deep = reported("walking bait", {"main.length": "100 yd", "cast": "40 yd"})
    assert "backing-joint-inside-cast" in [f.rule.name for f in short.findings]
    assert "backing-joint-inside-cast" not in [f.rule.name for f in deep.findings]
