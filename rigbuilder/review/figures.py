"""One vectorised pass from rigs to the figures that rules read."""

from collections.abc import Sequence
from types import MappingProxyType

from rigbuilder.model.rig import Rig
from rigbuilder.reference.load import Reference
from rigbuilder.reference.techniques import Technique
from rigbuilder.review.facts import Facts
from rigbuilder.review.figuring import drawing
from rigbuilder.review.figuring.batch import Batch
from rigbuilder.review.figuring.chain import OwnKnots
from rigbuilder.review.figuring.drawing import Curve
from rigbuilder.review.figuring.working import Working
from rigbuilder.review.figuring.working import working as working_of

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


def shape_points(facts: Facts) -> tuple[Curve, Curve, Curve]:
    """Return the line from lure to rod tip as points to draw: shallowest, typical, deepest."""
    return drawing.shape_points(facts, _batch(facts).rows)


def working(name: str, facts: Facts) -> Working:
    """Return how one figure came about: formula, inputs with their values, result, sources.

    Raises:
        KeyError: for a name that is no figure.
    """
    return working_of(name, facts)


def _batch(facts: Facts) -> Batch:
    if not isinstance(facts.columns, Batch):
        raise TypeError("only figures that were computed from rigs can be drawn")
    return facts.columns
