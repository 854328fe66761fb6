"""What a fill costs, what backing saves, and a table that no spreadsheet runs."""

import csv
from io import StringIO

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.plans.cost import CostPlan, cost_plan, cost_remarks, cost_sheet
from rigbuilder.plans.fill import fill_plan
from rigbuilder.plans.sheet import Sheet, as_csv, as_text, harmless
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import UnitSystem
from tests.unit.plans.cases import case_of

METRIC = Speaker(UnitSystem.METRIC)
DEAR = {"amount": 30.0, "currency": "EUR", "length": "150 m"}
CHEAP = {"amount": 5.0, "currency": "EUR", "length": "500 m"}
LINES = {
    "main": {"type": "braid", "test": "40 lb", "diameter": "0.30 mm", "price": DEAR},
    "backing": {
        "type": "nylon",
        "test": "14 lb",
        "diameter": "0.30 mm",
        "knot": "double uni",
        "price": CHEAP,
    },
    "reel.capacity": ["0.30 mm/200 m"],
    "leader": None,
}


def plan_of(changes: dict[str, object]) -> CostPlan:
    case = case_of("walking bait", {**LINES, **changes})
    return cost_plan(fill_plan(case), case)


def test_the_cost_is_length_times_price() -> None:
    plan = plan_of({"fill": {"main": "100 m", "lip_gap": "2 mm"}})
    main, backing = plan.lines
    assert main.cost.typical == pytest.approx(100.0 * 30.0 / 150.0)
    # equal diameters: what the label's 200 m leave is backing
    assert backing.length_m.typical == pytest.approx(100.0, rel=0.02)
    assert backing.cost.typical == pytest.approx(1.0, rel=0.02)
    assert dict(plan.totals)["EUR"].typical == pytest.approx(21.0, rel=0.02)


def test_backing_saves_the_main_line_in_its_place() -> None:
    plan = plan_of({"fill": {"main": "100 m", "lip_gap": "2 mm"}})
    assert plan.saved is not None
    currency, saved = plan.saved
    assert currency == "EUR"
    assert saved.typical == pytest.approx(100.0 * (30 / 150 - 5 / 500), rel=0.02)


def test_one_spool_gives_so_many_fills() -> None:
    plan = plan_of({"fill": {"main": "70 m", "lip_gap": "2 mm"}})
    assert plan.lines[0].fills == 2
    short = plan_of({"fill": {"main": "170 m", "lip_gap": "2 mm"}})
    assert (short.lines[0].fills, short.lines[0].spools) == (0, 2)
    assert "buy a longer one" in " ".join(remark.text for remark in cost_remarks(short, METRIC))


def test_a_season_renews_the_main_line_only() -> None:
    plan = plan_of({"fill": {"main": "100 m", "lip_gap": "2 mm", "season_refills": 3}})
    assert dict(plan.season)["EUR"].typical == pytest.approx(60.0)
    unsaid = plan_of({"fill": {"main": "100 m", "lip_gap": "2 mm"}})
    assert unsaid.refills == pytest.approx(12 / 36)
    assert "practice" in unsaid.refills_why


def test_currencies_are_never_added() -> None:
    changed = {**LINES["backing"], "price": {**CHEAP, "currency": "USD"}}  # type: ignore[dict-item]
    plan = plan_of({"backing": changed, "fill": {"main": "100 m", "lip_gap": "2 mm"}})
    assert [currency for currency, _ in plan.totals] == ["EUR", "USD"]
    assert plan.saved is None


def test_without_a_price_it_says_so() -> None:
    plan = plan_of({"main": {"type": "braid", "test": "40 lb"}, "backing": None})
    assert plan.lines == ()
    assert plan.unpriced == ("main line",)
    assert "names no price" in cost_remarks(plan, METRIC)[0].text
    assert cost_sheet(plan, METRIC).rows == ()


def test_the_table_can_be_read_back() -> None:
    sheet = cost_sheet(plan_of({"fill": {"main": "100 m", "lip_gap": "2 mm"}}), METRIC)
    rows = list(csv.reader(StringIO(as_csv(sheet))))
    assert tuple(rows[0]) == sheet.head
    assert len(rows) == len(sheet.rows) + 1
    assert as_text(sheet).startswith("What does it cost?")


def test_a_currency_cannot_run_in_a_spreadsheet() -> None:
    price = {**DEAR, "currency": '=HYPERLINK("x")'}
    plan = plan_of({"main": {"type": "braid", "test": "40 lb", "price": price}})
    rows = list(csv.reader(StringIO(as_csv(cost_sheet(plan, METRIC)))))
    assert not [cell for row in rows for cell in row if cell.lstrip().startswith(("=", "+", "@"))]


@given(st.text(max_size=20))
def test_no_cell_starts_a_formula(text: str) -> None:
    """OWASP's list of characters that start a formula; numbers may keep their sign."""
    cell = harmless(text)
    try:
        float(cell)
    except ValueError:
        assert not cell.lstrip().startswith(("=", "+", "-", "@", "\t", "\r"))


@given(st.lists(st.tuples(st.text(max_size=12), st.text(max_size=12)), max_size=5))
def test_any_cell_survives_the_file(rows: list[tuple[str, str]]) -> None:
    sheet = Sheet("t", ("a", "b"), tuple(rows))
    back = list(csv.reader(StringIO(as_csv(sheet), newline="")))
    assert back[1:] == [[harmless(cell) for cell in row] for row in rows]
