"""Numbers, ranges and units on labels, and the captions that say what they measure."""

import re
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from itertools import pairwise

from rigbuilder.model.labels.label import TAKEN, Label
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import Quantity, QuantityError, parse, show
from rigbuilder.units.spelling import SYMBOLS, unit_pattern

_BINARY = [f"{n}/{d}" for d in (2, 4, 8, 16, 32, 64) for n in range(1, d)]
_OTHER = ["1/3", "2/3", "1/5", "2/5", "3/5", "4/5", "1/6", "5/6"]
_SMALL = [f"1/{d}" for d in (10, 12, 20, 24, 28, 40, 48, 50, 80, 100, 128)]
_KNOWN = "|".join(sorted(_BINARY + _OTHER + _SMALL, key=len, reverse=True))
FRACTION = rf"(?:(?:{_KNOWN})(?!\d|/?0|[.,]\d)|\d{{1,2}}/\d{{1,2}}(?=\s?oz))"
MIXED = rf"[1-9](?: {{1,3}}|-)(?:{FRACTION})"
DECIMAL = r"(?:\d{1,6}(?:[.,]\d{1,4})*|(?:\.|(?<![^\s(-]),)\d{1,4})(?!\d|[.,]\d)"
NUMBER = rf"(?:{MIXED}|{FRACTION}|{DECIMAL})"
# A range ends in no such number as 20 1/4, and no number starts behind the stroke of a fraction.
_LOW = rf"(?:(?<!\d[/-])(?:\d{{2}} {{1,3}}{FRACTION}|{MIXED})|(?<!\d-){FRACTION}|(?<!\d[/-]){DECIMAL})"
TO = r"\s*(?:-{1,2}|~|to\b|\.\.\.?|…|thru|through)\s*"
AFTER_WORD = r"(?![^\W\d_])"
BEFORE_WORD = r"(?<![^\W_])"
START = r"(?<![a-z0-9.])(?<!\d[,/])"
LONE = r"(?<![a-z0-9.#])(?<!\d[,/:-])"
PART = r"(?:(?<![a-z0-9.])(?<!\d,)|(?<=lb|kg|oz|mm|cm|yd|ft)|(?<=lb\.|bs\.|kg\.|oz\.|yd\.|ft\.|in\.))"
MARKS = ("lb", "kg", "oz", "g", "m", "cm", "mm", "ft", "in", "yd")
UNIT = unit_pattern(*MARKS)

MEASURE = re.compile(
    rf"{PART}(?P<low>{_LOW})(?:\s*(?P<low_unit>{UNIT}))?"
    rf"(?:{TO}(?P<high>{NUMBER})(?!\s*-\s*\d))?(?:(?:\s?\+)?\s*-?\s*(?P<open>\(\s*)?(?P<unit>{UNIT})(?(open)\s*\))(?!\s?\d+\s*(?:treble|hook)))?(?:\s?\+)?"
)
_WORD_UNIT = rf"(?=[a-z]){UNIT}"
_UNIT_FIRST = re.compile(
    rf"(?:\(\s*(?P<bracketed>{_WORD_UNIT})\s*\)|{BEFORE_WORD}(?:(?P<colon>{_WORD_UNIT})\s*[:=]|(?P<plain>{_WORD_UNIT})))"
    rf"\s*[:=]?\s*(?>(?P<low>{NUMBER})(?:{TO}(?P<high>{NUMBER}))?)(?!\s*-?\s*{UNIT}\.?+(?![\s:=]*\d)|/)"
)


@dataclass(frozen=True, slots=True)
class Measure:
    """A number or range found on a label, its unit (None if none is printed) and its caption."""

    span: tuple[int, int]
    text: str
    symbol: str | None
    role: str | None
    is_fraction: bool
    is_range: bool


@dataclass(frozen=True, slots=True)
class Caption:
    """A word on the label that says what the number beside it is."""

    start: int
    end: int
    role: str


class Captions:
    """The captions of one label; finding them takes them off the label."""

    def __init__(self, label: Label, words: Mapping[str, re.Pattern[str]]) -> None:
        self._label = label
        self.found: list[Caption] = []
        for role, pattern in words.items():
            for match in label.find(pattern):
                self.found.append(Caption(match.start(), match.end(), role))
                label.take(match.start(), match.end())

    def role(self, start: int, end: int) -> str | None:
        """What the caption before the stretch says of it, else the one that follows it."""
        text = self._label.text
        for caption in self.found:
            if caption.end <= start and not text[caption.end : start].strip(" :.=()[]-≤<\t"):
                return caption.role
        for caption in self.found:
            if caption.start >= end and not text[end : caption.start].strip(" .-()"):
                return None if re.match(r"\s*[:=]|\s*[\d.]", text[caption.end :]) else caption.role
        return None

    def inside(self, start: int, end: int) -> str | None:
        """What a caption within the stretch says of it."""
        return next((c.role for c in self.found if start < c.start and c.end < end), None)

    def said_of(
        self, start: int, end: int, roles: Collection[str], *, follows: re.Pattern[str]
    ) -> str | None:
        """Like `role`, where the label's own habit decides which side such captions stand on.

        They stand behind what they caption if the text before the first of them matches ``follows``.
        """
        captions = sorted((c for c in self.found if c.role in roles), key=lambda caption: caption.start)
        if not captions:
            return None
        text = self._label.text
        after = follows.search(text[: captions[0].start].rstrip(" (.")) is not None
        for caption in captions:
            between = text[end : caption.start] if after else text[caption.end : start]
            beyond = caption.start >= end if after else caption.end <= start
            if beyond and not between.strip(" :=.-"):
                return caption.role
        return None


