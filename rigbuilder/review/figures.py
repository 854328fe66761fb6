"""One vectorised pass from rigs to the figures that rules read."""

from collections.abc import Sequence
from types import MappingProxyType

from rigbuilder.model.rig import Rig
from rigbuilder.reference.load import Reference
from rigbuilder.reference.techniques import Technique
from rigbuilder.review.facts import Facts
from rigbuilder.review.figuring.batch import Batch
from rigbuilder.review.figuring.chain import OwnKnots

NO_OWN_KNOTS: OwnKnots = MappingProxyType({})


def figures(
    rigs: Sequence[Rig],
    techniques: Sequence[Technique],
    reference: Reference,
    *,
    own_knots: OwnKnots = NO_OWN_KNOTS,
) -> list[Facts]:
    """Return the figures of many rigs; ``techniques`` are theirs, in the same order.

    ``own_knots`` holds what a person's own pull tests found: the share of strength left by
    a knot in a type of line. It replaces the catalogue's range.
    """
    if not rigs:
        return []
    batch = Batch(rigs, techniques, reference, own_knots)
    return [Facts(batch, row) for row in range(len(rigs))]
