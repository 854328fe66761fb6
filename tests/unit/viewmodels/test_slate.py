"""Every change is one undoable step; typing on in a field stays one step."""

import random
from typing import Any

import pytest
from pytestqt.qtbot import QtBot

from rigbuilder.model.fields import FIELDS
from rigbuilder.viewmodels.slate import field_words
from tests.unit.viewmodels.parts import demo_card, make_bench

pytestmark = pytest.mark.usefixtures("qapp")


def _type(bench: Any, path: str, text: str) -> None:
    for end in range(1, len(text) + 1):
        bench.edit(path, text[:end])


def test_typing_is_one_step_with_a_text_that_says_what() -> None:
    bench = make_bench()
    _type(bench, "leader.length", "24 in")
    assert bench.undo_stack.count() == 1
    assert bench.undo_stack.undoText() == "change leader length"
    bench.undo_stack.undo()
    assert bench.document == demo_card()


def test_leaving_the_field_ends_the_step() -> None:
    bench = make_bench()
    _type(bench, "main.test", "17 lb")
    bench.settle()
    _type(bench, "main.test", "20 lb")
    assert bench.undo_stack.count() == 2


def test_another_field_is_another_step() -> None:
    bench = make_bench()
    bench.edit("main.test", "17 lb")
    bench.edit("drag", "5 lb")
    bench.edit("main.test", "18 lb")
    assert bench.undo_stack.count() == 3


def test_typing_back_to_the_start_leaves_no_step() -> None:
    bench = make_bench()
    bench.edit("main.test", "17 lb")
    bench.edit("main.test", "16 lb")
    assert bench.undo_stack.count() == 0
    assert bench.undo_stack.isClean()


def test_saving_in_the_middle_of_typing_keeps_the_saved_state_reachable() -> None:
    bench = make_bench()
    bench.edit("main.test", "17 lb")
    bench.undo_stack.setClean()
    bench.edit("main.test", "18 lb")
    bench.undo_stack.undo()
    assert bench.text("main.test") == "17 lb"
    assert bench.undo_stack.isClean()


def test_a_group_that_says_nothing_any_more_goes() -> None:
    bench = make_bench(
        {"leader": {"type": "nylon"}, "main": {"measured": {"diameter": "0.3 mm"}, "test": "9 lb"}}
    )
    bench.clear("leader.type")
    bench.clear("main.measured.diameter")
    assert bench.document == {"main": {"test": "9 lb"}}


def test_listeners_find_document_reading_and_report_in_step(qtbot: QtBot) -> None:
    bench = make_bench()
    seen: list[tuple[object, object]] = []
    bench.document_changed.connect(lambda _: seen.append((bench.reading.document, bench.report)))
    before = bench.report
    bench.edit("main.type", "braid")
    assert seen[0][0] is bench.document
    assert seen[0][1] is not before


def test_hundreds_of_changes_are_all_taken_back_and_made_again() -> None:
    bench, dice = make_bench(), random.Random(7)
    paths = [field.path for field in FIELDS if field.path.count(".") < 2]
    values = ["", "x", "12 lb", "0.3 mm", None, "braid"]
    for _ in range(300):
        path = dice.choice(paths)
        if dice.random() < 0.2:
            bench.clear(path)
        else:
            bench.edit(path, dice.choice(values))
    after = bench.document
    bench.undo_stack.setIndex(0)
    assert bench.document == demo_card()
    bench.undo_stack.setIndex(bench.undo_stack.count())
    assert bench.document == after


@pytest.mark.parametrize(
    ("path", "words"),
    [
        ("main.test", "main line test"),
        ("leader.length", "leader length"),
        ("rod.label", "rod label"),
        ("drag", "drag set to"),
        ("knots.lure", "knot to the lure"),
    ],
)
def test_fields_have_names_for_the_middle_of_a_sentence(path: str, words: str) -> None:
    assert field_words(path) == words
