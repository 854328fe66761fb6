"""Rigs for the tests of plans: the usual rig of a technique with changes on its card."""

from typing import Any

from rigbuilder.model.document import put_all
from rigbuilder.model.reading import read_rig
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.review.case import Case
from rigbuilder.review.engine import lay_out

YARD_M = 0.9144
LBF_N = 4.4482216152605


def case_of(technique: str, changes: dict[str, Any] | None = None) -> Case:
    """Return the usual rig of a technique with changes, laid out for the review."""
    reference = load()
    document = put_all(usual_document(reference.technique(technique).id), changes or {})
    rig = read_rig(document, reference).rig
    assert rig is not None
    return lay_out([rig], reference, House.shipped())[0]
