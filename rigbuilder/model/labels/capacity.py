"""Line capacity on reel labels: lb/yd and mm/m rows, size numbers, every measure with its unit."""

import re
from dataclasses import dataclass

from rigbuilder.model.labels.label import Label, agree
from rigbuilder.model.labels.measure import BEFORE_WORD, DECIMAL, LONE, Captions, quantity
from rigbuilder.model.labels.understood import Capacity
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import Quantity, show
from rigbuilder.units.spelling import SYMBOLS, unit_pattern

_WHAT = unit_pattern("lb", "kg", "mm", "in", "No.", "PE")
_LONG = unit_pattern("yd", "m", "ft")
_START = LONE + r""
_JOIN = r"(?:\s*[/\-:x@*()=]+\s*|\s+[àa]\s+)"
_GROUP = rf"{DECIMAL}(?:(?:[/-]{DECIMAL}){{1,2}}|(?:\s+[/-]\s*|\s*[/-]\s+){DECIMAL})(?![\d:])"
_GROUPS = rf"(?P<groups>{_GROUP}(?:(?:[\s,;:|&\x00]+|\s+/\s+){_GROUP})*)"
_UNIT = unit_pattern("lb", "kg", "mm", "in", "No.", "PE", "yd", "m", "ft")
_HEADER = rf"(?P<header>{_UNIT}\s*[/-]\s*{_UNIT}(?:\s*[/-]\s*{_UNIT})?)(?:\s*test)?"
_HEADER_AFTER = re.compile(rf"{_START}{_GROUPS}[\s(\[,:]*{_HEADER}\s*[)\]]?")
_HEADER_BEFORE = re.compile(rf"{BEFORE_WORD}(?P<pe>pe\s*)?[(\[]?{_HEADER}[\s)\]:=\x00]*{_GROUPS}")
_ANY_HEADER = re.compile(rf"(?<![a-z]){_HEADER}")

_NO_SPOOL_SIZE = r"(?!\d{1,4}(?:[.,]0)?\s*(?:\"|''|in(?![a-z])|mm))"
_WORDS_OF_LINE = r"(?:[\s-]*(?:test|class|line|dia\.?|diameter|\x00++)(?![a-z]))*"
_FIRST = rf"{_NO_SPOOL_SIZE}(?P<what>{DECIMAL})\s*-?\s*(?P<unit>{_WHAT}){_WORDS_OF_LINE}"
_SECOND_UNIT = unit_pattern("mm", "in", "kg", "lb")
_MIDDLE = (
    r"(?:(?:\s*[(/\[=-]\s*|\s+(?=[\d.,]+\s*mm))"
    rf"(?P<second>{DECIMAL})\s*(?P<second_unit>{_SECOND_UNIT})\s*[)\]]?)?"
)
_LENGTH = rf"(?P<length>{DECIMAL})\s*-?\s*(?P<long>{_LONG})"
_MORE = rf"(?:\s*[(/=]\s*(?P<more>{DECIMAL}\s*{_LONG})\s*\)?)?"
_TIGHT = re.compile(rf"{_START}{_FIRST}{_MIDDLE}{_JOIN}{_LENGTH}{_MORE}")
_LOOSE = re.compile(rf"{_START}{_FIRST}{_MIDDLE}[\s,]*{_LENGTH}{_MORE}")
_TIGHT_BACK = re.compile(
    rf"{_START}{_LENGTH}(?:{_JOIN}|\s*(?:of|de|von|av|van|di|à)\s*){_FIRST}(?!\s*[/-]\s*{DECIMAL}\s*{_LONG})"
)
_LOOSE_BACK = re.compile(rf"{_START}{_LENGTH}[\s,]*{_FIRST}(?![/-]{DECIMAL}\s*{_LONG})")

