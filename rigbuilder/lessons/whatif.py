"""What if: one field of a card moved over the values of the trade, each one put to the same review."""

import itertools
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from rigbuilder.model.document import Document, get, put
from rigbuilder.model.reading import read
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.review.core import Finding
from rigbuilder.review.engine import Report, lay_out, report
from rigbuilder.review.offered import tests_lb
from rigbuilder.review.questions.answer import Question
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import QuantityError, parse
from rigbuilder.units.systems import UnitSystem

FIELDS: Mapping[Question, tuple[str, ...]] = {
    Question.BREAKS: ("main.test", "leader.test", "drag"),
    Question.HOOK: ("cast", "main.type", "main.test", "lure.hook"),
    Question.DEPTH: ("main.type", "main.test", "lure.weight"),
    Question.SPOOL: ("main.length", "main.test", "main.type"),
    Question.CAST: ("lure.weight", "main.test", "main.type"),
    Question.SIGHT: ("water.clarity", "main.type", "leader.length"),
    Question.FEEL: ("cast", "main.type", "water.depth"),
}
"""The few fields that matter to each question."""

# What shops, labels and waters have (common practice); fields with an order are sliders, the others choices.
_FIXED: Mapping[str, Mapping[UnitSystem, tuple[str, ...]]] = {
    "cast": {
        UnitSystem.IMPERIAL: tuple(f"{yards} yd" for yards in range(5, 75, 5)),
        UnitSystem.METRIC: tuple(f"{metres} m" for metres in range(5, 70, 5)),
    },
    "water.clarity": {
        UnitSystem.IMPERIAL: tuple(f"{feet} ft" for feet in (0.5, 1, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 16, 20)),
        UnitSystem.METRIC: tuple(f"{m} m" for m in (0.2, 0.3, 0.5, 0.8, 1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6)),
    },
    "water.depth": {
        UnitSystem.IMPERIAL: tuple(f"{feet} ft" for feet in (2, 4, 6, 10, 15, 20, 25, 30, 40, 50, 60)),
        UnitSystem.METRIC: tuple(f"{m} m" for m in (0.5, 1, 2, 3, 4, 6, 8, 10, 12, 15, 20)),
    },
    "lure.weight": {
        UnitSystem.IMPERIAL: tuple(
            f"{ounces} oz"
            for ounces in ("1/16", "1/8", "3/16", "1/4", "3/8", "1/2", "5/8", "3/4", "1", "1 1/2", "2", "3")
        ),
        UnitSystem.METRIC: tuple(f"{grams} g" for grams in (2, 3.5, 5, 7, 10, 14, 18, 21, 28, 42, 56, 85)),
    },
    "leader.length": {
        UnitSystem.IMPERIAL: tuple(f"{inches} in" for inches in (4, 8, 12, 18, 24, 36, 48, 60, 84, 120, 144)),
        UnitSystem.METRIC: tuple(f"{cm} cm" for cm in (10, 20, 30, 45, 60, 90, 120, 150, 210, 300, 360)),
    },
    "main.length": {
        UnitSystem.IMPERIAL: tuple(f"{yards} yd" for yards in (25, 40, 60, 80, 100, 120, 150, 200, 250, 300)),
        UnitSystem.METRIC: tuple(f"{m} m" for m in (25, 40, 60, 80, 100, 120, 150, 200, 250, 300)),
    },
    "drag": {
        UnitSystem.IMPERIAL: tuple(f"{pounds} lb" for pounds in (1, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20)),
        UnitSystem.METRIC: tuple(f"{kg} kg" for kg in (0.5, 0.7, 1, 1.4, 1.8, 2.3, 2.7, 3.6, 4.5, 5.5, 7, 9)),
    },
}
_CHOICES: Mapping[str, tuple[str, ...]] = {
    "main.type": tuple(str(kind) for kind in tests_lb()),
    "lure.hook": ("2 light wire", "1/0 light wire", "1/0", "3/0", "4/0", "5/0 heavy wire"),
}
_DIMENSIONS: Mapping[str, Dimension] = {
    "cast": Dimension.LENGTH,
    "water.clarity": Dimension.LENGTH,
    "water.depth": Dimension.LENGTH,
    "leader.length": Dimension.LENGTH,
    "main.length": Dimension.LENGTH,
    "lure.weight": Dimension.MASS,
    "main.test": Dimension.FORCE,
    "leader.test": Dimension.FORCE,
    "drag": Dimension.FORCE,
}


