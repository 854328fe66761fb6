"""How labels spell units: every spelling leads to one canonical symbol."""

import re

SPELLINGS: dict[str, tuple[str, ...]] = {
    "lb": ("lb", "lbs", "lbf", "lb.", "lbs.", "ib", "ibs", "pound", "pounds", "#"),
    "kg": ("kg", "kgs", "kgf", "kg.", "kilo", "kilos", "kilogram", "kilograms", "kilogramm"),
    "oz": ("oz", "ozs", "oz.", "0z", "ounce", "ounces", "onzas", "onces", "unzen"),
    "g": (
        *("g", "gr", "gm", "g.", "gr.", "gm.", "gram", "grams", "gramme", "grammes"),
        *("gramm", "grammi", "gramos"),
    ),
    "N": ("n", "newton", "newtons"),
    "m": (
        *("m", "m.", "mtr", "mtrs", "mtr.", "mtrs.", "metre", "metres", "meter", "meters"),
        *("mètre", "mètres", "metri", "metros", "metriä"),
    ),
    "cm": ("cm", "cm.", "cms", "centimetre", "centimetres", "centimeter", "centimeters"),
    "mm": ("mm", "mm.", "millimetre", "millimetres", "millimeter", "millimeters"),
    "ft": ("'", "ft", "ft.", "feet", "foot"),
    "in": (
        *('"', "''", "in", "in.", "ins", "ins.", "inch", "inches"),
        *("zoll", "pouce", "pouces", "pulgadas", "tuumaa"),
    ),
    "yd": ("yd", "yds", "yd.", "yds.", "yrd", "yrds", "yard", "yards"),
    "C": ("c", "°c", "° c", "deg c", "degrees c", "celsius", "centigrade"),
    "F": ("f", "°f", "° f", "deg f", "degrees f", "fahrenheit"),
    "m/s": ("m/s", "m s-1"),
    "km/h": ("km/h", "kmh", "kph"),
    "mph": ("mph", "mi/h"),
    "PE": ("pe", "p.e."),
    "No.": ("no.", "no", "号", "號", "gou"),
}

SYMBOLS: dict[str, str] = {spelling: symbol for symbol, row in SPELLINGS.items() for spelling in row}


def _alternative(spelling: str) -> str:
    ends_in_letter = spelling[-1].isalpha() and spelling[-1].isascii()
    return re.escape(spelling) + (r"(?![^\W\d_])" if ends_in_letter else "")


def unit_pattern(*symbols: str) -> str:
    """A regular expression for any spelling (lower case) of these units, of all if none is named."""
    spellings = [s for s, symbol in SYMBOLS.items() if not symbols or symbol in symbols]
    return "(?:" + "|".join(_alternative(s) for s in sorted(spellings, key=len, reverse=True)) + ")"


UNIT = unit_pattern()
