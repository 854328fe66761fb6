"""A quantity as printed on a label, and the way from text to it and back."""

import math
import re
from dataclasses import dataclass
from fractions import Fraction

from rigbuilder.units.advice import no_unit, not_a_quantity
from rigbuilder.units.dimensions import EXAMPLES, MEASURES, Dimension
from rigbuilder.units.normal import normalise
from rigbuilder.units.numbers import NUMBER, NotANumber, read_number, write_decimal, write_fraction
from rigbuilder.units.spelling import SYMBOLS, UNIT
from rigbuilder.units.units import UNITS, Unit

MAX_TEXT = 120
_MAX_FOUND = 60
_LONG = frozenset({"m", "yd", "ft"})
_PREFIXES = frozenset({"PE", "No."})
# Beyond these no tackle, fish or water is meant; SI units.
_ABSURD = {
    Dimension.LENGTH: (0.0, 1e5),
    Dimension.MASS: (0.0, 1e4),
    Dimension.FORCE: (0.0, 1e5),
    Dimension.TEMPERATURE: (-100.0, 200.0),
    Dimension.SPEED: (0.0, 150.0),
    Dimension.SIZE: (0.0, 1000.0),
}


class QuantityError(ValueError):
    """Text that does not state the quantity asked for; ``str()`` is one plain sentence."""

    def __init__(self, *, found: str, expected: str, reason: str) -> None:
        self.found = found if len(found) <= _MAX_FOUND else found[: _MAX_FOUND - 1] + "…"
        self.expected = expected
        self.reason = reason
        super().__init__(f"“{self.found}” {reason}; {expected} is expected.")


@dataclass(frozen=True, slots=True)
class Quantity:
    """One value (``low == high``) or a range, in the unit printed."""

    low: float
    high: float
    unit: Unit

    def __post_init__(self) -> None:
        if not (math.isfinite(self.low) and math.isfinite(self.high)):
            raise ValueError("a quantity needs finite numbers")
        if self.low > self.high:
            raise ValueError(f"the range {self.low}-{self.high} {self.unit.symbol} runs backwards")

    @property
    def is_range(self) -> bool:
        """Whether two different ends are given."""
        return self.low != self.high

    @property
    def si_low(self) -> float:
        """The lower end in SI."""
        return self.unit.to_si(self.low)

    @property
    def si_high(self) -> float:
        """The upper end in SI."""
        return self.unit.to_si(self.high)

    @property
    def si(self) -> float:
        """The SI value of a single value; ValueError on a range."""
        if self.is_range:
            raise ValueError(f"{show(self)} is a range, not one value")
        return self.si_low

    @property
    def middle_si(self) -> float:
        """The middle of the range in SI (the value itself if it is one)."""
        return (self.si_low + self.si_high) / 2


_TOKEN = re.compile(
    rf"\s*(?:(?P<unit_first>pe|p\.e\.|no\.?|#)(?=\s*\.?\d)|(?P<number>{NUMBER})|(?P<to>-|~|(?:to|bis|thru|through|tot)\b|à(?!\w)|\.\.\.?|…)"
    rf"|(?P<unit>{UNIT})|(?P<more>[(/=)])|(?P<plus>\+)|(?P<other>\S))"
)
_LABEL_WORDS = re.compile(r"^\s*(?:cw|c\.w\.|wg|w\.g\.)\s*:?\s*(?=[\d.])|\s*-?\s*(?:test|class)\s*$")
_Token = tuple[str, str]


