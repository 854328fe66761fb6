"""Nothing of the trade's knowledge is left uncovered without a reason, and no name in the table is stale."""

import pytest

from rigbuilder.reference.load import load
from rigbuilder.review import coverage as module
from rigbuilder.review.bench_checks import CHECKS
from rigbuilder.review.coverage import Covered, coverage, coverage_text
from rigbuilder.review.rules.book import RULES

ROWS = coverage(load())
NAMES = {rule.name for rule in RULES} | {check.name for check in CHECKS}


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row.kind}: {row.entry}")
def test_entry_is_covered_or_left_out_with_a_reason(row: Covered) -> None:
    assert bool(row.rules or row.checks) != bool(row.left_out)


def test_every_mistake_condition_knot_and_limit_is_in_the_table() -> None:
    reference = load()
    counts = {kind: sum(row.kind == kind for row in ROWS) for kind in {row.kind for row in ROWS}}
    assert counts["mistake"] == len(reference.mistakes) == 48
    assert counts["condition"] == sum(len(adjuster.states) for adjuster in reference.adjusters)
    assert counts["knot"] == len(reference.knots)
    assert counts["spinning limit"] == len(reference.spinning_limits)
    assert counts["filling"] == len(reference.filling.rules)
    assert counts["drag"] == len(reference.drag.rules)
    assert counts["drag share"] == len(reference.drag.shares)
    assert counts["label"] == 8


@pytest.mark.parametrize("table", [name for name in vars(module) if name.startswith("_BY_")])
def test_tables_name_only_what_exists(table: str) -> None:
    named = {name for names in getattr(module, table).values() for name in names}
    assert named <= NAMES


def test_mistake_numbers_of_rules_and_checks_exist() -> None:
    known = {f"M{mistake.number:02d}" for mistake in load().mistakes.values()}
    assert {number for rule in RULES for number in rule.mistakes} <= known
    assert {number for check in CHECKS for number in check.mistakes} <= known


def test_text_ends_with_a_count_that_adds_up() -> None:
    last = coverage_text(load()).splitlines()[-1]
    total, by_rules, by_hand, left_out = (int(word) for word in last.split() if word.isdigit())
    assert total == by_rules + by_hand + left_out == len(ROWS)
