"""Rigs made from rule examples: the usual rig with the example's changes on the card."""

from rigbuilder.model.document import Document, put_all
from rigbuilder.model.reading import Reading, read
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.review.core import Example, Rule
from rigbuilder.review.engine import Report, review
from rigbuilder.review.rules.book import RULES


def document_of(example: Example) -> Document:
    """Return the card of an example."""
    return put_all(usual_document(load().technique(example.technique).id), example.changes)


def reviewed(document: Document) -> tuple[Reading, Report]:
    """Read and review a card that must be readable."""
    reading = read(document, load())
    assert reading.rig is not None, [str(problem) for problem in reading.problems]
    return reading, review(reading.rig, load(), House.shipped())


def all_examples(which: str) -> list[tuple[Rule, Example]]:
    """Return every (rule, example) of the book; ``which`` is ``wrong`` or ``right``."""
    return [(rule, example) for rule in RULES for example in getattr(rule, which)]


def example_id(value: object) -> str:
    """Name a test case after its rule."""
    return value.name if isinstance(value, Rule) else ""
