"""The figures of whole rigs: completeness, hand-counted examples, and the laws that they must obey."""

import math
import subprocess
import sys
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rigbuilder.model.rig import Fish, Hardware, Leader, Lure, Reel, Water
from rigbuilder.reference.ranges import LBF_N, Range
from rigbuilder.reference.words import Condition, LineType, Presentation, ReelKind
from rigbuilder.review.facts import Facts
from rigbuilder.review.figures import figures, shape_points, working
from rigbuilder.review.figuring.usual import usual_rig
from tests.unit.review.figuring.rigs import REFERENCE, backing, facts, line, one, reel, rig

PRINTED_MM = 0.30e-3
USUAL = {name: usual_rig(name, REFERENCE) for name in REFERENCE.techniques}
USUAL_FACTS = dict(zip(USUAL, facts(*USUAL.values()), strict=True))


@pytest.mark.parametrize("technique", USUAL)
def test_usual_rigs_have_every_figure_in_order_and_finite(technique: str) -> None:
    found = USUAL_FACTS[technique]
    assert found.links
    assert sum(link.goes_first for link in found.links) == pytest.approx(1.0)
    for name in Facts.names():
        value = getattr(found, name)
        assert value is None or (value.low <= value.typical <= value.high and math.isfinite(value.high))


@pytest.mark.parametrize("technique", USUAL)
def test_a_usual_rig_equals_itself(technique: str) -> None:
    found = USUAL_FACTS[technique]
    assert tuple(found.hook_share) == pytest.approx((1.0, 1.0, 1.0))
    assert tuple(found.cast_share) == pytest.approx((1.0, 1.0, 1.0))
    if found.peak_share is not None:
        assert tuple(found.peak_share) == pytest.approx((1.0, 1.0, 1.0))


@pytest.mark.parametrize("technique", USUAL)
def test_a_usual_rig_casts_as_far_as_usual(technique: str) -> None:
    cast = USUAL[technique].cast_m
    assert cast is not None
    assert USUAL_FACTS[technique].cast_distance_m.typical == pytest.approx(cast, rel=0.02)


def test_a_diver_is_held_to_its_printed_depth() -> None:
    printed = USUAL["deep-diver"].lure.depth_m
    depth = USUAL_FACTS["deep-diver"].depth_m
    assert printed is not None
    assert depth is not None
    assert depth.typical == pytest.approx(printed.middle, rel=2e-3)


def test_many_rigs_give_what_each_gives_alone() -> None:
    rigs = [USUAL["frog"], USUAL["ned"], USUAL["deep-diver"]]
    for together, alone in zip(facts(*rigs), (facts(each)[0] for each in rigs), strict=True):
        for name in Facts.names():
            first, second = getattr(together, name), getattr(alone, name)
            assert (first is None) == (second is None), name
            if first is not None:
                assert tuple(first) == pytest.approx(tuple(second), rel=1e-3, abs=1e-9), name


def test_no_rigs_have_no_figures() -> None:
    assert figures([], [], REFERENCE) == []


def test_the_spool_holds_what_its_label_says_of_the_same_line() -> None:
    found = one(main=line(diameter_m=PRINTED_MM))
    assert found.spool_holds_m.typical == pytest.approx(100.0)
    thin = one(main=line(diameter_m=PRINTED_MM / 2))
    assert thin.spool_holds_m.typical == pytest.approx(400.0)


def test_backing_fills_what_the_main_line_leaves() -> None:
    found = one(main=line(diameter_m=PRINTED_MM, length_m=60.0), backing=backing(diameter_m=PRINTED_MM))
    assert found.backing_m is not None
    assert found.backing_m.typical == pytest.approx(40.0)
    assert found.fill_share.typical == pytest.approx(1.0)
    assert found.lip_gap_m.typical == pytest.approx(0.002)
    thicker = one(main=line(diameter_m=PRINTED_MM, length_m=60.0), backing=backing(diameter_m=2 * PRINTED_MM))
    assert thicker.backing_m is not None
    assert thicker.backing_m.typical == pytest.approx(10.0)


