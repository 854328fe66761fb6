"""Care at the bench: the log is edited by undoable steps, the day is handed in."""

from datetime import date

from rigbuilder.model.document import get
from rigbuilder.viewmodels.careview import EVENTS, CareModel
from tests.unit.views.rigs import bench_of, bench_with


def model_of(log: list[dict[str, str]] | None = None) -> CareModel:
    bench = bench_of("spinnerbait", {"log": log or []})
    return CareModel(bench, lambda: date(2026, 8, 1))


def test_an_event_goes_into_the_log_in_order_of_days() -> None:
    model = model_of([{"on": "2026-07-20", "what": "retied"}])
    assert model.note("filled", "2026-06-01") == ""
    assert model.note("outing", "") == ""
    assert [(entry["on"], entry["what"]) for entry in get(model.bench.document, "log")] == [
        ("2026-06-01", "filled"), ("2026-07-20", "retied"), ("2026-08-01", "outing"),
    ]  # fmt: skip
    model.bench.undo_stack.undo()
    assert len(get(model.bench.document, "log")) == 2


def test_what_is_due_follows_the_log() -> None:
    model = model_of([{"on": "2026-06-01", "what": "filled"}])
    model.note("kink found", "2026-07-01")
    shown = model.shown()
    assert shown is not None
    assert shown.due[0].severity == "risk"
    assert shown.due[0].text.startswith("Now: cut back")
    model.note("cut back", "2026-07-01")
    shown = model.shown()
    assert shown is not None
    assert shown.due[0].severity == "right"


def test_slips_are_told_and_change_nothing() -> None:
    model = model_of()
    assert "no date" in model.note("filled", "last week")
    assert "what was done" in model.note("", "")
    assert get(model.bench.document, "log") == []
    assert "outing" in EVENTS


def test_an_entry_can_be_taken_out() -> None:
    model = model_of([{"on": "2026-06-01", "what": "filled"}, {"on": "2026-07-01", "what": "retied"}])
    model.remove(0)
    model.remove(7)
    assert get(model.bench.document, "log") == [{"on": "2026-07-01", "what": "retied"}]


def test_an_unreadable_card_has_no_care() -> None:
    assert CareModel(bench_with({"format": "rigbuilder.card", "version": 1, "name": "x"})).shown() is None
