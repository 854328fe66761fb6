"""Reading one field's text: label words and quantities to SI, or a problem that says what to do."""

import re
from typing import Any

from rigbuilder.model.fields import Field, Holds
from rigbuilder.model.labels.rod_words import ACTION_OF, POWER_OF
from rigbuilder.model.problems import Problem, nearest, quoted
from rigbuilder.model.rig import LineSize
from rigbuilder.reference.load import Reference, UnknownName
from rigbuilder.reference.ranges import Span
from rigbuilder.units.dimensions import EXAMPLES, Dimension
from rigbuilder.units.quantity import Quantity, QuantityError, parse

_RATIO = re.compile(r"\s*(\d{1,2}(?:[.,]\d{1,3})?)\s*(?::\s*1)?\s*")
_LONGEST = 400
_ABBREVIATIONS = {"rod.power": POWER_OF, "rod.action": ACTION_OF}


class FieldError(Exception):
    """Carries the problem of one field up to the reader, which collects them all."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        super().__init__(str(problem))


def _fail(field: Field, found: object, expected: str, hint: str = "") -> FieldError:
    return FieldError(Problem(field.path, quoted(found), expected, hint))


def expected_words(field: Field) -> str:
    """Return in plain words what a field may hold, with an example."""
    if field.holds is Holds.CHOICE:
        return "one of " + ", ".join(field.choices)
    if field.holds is Holds.TECHNIQUE:
        return "the name of a technique, such as drop shot"
    if field.holds is Holds.KNOT:
        return "the name of a knot, such as palomar"
    if field.dimension is not None and not field.example:
        return EXAMPLES[field.dimension]
    return f"text such as {field.example}" if field.example else "text"


def read_value(field: Field, text: Any, reference: Reference) -> Any:
    """Return what a field's text means: SI numbers, spans, words, ids.

    Raises:
        FieldError: carrying a problem that names the field, what was found and what is expected.
    """
    if field.holds is Holds.CAPACITY:
        return _capacity_texts(field, text)
    if not isinstance(text, str):
        raise _fail(field, text, expected_words(field) + ", written as text in quotes")
    if not text.strip():
        raise _fail(field, text, expected_words(field), "Leave the field out if it is not known.")
    if len(text) > _LONGEST and field.path != "name":
        raise _fail(field, text, f"at most {_LONGEST} characters")
    if field.holds is Holds.CHOICE:
        return _choice(field, text)
    if field.holds in (Holds.TECHNIQUE, Holds.KNOT):
        return _named(field, text, reference)
    if field.holds is Holds.RATIO:
        return _ratio(field, text)
    if field.holds in (Holds.TEXT, Holds.LABEL):
        return text.strip()
    return _quantity(field, text)


def _capacity_texts(field: Field, found: Any) -> tuple[str, ...]:
    texts = [found] if isinstance(found, str) else found
    if not isinstance(texts, list) or not all(isinstance(text, str) and text.strip() for text in texts):
        raise _fail(field, found, f"a list of texts such as {field.example}")
    return tuple(texts)


def _choice(field: Field, text: str) -> str:
    word = " ".join(text.split()).casefold()
    word = _ABBREVIATIONS.get(field.path, {}).get(word, word)
    for choice in field.choices:
        if choice.casefold() == word.replace("-", " ") or choice == word:
            return choice
    raise _fail(field, text, expected_words(field), nearest(word, field.choices))


def _named(field: Field, text: str, reference: Reference) -> str:
    try:
        if field.holds is Holds.TECHNIQUE:
            return reference.technique(text).id
        return reference.knot(text).name
    except UnknownName as unknown:
        hint = f"Did you mean {' or '.join(unknown.nearest)}?" if unknown.nearest else ""
        raise _fail(field, text, expected_words(field), hint) from None


def _ratio(field: Field, text: str) -> float:
    match = _RATIO.fullmatch(text)
    if match is None:
        raise _fail(field, text, f"a gear ratio such as {field.example}")
    value = float(match[1].replace(",", "."))
    if not field.lowest <= value <= field.highest:
        raise _fail(field, text, f"a gear ratio between {field.lowest:g}:1 and {field.highest:g}:1")
    return value


def _parsed(field: Field, text: str) -> Quantity:
    dimensions = [field.dimension or Dimension.LENGTH]
    if field.holds is Holds.TEST:
        dimensions.insert(0, Dimension.SIZE)
    problem: QuantityError | None = None
    for dimension in dimensions:
        try:
            return parse(text, dimension)
        except QuantityError as error:
            problem = error
    assert problem is not None  # noqa: S101 - the loop runs at least once
    raise _fail(field, text, problem.expected, f"It {problem.reason}.")


def _quantity(field: Field, text: str) -> Any:
    quantity = _parsed(field, text)
    if quantity.unit.dimension is Dimension.SIZE:
        return _sizes(field, text, quantity)
    low, high = quantity.si_low, quantity.si_high
    if low < field.lowest or high > field.highest:
        what = "lower" if high > field.highest else "higher"
        raise _fail(
            field, text, expected_words(field), f"The value must be {what} for a fishing rig; check the unit."
        )
    if field.path == "rod.line" or field.holds is Holds.SPAN:
        return Span(low, high)
    if quantity.is_range:
        raise _fail(field, text, "one value, not a range")
    if high <= 0 and field.dimension in (Dimension.LENGTH, Dimension.MASS, Dimension.FORCE):
        raise _fail(field, text, expected_words(field), "It must be more than nothing.")
    return low


def _sizes(field: Field, text: str, quantity: Quantity) -> Any:
    if not 0 < quantity.low <= quantity.high <= 100:
        raise _fail(field, text, "a size number between 0.06 and 100")
    scale = quantity.unit.symbol
    if field.path == "rod.line":
        return (LineSize(scale=scale, number=quantity.low), LineSize(scale=scale, number=quantity.high))
    if quantity.is_range:
        raise _fail(field, text, "one size, not a range")
    return LineSize(scale=scale, number=quantity.low)