def test_too_much_line_stands_above_the_lip() -> None:
    found = one(main=line(diameter_m=PRINTED_MM, length_m=200.0))
    assert found.fill_share.typical == pytest.approx(2.0)
    assert found.lip_gap_m.typical < 0.0


def test_line_needed_is_cast_and_run_and_trimming() -> None:
    limits = REFERENCE.filling.limits
    found = one(cast_m=20.0)
    assert found.reach_m.low == pytest.approx(20.0 + limits.backing_margin_m + limits.trimming_m.low)
    far = one(cast_m=100.0)
    assert far.reach_m.low == pytest.approx(150.0 + limits.trimming_m.low)


def test_turns_wind_the_length_on() -> None:
    """Counted by hand: length over circumference times ratio, at the middle of the winding."""
    found = one(main=line(diameter_m=PRINTED_MM, length_m=100.0))
    row = REFERENCE.reel(ReelKind.BAITCASTING, 150.0)
    barrel, full = row.barrel_m.typical, row.flange_m.typical - 0.004
    assert found.main_turns.typical == pytest.approx(100.0 / (math.pi * 7.0 * (barrel + full) / 2.0))
    assert found.retrieve_m.typical == pytest.approx(math.pi * full * 7.0)


def test_the_scale_shows_more_over_the_bent_rod() -> None:
    found = one()
    friction = REFERENCE.line_types[LineType.NYLON].guide_friction.typical
    assert found.drag_n is not None
    assert found.drag_on_scale_n is not None
    assert found.drag_worst_n is not None
    assert found.drag_on_scale_n.typical == pytest.approx(20.0 * math.exp(friction * math.pi / 3.0))
    assert found.drag_worst_n.typical > found.drag_on_scale_n.typical
    assert found.drag_share is not None
    assert found.drag_share.typical == pytest.approx(20.0 / (12.0 * LBF_N))


def test_without_a_drag_there_is_none_to_judge() -> None:
    found = one(drag_n=None)
    assert found.drag_n is None
    assert found.drag_worst_n is None
    assert found.drag_recommended_n.typical > 0.0
    assert found.hook_force_n.typical > 0.0


def test_printed_hardware_joins_the_chain() -> None:
    found = one(hardware=Hardware(swivel_n=30.0, snap_n=200.0))
    swivel = next(link for link in found.links if link.name == "swivel")
    assert swivel.strength_n.typical == pytest.approx(30.0)
    assert found.chain_n.typical < one().chain_n.typical


def test_own_knot_tests_replace_the_catalogue() -> None:
    rough, fine = (
        facts(rig(), own_knots={("palomar", LineType.NYLON): Range(0.3 - apart, 0.3, 0.3 + apart)})[0]
        for apart in (0.1, 0.01)
    )
    assert fine.weakest.name == "knot at the lure"
    assert fine.chain_n.typical < one().chain_n.typical
    assert _width(fine.chain_n) < _width(rough.chain_n)


def _width(value: Range) -> float:
    return math.log(value.high / value.low)


@pytest.mark.parametrize(
    ("measured", "figure"),
    [
        ({"measured_diameter_m": 0.31e-3}, "main_diameter_m"),
        ({"measured_strength_n": 60.0}, "main_straight_n"),
    ],
)
def test_what_is_measured_narrows_the_range(measured: dict[str, Any], figure: str) -> None:
    assert _width(getattr(one(main=line(**measured)), figure)) < _width(getattr(one(), figure))


@pytest.mark.parametrize(
    "state", [Condition.USED, Condition.WORN, Condition.KINKED], ids=lambda state: state.value
)
def test_worn_line_bears_less(state: Condition) -> None:
    assert one(main=line(condition=state)).main_straight_n.typical < one().main_straight_n.typical


def test_a_weaker_knot_makes_a_weaker_chain() -> None:
    values = [
        facts(rig(), own_knots={("palomar", LineType.NYLON): Range(share, share, share)})[0].chain_n.typical
        for share in (0.3, 0.5, 0.7)
    ]
    assert all(weaker < stronger for weaker, stronger in pairwise(values))


