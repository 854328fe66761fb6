"""A label while it is being read: which stretches are taken, and what was offered for each key."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from rigbuilder.model.labels.gluing import unglue
from rigbuilder.model.labels.understood import Capacity, Doubt, LabelKind, Part, Understanding, Value
from rigbuilder.units.normal import normalise
from rigbuilder.units.quantity import Quantity, show

TAKEN = "\x00"
_REST = re.compile(r"[^\x00,;|\n]+")
_DIAMETER_SIGN = re.compile(r"[ø⌀φ∅](?=\s*[\d.,])")
_EDGE = " \t-/:.,;()[]{}~=+*&_@\"'"
# Labels round when they convert: 6-12 lb is sold as 3-6 kg, 1/8 oz as 4 g, 7' as 2.1 m.
_ROUNDING = {"length": 0.025, "diameter": 0.05, "retrieve": 0.03, "drag": 0.1, "test": 0.12, "weight": 0.12}
_ORDINARY_ROUNDING = 0.16
KEYS: dict[LabelKind, tuple[str, ...]] = {
    "rod": ("length", "power", "action", "line", "line_for", "lure", "pieces"),
    "reel": ("kind", "size", "ratio", "retrieve", "drag", "capacity"),
    "line": ("type", "test", "diameter", "length", "size"),
    "lure": ("weight", "length", "depth", "buoyancy", "hook"),
}
_NAMES = {
    "line": "line ranges",
    "lure": "lure ranges",
    "length": "lengths",
    "test": "tests",
    "power": "powers",
    "action": "actions",
    "type": "line types",
}


@dataclass(frozen=True, slots=True)
class _Offer:
    start: int
    end: int
    key: str
    value: Value
    meaning: str


class Label:
    """The text of one label, taken apart stretch by stretch; positions count in `text`."""

    def __init__(self, kind: LabelKind, source: str) -> None:
        self.kind: LabelKind = kind
        self._source = source
        self._normal = unglue(normalise(source.replace("\n", ";")), kind)
        self.marks_diameter = _DIAMETER_SIGN.search(self._normal.text) is not None
        self.text = _DIAMETER_SIGN.sub(" ", self._normal.text)
        self.open = self.text
        self._offers: list[_Offer] = []
        self._doubts: list[Doubt] = []
        self._capacities: list[tuple[int, Capacity]] = []
        self._parts: list[Part] = []

    def find(self, pattern: re.Pattern[str]) -> Iterator[re.Match[str]]:
        """Matches in what is still open, left to right; what a match's user takes is not seen again."""
        at = 0
        while match := pattern.search(self.open, at):
            yield match
            at = max(match.end(), at + 1)

    def printed(self, start: int, end: int) -> str:
        """The stretch as the label has it."""
        first, last = self._normal.span(start, end)
        return self._source[first:last].strip()

    def take(self, start: int, end: int) -> None:
        """Mark a stretch as read."""
        self.open = self.open[:start] + TAKEN * (end - start) + self.open[end:]

    def offer(self, span: tuple[int, int], key: str, value: Value, meaning: str) -> None:
        """Take a stretch that says ``value`` for ``key``."""
        self.take(*span)
        self._offers.append(_Offer(*span, key, value, meaning))

    def offer_capacity(self, span: tuple[int, int], capacity: Capacity, meaning: str) -> None:
        """Take a stretch that states one capacity; a reel may state several."""
        self.take(*span)
        self._capacities.append((span[0], capacity))
        self._part(span, "capacity", meaning)

    def doubt(self, span: tuple[int, int], why: str) -> None:
        """Take a stretch whose meaning must be asked for."""
        self.take(*span)
        first, last = self._normal.span(*span)
        self._doubts.append(Doubt(self.printed(*span), why, first, last))

    def has(self, key: str) -> bool:
        """Whether something was offered for ``key``."""
        return any(offer.key == key for offer in self._offers)

    def has_value(self, key: str, value: Value) -> bool:
        """Whether ``value`` was offered for ``key``."""
        return any(offer.key == key and offer.value == value for offer in self._offers)

    def finish(self) -> Understanding:
        """What was read: agreeing offers are understood, others doubtful, the rest named."""
        values: dict[str, Value] = {}
        for key in sorted({offer.key for offer in self._offers}, key=KEYS[self.kind].index):
            self._settle(key, values)
        if self._capacities:
            values["capacity"] = tuple(c for _, c in sorted(self._capacities, key=lambda pair: pair[0]))
        return Understanding(
            kind=self.kind,
            values=values,
            parts=tuple(sorted(self._parts, key=lambda part: part.start)),
            not_understood=self._rest(),
            doubtful=tuple(sorted(self._doubts, key=lambda doubt: doubt.start)),
        )

    def _settle(self, key: str, values: dict[str, Value]) -> None:
        offers = sorted((o for o in self._offers if o.key == key), key=lambda offer: offer.start)
        if all(agree(key, offers[0].value, offer.value) for offer in offers[1:]):
            values[key] = offers[0].value
            for offer in offers:
                self._part((offer.start, offer.end), key, offer.meaning)
            return
        said = " and ".join(dict.fromkeys(say(offer.value) for offer in offers))
        for offer in offers:
            self.doubt((offer.start, offer.end), f"the label gives different {_NAMES.get(key, key)}: {said}")

    def _part(self, span: tuple[int, int], key: str, meaning: str) -> None:
        self._parts.append(Part(*self._normal.span(*span), key, meaning))

    def _rest(self) -> tuple[str, ...]:
        rest = []
        for match in _REST.finditer(self.open):
            start, end = match.span()
            while start < end and self.open[start] in _EDGE:
                start += 1
            while end > start and self.open[end - 1] in _EDGE:
                end -= 1
            if start < end:
                rest.append(self.printed(start, end))
        return tuple(text for text in rest if text)


def say(value: Value) -> str:
    """A value in words."""
    return show(value) if isinstance(value, Quantity) else str(value)


def agree(key: str, one: Value, other: Value) -> bool:
    """Whether two statements of one thing are the same within a label's rounding."""
    if not (isinstance(one, Quantity) and isinstance(other, Quantity)):
        return one == other
    if one.unit.dimension is not other.unit.dimension:
        return False
    if one.unit is other.unit:
        return one == other
    rounding = _ROUNDING.get(key, _ORDINARY_ROUNDING)
    ends = ((one.si_low, other.si_low), (one.si_high, other.si_high))
    return all(abs(a - b) <= rounding * max(abs(a), abs(b)) for a, b in ends)
