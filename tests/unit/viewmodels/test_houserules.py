"""The house rules as they are edited, and the practice that follows them."""

from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtWidgets import QApplication

from rigbuilder.reference.house import House
from rigbuilder.review.houses import house_from
from rigbuilder.review.rules.book import RULES
from rigbuilder.store.house import read_house
from rigbuilder.store.pulltests import PullTestFile
from rigbuilder.viewmodels.houserules import (
    RANKS,
    HouseSheet,
    questions,
    range_rows,
    rule_rows,
    span_of,
)
from rigbuilder.viewmodels.practice import Practice
from tests.unit.viewmodels.parts import make_bench, reference

FROG = reference().technique("frog")


def _sheet(entries: dict[str, Any] | None = None) -> HouseSheet:
    return HouseSheet(House.read(entries or {}, reference()), reference())


def _practice(folder: Path) -> Practice:
    return Practice(reference(), folder / "house.toml", PullTestFile(folder / "pulls.json", reference()))


def test_every_rule_has_a_row_with_its_shipped_severity() -> None:
    assert {row.name: row.shipped for row in rule_rows()} == {rule.name: rule.severity.word for rule in RULES}
    assert all(row.options[0] == ("", f"as shipped: {row.shipped}") for row in rule_rows())


def test_what_is_put_back_leaves_no_trace() -> None:
    sheet = _sheet()
    question, row = questions(reference())[0], range_rows(FROG)[0]
    shipped = sheet.sides(question)
    sheet.set_severity("braid-on-bare-arbor", "note")
    sheet.set_sides(question, [question.sides[-1].id])
    sheet.set_range(FROG, row, "20-30")
    sheet.set_rank(FROG, "nylon", "works")
    assert sheet.changed_rules() == 4
    assert house_from(sheet.entries, reference()).entries() == sheet.entries
    sheet.set_severity("braid-on-bare-arbor", "")
    sheet.set_sides(question, list(shipped))
    sheet.set_range(FROG, row, "")
    sheet.set_rank(FROG, "nylon", "")
    assert sheet.entries == {}
    assert sheet.changed_rules() == 0


def test_what_the_file_says_by_an_alias_is_changed_where_it_stands() -> None:
    alias = FROG.names[1]
    sheet = _sheet({"techniques": {alias: {"lines": {"braid": {"test_lb": [50, 80]}}}}})
    row = next(row for row in range_rows(FROG) if "braid" in row.key)
    assert sheet.range(FROG, row) == "50-80"
    sheet.set_range(FROG, row, "40-80")
    assert sheet.entries == {"techniques": {alias: {"lines": {"braid": {"test_lb": [40.0, 80.0]}}}}}


@pytest.mark.parametrize(
    ("text", "span"),
    [("", None), (" ", None), ("12-20", [12, 20]), ("12–20", [12, 20]), ("2,5-4", [2.5, 4]), ("9", [9, 9])],
)
def test_ranges_as_typed(text: str, span: list[float] | None) -> None:
    assert span_of(text) == span


@pytest.mark.parametrize("text", ["20-12", "twelve", "1-2-3", "0-4", "-4", "nan", "inf", "12 lb"])
def test_what_is_no_range_is_refused_with_an_example(text: str) -> None:
    with pytest.raises(ValueError, match="12-20"):
        span_of(text)


@settings(max_examples=60, deadline=None)
@given(
    st.dictionaries(
        st.sampled_from([rule.name for rule in RULES]), st.sampled_from(["note", "right", "fault"])
    ),
    st.dictionaries(st.sampled_from(["nylon", "braid", "fluorocarbon"]), st.sampled_from(RANKS)),
)
def test_whatever_is_decided_can_be_read_again(severities: dict[str, str], ranks: dict[str, str]) -> None:
    sheet = _sheet()
    for rule, severity in severities.items():
        sheet.set_severity(rule, severity)
    for kind, rank in ranks.items():
        sheet.set_rank(FROG, kind, rank)
    assert HouseSheet(house_from(sheet.entries, reference()), reference()).entries == sheet.entries


def test_a_decision_counts_on_the_bench_and_in_the_file(qapp: QApplication, tmp_path: Path) -> None:
    bench, practice = make_bench(), _practice(tmp_path)
    practice.lead(bench)
    assert bench.report is not None
    assert bench.report.verdict.word == "fault"
    first = bench.report.findings[0].rule.name
    assert practice.decide({"severity": {first: "right"}}) == ""
    assert first not in [found.rule.name for found in bench.report.findings]
    assert read_house(tmp_path / "house.toml") == {"severity": {first: "right"}}
    assert practice.decide({}) == ""
    assert first in [found.rule.name for found in bench.report.findings]
    assert practice.house.is_shipped


def test_a_wrong_decision_is_refused_and_nothing_changes(qapp: QApplication, tmp_path: Path) -> None:
    practice = _practice(tmp_path)
    assert "no-such-rule" in practice.decide({"severity": {"no-such-rule": "note"}})
    assert not (tmp_path / "house.toml").exists()
    assert practice.house.is_shipped


def test_an_unusable_house_file_is_left_aside_with_a_word(qapp: QApplication, tmp_path: Path) -> None:
    (tmp_path / "house.toml").write_text("[severity]\nno-such-rule = 'note'\n", encoding="utf-8")
    practice = _practice(tmp_path)
    assert practice.house.is_shipped
    assert "no-such-rule" in practice.remarks[0]
