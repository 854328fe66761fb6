"""The usual rig of each technique, read once."""

from functools import cache

from rigbuilder.model.reading import read_rig
from rigbuilder.model.rig import Rig
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.load import Reference, load


def usual_rig(technique: str, reference: Reference) -> Rig:
    """Return the rig that practice would put on first for a technique.

    Raises:
        CardUnreadable: if the shipped card of the technique is damaged.
    """
    if reference is load():
        return _shipped(technique)
    return _read(technique, reference)


@cache
def _shipped(technique: str) -> Rig:
    return _read(technique, load())


def _read(technique: str, reference: Reference) -> Rig:
    rig = read_rig(usual_document(technique), reference, file=f"the usual rig of {technique}").rig
    if rig is None:
        raise LookupError(f"the usual rig of {technique} makes no rig")
    return rig
