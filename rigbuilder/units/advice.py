"""What is wrong with a text that should state a quantity, said so that a junior can mend it."""

import re
from difflib import get_close_matches

from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.numbers import NUMBER
from rigbuilder.units.spelling import SPELLINGS, SYMBOLS, UNIT
from rigbuilder.units.units import UNITS

_NUMBER = re.compile(NUMBER)
_QUANTITY = re.compile(rf"(?<![\w.,/-])(?P<number>{NUMBER})\s*(?P<unit>{UNIT})")
_UNIT_FIRST = re.compile(rf"\s*(?P<unit>[a-z]{{1,3}})\s*[:=]?\s*(?P<number>{NUMBER})\s*")
_WORD_AFTER = re.compile(rf"\s*{NUMBER}\s*(?P<word>[^\W\d_]{{1,15}})")
_HOOK = re.compile(r"\d{1,2}/0")
_DEGREES = re.compile(r"\d\s*(?:°|deg(?:rees?)?\b)")
_FEET_INCHES = re.compile(r"\s*([4-9])[ .,-](1[01]|\d)\s*")
_USUAL = {
    Dimension.MASS: ("oz", "g"),
    Dimension.FORCE: ("lb", "kg"),
    Dimension.TEMPERATURE: ("C", "F"),
    Dimension.SPEED: ("m/s", "mph"),
}


def not_a_quantity(text: str, dimension: Dimension) -> str:
    """The reason why ``text`` (plain, lower case) states no quantity of ``dimension``."""
    if not text.strip():
        return "is empty"
    if "%" in text:
        return "is a percentage"
    if dimension is Dimension.TEMPERATURE and _DEGREES.search(text):
        return "does not say which degrees, C or F"
    if re.match(r"\s*-\s*\d", text):
        return "is negative"
    unit_first = _UNIT_FIRST.fullmatch(text)
    if unit_first and unit_first["unit"] in SYMBOLS:
        return f"has its unit before the number; write {unit_first['number']} {unit_first['unit']}"
    if found := _QUANTITY.search(text):
        return f"has more in it than a number and its unit; write {found[0].strip()}"
    if word := _WORD_AFTER.match(text):
        return _unknown_unit(word["word"], dimension)
    return "is not a number with a unit"


def no_unit(text: str, dimension: Dimension) -> str:
    """The reason for a number without unit, with what it might be."""
    if "+" in text:
        return "gives only the lower end; write one value or a range"
    number = text.strip()
    if _HOOK.fullmatch(number):
        return "looks like the size of a hook"
    if dimension is Dimension.LENGTH:
        if feet := _FEET_INCHES.fullmatch(number):
            return f"has no unit ({feet[1]}'{feet[2]}\"?)"
        units = ("mm",) if re.fullmatch(r"0?[.,]\d+", number) else ("yd", "m") if len(number) > 2 else ()
    elif dimension is Dimension.SIZE:
        return f"has no sort of number (PE {number} or No. {number}?)"
    else:
        units = _USUAL[dimension]
    if not _NUMBER.match(number) or not units or len(number) > 12:
        return "has no unit"
    return f"has no unit ({' or '.join(f'{number} {unit}' for unit in units)}?)"


def _unknown_unit(word: str, dimension: Dimension) -> str:
    spelt = {s: symbol for symbol in UNITS[dimension] for s in SPELLINGS[symbol] if s.isalpha()}
    near = get_close_matches(word, spelt, n=1, cutoff=0.65 if len(word) < 3 else 0.75)
    return f"has the unit {word}, which is not known" + (f" ({spelt[near[0]]}?)" if near else "")