class _Reader:
    """Reads one quantity from tokens, left to right."""

    def __init__(self, text: str, dimension: Dimension, assume: str | None) -> None:
        self._source = text
        self._dimension = dimension
        self._assume = assume
        self._plain = _LABEL_WORDS.sub("", normalise(text).text.lower())
        found = list(_TOKEN.finditer(self._plain))
        self._tokens: list[_Token] = [(str(match.lastgroup), match[str(match.lastgroup)]) for match in found]
        self._starts = [match.start() for match in found]
        self._at = 0

    def fail(self, reason: str) -> QuantityError:
        return QuantityError(found=self._source, expected=EXAMPLES[self._dimension], reason=reason)

    def _peek(self, ahead: int = 0) -> _Token:
        at = self._at + ahead
        return self._tokens[at] if at < len(self._tokens) else ("end", "")

    def _take(self, *kinds: str) -> str | None:
        kind, text = self._peek()
        if kind not in kinds:
            return None
        self._at += 1
        return text

    def read(self) -> Quantity:
        quantity = self._range()
        if self._take("more"):
            other = self._range()
            self._take("more")
            self._agree(quantity, other)
        if self._peek()[0] != "end":
            rest = self._plain[self._starts[self._at] :].strip()
            raise self.fail(f"has something after the quantity that is not understood ({rest[:20]})")
        return quantity

    def _agree(self, one: Quantity, other: Quantity) -> None:
        for a, b in ((one.si_low, other.si_low), (one.si_high, other.si_high)):
            if abs(a - b) > 0.15 * max(abs(a), abs(b)):
                raise self.fail(f"states two values that disagree ({show(one)} and {show(other)})")

    def _range(self) -> Quantity:
        low, low_symbol = self._side()
        high, high_symbol = low, low_symbol
        if self._take("to") is not None:
            high, high_symbol = self._side()
        if low_symbol and high_symbol and low_symbol != high_symbol:
            raise self.fail(f"mixes {low_symbol} and {high_symbol} in one range")
        printed = self._unit(low_symbol or high_symbol)
        low_value, high_value = (float(self._exact(n, printed.symbol)) for n in (low, high))
        if low_value > high_value:
            way = f"from {low} down to {high}{self._hint(low, high)}"
            raise self.fail(f"is a range that runs backwards, {way}")
        self._check_size(printed, low_value, high_value)
        return Quantity(low_value, high_value, printed)

    def _hint(self, low: str | Fraction, high: str | Fraction) -> str:
        if self._dimension is Dimension.LENGTH and f"{high}".isdigit() and int(high) < 12:
            return f"; write {low}'{high}\" if feet and inches are meant"
        return f"; write {low} {high} if one number is meant" if "/" in f"{high}" else ""

    def _check_size(self, printed: Unit, low: float, high: float) -> None:
        least, most = _ABSURD[self._dimension]
        if printed.to_si(low) < least or printed.to_si(high) > most:
            raise self.fail("is beyond anything that this can be")

    def _unit(self, symbol: str | None) -> Unit:
        units = UNITS[self._dimension]
        symbol = symbol or self._assume
        if symbol is None:
            advise = not_a_quantity if self._peek()[0] == "other" else no_unit
            raise self.fail(advise(self._plain, self._dimension))
        if symbol in units:
            return units[symbol]
        other = next(d for d in Dimension if symbol in UNITS[d])
        raise self.fail(f"is {MEASURES[other]}")

    def _exact(self, number: str | Fraction, symbol: str) -> Fraction:
        if isinstance(number, Fraction):
            return number
        try:
            return read_number(number, long_measure=symbol in _LONG)
        except NotANumber as error:
            raise self.fail(f"is not clear: {error}") from None

    def _side(self) -> tuple[str | Fraction, str | None]:
        first = self._take("unit_first")
        negative = self._dimension is Dimension.TEMPERATURE and self._take("to") == "-"
        number = self._take("number")
        if number is None:
            raise self.fail(not_a_quantity(self._plain, self._dimension))
        if self._peek()[0] == "to" and self._peek(1)[0] == "unit":
            self._take("to")
        printed = self._take("unit", "unit_first")
        symbol = SYMBOLS[printed] if printed else None
        if first is not None:
            return number, "No." if first == "#" else SYMBOLS[first]
        if symbol in {"ft", "lb"}:
            return self._compound(number, str(symbol))
        return (-self._exact(number, "C") if negative else number), symbol

    def _compound(self, number: str, symbol: str) -> tuple[str | Fraction, str]:
        """Feet and inches, or pounds and ounces, after their first number and unit."""
        small, ratio = ("in", 12) if symbol == "ft" else ("oz", 16)
        dash = 1 if self._peek()[1] == "-" else 0
        if self._peek(dash)[0] != "number":
            return number, symbol
        kind, text = self._peek(dash + 1)
        marked = kind == "unit" and SYMBOLS[text] == small
        if not marked and (dash or (kind != "end" and kind != "to") or symbol == "lb"):
            return number, symbol
        part = self._exact(self._peek(dash)[1], small)
        if part >= ratio:
            raise self.fail(f"has {float(part):g} {small}, but {ratio} {small} make one {symbol}")
        self._at += dash + (2 if marked else 1)
        return self._exact(number, symbol) + part / ratio, symbol


def parse(text: str, dimension: Dimension, *, assume: str | None = None) -> Quantity:
    """The quantity that ``text`` states, in the unit printed there.

    ``assume`` is the symbol of the unit meant when none is printed. Point and
    comma are both decimal marks. Raises `QuantityError`.
    """
    if len(text) > MAX_TEXT:
        raise QuantityError(found=text, expected=EXAMPLES[dimension], reason="is too long")
    return _Reader(text, dimension, assume).read()


def show(quantity: Quantity) -> str:
    """The canonical text of ``quantity``: ``parse(show(q), q.unit.dimension) == q``."""
    symbol = quantity.unit.symbol
    if symbol == "ft":
        feet = [_feet_inches(value) for value in (quantity.low, quantity.high)]
        if any(value % 1 for value in (quantity.low, quantity.high)) and None not in feet:
            return "-".join(str(text) for text in (feet if quantity.is_range else feet[:1]))
    low, high = (_number(value, symbol) for value in (quantity.low, quantity.high))
    joint = " to " if quantity.low < 0 or ("/" in low + high and " " in high) else "-"
    numbers = f"{low}{joint}{high}" if quantity.is_range else low
    return f"{symbol} {numbers}" if symbol in _PREFIXES else f"{numbers} {symbol}"


def _number(value: float, symbol: str) -> str:
    finest = {"oz": 64, "in": 16}.get(symbol)
    if finest and value > 0 and value * finest == int(value * finest) and value < 1000:
        return write_fraction(Fraction(value))
    return write_decimal(value)


def _feet_inches(value: float) -> str | None:
    inches = Fraction(round(value * 12 * 16), 16)
    if value < 0 or value > 1000 or float(inches / 12) != value:
        return None
    feet, rest = divmod(inches, 12)
    return f"{feet}'{write_fraction(rest)}\"" if rest else f"{feet}'"
