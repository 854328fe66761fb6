"""Tags, prices and the log as the form writes them on the card."""

from typing import Any

import pytest
from PySide6.QtWidgets import QApplication

from rigbuilder.model.document import get, put
from rigbuilder.viewmodels import keeping
from rigbuilder.viewmodels.bench import Bench
from tests.unit.viewmodels.parts import demo_card, make_bench


@pytest.fixture
def bench(qapp: QApplication) -> Bench:
    return make_bench()


@pytest.mark.parametrize(
    ("text", "amount", "currency", "length"),
    [
        ("24 EUR for 200 yd", 24.0, "EUR", "200 yd"),
        ("24,50 EUR per 150 m", 24.5, "EUR", "150 m"),
        ("€24 / 200 yd", 24.0, "€", "200 yd"),
        ("12.9/100 m", 12.9, "", "100 m"),
        ("  30 kr for 270 m ", 30.0, "kr", "270 m"),
    ],
)
def test_a_price_is_read_as_a_person_writes_it(
    bench: Bench, text: str, amount: float, currency: str, length: str
) -> None:
    keeping.write_price(bench, "main", text)
    assert get(bench.document, "main.price") == {"amount": amount, "currency": currency, "length": length}
    assert keeping.trouble(bench, "main.price") == ""
    assert bench.report is not None
    again = keeping.price_text(bench, "main")
    assert keeping.read_price(again) == keeping.read_price(text)


@pytest.mark.parametrize("text", ["24 bananas", "cheap", "24 EUR for 3 lb", "EUR for 200 yd", "24 EUR for"])
def test_what_is_no_price_stays_as_typed_and_is_said(bench: Bench, text: str) -> None:
    keeping.write_price(bench, "main", text)
    assert keeping.price_text(bench, "main") == text
    assert "24 EUR for 200 yd" in keeping.trouble(bench, "main.price")
    keeping.write_price(bench, "main", "")
    assert keeping.trouble(bench, "main.price") == ""


def test_writing_the_same_price_again_changes_nothing(bench: Bench) -> None:
    keeping.write_price(bench, "main", "24 EUR for 200 yd")
    count = bench.undo_stack.count()
    keeping.write_price(bench, "main", "24 EUR for 200 yd ")
    assert bench.undo_stack.count() == count


def test_tags_come_and_go(bench: Bench) -> None:
    keeping.write_tags(bench, "larkmere, loan ,, loan")
    assert bench.document["tags"] == ["larkmere", "loan"]
    assert keeping.tags_text(bench) == "larkmere, loan"
    keeping.write_tags(bench, "  ")
    assert "tags" not in bench.document


def test_the_log_grows_and_shrinks_and_can_be_undone(bench: Bench) -> None:
    before = bench.document
    assert keeping.add_entry(bench, "2026-05-02", "filled", " new spool ") == ""
    assert keeping.add_entry(bench, "2026-06-01", "retied") == ""
    assert [entry.text for entry in keeping.log_entries(bench)][-2:] == [
        "2026-05-02: filled, new spool",
        "2026-06-01: retied",
    ]
    keeping.remove_entry(bench, len(keeping.log_entries(bench)) - 2)
    assert keeping.log_entries(bench)[-1].text == "2026-06-01: retied"
    for _ in range(3):
        bench.undo_stack.undo()
    assert bench.document == before


@pytest.mark.parametrize("day", ["yesterday", "", "2026-13-01", "02.05.2026"])
def test_a_day_that_is_none_is_refused_with_an_example(bench: Bench, day: str) -> None:
    count = bench.undo_stack.count()
    assert "2026-05-02" in keeping.add_entry(bench, day, "filled")
    assert bench.undo_stack.count() == count


@pytest.mark.parametrize("log", [[{"on": "yesterday", "what": "fild"}], ["filled"], "filled", [3, None]])
def test_a_log_broken_by_hand_is_shown_and_can_be_taken_out(qapp: QApplication, log: Any) -> None:
    bench = make_bench(put(demo_card(), "log", log))
    entries = keeping.log_entries(bench)
    assert len(entries) == (len(log) if isinstance(log, list) else 1)
    assert bench.report is None
    for _ in entries:
        keeping.remove_entry(bench, 0)
    assert bench.report is not None
