"""A lesson as a file holds it: an ordered set of rigs, each with what it is meant to show."""

from collections.abc import Iterable, Mapping
from typing import Any, Self

from pydantic import BaseModel, ConfigDict, Field, StrictInt, StrictStr, ValidationError
from pydantic_core import ErrorDetails

from rigbuilder.model.document import Document
from rigbuilder.model.problems import Problem, nearest, quoted
from rigbuilder.model.reading import read
from rigbuilder.reference.load import Reference
from rigbuilder.review.rules.book import RULES

FORMAT = "rigbuilder.lesson"
VERSION = 1
MOST_RIGS = 60

_RULES = {rule.name for rule in RULES}
_NOT_KEPT = {"format", "version"}
_WORDS = {
    "string_type": "text in quotes",
    "int_type": "a whole number",
    "tuple_type": "a list in square brackets",
    "list_type": "a list in square brackets",
    "dict_type": "a group of fields in braces",
    "model_type": "a group of fields in braces",
    "missing": "this field",
    "string_too_short": "a text that is not empty",
    "too_short": "at least one rig",
    "too_long": f"at most {MOST_RIGS} rigs",
    "greater_than_equal": "a whole number from 0",
    "less_than_equal": "a smaller number",
}


class LessonUnreadable(ValueError):  # noqa: N818 - named for what happened
    """A lesson that does not say what it should. ``str()`` names file, rig and field, one problem a line."""

    def __init__(self, problems: Iterable[Problem], *, file: str = "the lesson") -> None:
        self.problems = tuple(problems)
        self.file = file
        super().__init__("\n".join(f"{file}: {problem}" for problem in self.problems))


class _Kept(BaseModel):
    """A frozen value that keeps the keys it does not know."""

    model_config = ConfigDict(frozen=True, extra="allow")

    def with_(self, **changes: Any) -> Self:
        """Return a new value with the changes made, checked like any other."""
        return type(self).model_validate({**self.model_dump(), **changes})


class LessonRig(_Kept):
    """One rig: its card whole, the question, the rules meant to speak (none for a right rig), the texts."""

    card: dict[str, Any]
    question: StrictStr = ""
    meant: tuple[StrictStr, ...] = ()
    hint: StrictStr = ""
    remark: StrictStr = ""

    @property
    def name(self) -> str:
        """Return the name on the card."""
        return str(self.card.get("name") or "Rig without a name")


class Lesson(_Kept):
    """The lesson whole; ``seed`` orders what is offered, so that a class gets the same."""

    id: StrictStr = Field(min_length=1, max_length=64)
    name: StrictStr = Field(min_length=1, max_length=200)
    introduction: StrictStr = ""
    closing: StrictStr = ""
    seed: StrictInt = Field(default=1, ge=0, le=2**31)
    rigs: tuple[LessonRig, ...] = Field(min_length=1, max_length=MOST_RIGS)

    def as_document(self) -> Document:
        """Return the lesson as plain JSON values: known keys first, texts that are empty left out."""
        told = self.model_dump(mode="json")
        rigs = [_in_order(rig, LessonRig) for rig in told.pop("rigs")]
        ordered = _in_order(told, Lesson)
        return {"format": FORMAT, "version": VERSION, **ordered, "rigs": rigs}


def read_lesson(document: Mapping[str, Any], reference: Reference, *, file: str = "the lesson") -> Lesson:
    """Return the lesson that a parsed file means; every card in it must make a rig.

    Raises:
        LessonUnreadable: naming rig and field, what was found and what is expected.
    """
    told = {key: value for key, value in document.items() if key not in _NOT_KEPT}
    try:
        lesson = Lesson.model_validate(told)
    except ValidationError as error:
        raise LessonUnreadable([_problem(wrong) for wrong in error.errors()], file=file) from None
    problems = [
        problem
        for number, rig in enumerate(lesson.rigs, start=1)
        for problem in _problems_of(rig, number, reference)
    ]
    if problems:
        raise LessonUnreadable(problems, file=file)
    return lesson


def _problems_of(rig: LessonRig, number: int, reference: Reference) -> Iterable[Problem]:
    for place, name in enumerate(rig.meant, start=1):
        if name not in _RULES:
            yield Problem(
                f"rig {number}, meant, entry {place}",
                quoted(name),
                "the name of a rule, as sinking-line-on-surface-lure",
                nearest(name, _RULES),
            )
    if len(set(rig.meant)) != len(rig.meant):
        yield Problem(f"rig {number}, meant", "a rule named twice", "every rule once")
    for wrong in read(rig.card, reference).problems:
        yield Problem(f"rig {number}, card.{wrong.field}", wrong.found, wrong.expected, wrong.hint)


def _problem(wrong: ErrorDetails) -> Problem:
    """Return one of pydantic's complaints in the words of the trade."""
    kind, found = wrong["type"], wrong.get("input")
    expected = _WORDS.get(kind, wrong["msg"])
    return Problem(_place(wrong["loc"]), "nothing" if kind == "missing" else quoted(found), expected)


def _place(where: tuple[int | str, ...]) -> str:
    """Return ``rig 3, meant, entry 2`` for ``("rigs", 2, "meant", 1)``."""
    if len(where) >= 2 and where[0] == "rigs" and isinstance(where[1], int):
        rest = [f"entry {key + 1}" if isinstance(key, int) else key for key in where[2:]]
        return ", ".join([f"rig {where[1] + 1}", *rest])
    return ".".join(map(str, where)) or "the lesson"


def _in_order(told: dict[str, Any], model: type[_Kept]) -> Document:
    known = [name for name in model.model_fields if name in told and name != "rigs"]
    optional = {name for name in known if told[name] == "" and not model.model_fields[name].is_required()}
    ordered = {name: told[name] for name in known if name not in optional}
    return ordered | {key: value for key, value in told.items() if key not in model.model_fields}