def test_braid_pulls_harder_than_nylon_at_range() -> None:
    far = {"cast_m": 45.0, "drag_n": 40.0}
    nylon = one(main=line(LineType.NYLON, 20.0), **far)
    braid = one(main=line(LineType.BRAID, 20.0), **far)
    assert braid.hook_force_n.typical > 1.5 * nylon.hook_force_n.typical
    assert braid.hook_share.low > nylon.hook_share.typical
    assert braid.tug_share.typical > nylon.tug_share.typical


def test_nylon_softens_the_jerk_at_short_range() -> None:
    lure = Lure(technique="square-bill", weight_kg=0.01)
    nylon, braid = (one(lure=lure, main=line(kind, 14.0)) for kind in (LineType.NYLON, LineType.BRAID))
    assert nylon.peak_force_n is not None
    assert braid.peak_force_n is not None
    assert nylon.peak_force_n.typical < braid.peak_force_n.typical
    assert one().peak_force_n is None


def test_only_sinking_line_hangs_on_a_floating_lure() -> None:
    surface = {
        "lure": Lure(technique="popper", weight_kg=0.01),
        "presentation": Presentation.FLOATING,
        "water": Water(depth_m=3.0),
    }
    pulls = {
        kind: one(main=line(kind, 14.0), **surface).nose_pull_n
        for kind in (LineType.NYLON, LineType.FLUOROCARBON, LineType.BRAID)
    }
    nylon, fluorocarbon, braid = (pulls[kind] for kind in pulls)
    assert nylon is not None
    assert fluorocarbon is not None
    assert braid is not None
    assert 0.0 == braid.typical < nylon.typical < fluorocarbon.typical
    assert one().nose_pull_n is None


def test_braid_keeps_no_coils() -> None:
    braid = one(main=line(LineType.BRAID, 20.0))
    assert tuple(braid.coil_strain) == (0.0, 0.0, 0.0)
    assert tuple(braid.straighten_n) == (0.0, 0.0, 0.0)
    small = one(reel=Reel(kind=ReelKind.SPINNING, size="1000"))
    large = one(reel=Reel(kind=ReelKind.SPINNING, size="4000"))
    assert small.straighten_n.typical > large.straighten_n.typical > 0.0


def test_glint_is_told_against_nylon_and_not_of_opaque_line() -> None:
    nylon = one().glint_ratio
    assert nylon is not None
    assert nylon.typical == pytest.approx(1.0)
    fluorocarbon = one(main=line(LineType.FLUOROCARBON)).glint_ratio
    assert fluorocarbon is not None
    assert fluorocarbon.typical == pytest.approx(0.47, abs=0.02)
    assert one(main=line(LineType.BRAID, 20.0)).glint_ratio is None


def test_clear_water_shows_line_farther() -> None:
    seen = [one(water=Water(clarity_m=clarity)).sight_m.typical for clarity in (0.5, 1.5, 4.0)]
    assert seen == sorted(seen)


@settings(max_examples=25)
@given(thin=st.floats(0.1, 0.5), more=st.floats(1.02, 2.0))
def test_thicker_line_means_less_capacity_and_less_depth(thin: float, more: float) -> None:
    first, second = facts(*(rig(main=line(diameter_m=d * 1e-3)) for d in (thin, thin * more)))
    assert second.spool_holds_m.typical < first.spool_holds_m.typical
    assert first.depth_m is not None
    assert second.depth_m is not None
    assert second.depth_m.typical < first.depth_m.typical
    assert second.cast_distance_m.typical < first.cast_distance_m.typical
    assert second.sight_m.typical > first.sight_m.typical


