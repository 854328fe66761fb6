"""Drafts of lessons, lessons on paper and on the room's screen, and what-if in words."""

import pytest

from rigbuilder.viewmodels.lesson_editing import LessonDraft, mistakes
from rigbuilder.viewmodels.lesson_paper import labels_of, lesson_paper
from rigbuilder.viewmodels.lesson_slides import lesson_slides
from rigbuilder.viewmodels.lesson_whatif import QUESTIONS, fields_of, what_if
from tests.unit.lessons.cases import card, lesson, shipped
from tests.unit.viewmodels.parts import make_bench

pytestmark = pytest.mark.usefixtures("qapp")


def test_a_lesson_is_made_of_cards_and_spoilt_rigs() -> None:
    draft = LessonDraft(make_bench({}))
    assert draft.lesson() is None
    assert "Added" in draft.add_card(card("frog"))
    assert "leader-outgrows-braid" in draft.add_spoilt("drop-shot", "leader-outgrows-braid", 4)
    assert "cannot be made" in draft.add_spoilt("ned", "sinking-line-on-surface-lure", 1)
    assert "no whole rig" in draft.add_card({"name": "half"})
    draft.name = "Tuesday"
    draft.word(1, remark="Look at the fuse.")
    assert draft.move(1, -1) == 0
    assert draft.move(0, -1) == 0
    made = draft.lesson()
    assert made is not None
    assert [rig.meant for rig in made.rigs] == [("leader-outgrows-braid",), ()]
    assert made.rigs[0].remark == "Look at the fuse."
    assert [line.as_meant for line in draft.lines()] == [True, True]
    draft.remove(0)
    assert len(draft.rigs) == 1


def test_a_rig_that_is_not_as_meant_says_so_in_the_list() -> None:
    draft = LessonDraft(make_bench({}), lesson(shipped()[0]))
    draft.word(1, card=card("frog"))
    line = draft.lines()[1]
    assert not line.as_meant
    assert "does not speak here" in line.words


def test_a_changed_copy_is_a_lesson_of_its_own() -> None:
    draft = LessonDraft(make_bench({}), lesson(shipped()[0]))
    draft.copied()
    made = draft.lesson()
    assert made is not None
    assert made.id != lesson(shipped()[0]).id
    assert made.rigs == lesson(shipped()[0]).rigs


def test_mistakes_are_offered_faults_first() -> None:
    words = [text for _, text in mistakes()]
    assert words[0].endswith("(fault)")
    assert words[-1].endswith("(note)")


def test_the_sheet_for_juniors_gives_nothing_away_and_the_answers_give_reason_figures_and_source() -> None:
    bench = make_bench({})
    found = lesson(shipped()[3])
    sheet, answers = lesson_paper(found, bench, answers=False), lesson_paper(found, bench, answers=True)
    for rig in sheet.rigs:
        assert rig.answers == ()
        assert rig.right == rig.remark == ""
        assert rig.scene.pins == ()
        assert rig.question
    assert [bool(rig.answers) for rig in answers.rigs] == [bool(rig.meant) for rig in found.rigs]
    assert answers.rigs[0].right == "Nothing is wrong with this rig."
    strong = answers.rigs[1].answers[0]
    assert strong.severity == "fault"
    assert "25 lb" in strong.head
    assert "17 lb" in strong.figures
    assert strong.basis.startswith("How we know: ")


def test_the_labels_of_a_card_are_told_part_by_part() -> None:
    told = dict(labels_of(card("frog")))
    assert told["Rod"].endswith("7'3\" H F 30-65 lb 1/2-1 1/4 oz")
    assert told["Leader"] == "none"
    assert "braid, 50 lb" in told["Main line"]
    assert told["Cast"] == "18 m, from the boat"


def test_the_room_sees_the_bare_rig_first_then_one_step_after_the_other() -> None:
    found = lesson(shipped()[3])
    slides = lesson_slides(found, make_bench({}))
    at = [place for place, slide in enumerate(slides) if slide.title.startswith("2. Jonas")]
    bare = slides[at[0]]
    assert bare.scene is not None
    assert bare.scene.pins == ()
    reason = slides[at[-1] + 1]
    assert reason.severity == "fault"
    assert reason.scene is not None
    assert [pin.number for pin in reason.scene.pins] == [1]
    assert found.rigs[1].remark in reason.lines


@pytest.mark.parametrize("question", QUESTIONS)
def test_every_question_has_fields_to_move(question: str) -> None:
    bench = make_bench(card("carolina"))
    fields = fields_of(bench, question)
    assert fields
    for field, words in fields:
        shown = what_if(bench, field)
        assert shown is not None, field
        assert shown.words == words
        for limit in shown.limits:
            assert limit.words.startswith(("From ", "Up to "))


def test_limits_are_told_nearest_first_and_nothing_without_a_rig() -> None:
    shown = what_if(make_bench(card("carolina")), "leader.test")
    assert shown is not None
    distances = [abs(limit.after + 0.5 - shown.present) for limit in shown.limits]
    assert distances == sorted(distances)
    assert any(limit.words.startswith("From 18 lb on") for limit in shown.limits)
    assert what_if(make_bench({}), "cast") is None
    assert all(
        not field.startswith("leader.") for field, _ in fields_of(make_bench(card("frog")), QUESTIONS[0])
    )