def words(pattern: str) -> re.Pattern[str]:
    """``pattern`` as whole words."""
    return re.compile(rf"{BEFORE_WORD}(?:{pattern}){AFTER_WORD}")


def measures(label: Label, captions: Captions) -> list[Measure]:
    """The numbers and ranges still open on the label, left to right."""
    found: list[Measure] = []
    text = label.open
    plain = False  # whether units stand before their numbers without any mark
    first_number = re.search(r"\d", text)
    for match in _UNIT_FIRST.finditer(text):
        follows_number = re.search(r"[\d#]\s*$", text[: match.start()]) is not None
        leads = first_number is not None and match.start() < first_number.start()
        units_lead = leads or (bool(found) and (match["plain"] is None or plain))
        if not units_lead and (match["plain"] is not None or follows_number):
            continue
        plain = match["plain"] is not None
        unit = match["bracketed"] or match["colon"] or match["plain"]
        measured = f"{match['low']}-{match['high']}" if match["high"] else match["low"]
        found.append(_measure(captions, match, f"{measured} {unit}", unit))
    for measure in found:
        start, end = measure.span
        text = text[:start] + TAKEN * (end - start) + text[end:]
    for match in MEASURE.finditer(text):
        found.extend(_printed(captions, match))
    return sorted(found, key=lambda measure: measure.span)


def _printed(captions: Captions, match: re.Match[str]) -> list[Measure]:
    """A match of `MEASURE` as one measure, or as two if its ends are in different units."""
    low_unit, unit = match["low_unit"], match["unit"]
    if low_unit and unit and match["high"] and SYMBOLS[low_unit] != SYMBOLS[unit]:
        ends = (
            (match.start(), match.end("low_unit"), match["low"], low_unit),
            (match.start("high"), match.end(), match["high"], unit),
        )
        return [
            Measure(
                (start, end),
                f"{number} {spelt}",
                SYMBOLS[spelt],
                captions.role(start, end),
                "/" in number,
                False,
            )
            for start, end, number, spelt in ends
        ]
    text = match[0].replace("(", " ").replace(")", " ").strip()
    return [_measure(captions, match, text, unit or low_unit)]


def _measure(captions: Captions, match: re.Match[str], text: str, unit: str | None) -> Measure:
    return Measure(
        span=match.span(),
        text=text,
        symbol=SYMBOLS[unit] if unit else None,
        role=captions.role(*match.span()),
        is_fraction="/" in match["low"] + (match["high"] or ""),
        is_range=match["high"] is not None,
    )


def quantity(label: Label, span: tuple[int, int], text: str, *, dimension: Dimension) -> Quantity | None:
    """``text`` (with its unit) as a quantity; None after noting a doubt if it has no clear meaning."""
    if "+" in text:
        label.doubt(span, "gives only the lower end")
        return None
    try:
        return parse(text, dimension)
    except QuantityError as error:
        label.doubt(span, error.reason)
        return None


def offer_usual(
    label: Label,
    span: tuple[int, int],
    key: str,
    value: Quantity,
    *,
    limits: tuple[float, float],
    called: str,
    of: str,
) -> None:
    """Offer a value that lies within ``limits`` [SI]; beyond them it is asked about as no usual ``of``."""
    if limits[0] <= value.si_low and value.si_high <= limits[1]:
        label.offer(span, key, value, f"{called}: {show(value)}")
    else:
        label.doubt(span, f"{show(value)} is no usual {of}")


def without_lost_dashes(label: Label, found: list[Measure]) -> list[Measure]:
    """``found`` without numbers that stand side by side before one unit: ``8 14 lb`` is asked about."""
    kept = list(found)
    for one, other in pairwise(found):
        gap = label.text[one.span[1] : other.span[0]]
        alone = one.symbol is None and not one.is_range and not other.is_range and other.symbol is not None
        if alone and not gap.strip() and other.symbol in {"lb", "kg", "oz", "g"}:
            label.doubt(
                (one.span[0], other.span[1]), "two numbers before one unit; a range without its dash?"
            )
            kept = [measure for measure in kept if measure not in (one, other)]
    return kept
