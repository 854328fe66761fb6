"""Lessons and rigs for the tests of lessons."""

from functools import cache
from pathlib import Path
from typing import Any

from rigbuilder import resources
from rigbuilder.lessons.document import Lesson
from rigbuilder.model.document import Document, put_all
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference, load
from rigbuilder.review.engine import Report
from rigbuilder.review.many import review_documents
from rigbuilder.store.lessons import load_lesson

HOUSE = House.shipped()


@cache
def reference() -> Reference:
    """The shipped reference, loaded once."""
    return load()


def shipped() -> list[Path]:
    """The lessons that come with the program."""
    return sorted(resources.path("lessons").glob("*.riglesson"))


@cache
def lesson(path: Path) -> Lesson:
    """A shipped lesson, read once."""
    return load_lesson(path, reference()).lesson


def card(technique: str, **changes: Any) -> Document:
    """The usual rig of a technique with changes; paths with ``__`` for the dot."""
    return put_all(
        usual_document(technique), {path.replace("__", "."): value for path, value in changes.items()}
    )


def report(document: Document) -> Report:
    """The review of a card that makes a rig."""
    found = review_documents([document], reference(), HOUSE)[0][1]
    assert found is not None
    return found


def lesson_document(*rigs: dict[str, Any]) -> dict[str, Any]:
    """A lesson file's document with these rigs."""
    return {
        "format": "rigbuilder.lesson",
        "version": 1,
        "id": "test-lesson",
        "name": "A test",
        "seed": 7,
        "rigs": list(rigs),
    }
