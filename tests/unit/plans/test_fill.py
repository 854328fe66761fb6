"""The fill: any two of backing, main line and lip gap give the third; wound turn by turn it comes out."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rigbuilder.mechanics.layers import Lay, full_spool, wind
from rigbuilder.mechanics.sizes import STANDARD_SIZES
from rigbuilder.plans.fill import FillPlan, fill_plan
from rigbuilder.plans.fillwords import consequences, fill_sheet, headline
from rigbuilder.plans.pins import Origin, Quantity
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import Kind
from rigbuilder.units.systems import UnitSystem
from tests.unit.plans.cases import YARD_M, case_of

METRIC = Speaker(UnitSystem.METRIC)
SPIN_SPOOL = {"arbor": "30 mm", "rim": "45 mm", "width": "16 mm"}


def plan_of(technique: str, **changes: object) -> FillPlan:
    return fill_plan(case_of(technique, {path.replace("__", "."): value for path, value in changes.items()}))


def said(plan: FillPlan, severity: str) -> str:
    return " ".join(remark.text for remark in consequences(plan, METRIC) if remark.severity == severity)


def wound(plan: FillPlan) -> tuple[float, float]:
    """Return the room that the typical plan takes, and the lip gap after winding it turn by turn."""
    spool = plan.spool.typical_shape()
    parts = [part for part in (plan.backing, plan.main) if part is not None]
    lines = [(part.length_m.typical, part.diameter_m.typical) for part in parts]
    done = wind(
        arbor_diameter_m=float(np.asarray(spool.arbor_diameter_m)),
        width_m=float(np.asarray(spool.width_m)),
        packing=float(np.asarray(spool.packing)),
        lines_m=lines,
    )
    room = sum(length * diameter**2 for length, diameter in lines)
    return room, (plan.spool.rim_m.typical - done[-1].fill_diameter_m) / 2.0


@settings(max_examples=40)
@given(
    main=st.floats(60.0, 120.0),
    gap=st.floats(1.0, 4.0),
    capacity=st.floats(160.0, 260.0),
    tests=st.sampled_from([("braid", "20 lb"), ("nylon", "10 lb"), ("fluorocarbon", "8 lb")]),
)
def test_the_fill_comes_out_when_wound_turn_by_turn(
    main: float, gap: float, capacity: float, tests: tuple[str, str]
) -> None:
    plan = plan_of(
        "drop shot",
        reel__capacity=[f"0.30 mm/{capacity:.0f} m"],
        main__type=tests[0],
        main__test=tests[1],
        backing={"type": "nylon", "test": "10 lb", "knot": "double uni"},
        fill={"main": f"{main:.1f} m", "lip_gap": f"{gap:.2f} mm"},
    )
    assert plan.follows is Quantity.BACKING
    room, reached = wound(plan.feasible)
    asked = plan.feasible.lip_gap_m.typical
    layer = max(part.diameter_m.typical for part in (plan.main, plan.backing) if part is not None)
    assert reached == pytest.approx(asked, abs=layer)
    shape = plan.spool.typical_shape()
    assert room == pytest.approx(float(shape.room_m3(lip_gap_m=asked)), rel=0.02)


@settings(max_examples=25)
@given(main=st.floats(60.0, 100.0), gap=st.floats(1.5, 3.0))
def test_any_two_give_the_third(main: float, gap: float) -> None:
    base = {"reel__capacity": ["0.30 mm/200 m"], "main__diameter": "0.20 mm"}
    first = plan_of("drop shot", **base, fill={"main": f"{main:.2f} m", "lip_gap": f"{gap:.4f} mm"})
    assert first.backing is not None
    backing = first.backing.length_m.typical
    assert backing > 1.0
    by_backing = plan_of(
        "drop shot", **base, fill={"backing": f"{backing:.4f} m", "lip_gap": f"{gap:.4f} mm"}
    )
    assert by_backing.main.length_m.typical == pytest.approx(main, abs=0.02)
    by_both = plan_of("drop shot", **base, fill={"backing": f"{backing:.4f} m", "main": f"{main:.2f} m"})
    assert by_both.lip_gap_m.typical == pytest.approx(gap / 1000, abs=2e-6)


@pytest.mark.parametrize(("number", "other"), [(1.0, 2.0), (2.0, 3.0), (0.8, 1.5), (4.0, 2.0), (6.0, 3.0)])
def test_printed_pairs_of_the_open_japanese_sizes_follow_the_square_law(number: float, other: float) -> None:
    """Reels print pairs such as No. 2 - 150 m and No. 3 - 100 m: length times size number stays the same.

    The open standard diameters (JAFS 2010, quoted at second hand) must give such pairs by (d1/d2)² within
    the rounding of the printed diameters, 3 %.
    """
    diameter = {row.number: row.diameter_m for row in STANDARD_SIZES}
    length = 150.0
    printed = length * number / other
    plan = plan_of(
        "spinnerbait",
        reel__capacity=[f"No. {number:g}/{length:g} m"],
        main__diameter=f"{diameter[other] * 1000:.3f} mm",
        main__type="nylon",
        backing=None,
        fill={"lip_gap": "2 mm"},
    )
    assert plan.main.length_m.typical == pytest.approx(printed, rel=0.03)


def test_a_rope_drum_holds_what_the_handbook_says() -> None:
    """20 in flange, 10 in barrel, 12 in wide, half-inch rope: about 940 ft (winch handbooks' example)."""
    inch = 0.0254
    drum = full_spool(
        arbor_diameter_m=10 * inch, rim_diameter_m=20 * inch, width_m=12 * inch, diameter_m=0.5 * inch,
        lay=Lay.SQUARE,
    )  # fmt: skip
    assert drum.length_m / (12 * inch) == pytest.approx(940, abs=5)


def test_measured_dimensions_narrow_what_was_assumed() -> None:
    loose = plan_of("drop shot", fill={"main": "100 m", "lip_gap": "2 mm"})
    tight = plan_of("drop shot", reel__spool=SPIN_SPOOL, fill={"main": "100 m", "lip_gap": "2 mm"})
    assert {taken.field for taken in loose.spool.taken} >= {"reel.spool.arbor", "reel.spool.rim"}
    assert not {taken.field for taken in tight.spool.taken} & {"reel.spool.arbor", "reel.spool.rim"}
    assert tight.main.turns.high - tight.main.turns.low < loose.main.turns.high - loose.main.turns.low


def test_a_measured_diameter_narrows_the_length() -> None:
    printed = {"reel__capacity": ["0.30 mm/150 m"], "backing": None}
    label = plan_of("spinnerbait", **printed)
    measured = plan_of("spinnerbait", **printed, main__measured={"diameter": "0.35 mm"})
    one, other = label.main.length_m, measured.main.length_m
    assert other.high / other.low < one.high / one.low


def test_without_any_label_everything_is_assumed_openly() -> None:
    plan = plan_of("spinnerbait", reel={"kind": "spinning"}, backing=None)
    assert "reel.capacity" in {taken.field for taken in plan.spool.taken}
    assert plan.main.length_m.typical > 20.0


def test_dimensions_alone_give_a_capacity_within_the_packing_of_wound_line() -> None:
    # spool 30/45/16 mm and 0.30 mm line: 120, 140, 160 m at a packing of 0.60, 0.70, 0.80, brim full
    plan = plan_of(
        "spinnerbait", reel={"kind": "spinning", "spool": SPIN_SPOOL}, backing=None,
        main__type="nylon", main__diameter="0.30 mm", fill={"lip_gap": "0.2 mm"},
    )  # fmt: skip
    # from the label's lip gap of 2 mm to 0.2 mm the room grows again to nearly all of it
    assert plan.main.length_m.typical == pytest.approx(140.0, rel=0.04)
    assert plan.spool.room.sources[0].kind is Kind.COMPUTED


@pytest.mark.parametrize(
    ("spool", "words"),
    [
        ({"arbor": "40 mm", "rim": "41 mm"}, "left aside"),
        ({"arbor": "40 mm", "rim": "30 mm"}, "left aside"),
        ({"arbor": "44 mm", "rim": "60 mm", "width": "6 mm"}, "calliper is believed"),
        ({"arbor": "20 mm", "rim": "80 mm", "width": "40 mm"}, "check the dimensions"),
    ],
)
def test_dimensions_that_do_not_fit_are_said(spool: dict[str, str], words: str) -> None:
    plan = plan_of("drop shot", reel__spool=spool, reel__capacity=["0.30 mm/150 m"])
    assert words in " ".join(plan.spool.remarks)


def test_one_odd_dimension_alone_still_makes_a_spool() -> None:
    for name, size in (("arbor", "90 mm"), ("arbor", "5 mm"), ("rim", "12 mm"), ("rim", "120 mm")):
        plan = plan_of("drop shot", reel__spool={name: size})
        assert plan.spool.rim_m.low > plan.spool.arbor_m.high


def test_capacities_that_disagree_widen_the_range() -> None:
    one = plan_of("drop shot", reel__capacity=["0.25 mm/150 m"])
    two = plan_of("drop shot", reel__capacity=["0.25 mm/150 m", "0.30 mm/200 m"])
    assert "do not agree" in " ".join(two.spool.remarks)
    assert not one.spool.remarks
    assert two.spool.room.value.low < two.spool.room.value.typical < two.spool.room.value.high


class TestWishes:
    def test_more_line_than_the_spool_holds_gives_the_nearest_fill(self) -> None:
        plan = plan_of("walking bait", fill={"main": "300 yd"})
        assert not plan.possible
        assert plan.nearest is not None
        assert plan.nearest.main.length_m.typical < 300 * YARD_M
        assert plan.nearest.lip_gap_m.typical == pytest.approx(plan.gap_bounds.low)
        assert "more than the spool holds" in said(plan, "fault")
        assert headline(plan, METRIC).startswith("nearest that fits")

    def test_too_much_backing_leaves_what_the_cast_needs(self) -> None:
        plan = plan_of("walking bait", fill={"backing": "300 yd", "lip_gap": "2 mm"})
        assert plan.nearest is not None
        assert plan.nearest.main.length_m.typical == pytest.approx(plan.needed_m.typical, rel=0.01)
        assert plan.nearest.lip_gap_m.typical == pytest.approx(0.002)
        assert "no room for main line" in said(plan, "fault")

    def test_both_together_above_the_rim(self) -> None:
        plan = plan_of("walking bait", fill={"backing": "150 yd", "main": "100 yd"})
        assert plan.follows is Quantity.LIP_GAP
        assert not plan.possible
        assert "above the rim" in said(plan, "fault")
        assert plan.nearest is not None
        assert plan.nearest.main.length_m.typical == pytest.approx(100 * YARD_M, rel=0.02)

    def test_a_knot_inside_the_cast_is_a_fault(self) -> None:
        plan = plan_of("walking bait", cast="45 yd", fill={"main": "40 yd"})
        assert "inside the cast" in said(plan, "fault")

    def test_a_knot_below_the_cast_but_not_by_the_margin_is_a_risk(self) -> None:
        # cast 40 yd: practice wants the larger of 60 yd and 65 yd above the knot, then the trimming
        plan = plan_of("walking bait", cast="40 yd", fill={"main": "55 yd"})
        assert "close under the cast" in said(plan, "risk")
        assert plan.past_cast_m == pytest.approx(40 * YARD_M + 23.0)

    def test_trimming_is_counted(self) -> None:
        plan = plan_of("walking bait", cast="40 yd", fill={"main": "68 yd"})
        assert "trimmed off" in said(plan, "note")

    def test_a_lip_gap_out_of_bounds_is_said(self) -> None:
        wide = plan_of("walking bait", fill={"main": "50 yd", "backing": "20 yd"})
        assert "above 1.5 to 3.0 mm" in said(wide, "note")
        narrow = plan_of("walking bait", fill={"main": "80 yd", "lip_gap": "0.5 mm"})
        assert "below 1.5 to 3.0 mm" in said(narrow, "risk")

    def test_a_lip_gap_as_deep_as_the_spool_is_said(self) -> None:
        plan = plan_of("walking bait", fill={"lip_gap": "40 mm"})
        assert not plan.possible
        assert "as deep as the spool" in said(plan, "fault")
        assert plan.feasible.lip_gap_m.typical == pytest.approx(plan.gap_bounds.middle)

    def test_three_pins_let_the_gap_follow(self) -> None:
        plan = plan_of("walking bait", fill={"main": "80 yd", "backing": "20 yd", "lip_gap": "2 mm"})
        assert plan.follows is Quantity.LIP_GAP
        assert plan.dropped == (Quantity.LIP_GAP,)
        assert "Only two of the three" in said(plan, "note")

    def test_one_pin_is_completed_by_card_and_practice(self) -> None:
        plan = plan_of("walking bait", fill={"backing": "30 yd"})
        assert plan.held[Quantity.BACKING].origin is Origin.PINNED
        assert plan.held[Quantity.MAIN].origin is Origin.CARD
        assert plan.follows is Quantity.LIP_GAP

    def test_braid_alone_wants_tape(self) -> None:
        bare = plan_of("walking bait", backing=None)
        assert "slips" in said(bare, "fault")
        taped = plan_of("walking bait", backing=None, fill={"taped": True})
        assert said(taped, "fault") == ""


@pytest.mark.parametrize("technique", ["walking bait", "drop shot", "spinnerbait", "catfish", "trout-spoon"])
def test_turns_are_those_of_winding_turn_by_turn(technique: str) -> None:
    case = case_of(technique)
    plan = fill_plan(case).feasible
    ratio = case.facts.columns.value("gear_ratio", case.facts.row)
    assert ratio is not None
    parts = [part for part in (plan.backing, plan.main) if part is not None]
    spool = plan.spool.typical_shape()
    done = wind(
        arbor_diameter_m=plan.spool.arbor_m.typical,
        width_m=plan.spool.width_m.typical,
        packing=float(np.asarray(spool.packing)),
        lines_m=[(part.length_m.typical, part.diameter_m.typical) for part in parts],
    )
    for part, winding in zip(parts, done, strict=True):
        assert 0.0 <= part.length_m.low <= part.length_m.typical <= part.length_m.high
        assert part.turns.typical == pytest.approx(winding.turns / ratio.typical, rel=0.02)


def test_the_table_shows_metres_yards_turns_and_grams() -> None:
    sheet = fill_sheet(plan_of("walking bait"), METRIC)
    assert sheet.head == (
        "part", "line", "metres", "yards", "turns of the handle", "on a scale", "how",
    )  # fmt: skip
    main = next(row for row in sheet.rows if row[0] == "main line")
    assert main[2:4] == ("91", "100")
    assert main[6] == "as the card says"


def test_every_figure_says_how_it_is_known() -> None:
    plan = plan_of("walking bait")
    names = {known.name for known in plan.known()}
    assert names == {
        "room", "main line length", "main line turns", "main line weight", "backing length",
        "backing turns", "backing weight", "lip gap",
    }  # fmt: skip
    assert all(known.sources and known.formula for known in plan.known())


def test_the_review_measures_by_the_same_spool() -> None:
    sizes = {"arbor": "30 mm", "rim": "45 mm", "width": "16 mm"}
    case = case_of("drop shot", {"reel.spool": sizes})
    plan = fill_plan(case)
    assert case.facts.columns.value("barrel_m", case.facts.row) == plan.spool.arbor_m
    assert case.facts.columns.value("flange_m", case.facts.row) == plan.spool.rim_m
    odd = case_of("drop shot", {"reel.spool": {"arbor": "60 mm"}})
    usual = case_of("drop shot")
    assert odd.facts.fill_share == usual.facts.fill_share


@pytest.mark.parametrize("technique", ["walking bait", "drop shot", "spinnerbait", "catfish", "jerkbait"])
def test_plan_and_figures_of_the_review_agree(technique: str) -> None:
    """The same lengths pinned, the plan's lip gap is the review's, and so are turns and grams."""
    case = case_of(technique, {"main.length": "80 yd", "backing": None})
    plan = fill_plan(case_of(technique, {"main.length": "80 yd", "fill": {"main": "80 yd"}, "backing": None}))
    assert plan.follows is Quantity.LIP_GAP
    facts = case.facts
    assert plan.lip_gap_m.typical == pytest.approx(facts.lip_gap_m.typical, abs=1e-5)
    assert plan.main.turns.typical == pytest.approx(facts.main_turns.typical, rel=1e-3)
    assert plan.main.mass_kg.typical == pytest.approx(facts.main_mass_kg.typical, rel=1e-3)
    assert plan.spool.room.value == facts.room_m3
