"""Own pull tests: kept as typed, pooled by the stated method, in place of the catalogue from five on."""

import numpy as np
import pytest

from rigbuilder.mechanics.knotstats import ENOUGH_READINGS
from rigbuilder.model.pulltests import PullSeries, SeriesError, read_series, split_readings
from rigbuilder.plans.pulltests import own_knots, own_results, with_own
from rigbuilder.reference.load import load
from rigbuilder.reference.words import LineType
from rigbuilder.review.engine import lay_out
from rigbuilder.review.figures import figures
from rigbuilder.sources import Kind
from tests.unit.plans.cases import LBF_N, case_of

REFERENCE = load()


def series(knot: str | None, readings: list[float], *, test: str = "10 lb", kind: str = "nylon",
           wet: bool = False) -> PullSeries:  # fmt: skip
    entry = {"type": kind, "test": test, "knot": knot, "wet": wet,
             "readings": [f"{reading:.4f} N" for reading in readings]}  # fmt: skip
    return read_series(entry, REFERENCE)


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("8.2, 7.9, 8.4 lb", ("8.2 lb", "7.9 lb", "8.4 lb")),
        ("8.2 lb, 3.7 kg", ("8.2 lb", "3.7 kg")),
        ("36 N; 38 N", ("36 N", "38 N")),
        ("8.2 7.9 8.4 lb", ("8.2 lb", "7.9 lb", "8.4 lb")),
        ("3,7 kg", ("3,7 kg",)),
    ],
)
def test_readings_are_taken_as_a_person_types_them(typed: str, expected: tuple[str, ...]) -> None:
    assert split_readings(typed) == expected


def test_bare_readings_take_the_unit_that_is_shown() -> None:
    entry = {"type": "nylon", "test": "10 lb", "knot": "palomar", "readings": "8.2, 7.9"}
    found = read_series(entry, REFERENCE, assume="lb")
    assert found.readings_n == pytest.approx((8.2 * LBF_N, 7.9 * LBF_N))


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"type": "nilon"}, "type"),
        ({"test": "strong"}, "test"),
        ({"test": None}, "test"),
        ({"knot": "palomer"}, "knot"),
        ({"readings": []}, "readings"),
        ({"readings": ["8 lb", "many"]}, "readings"),
        ({"readings": ["9000 kg"]}, "readings"),
        ({"readings": ["-3 lb"]}, "readings"),
        ({"on": "yesterday"}, "on"),
        ({"wet": "yes"}, "wet"),
    ],
)
def test_a_slip_names_its_field(change: dict[str, object], field: str) -> None:
    entry = {"type": "nylon", "test": "10 lb", "knot": "palomar", "readings": ["8 lb"]} | change
    with pytest.raises(SeriesError) as error:
        read_series(entry, REFERENCE)
    assert error.value.field == field


def test_what_is_kept_reads_back_the_same() -> None:
    entry = {"type": "braid", "test": "20 lb", "knot": "double palomar", "wet": True,
             "readings": ["18 lb", "8.4 kg"], "on": "2026-05-02", "note": "two tyers"}  # fmt: skip
    assert read_series(entry, REFERENCE).as_entry() == entry


def test_shares_are_taken_against_straight_pulls_of_the_same_line() -> None:
    """70 ± 7 over 100 ± 4 gives 0.701 (delta rule: Symmetry 2022, 14:1926)."""
    knot = [61.0, 66.0, 70.0, 74.0, 79.0]
    straight = [95.0, 98.0, 100.0, 102.0, 105.0]
    (found,) = own_results([series("palomar", knot), series(None, straight)], REFERENCE)
    assert found.straight_pulled
    assert found.share.typical == pytest.approx(0.70, abs=0.005)
    assert found.share.low < 0.61
    assert found.enough


def test_wet_and_dry_are_not_mixed() -> None:
    pulls = [series("palomar", [70.0] * 5, wet=True), series(None, [100.0, 101.0], wet=False)]
    (found,) = own_results(pulls, REFERENCE)
    assert not found.straight_pulled


