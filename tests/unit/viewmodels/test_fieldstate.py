"""How a field stands: said, read on the label, assumed, wrong."""

from rigbuilder.model.document import drop, put
from rigbuilder.model.fields import FIELDS
from rigbuilder.model.reading import read
from rigbuilder.viewmodels.fieldstate import FieldState, field_state, label_words, place_of
from tests.unit.viewmodels.parts import demo_card, reference


def _state(document: dict[str, object], path: str) -> FieldState:
    return field_state(read(document, reference()), path)


def test_what_the_card_says_stands_as_typed() -> None:
    assert _state(demo_card(), "main.test").text == "16 lb"
    assert _state(put(demo_card(), "main.test", " 16 LB"), "main.test").text == " 16 LB"


def test_null_reads_as_none_and_is_said() -> None:
    state = _state(demo_card(), "lure.trailer")
    assert (state.text, state.said, state.placeholder) == ("none", True, "")


def test_what_the_label_says_stands_in_and_cannot_be_set() -> None:
    state = _state(demo_card(), "rod.power")
    assert state.placeholder == "on the label: heavy"
    assert not state.settable


def test_a_ratio_on_the_label_reads_as_a_ratio() -> None:
    assert _state(demo_card(), "reel.ratio").instead == "7.1:1"


def test_what_is_assumed_has_its_reason() -> None:
    state = _state(drop(demo_card(), "water.temperature"), "water.temperature")
    assert state.settable
    assert state.placeholder.startswith("assumed: ")
    assert state.why.startswith("Assumed: ")


def test_a_problem_says_what_was_found_and_what_is_expected() -> None:
    state = _state(put(demo_card(), "main.test", "16 bananas"), "main.test")
    assert "16 bananas" in state.problem
    assert "12 lb" in state.problem


def test_the_nearest_name_is_offered() -> None:
    state = _state(put(demo_card(), "lure.technique", "holow body frog"), "lure.technique")
    assert "hollow-body frog" in state.problem


def test_every_problem_of_an_empty_card_stands_beside_a_field_of_the_form() -> None:
    reading = read({"name": ""}, reference())
    known = {field.path for field in FIELDS}
    assert reading.problems
    assert {place_of(problem) for problem in reading.problems} <= known


def test_a_label_is_told_in_few_words_with_its_meaning() -> None:
    words = label_words(read(demo_card(), reference()), "rod.label")
    assert [text for text, _ in words.understood][:3] == ["7'3\"", "heavy", "fast"]
    assert all(meaning for _, meaning in words.understood)


def test_what_was_not_understood_is_named() -> None:
    reading = read(put(demo_card(), "rod.label", "7'3\" H F gibberish 30-65 lb"), reference())
    assert label_words(reading, "rod.label").not_understood == ("gibberish",)
