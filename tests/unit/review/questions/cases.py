"""Reviewed rigs for the tests of the questions."""

from functools import cache
from typing import Any

from rigbuilder.model.document import put_all
from rigbuilder.model.reading import read
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.review.engine import Report, review

TECHNIQUES = ("frog", "deep-diver", "drop-shot", "punching", "float-rig", "spinnerbait", "wacky", "ned")
"""Surface, diving, bottom, vertical, below a float, sinking, weightless, with a leader."""

WRONG_FROG = {"main.type": "fluorocarbon", "main.test": "16 lb"}


@cache
def usual_report(technique: str) -> Report:
    """Return the review of a technique's usual rig."""
    return report_of(technique, {})


def report_of(technique: str, changes: dict[str, Any]) -> Report:
    """Return the review of a technique's usual rig with changes made on the card."""
    rig = read(put_all(usual_document(technique), changes), load()).rig
    assert rig is not None
    return review(rig, load(), House.shipped())