def test_without_straight_pulls_the_label_stands_in_with_its_range() -> None:
    knot = [30.0, 31.0, 32.0, 33.0, 34.0]
    (by_label,) = own_results([series("uni", knot)], REFERENCE)
    (by_pulls,) = own_results([series("uni", knot), series(None, [45.0, 45.5, 46.0])], REFERENCE)
    width = by_label.share.high - by_label.share.low
    assert width > by_pulls.share.high - by_pulls.share.low
    assert "label" in by_label.source.text


def test_lines_of_several_tests_are_pooled() -> None:
    pulls = [
        series("uni", [36.0, 36.0, 36.0], test="10 lb"), series(None, [45.0, 45.0], test="10 lb"),
        series("uni", [72.0, 72.0, 72.0], test="20 lb"), series(None, [90.0, 90.0], test="20 lb"),
    ]  # fmt: skip
    (found,) = own_results(pulls, REFERENCE)
    assert found.count == 6
    assert found.share.typical == pytest.approx(0.8)


def test_no_knot_is_stronger_than_its_line() -> None:
    (found,) = own_results([series("uni", [60.0] * 5), series(None, [45.0, 46.0])], REFERENCE)
    assert found.share.high == 1.0


def test_a_single_reading_says_nothing() -> None:
    assert own_results([series("uni", [36.0])], REFERENCE) == ()


def test_the_range_holds_nine_of_ten_further_knots() -> None:
    """Coverage by brute force: known normal strengths, five pulls each, then one more knot and line."""
    draw = np.random.default_rng(7)
    hits, rounds = 0, 400
    for _ in range(rounds):
        knot, line = draw.normal(70.0, 7.0, 6), draw.normal(100.0, 4.0, 6)
        (found,) = own_results([series("uni", list(knot[:5])), series(None, list(line[:5]))], REFERENCE)
        hits += knot[5] / line[5] in found.share
    assert 0.86 <= hits / rounds <= 0.97


class TestReplacing:
    PULLS = (series("palomar", [38.0, 39.0, 40.0, 41.0, 42.0]), series(None, [44.0, 45.0, 46.0]))

    def test_five_readings_replace_the_catalogue(self) -> None:
        assert ENOUGH_READINGS == 5
        few = [series("palomar", [38.0, 39.0, 40.0, 41.0]), series(None, [44.0, 46.0])]
        assert dict(own_knots(few, REFERENCE)) == {}
        assert with_own(REFERENCE, few) is REFERENCE
        own = own_knots(self.PULLS, REFERENCE)
        assert set(own) == {("palomar", LineType.NYLON)}

    def test_the_reference_carries_them_with_their_source(self) -> None:
        dressed = with_own(REFERENCE, self.PULLS)
        palomar = dressed.knot("palomar")
        share = palomar.efficiency_in(LineType.NYLON)
        assert share == own_knots(self.PULLS, REFERENCE)["palomar", LineType.NYLON]
        assert palomar.sources[0].kind is Kind.COMPUTED
        assert "5 own pulls" in palomar.sources[0].text
        assert palomar.efficiency_in(LineType.BRAID) == REFERENCE.knot("palomar").efficiency_in(
            LineType.BRAID
        )

    def test_both_ways_into_the_figures_agree(self) -> None:
        case = case_of("spinnerbait", {"main.type": "nylon", "knots.lure": "palomar"})
        rig, technique = case.rig, case.technique
        (override,) = figures([rig], [technique], REFERENCE, own_knots=own_knots(self.PULLS, REFERENCE))
        (dressed,) = lay_out([rig], with_own(REFERENCE, self.PULLS), case.house)
        names = ("knot at the lure",)
        one = [link.strength_n for link in override.links if link.name in names]
        other = [link.strength_n for link in dressed.facts.links if link.name in names]
        before = [link.strength_n for link in case.facts.links if link.name in names]
        assert one == other
        assert one != before

    def test_measured_strength_narrows_the_chain(self) -> None:
        label = case_of("spinnerbait")
        measured = case_of("spinnerbait", {"main.measured": {"strength": "19 lb"}})
        one, other = label.facts.main_straight_n, measured.facts.main_straight_n
        assert other.high / other.low < one.high / one.low
