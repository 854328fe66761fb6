"""Many cards at once: their figures come from one vectorised pass."""

from collections.abc import Sequence

from rigbuilder.model.document import Document
from rigbuilder.model.reading import Reading, read
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.review.engine import Report, lay_out, report

#: The word for a card that can be kept and opened but makes no whole rig yet.
UNFINISHED = "unfinished"


def review_documents(
    documents: Sequence[Document], reference: Reference, house: House
) -> list[tuple[Reading, Report | None]]:
    """Return what each card means and what the review says of it, ``None`` where it makes no rig yet."""
    readings = [read(document, reference) for document in documents]
    rigs = [reading.rig for reading in readings if reading.rig is not None]
    cases = iter(lay_out(rigs, reference, house)) if rigs else iter(())
    return [(reading, None if reading.rig is None else report(next(cases))) for reading in readings]


def verdict_word(found: Report | None) -> str:
    """Return ``fault``, ``risk``, ``note``, ``right`` or ``unfinished``."""
    return UNFINISHED if found is None else found.verdict.word
