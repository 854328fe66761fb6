"""Care: what is due by log, age and outings; a day is handed in, nothing reads the clock."""

from datetime import date

import pytest

from rigbuilder.plans.care import Due, advice, care_due
from rigbuilder.reference.load import load
from tests.unit.plans.cases import case_of

TODAY = date(2026, 8, 1)


def due(technique: str, *events: tuple[str, str], today: date = TODAY, **changes: object) -> list[Due]:
    log = [{"on": on, "what": what} for on, what in events]
    rig = case_of(technique, {"log": log, **changes}).rig
    return list(care_due(rig, today, load()))


def actions(found: list[Due], urgency: str) -> list[str]:
    return [one.action for one in found if one.urgency == urgency]


def test_nothing_is_known_without_a_filling() -> None:
    (only,) = due("spinnerbait")
    assert only.action == "note when the reel was filled"
    assert only.urgency == "later"


def test_a_kink_is_cut_out_at_once() -> None:
    found = due("spinnerbait", ("2026-06-01", "filled"), ("2026-07-01", "kink found"))
    assert found[0].action == "cut back above the kink"
    assert found[0].urgency == "now"
    assert "2026-07-01" in found[0].why
    cured = due(
        "spinnerbait", ("2026-06-01", "filled"), ("2026-07-01", "kink found"), ("2026-07-01", "cut back")
    )
    assert not actions(cured, "now")


def test_after_a_break_the_end_is_renewed() -> None:
    found = due("spinnerbait", ("2026-06-01", "filled"), ("2026-07-01", "broke"))
    assert actions(found, "now") == ["cut back and tie again"]
    tied = due("spinnerbait", ("2026-06-01", "filled"), ("2026-07-01", "broke"), ("2026-07-01", "retied"))
    assert not actions(tied, "now")


@pytest.mark.parametrize(
    ("filled", "urgency"), [("2025-06-01", "now"), ("2025-09-20", "soon"), ("2026-06-01", "later")]
)
def test_age_counts_against_practices_months(filled: str, urgency: str) -> None:
    # fluorocarbon: 12 months; soon from 80 per cent of it
    found = due("spinnerbait", (filled, "filled"))
    assert actions(found, urgency) == ["fill with fresh fluorocarbon"]


def test_outings_count_too() -> None:
    days = [(f"2026-06-{day:02}", "outing") for day in range(2, 24)]
    found = due("spinnerbait", ("2026-06-01", "filled"), *days)
    assert "fill with fresh fluorocarbon" in actions(found, "now")
    assert "22 outings" in next(one.why for one in found if one.urgency == "now")


def test_braid_is_turned_once_at_half_time() -> None:
    found = due("walking bait", ("2024-12-01", "filled"))
    assert "turn the braid end for end" in actions(found, "soon")
    turned = due("walking bait", ("2024-12-01", "filled"), ("2026-07-01", "reversed"))
    assert "turn the braid end for end" not in [one.action for one in turned]
    single = due("spinnerbait", ("2026-01-01", "filled"))
    assert "turn the braid end for end" not in [one.action for one in single]


def test_the_leader_is_renewed_after_an_outing() -> None:
    found = due("drop shot", ("2026-07-01", "filled"), ("2026-07-12", "outing"))
    assert "tie on a fresh leader" in actions(found, "soon")
    tied = due("drop shot", ("2026-07-01", "filled"), ("2026-07-12", "outing"), ("2026-07-13", "retied"))
    assert "tie on a fresh leader" not in [one.action for one in tied]


def test_entries_after_the_day_are_not_yet_known() -> None:
    found = due("spinnerbait", ("2026-06-01", "filled"), ("2026-09-01", "kink found"))
    assert not actions(found, "now")


def test_the_same_day_gives_the_same_answer() -> None:
    events = (("2025-06-01", "filled"), ("2026-07-01", "kink found"))
    assert due("spinnerbait", *events) == due("spinnerbait", *events)


def test_each_line_type_has_its_advice_once() -> None:
    found = advice(case_of("walking bait").rig, load())
    assert [one.line for one in found] == ["braid", "nylon"]
    assert all(one.text.endswith(".") and one.sources for one in found)
