"""Numbers as labels print them: fractions, mixed numbers, point or comma as decimal mark."""

import re
from decimal import Decimal
from fractions import Fraction

DECIMAL = r"(?:\d+(?:[.,]\d+)*|[.,]\d+)"
FRACTION = r"\d{1,4} ?/ ?\d{1,4}"
MIXED = rf"\d{{1,4}}(?: |-| & | and |-and-){FRACTION}"
NUMBER = rf"(?:{MIXED}|{FRACTION}(?![\d.,]\d)|{DECIMAL})"

_MIXED = re.compile(rf"(\d+)[^\d]+({FRACTION})")
_FRACTION = re.compile(r"(\d+) ?/ ?(\d+)")
_MAX_DIGITS = 25


class NotANumber(ValueError):  # noqa: N818 - named for what was found
    """Text that looks like a number but has no single meaning; str() says why."""


def read_number(text: str, *, long_measure: bool = False) -> Fraction:
    """The exact value of a number written as on a label.

    ``long_measure`` says that the number counts metres, yards or feet, where
    ``1.200`` may mean twelve hundred. Raises `NotANumber`.
    """
    text = text.strip()
    mixed = _MIXED.fullmatch(text)
    if mixed:
        part = _fraction(mixed[2])
        if part >= 1:
            raise NotANumber(f"{text} is no whole number with a fraction below one")
        return int(mixed[1]) + part
    if _FRACTION.fullmatch(text):
        return _fraction(text)
    return _decimal(text, long_measure=long_measure)


def _fraction(text: str) -> Fraction:
    parts = _FRACTION.fullmatch(text)
    if parts is None or int(parts[2]) == 0:
        raise NotANumber(f"{text} divides by nothing")
    return Fraction(int(parts[1]), int(parts[2]))


def _decimal(text: str, *, long_measure: bool) -> Fraction:
    if len(text) > _MAX_DIGITS:
        raise NotANumber("the number has too many digits")
    whole, *rest = re.split(r"[.,]", text)
    if len(rest) > 1:
        raise NotANumber(f"{text} has two separators; write it without marks between thousands")
    if rest and _may_be_thousands(whole, rest[0], comma="," in text, long_measure=long_measure):
        joined, decimal = whole + rest[0], f"{whole}.{rest[0].rstrip('0') or '0'}"
        raise NotANumber(f"{text} could mean {joined} or {decimal}; write one of these")
    return Fraction(f"{whole or '0'}.{rest[0]}" if rest else whole)


def _may_be_thousands(whole: str, decimals: str, *, comma: bool, long_measure: bool) -> bool:
    if len(decimals) != 3 or not 1 <= len(whole) <= 3 or whole.startswith("0"):
        return False
    return comma or (long_measure and decimals.endswith("0"))


def write_decimal(value: float) -> str:
    """The shortest decimal text, without exponent, that reads back as ``value``."""
    return f"{Decimal(repr(float(value))):f}".removesuffix(".0")


def write_fraction(value: Fraction) -> str:
    """A positive fraction as ``3/8`` or ``1 1/4``."""
    whole, part = divmod(value, 1)
    if not part:
        return str(whole)
    return f"{whole} {part}" if whole else str(part)
