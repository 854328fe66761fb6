"""Lesson files: read strictly, written whole, never over what was not seen."""

import json
from pathlib import Path
from typing import Any

import pytest

from rigbuilder.lessons.document import LessonUnreadable, read_lesson
from rigbuilder.store.errors import AlreadyThere, CardError, ChangedOnDisk, NewerVersion, NotFound
from rigbuilder.store.lessons import list_lessons, load_lesson, save_lesson
from tests.unit.lessons.cases import card, lesson_document, reference, shipped


def _put(path: Path, document: Any) -> Path:
    path.write_text(document if isinstance(document, str) else json.dumps(document), encoding="utf-8")
    return path


def test_a_shipped_lesson_is_written_back_byte_for_byte(tmp_path: Path) -> None:
    for path in shipped():
        copy = tmp_path / path.name
        save_lesson(load_lesson(path, reference()).lesson, copy, expected=None)
        assert copy.read_bytes() == path.read_bytes()


def test_a_lesson_is_saved_over_the_version_that_was_loaded_and_no_other(tmp_path: Path) -> None:
    path = tmp_path / "own" / "class.riglesson"
    lesson = read_lesson(lesson_document({"card": card("frog")}), reference())
    first = save_lesson(lesson, path, expected=None)
    second = save_lesson(lesson.with_(name="Second"), path, expected=first)
    with pytest.raises(ChangedOnDisk):
        save_lesson(lesson, path, expected=first)
    with pytest.raises(AlreadyThere):
        save_lesson(lesson, path, expected=None)
    loaded = load_lesson(path, reference())
    assert loaded.lesson.name == "Second"
    assert loaded.fingerprint.same_content(second)


@pytest.mark.parametrize(
    ("document", "kind", "said"),
    [
        ("", CardError, "an empty file"),
        ("[1]", CardError, "a list"),
        ('{"format": "rigbuilder.lesson", "version": 1, "id": "a", "id": "b"}', CardError, "“id” twice"),
        ({"format": "rigbuilder.card", "version": 1}, CardError, "rigbuilder.lesson"),
        ({"format": "rigbuilder.lesson", "version": 2}, NewerVersion, "newer Rigbuilder"),
        ({"format": "rigbuilder.lesson", "version": "1"}, CardError, "whole number"),
        ({"format": "rigbuilder.lesson", "version": 1, "seed": float("1e300")}, LessonUnreadable, "seed"),
    ],
)
def test_a_file_that_is_no_lesson_is_refused_with_the_reason_and_left_alone(
    tmp_path: Path, document: Any, kind: type[Exception], said: str
) -> None:
    path = _put(tmp_path / "class.riglesson", document)
    before = path.read_bytes()
    with pytest.raises(kind, match="class") as caught:
        load_lesson(path, reference())
    assert said in str(caught.value)
    assert path.read_bytes() == before


def test_a_missing_file_is_told(tmp_path: Path) -> None:
    with pytest.raises(NotFound):
        load_lesson(tmp_path / "none.riglesson", reference())


def test_a_broken_lesson_stands_in_the_list_with_its_reason(tmp_path: Path) -> None:
    _put(tmp_path / "a.riglesson", lesson_document({"card": card("frog")}))
    _put(tmp_path / "b.riglesson", "{")
    rows = list_lessons(shipped()[0].parent, tmp_path, reference())
    assert [row.shipped for row in rows] == [True] * len(shipped()) + [False, False]
    assert rows[-2].lesson is not None
    assert rows[-1].lesson is None
    assert "b.riglesson" in rows[-1].trouble
