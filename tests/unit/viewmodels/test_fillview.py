"""The fill's side of the bench: pins are undoable edits of the card, the third quantity follows."""

import csv
from io import StringIO

import pytest

from rigbuilder.model.document import get
from rigbuilder.plans.pins import Quantity
from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.fillview import FillModel, PinShown
from tests.unit.views.rigs import bench_of, bench_with


def model_of(technique: str = "walking-bait", changes: dict[str, object] | None = None) -> FillModel:
    return FillModel(bench_of(technique, changes))


def pin(model: FillModel, quantity: str) -> PinShown:
    shown = model.shown()
    assert shown is not None
    return next(one for one in shown.pins if one.quantity == quantity)


def test_each_quantity_says_where_it_comes_from() -> None:
    model = model_of()
    assert pin(model, "main").origin == "as the card says"
    assert pin(model, "lip_gap").origin == "common practice"
    assert pin(model, "backing").origin.startswith("follows")


def test_a_pin_is_one_undoable_edit_and_the_rest_follows() -> None:
    model = model_of()
    before = pin(model, "backing").text
    assert model.pin("main", "70 yd") == ""
    assert get(model.bench.document, "fill") == {"main": "70 yd"}
    assert pin(model, "main").pinned
    assert pin(model, "backing").text != before
    model.bench.undo_stack.undo()
    assert not pin(model, "main").pinned
    assert pin(model, "backing").text == before


def test_typing_on_stays_one_step() -> None:
    model = model_of()
    for text in ("7", "70", "70 yd"):
        model.pin("main", text)
    assert model.bench.undo_stack.count() == 1


def test_a_bare_number_takes_the_shown_unit() -> None:
    model = model_of()
    model.bench.speak(UnitSystem.METRIC)
    model.pin("main", "70")
    model.pin("lip_gap", "2")
    assert get(model.bench.document, "fill") == {"main": "70 m", "lip_gap": "2 mm"}


@pytest.mark.parametrize(
    ("third", "gives_way"), [("backing", Quantity.LIP_GAP), ("lip_gap", Quantity.BACKING)]
)
def test_a_third_pin_lets_one_go(third: str, gives_way: Quantity) -> None:
    model = model_of()
    texts = {"main": "70 yd", "backing": "20 yd", "lip_gap": "2 mm"}
    for name in (*(name for name in texts if name != third), third):
        model.pin(name, texts[name])
    assert not model.is_pinned(gives_way)
    assert model.is_pinned(Quantity(third))
    assert model.is_pinned(Quantity.MAIN)


def test_nonsense_is_refused_with_a_word_and_changes_nothing() -> None:
    model = model_of()
    assert "length is wanted" in model.pin("main", "lots")
    assert get(model.bench.document, "fill") is None


def test_releasing_leaves_no_empty_group_behind() -> None:
    model = model_of()
    before = model.bench.document
    model.pin("main", "70 yd")
    model.release("main")
    assert model.bench.document == before
    model.release("main")
    assert model.bench.document == before


def test_tape_is_said_on_the_card() -> None:
    model = model_of(changes={"backing": None})
    shown = model.shown()
    assert shown is not None
    assert shown.remarks[0].severity == "fault"
    model.tape(True)
    assert model.taped
    shown = model.shown()
    assert shown is not None
    assert shown.remarks[0].severity != "fault"
    model.tape(False)
    assert "fill" not in model.bench.document


def test_units_and_edits_tell_that_it_changed() -> None:
    model = model_of()
    told: list[int] = []
    model.changed.connect(lambda: told.append(1))
    model.bench.speak(UnitSystem.METRIC)
    model.pin("main", "70 m")
    assert len(told) == 2


def test_the_section_is_drawn_as_this_plan_fills_it() -> None:
    model = model_of(changes={"reel.spool": {"arbor": "16 mm", "rim": "36 mm", "width": "30 mm"}})
    shown = model.shown()
    assert shown is not None
    section = shown.section
    assert (section.barrel_m, section.lip_m, section.width_m) == pytest.approx((0.016, 0.036, 0.030))
    assert section.barrel_m < section.core_m < section.after_cast_m < section.fill_m < section.lip_m
    assert (section.lip_m - section.fill_m) / 2 == pytest.approx(0.00225, abs=1e-5)


def test_the_export_holds_fill_and_cost() -> None:
    price = {"amount": 28, "currency": "EUR", "length": "150 m"}
    rows = list(csv.reader(StringIO(model_of(changes={"main.price": price}).csv(), newline="")))
    assert rows[0][0] == "part"
    assert ["line", "length"] in [row[:2] for row in rows]
    assert any("EUR" in row for row in rows)


def test_the_lengths_go_onto_the_card_as_one_step() -> None:
    model = model_of()
    model.pin("main", "80 yd")
    model.bench.settle()
    shown = model.shown()
    assert shown is not None
    backing = pin(model, "backing").text
    assert model.note_fill()
    assert get(model.bench.document, "main.length") == "80 yd"
    assert get(model.bench.document, "backing.length") == backing
    model.bench.undo_stack.undo()
    assert get(model.bench.document, "backing.length") is None
    assert get(model.bench.document, "fill.main") == "80 yd"


def test_an_unreadable_card_has_no_plan() -> None:
    model = FillModel(bench_with({"format": "rigbuilder.card", "version": 1, "name": "x"}))
    assert model.shown() is None
    assert model.csv() == ""
    assert not model.note_fill()
