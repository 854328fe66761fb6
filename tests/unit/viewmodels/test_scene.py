"""The drawn rig as values: the reasons' numbers on its pins, its words, its way from one scene to another."""

import pytest

from rigbuilder.model.fields import Part
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.pins import numbering
from rigbuilder.viewmodels.scene import between, scene_of
from tests.unit.review.questions.cases import TECHNIQUES, WRONG_FROG, report_of, usual_report

WRONG = WRONG_FROG | {"drag": "14 lb", "knots.lure": "improved clinch"}


def test_the_pins_carry_the_numbers_of_the_reasons() -> None:
    report = report_of("frog", WRONG)
    scene = scene_of(report, Speaker())
    numbers = numbering(report)
    assert {pin.number: pin.part for pin in scene.pins} == {
        numbers[found.rule.name]: found.part for found in report.findings
    }
    assert scene.worst(Part.MAIN) == "fault"


@pytest.mark.parametrize("technique", TECHNIQUES)
def test_every_part_has_a_label_and_is_spoken(technique: str) -> None:
    scene = scene_of(usual_report(technique), Speaker())
    assert set(scene.parts) == set(Part)
    for part in scene.parts:
        assert scene.labels[part]
        assert scene.labels[part] in scene.spoken[part]


def test_what_is_spoken_holds_the_key_figures_and_the_reasons() -> None:
    report = report_of("frog", WRONG)
    scene = scene_of(report, Speaker())
    assert "16 lb" in scene.spoken[Part.MAIN]
    assert Speaker().forces(report.case.facts.main_straight_n) in scene.spoken[Part.MAIN]
    for found in report.findings:
        assert found.headline(Speaker()) in scene.spoken[found.part]


def test_the_lengths_follow_the_unit_system() -> None:
    metric = scene_of(usual_report("deep-diver"), Speaker(UnitSystem.METRIC))
    assert metric.words["cast"] == "40 m"
    assert metric.unit == "m"
    assert scene_of(usual_report("deep-diver"), Speaker()).words["cast"].endswith(" yd")


def test_half_way_lies_between_two_scenes_and_the_end_is_the_later_one() -> None:
    before = scene_of(report_of("deep-diver", {"cast": "20 m"}), Speaker())
    after = scene_of(usual_report("deep-diver"), Speaker())
    half = between(before, after, 0.5)
    assert half.cast_m == pytest.approx((before.cast_m + after.cast_m) / 2)
    assert half.typical[-1][0] == pytest.approx((before.typical[-1][0] + after.typical[-1][0]) / 2)
    assert half.labels == after.labels
    assert between(before, after, 1.0) is after
    assert between(before, after, 0.0).typical == before.typical


def test_a_kink_and_the_bend_under_the_drag_are_to_be_drawn() -> None:
    fresh, kinked = (
        scene_of(report_of("texas-open", {"main.condition": state, "drag": "4 lb"}), Speaker())
        for state in ("fresh", "kinked")
    )
    assert not fresh.main.kinked
    assert kinked.main.kinked
    assert fresh.rod.bend_m < fresh.rod.drag_bend_m <= 0.4 * fresh.rod.length_m
    harder = scene_of(report_of("texas-open", {"main.condition": "fresh", "drag": "6 lb"}), Speaker())
    assert harder.rod.drag_bend_m > fresh.rod.drag_bend_m