@settings(max_examples=25)
@given(
    kind=st.sampled_from([LineType.NYLON, LineType.FLUOROCARBON, LineType.BRAID]),
    pounds=st.floats(4.0, 30.0),
    near=st.floats(5.0, 40.0),
    more=st.floats(1.05, 2.0),
)
def test_more_line_out_means_less_pull_at_the_hook(
    kind: LineType, pounds: float, near: float, more: float
) -> None:
    first, second = facts(*(rig(main=line(kind, pounds), cast_m=cast) for cast in (near, near * more)))
    assert second.hook_force_n.typical <= first.hook_force_n.typical + 1e-9
    assert second.tug_share.typical < first.tug_share.typical


@settings(max_examples=30)
@given(
    technique=st.sampled_from(sorted(USUAL)),
    kind=st.sampled_from(list(LineType)),
    pounds=st.floats(1.0, 200.0),
    cast=st.floats(1.0, 90.0),
    grams=st.floats(0.5, 200.0),
    leader=st.none() | st.floats(0.1, 10.0),
    length=st.none() | st.floats(5.0, 500.0),
    celsius=st.floats(-1.0, 40.0),
    depth=st.floats(0.1, 60.0),
)
def test_any_rig_has_ordered_finite_figures(
    technique: str, kind: LineType, pounds: float, cast: float, grams: float, leader: float | None,
    length: float | None, celsius: float, depth: float,
) -> None:  # fmt: skip
    tippet = None if leader is None else Leader(type=LineType.FLUOROCARBON, test_n=40.0, length_m=leader)
    strange = USUAL[technique].with_(
        main=line(kind, pounds, length_m=length),
        leader=tippet,
        cast_m=cast,
        lure=Lure(technique=technique, weight_kg=grams / 1000.0),
        water=Water(temperature_c=celsius, depth_m=depth, current_mps=0.5),
        fish=Fish(mass_kg=grams / 20.0),
    )
    found = facts(strange)[0]
    for name in Facts.names():
        value = getattr(found, name)
        assert value is None or value.low <= value.typical <= value.high, name
    for curve in shape_points(found):
        assert all(map(math.isfinite, (*curve.x_m, *curve.z_m)))


@pytest.mark.parametrize("technique", ["deep-diver", "spinnerbait", "frog", "ned"])
def test_the_drawn_line_runs_from_lure_to_rod_tip(technique: str) -> None:
    found = USUAL_FACTS[technique]
    curves = shape_points(found)
    for curve in curves:
        assert curve.x_m[-1] == pytest.approx(0.0, abs=1e-9)
        assert curve.z_m[-1] == pytest.approx(1.0)
    if found.depth_m is not None and found.layback_m is not None:
        assert [-curve.z_m[0] for curve in curves] == pytest.approx(list(found.depth_m), rel=5e-3)
        assert curves[1].x_m[0] == pytest.approx(found.layback_m.typical, rel=5e-3)


def test_a_figure_tells_its_working() -> None:
    told = working("spool_holds_m", one(main=line(diameter_m=PRINTED_MM)))
    assert told.result is not None
    assert told.result.typical == pytest.approx(100.0)
    values = {entry.name: entry.value for entry in told.inputs}
    length, labelled = values["label_length_m"], values["label_diameter_m"]
    assert length is not None
    assert labelled is not None
    assert length.typical * (labelled.typical / PRINTED_MM) ** 2 == pytest.approx(100.0)
    assert told.sources


def test_no_figure_has_no_working() -> None:
    with pytest.raises(KeyError):
        working("luck", one())


def test_remarks_tell_where_a_formula_ends() -> None:
    assert one().remarks == ()
    murky, hot = one(water=Water(clarity_m=0.1)), one(water=Water(temperature_c=38.0))
    assert "clarity of the water" in murky.remarks[0]
    assert "water temperature" in hot.remarks[0]


def test_a_reel_without_label_is_taken_by_its_size() -> None:
    row = REFERENCE.reel(ReelKind.BAITCASTING, 200.0)
    found = one(reel=reel(capacity=(), size="200"), main=line())
    assert found.spool_holds_m.typical == pytest.approx(row.capacity_nylon_12lb_m.typical)


def test_scipy_stays_away_until_it_is_needed() -> None:
    code = "import sys, rigbuilder.review.figures; sys.exit('scipy' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
