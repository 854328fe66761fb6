"""Benches with real cards on them, for the tests of the panels."""

from typing import Any

from rigbuilder.model.document import Document, put_all
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.viewmodels.bench import Bench

WRONG_FROG = {"main.type": "fluorocarbon", "main.test": "16 lb", "drag": "6 lb"}
"""Sinking, too light for the rod, with a drag that slips: a fault and risks."""


def bench_of(technique: str, changes: dict[str, Any] | None = None) -> Bench:
    """Return a bench with the usual rig of a technique, changed."""
    return bench_with(put_all(usual_document(technique), changes or {}))


def bench_with(document: Document) -> Bench:
    """Return a bench with a card, under the shipped practice."""
    return Bench(document, load(), House.shipped())