_SIZED = re.compile(
    rf"{BEFORE_WORD}(?P<prefix>p\.?e\.?\s*(?:#|no\.?)?|#|no\.?)\s*[:=]?\s*"
    rf"(?P<pairs>{DECIMAL}\s*(?:号|號)?\s*[-/\s:=x(]\s*\d{{2,4}}\s*(?:{_LONG})?"
    rf"(?:[,;|/\s]+{DECIMAL}\s*[-/]\s*\d{{2,4}}\s*(?:{_LONG})?)*)(?![\d:]|[.,]\d|\s*(?:lbs?|kg|mm)(?![a-z]))"
)
_NUMBERED = re.compile(
    rf"{_START}(?P<size>{DECIMAL})\s*(?:号|號)\s*(?:pe)?\s*[-/\s:=x(]?\s*(?P<length>\d{{2,4}})\s*(?P<long>{_LONG})?"
)
_SIZED_PAIR = re.compile(
    rf"(?P<size>{DECIMAL})\s*(?:号|號)?\s*[-/\s:=x(]\s*(?P<length>\d{{2,4}})\s*(?P<long>{_LONG})?"
)
_METRIC = re.compile(
    rf"{_START}(?P<what>(?:0?[.,]\d{{2,3}}|1[.,]\d{{2}}))\s*(?P<unit>mm)?\s*[-/x:]\s*"
    rf"(?P<length>\d{{2,4}})\s*(?P<long>m(?![a-z]))?(?![\d:]|[.,]\d|\s?(?:yds?|yards?|lbs?))"
)
_HALF = re.compile(
    rf"{_START}(?P<what>(?:\d{{1,3}}|\d?[.,]\d{{1,3}}|\d[.,]\d)(?:[/-][.,]?\d+(?=[/-]))*)\s*(?P<unit>lbs?\.?|kg|#)?\s*[/-]\s*(?P<length>\d{{2,4}})\s*(?P<long>{_LONG})?"
    r"(?![\d:]|[.,]\d|\s?(?:lbs?|kg))"
)
_KEYS = {"lb": "test", "kg": "test", "mm": "diameter", "in": "diameter", "PE": "size", "No.": "size"}
_DIMENSIONS = {"test": Dimension.FORCE, "diameter": Dimension.LENGTH, "size": Dimension.SIZE}
# A spool takes no line thicker, and none shorter or longer, than this (m).
_THICKEST_M = 0.003
_SHORTEST_M, _LONGEST_M = 10.0, 3000.0


@dataclass(frozen=True, slots=True)
class _Row:
    """The texts of one capacity: each with its unit."""

    span: tuple[int, int]
    what: tuple[str, ...]
    length: tuple[str, ...]


def read_capacities(label: Label, captions: Captions) -> None:
    """Offer every line capacity on a reel label; pairs without units are asked about."""
    _read_headed(label, captions)
    for match in label.find(_SIZED):
        role = captions.role(*match.span())
        if match["prefix"] == "#" and role is None:
            label.doubt(match.span(), "a size number alone; No. of nylon, or PE of braid?")
            continue
        braid = match["prefix"].startswith("p") or role == "braid"
        symbol = "PE" if braid else "No."
        first = match.start("pairs")
        for pair in _SIZED_PAIR.finditer(match["pairs"]):
            start = match.start() if pair.start() == 0 else first + pair.start()
            _offer_sized(label, captions, (start, first + pair.end()), symbol, pair)
    for match in label.find(_NUMBERED):
        pe = "pe" in match[0] or captions.role(*match.span()) == "braid"
        _offer_sized(label, captions, match.span(), "PE" if pe else "No.", match)
    back = _length_comes_first(label)
    for pattern in (_TIGHT_BACK, _LOOSE_BACK, _TIGHT) if back else (_TIGHT, _LOOSE, _TIGHT_BACK):
        for match in label.find(pattern):
            _offer(label, captions, _row(match))
    for match in label.find(_METRIC):
        _offer(label, captions, _Row(match.span(), (f"{match['what']} mm",), (f"{match['length']} m",)))
    for match in label.find(_HALF):
        _doubt_half(label, match)


def _length_comes_first(label: Label) -> bool:
    """Whether the label states lengths before the lines that they are of."""
    length = re.search(rf"{DECIMAL}\s*(?:{_LONG})", label.open)
    what = re.search(rf"{DECIMAL}\s*(?:{_WHAT})", label.open)
    return bool(length and what and length.start() < what.start())


def _read_headed(label: Label, captions: Captions) -> None:
    header = _ANY_HEADER.search(label.open)
    if header is None:
        return
    after = _HEADER_AFTER.search(label.open)
    before = _HEADER_BEFORE.search(label.open)
    first = _HEADER_AFTER if after and (before is None or after.start() < before.start()) else _HEADER_BEFORE
    for pattern in (first, _HEADER_AFTER, _HEADER_BEFORE):
        for match in label.find(pattern):
            _offer_groups(label, captions, match)


