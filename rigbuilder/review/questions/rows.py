"""The batch behind a case: the inputs that its figures were computed from."""

from rigbuilder.review.case import Case
from rigbuilder.review.figures import NO_OWN_KNOTS
from rigbuilder.review.figuring.batch import Batch


def batch_of(case: Case) -> tuple[Batch, int]:
    """Return the batch of a case's figures and its row there; a case of another making gets a batch anew."""
    columns = case.facts.columns
    if isinstance(columns, Batch):
        return columns, case.facts.row
    return Batch([case.rig], [case.technique], case.reference, NO_OWN_KNOTS), 0
