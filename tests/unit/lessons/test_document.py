"""A lesson written by hand: what is right is kept whole, what is wrong is named by rig and field."""

from typing import Any

import pytest

from rigbuilder.lessons.document import LessonUnreadable, read_lesson
from tests.unit.lessons.cases import card, lesson_document, reference


def _wrong(document: dict[str, Any]) -> str:
    with pytest.raises(LessonUnreadable) as caught:
        read_lesson(document, reference(), file="class.riglesson")
    return str(caught.value)


def test_a_lesson_reads_and_goes_back_as_it_was() -> None:
    rig = {"card": card("frog"), "question": "Well?", "meant": [], "later": {"kept": 1}}
    document = lesson_document(rig) | {"colour": "blue"}
    lesson = read_lesson(document, reference())
    assert lesson.as_document() == document
    assert read_lesson(lesson.as_document(), reference()) == lesson


def test_changes_are_checked_like_anything_else() -> None:
    lesson = read_lesson(lesson_document({"card": card("frog")}), reference())
    assert lesson.with_(name="Other").name == "Other"
    with pytest.raises(ValueError, match="name"):
        lesson.with_(name="")


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"name": 3}, "name: found 3; expected text in quotes."),
        ({"rigs": []}, "rigs: found a list; expected at least one rig."),
        ({"rigs": {}}, "rigs: found a group of fields; expected a list in square brackets."),
        ({"rigs": [3]}, "rig 1: found 3; expected a group of fields in braces."),
        ({"rigs": [{}]}, "rig 1, card: found nothing; expected this field."),
        ({"seed": "one"}, "seed: found “one”; expected a whole number."),
    ],
)
def test_a_wrong_field_is_named_with_what_was_found_and_expected(change: dict[str, Any], said: str) -> None:
    told = _wrong(lesson_document({"card": card("frog")}) | change)
    assert told.startswith("class.riglesson: ")
    assert said in told


def test_a_wrong_field_on_a_card_is_named_with_the_rig() -> None:
    right, wrong = {"card": card("frog")}, {"card": card("frog", main__test="strong")}
    told = _wrong(lesson_document(right, right, wrong))
    assert "class.riglesson: rig 3, card.main.test: found “strong”; expected" in told


def test_an_unknown_rule_is_named_with_the_nearest_ones() -> None:
    told = _wrong(lesson_document({"card": card("frog"), "meant": ["sinking-line-on-surface"]}))
    assert "rig 1, meant, entry 1: found “sinking-line-on-surface”" in told
    assert "Did you mean sinking-line-on-surface-lure" in told


def test_every_problem_is_told_at_once() -> None:
    told = _wrong(
        lesson_document({"card": card("frog", drag="much")}, {"card": card("frog", main__type="string")})
    )
    assert "rig 1, card.drag" in told
    assert "rig 2, card.main.type" in told
