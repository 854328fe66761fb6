"""Rods, lures and hooks: how the tables answer."""

import pytest

from rigbuilder.reference.load import load
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.reference.words import Action, HookClass, LineType, Power, ReelKind, Rest

REFERENCE = load()


def test_stronger_shorter_and_faster_rods_are_stiffer() -> None:
    rods = REFERENCE.rods
    typical = [rods.stiffness_n_m(power=power, length_m=2.1).typical for power in Power]
    assert typical == sorted(typical)
    assert rods.stiffness_n_m(power=Power.MEDIUM, length_m=2.1).typical == pytest.approx(
        rods.power(Power.MEDIUM).stiffness_n_m.typical
    )
    longer = rods.stiffness_n_m(power=Power.MEDIUM, length_m=2.4)
    softer = rods.stiffness_n_m(power=Power.MEDIUM, length_m=2.1, action=Action.MODERATE)
    assert max(longer.typical, softer.typical) < typical[list(Power).index(Power.MEDIUM)]


def test_power_words_say_more_on_casting_rods() -> None:
    row = REFERENCE.rods.power(Power.MEDIUM)
    assert row.line_lb(ReelKind.SPINNING).high < row.line_lb(ReelKind.BAITCASTING).high
    assert row.lure_kg(ReelKind.SPINNING).high < row.lure_kg(ReelKind.BAITCASTING).high


def test_lure_drag_grows_with_the_lure() -> None:
    lure = REFERENCE.lures["spinnerbait"]
    assert lure.drag_area_m2(0.010) == lure.drag_area_10g_m2
    assert lure.drag_area_m2(0.080).typical == pytest.approx(4 * lure.drag_area_10g_m2.typical)
    assert lure.air_area_m2(0.080).typical == pytest.approx(4 * lure.air_area_10g_m2.typical)


def test_what_a_lure_does_at_rest_agrees_with_its_weight_in_water() -> None:
    for technique in REFERENCE.techniques.values():
        submerged = REFERENCE.lure(technique).submerged
        assert technique.rest is not Rest.FLOATS or submerged.typical < 0, technique.id
        assert technique.rest is not Rest.SINKS or submerged.typical > 0, technique.id


def test_single_hooks_open_in_the_order_of_their_wire() -> None:
    order = (HookClass.LIGHT_WIRE_SINGLE, HookClass.MEDIUM_SINGLE, HookClass.HEAVY_SINGLE)
    opens = [REFERENCE.hooks[kind].opens_n.typical for kind in order]
    assert opens == sorted(opens)


def test_limits_are_given_in_newtons_too() -> None:
    row = REFERENCE.spinning_limit(2500)
    assert row.max_n(LineType.FLUOROCARBON) == pytest.approx(8 * LBF_N)
    assert row.max_lb(LineType.NYLON) == 10
    assert row.max_lb(LineType.BRAID) == 20
