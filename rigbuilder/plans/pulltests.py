"""What a person's own pull tests say of a knot, and how they take the place of the catalogue's range.

The method. Each reading is divided by the straight break of the same line: the mean of
straight pulls where there are two or more (wet with wet, dry with dry), else the break that
label and material let expect. All readings of a knot in one type of line are pooled. The
range is that of the next pull, 5 % below and 5 % above by Student's t, widened by the spread
of the straight break (``mechanics.knotstats``). From five readings on it replaces the
catalogue's range. No knot counts as stronger than its line.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np

from rigbuilder.mechanics.knotstats import ENOUGH_READINGS, PullTests, efficiency_range, pull_tests
from rigbuilder.mechanics.uncertainty import Z_90
from rigbuilder.mechanics.uncertainty import Range as Ranges
from rigbuilder.model.pulltests import PullSeries
from rigbuilder.model.rig import Line
from rigbuilder.plans.known import at_most, range_of
from rigbuilder.reference.knots import Knot
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import Range
from rigbuilder.reference.words import LineType
from rigbuilder.review.figuring.chain import OwnKnots
from rigbuilder.review.figuring.sections import sections
from rigbuilder.sources import Kind, Source

LEAST_READINGS = 2  # a spread needs two [1]


@dataclass(frozen=True, slots=True)
class OwnKnot:
    """What own pulls say of one knot in one type of line: how many, share of strength left, against what."""

    knot: str
    type: LineType
    count: int
    share: Range
    straight_pulled: bool

    @property
    def enough(self) -> bool:
        """Return whether there are pulls enough to replace the catalogue's range."""
        return self.count >= ENOUGH_READINGS

    @property
    def source(self) -> Source:
        """Return how the share is known."""
        against = "straight pulls of the same line" if self.straight_pulled else "the label's straight break"
        return Source(Kind.COMPUTED, f"{self.count} own pulls against {against}, range of the next pull")


def own_results(series: Sequence[PullSeries], reference: Reference) -> tuple[OwnKnot, ...]:
    """Return what the pulls say, knot by knot; those with a single reading say nothing yet."""
    pooled: dict[tuple[str, LineType], list[PullSeries]] = defaultdict(list)
    for one in series:
        if one.knot is not None:
            pooled[one.knot, one.type].append(one)
    found = []
    for (knot, kind), group in pooled.items():
        if sum(len(one.readings_n) for one in group) >= LEAST_READINGS:
            found.append(_result(knot, kind, group, series, reference))
    return tuple(found)


def own_knots(series: Sequence[PullSeries], reference: Reference) -> OwnKnots:
    """Return the shares of strength that take the place of the catalogue's, where there are pulls enough."""
    results = own_results(series, reference)
    return MappingProxyType({(one.knot, one.type): one.share for one in results if one.enough})


def with_own(reference: Reference, series: Sequence[PullSeries]) -> Reference:
    """Return the reference with own results in place of the catalogue's ranges, where there are enough."""
    results = [one for one in own_results(series, reference) if one.enough]
    if not results:
        return reference
    knots = dict(reference.knots)
    for one in results:
        if one.knot in knots:
            knots[one.knot] = _replaced(knots[one.knot], one)
    return reference.model_copy(update={"knots": MappingProxyType(knots)})


def _replaced(knot: Knot, own: OwnKnot) -> Knot:
    fields = {name: getattr(knot, name) for name in Knot.model_fields}
    efficiency: Mapping[LineType, Range] = {**knot.efficiency, own.type: own.share}
    return Knot(**{**fields, "efficiency": efficiency, "sources": (own.source, *knot.sources)})


def _result(
    knot: str, kind: LineType, group: Sequence[PullSeries], series: Sequence[PullSeries], reference: Reference
) -> OwnKnot:
    shares: list[float] = []
    lines: list[PullTests] = []
    pulled = True
    for one in group:
        straight = _straight_pulls(one, series)
        pulled = pulled and straight is not None
        line = straight or _straight_by_label(one, reference)
        shares += [reading / line.mean_n for reading in one.readings_n]
        lines.append(line)
    widest = max(lines, key=lambda line: float(line.next_pull.high) / line.mean_n)
    found = efficiency_range(knot=pull_tests(readings_n=shares), line=_as_shares(widest))
    share = Range(float(found.low), float(found.typical), float(found.high))
    return OwnKnot(knot, kind, len(shares), at_most(share, 1.0), pulled)


def _straight_pulls(one: PullSeries, series: Iterable[PullSeries]) -> PullTests | None:
    readings = [
        reading
        for other in series
        if other.knot is None and other.type is one.type and other.wet == one.wet
        and abs(other.test_n - one.test_n) < 0.01 * one.test_n
        for reading in other.readings_n
    ]  # fmt: skip
    return pull_tests(readings_n=readings) if len(readings) >= LEAST_READINGS else None


def _straight_by_label(one: PullSeries, reference: Reference) -> PullTests:
    found = range_of(sections([Line(type=one.type, test_n=one.test_n)], reference).wet_break_n)
    if not one.wet:
        wet = reference.line_types[one.type].wet_strength_factor.typical
        found = found.scaled(1.0 / wet)
    deviation = (found.high - found.low) / (2.0 * Z_90)
    return PullTests(0, found.typical, deviation, Ranges(found.low, found.typical, found.high))


def _as_shares(line: PullTests) -> PullTests:
    ends = (float(np.asarray(end)) / line.mean_n for end in (line.next_pull.low, line.next_pull.high))
    low, high = ends
    return PullTests(line.count, 1.0, line.sd_n / line.mean_n, Ranges(min(low, 1.0), 1.0, max(high, 1.0)))