def _offer_groups(label: Label, captions: Captions, match: re.Match[str]) -> None:
    units = [SYMBOLS[unit] for unit in re.findall(_UNIT, match["header"])]
    if match.groupdict().get("pe"):
        units = ["PE" if unit == "No." else unit for unit in units]
    if len({unit in _KEYS for unit in units}) == 1:
        return  # a pair such as lb/kg says how strong, not how long
    groups = list(re.finditer(_GROUP, match["groups"]))
    first = match.start("groups")
    for group in groups:
        numbers = re.findall(DECIMAL, group[0])
        span = (first + group.start(), first + group.end())
        if len(numbers) != len(units):
            label.doubt(span, f"{len(numbers)} numbers, but {len(units)} units")
            continue
        texts = [
            f"{unit} {number}" if unit in {"PE", "No."} else f"{number} {unit}"
            for number, unit in zip(numbers, units, strict=True)
        ]
        what = tuple(text for text, unit in zip(texts, units, strict=True) if unit in _KEYS)
        length = tuple(text for text, unit in zip(texts, units, strict=True) if unit not in _KEYS)
        _offer(label, captions, _Row(span, what, length))
    label.take(*match.span())


def _row(match: re.Match[str]) -> _Row:
    what = [f"{match['what']} {match['unit']}"]
    length = [f"{match['length']} {match['long']}"]
    if "second" in match.re.groupindex and match["second"]:
        what.append(f"{match['second']} {match['second_unit']}")
    if "more" in match.re.groupindex and match["more"]:
        length.append(match["more"])
    return _Row(match.span(), tuple(what), tuple(length))


def _offer_sized(
    label: Label, captions: Captions, span: tuple[int, int], symbol: str, match: re.Match[str]
) -> None:
    length = f"{match['length']} {match['long'] or 'm'}"
    _offer(label, captions, _Row(span, (f"{symbol} {match['size']}",), (length,)))


def _offer(label: Label, captions: Captions, row: _Row) -> None:
    given: dict[str, Quantity] = {}
    for text in (*row.what, *row.length):
        key = _key(text) if text in row.what else "length"
        value = quantity(label, row.span, text, dimension=_DIMENSIONS.get(key, Dimension.LENGTH))
        if value is None:
            return
        if not agree(key, given.setdefault(key, value), value):
            label.doubt(row.span, f"states two values that disagree: {show(given[key])} and {show(value)}")
            return
    why = _implausible(given)
    if why:
        label.doubt(row.span, why)
        return
    line = captions.inside(*row.span) or captions.role(*row.span)
    line = line if line in {"nylon", "fluorocarbon", "braid"} else None
    if "size" in given and given["size"].unit.symbol == "PE":
        line = "braid"
    said = ", ".join(show(given[key]) for key in ("size", "test", "diameter") if key in given)
    meaning = f"holds {show(given['length'])} of {said}" + (f" {line}" if line else "")
    label.offer_capacity(row.span, Capacity(**given, line=line), meaning)


def _key(text: str) -> str:
    """Which measure of a line ``text`` states: the unit says it."""
    if text.startswith(("PE", "No.")):
        return "size"
    return next(_KEYS[SYMBOLS[unit]] for unit in [text.split()[-1]])


def _implausible(given: dict[str, Quantity]) -> str | None:
    if "diameter" in given and given["diameter"].si_high > _THICKEST_M:
        return f"{show(given['diameter'])} is no diameter of a line"
    if not _SHORTEST_M <= given["length"].si_low <= _LONGEST_M:
        return f"{show(given['length'])} is no usual length of line on a reel"
    return None


def _doubt_half(label: Label, match: re.Match[str]) -> None:
    unit, long = match["unit"], match["long"]
    if unit and not long:
        label.doubt(match.span(), "looks like a line capacity; the length has no unit, yards or metres?")
    elif long and not unit:
        label.doubt(match.span(), "looks like a line capacity; the line has no unit, lb, No. or PE?")
    else:
        label.doubt(match.span(), "looks like a line capacity without units; lb and yards?")