@dataclass(frozen=True, slots=True)
class Step:
    """One value of the field, the card with it, and the review; ``present`` is what the card says."""

    value: str
    document: Document
    report: Report
    present: bool

    @property
    def rules(self) -> frozenset[str]:
        """Return the rules that speak here."""
        return frozenset(found.rule.name for found in self.report.findings)


@dataclass(frozen=True, slots=True)
class Limit:
    """Where a reason comes or goes: between the steps ``after`` and ``after + 1``."""

    after: int
    finding: Finding
    appears: bool


@dataclass(frozen=True, slots=True)
class Sweep:
    """A field over its values; ``ordered`` tells a slider from a choice."""

    field: str
    steps: tuple[Step, ...]
    limits: tuple[Limit, ...]
    ordered: bool

    @property
    def present(self) -> int:
        """Return the place of the card's own value, or -1 where it has none."""
        return next((place for place, step in enumerate(self.steps) if step.present), -1)


def limits(
    document: Document,
    field: str,
    reference: Reference,
    house: House,
    *,
    system: UnitSystem = UnitSystem.IMPERIAL,
) -> Sweep:
    """Move a field of a card over the values of the trade; tell where each reason comes and goes.

    Every value is put on the card as if it had been typed, and all are reviewed in one pass, so the
    limits are those of the rules and of nothing else. A value that makes no rig is left out.
    """
    values = _values(document, field, system)
    rigs = [(value, card, read(card, reference).rig) for value, card in _cards(document, field, values)]
    whole = [(value, card, rig) for value, card, rig in rigs if rig is not None]
    cases = lay_out([rig for _, _, rig in whole], reference, house) if whole else []
    own = get(document, field)
    steps = tuple(
        Step(value, card, report(case), value == own)
        for (value, card, _), case in zip(whole, cases, strict=True)
    )
    ordered = field in _DIMENSIONS
    return Sweep(field, steps, _limits(steps) if ordered else (), ordered)


def _cards(document: Document, field: str, values: Sequence[str]) -> list[tuple[str, Document]]:
    return [(value, put(document, field, value)) for value in values]


def _values(document: Document, field: str, system: UnitSystem) -> list[str]:
    """Return the values on offer with the card's own among them, smallest first where they have an order."""
    own = get(document, field)
    offered = list(_offered(document, field, system))
    group, _, _ = field.rpartition(".")
    if group in ("leader", "backing") and get(document, group) is None:
        return []
    if field in _CHOICES:
        return offered if own is None or own in offered else [str(own), *offered]
    size = _size_in(_DIMENSIONS[field])
    sized = {value: size(value) for value in offered}
    own_size = size(own) if isinstance(own, str) else None
    if isinstance(own, str) and own_size is not None:
        sized = {value: at for value, at in sized.items() if at is None or abs(at / own_size - 1) > 1e-3}
        sized[own] = own_size
    known = [(at, value) for value, at in sized.items() if at is not None]
    return [value for _, value in sorted(known)]


def _offered(document: Document, field: str, system: UnitSystem) -> Sequence[str]:
    if field in _CHOICES:
        return _CHOICES[field]
    if field in ("main.test", "leader.test"):
        kind = get(document, f"{field.partition('.')[0]}.type")
        table = next((tests for type_, tests in tests_lb().items() if str(type_) == kind), ())
        return tuple(f"{pounds} lb" for pounds in table)
    return _FIXED[field][system]


def _size_in(dimension: Dimension) -> Callable[[str], float | None]:
    def size(text: str) -> float | None:
        try:
            return parse(text, dimension).middle_si
        except QuantityError:
            return None

    return size


def _limits(steps: Sequence[Step]) -> tuple[Limit, ...]:
    found: list[Limit] = []
    for place, (one, other) in enumerate(itertools.pairwise(steps)):
        before = {finding.rule.name: finding for finding in one.report.findings}
        after = {finding.rule.name: finding for finding in other.report.findings}
        found += [Limit(place, after[name], True) for name in after if name not in before]
        found += [Limit(place, before[name], False) for name in before if name not in after]
    return tuple(found)
