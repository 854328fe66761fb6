"""The length of a rod: feet and inches however they are typed, metres, centimetres."""

import math
import re

from rigbuilder.model.labels.label import Label
from rigbuilder.model.labels.measure import DECIMAL, FRACTION, LONE, START, TO, offer_usual, quantity
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.numbers import NotANumber, read_number
from rigbuilder.units.spelling import unit_pattern

_FOOT = r"(?:'(?!')|ft\.?(?![a-z])|feet(?![a-z])|foot(?![a-z]))"
_INCH = r"(?:\"|''|(?:inches|inch|ins|in)(?![a-z])\.?)"
_COUNTED = r"(?:lbs?|kg|oz|g|#|pcs?|pieces?|pce|sec|teil|to|guides?|rings?|tips?|eyes?|ringe)"
_NEXT_MEASURE = rf"(?!\s*(?:[-/~.,]\s*\d|\d|{_COUNTED}(?![a-z])))"
_BETWEEN = rf"(?:{TO}|\s*/\s*)"
_FEET = re.compile(
    rf"{START}(?P<feet>[4-9](?: {{1,3}}|-)1/2|{DECIMAL})\s*-?\s*{_FOOT}"
    rf"(?:\s*-?\s*(?P<inches>\d{{1,2}}(?:[.,]\d+)?(?: {FRACTION})?)\s*{_INCH}"
    rf"|(?P<close>\d{{1,2}}){_NEXT_MEASURE}|\s+(?P<open>\d{{1,2}}){_NEXT_MEASURE})?"
)
_RANGE = re.compile(
    rf"{LONE}(?:[4-9](?:[.,]\d)?\s*{_FOOT}?{_BETWEEN}[4-9](?:[.,]\d)?\s*{_FOOT}(?!\s*\d)"
    rf"|[1-5][.,]\d{{1,2}}\s*m?{_BETWEEN}[1-5][.,]\d{{1,2}}\s*m(?![a-z])|[1-4]\d\d\s*(?:cm)?{_BETWEEN}[1-4]\d\d\s*cm(?![a-z]))"
)
_HYPHENATED = re.compile(rf"{LONE}(?P<feet>[4-9])-(?P<inches>1[01]|\d)\"?{_NEXT_MEASURE}")
_NO_FOOT_MARK = re.compile(rf"{LONE}(?P<feet>[4-9])(?:\"|''|\s)\s*(?P<inches>1[01]|\d)\s*{_INCH}")
_NO_MARKS = re.compile(rf"{LONE}(?P<feet>[5-9])(?P<inches>1[01]|0\d|\d)(?![a-z\d]){_NEXT_MEASURE}")
_INCHES = re.compile(rf"{LONE}(?P<inches>\d{{2,3}}(?:[.,]\d)?)\s*{_INCH}")
_METRIC = re.compile(
    LONE + r"(?:(?P<metres>[1-4])\s?m\s?(?P<rest>\d{2})(?![\d.,/-])"
    rf"|(?P<number>{DECIMAL})\s*(?P<unit>{unit_pattern('m', 'cm', 'mm')}))"
)
_BARE_METRES = re.compile(LONE + r"[1-4][.,]\d{1,2}(?![\d.,]|\s*(?:[-~/]\s*\d|lbs?|kg|oz|g(?![a-z])|#))")
_BARE_CENTIMETRES = re.compile(LONE + r"[1-4]\d\d(?![\d.,]|\s*(?:[-~/]\s*\d|lbs?|kg|oz|g(?![a-z])|#))")
# 7.3 ft and 7'3" differ by less than labels round; 7.10 ft and 7'10" do not.
_DECIMAL_OR_INCHES = re.compile(r"([4-9])[.,](1[01])")
# Shorter and longer rods exist only as toys and for pole fishing (m).
_SHORTEST_M, _LONGEST_M = 0.9, 5.0


def read_length(label: Label) -> None:
    """Offer the rod's length; a way of writing it that has two readings is a doubt."""
    for match in label.find(_RANGE):
        label.doubt(match.span(), "two lengths; of which rod, or at which of its lengths?")
    for match in label.find(_FEET):
        _read_feet(label, match)
    for match in label.find(_METRIC):
        text = f"{match['metres']}.{match['rest']} m" if match["metres"] else match[0]
        if match["metres"] or match["unit"] != "m" or _is_rod(match["number"]):
            _offer(label, match.span(), text)
    for match in label.find(_NO_FOOT_MARK):
        label.doubt(match.span(), f"the mark for feet is missing; {match['feet']}'{match['inches']}\"?")
    for match in label.find(_INCHES):
        _offer(label, match.span(), match[0])
    _guess(label)


def _guess(label: Label) -> None:
    if label.has("length"):
        return
    for match in label.find(_HYPHENATED):
        label.doubt(match.span(), f"could be the length {match['feet']}'{match['inches']}\", or a range")
    for match in label.find(_NO_MARKS):
        label.doubt(match.span(), f"a number without unit; {match['feet']}'{int(match['inches'])}\"?")
    for pattern, symbol in ((_BARE_METRES, "m"), (_BARE_CENTIMETRES, "cm")):
        for match in label.find(pattern):
            label.doubt(match.span(), f"a number without unit; the length in {symbol}?")


def _read_feet(label: Label, match: re.Match[str]) -> None:
    feet, inches = match["feet"], match["inches"] or match["close"] or match["open"]
    if ambiguous := _DECIMAL_OR_INCHES.fullmatch(feet):
        label.doubt(match.span(), f"could be {feet} ft or {ambiguous[1]}'{ambiguous[2]}\"")
        return
    _offer(label, match.span(), f"{feet} ft {inches} in" if inches else f"{feet} ft")


def _value(number: str) -> float:
    """The number, or NaN if it has no single meaning (then its quantity becomes a doubt)."""
    try:
        return float(read_number(number))
    except NotANumber:
        return math.nan


def _is_rod(number: str) -> bool:
    """Whether so many metres can be a rod; the letter m may stand for medium otherwise."""
    return not (_value(number) < _SHORTEST_M or _value(number) > _LONGEST_M)


def _offer(label: Label, span: tuple[int, int], text: str) -> None:
    value = quantity(label, span, text, dimension=Dimension.LENGTH)
    if value is not None:
        limits = (_SHORTEST_M, _LONGEST_M)
        offer_usual(label, span, "length", value, limits=limits, called="length", of="length for a rod")
