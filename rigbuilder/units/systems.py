"""SI values as people read them, in either of the two families of units."""

import math
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.numbers import write_fraction
from rigbuilder.units.units import unit


class UnitSystem(StrEnum):
    """The families that the switch in the window offers."""

    IMPERIAL = "lb·in"
    METRIC = "kg·mm"


@dataclass(frozen=True, slots=True)
class _Style:
    """Unit and rounding: significant figures, at most ``decimals`` behind the point."""

    symbol: str
    figures: int = 2
    decimals: int = 2
    fraction: int = 0
    feet_inches: bool = False
    one_si: float = 0.0  # how much of the SI unit one of it is, for a unit that no label is read in


# The pull of one gram's weight: standard gravity, 9.80665 m/s2 (CGPM 1901), times 0.001 kg.
_GRAM_PULL = _Style("g", decimals=1, one_si=9.80665e-3)

_IMPERIAL: dict[tuple[Dimension, str], _Style] = {
    (Dimension.FORCE, ""): _Style("lb"),
    (Dimension.FORCE, "drag"): _Style("lb"),
    (Dimension.FORCE, "test"): _Style("lb", figures=3, decimals=1),
    (Dimension.FORCE, "nose"): _GRAM_PULL,
    (Dimension.MASS, ""): _Style("oz", figures=3, decimals=2),
    (Dimension.MASS, "lure"): _Style("oz", figures=3, decimals=2, fraction=16),
    (Dimension.MASS, "fish"): _Style("lb"),
    (Dimension.LENGTH, ""): _Style("ft", figures=3, decimals=1),
    (Dimension.LENGTH, "cast"): _Style("yd"),  # as reels and lines are counted
    (Dimension.LENGTH, "depth"): _Style("ft"),
    (Dimension.LENGTH, "diameter"): _Style("in", decimals=4),
    (Dimension.LENGTH, "gap"): _Style("in"),
    (Dimension.LENGTH, "line"): _Style("yd", figures=3, decimals=0),
    (Dimension.LENGTH, "leader"): _Style("in", figures=3, decimals=0),
    (Dimension.LENGTH, "retrieve"): _Style("in", figures=3, decimals=1),
    (Dimension.LENGTH, "lure"): _Style("in", figures=3, decimals=1, fraction=4),
    (Dimension.LENGTH, "rod"): _Style("ft", feet_inches=True),
    (Dimension.TEMPERATURE, ""): _Style("F", figures=4, decimals=0),
    (Dimension.SPEED, ""): _Style("mph", figures=2),
}
_METRIC: dict[tuple[Dimension, str], _Style] = {
    (Dimension.FORCE, ""): _Style("kg"),
    (Dimension.FORCE, "test"): _Style("kg"),
    (Dimension.FORCE, "drag"): _Style("kg"),
    (Dimension.FORCE, "nose"): _GRAM_PULL,
    (Dimension.MASS, ""): _Style("g", figures=3, decimals=1),
    (Dimension.MASS, "lure"): _Style("g", figures=3, decimals=1),
    (Dimension.MASS, "fish"): _Style("kg"),
    (Dimension.LENGTH, ""): _Style("m", figures=3, decimals=2),
    (Dimension.LENGTH, "cast"): _Style("m"),
    (Dimension.LENGTH, "depth"): _Style("m"),
    (Dimension.LENGTH, "diameter"): _Style("mm", figures=3, decimals=3),
    (Dimension.LENGTH, "gap"): _Style("mm", decimals=1),
    (Dimension.LENGTH, "line"): _Style("m", figures=3, decimals=0),
    (Dimension.LENGTH, "leader"): _Style("cm", figures=3, decimals=0),
    (Dimension.LENGTH, "retrieve"): _Style("cm", figures=3, decimals=0),
    (Dimension.LENGTH, "lure"): _Style("mm", figures=3, decimals=0),
    (Dimension.LENGTH, "rod"): _Style("m", figures=3, decimals=2),
    (Dimension.TEMPERATURE, ""): _Style("C", figures=4, decimals=1),
    (Dimension.SPEED, ""): _Style("m/s", figures=2),
}
_STYLES = {UnitSystem.IMPERIAL: _IMPERIAL, UnitSystem.METRIC: _METRIC}


def show_si(value: float, dimension: Dimension, system: UnitSystem, *, kind: str = "") -> str:
    """``value`` (SI) rounded as a person would say it, with its unit: 53.4 N is ``12 lb``.

    ``kind`` refines unit and rounding: ``test drag nose`` (force), ``lure fish``
    (mass), ``cast depth diameter gap line leader retrieve lure rod`` (length); an
    unknown kind uses the dimension's ordinary style. Size numbers are plain.
    """
    number, symbol = in_system(value, dimension, system, kind=kind)
    style = _style(dimension, system, kind)
    if style is None:
        return _plain(number, figures=3, decimals=2)
    if style.feet_inches:
        return _feet_and_inches(number)
    if style.fraction and (fraction := _near_fraction(number, style.fraction)):
        return f"{fraction} {symbol}"
    return f"{_plain(number, figures=style.figures, decimals=style.decimals)} {symbol}"


def in_system(value: float, dimension: Dimension, system: UnitSystem, *, kind: str = "") -> tuple[float, str]:
    """``value`` (SI) unrounded in the unit that `show_si` would use, and that unit's symbol."""
    style = _style(dimension, system, kind)
    if style is None:
        return value, ""
    if style.one_si:
        return value / style.one_si, style.symbol
    return unit(style.symbol, dimension).from_si(value), style.symbol


def _style(dimension: Dimension, system: UnitSystem, kind: str) -> _Style | None:
    styles = _STYLES[system]
    return styles.get((dimension, kind)) or styles.get((dimension, ""))


def _plain(number: float, *, figures: int, decimals: int) -> str:
    """``number`` with so many figures, at most so many of them decimals; whole digits stay."""
    if abs(number) < 0.5 * 10.0**-decimals:
        return "0"
    places = max(0, min(decimals, figures - 1 - math.floor(math.log10(abs(number)))))
    text = f"{number:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _near_fraction(number: float, finest: int) -> str | None:
    """The sixteenth, eighth … within 2 % of ``number``, or None; finer below an eighth: 1/32, 1/64."""
    if number * finest < 2:
        finest *= 4
    nearest = Fraction(round(number * finest), finest)
    if nearest <= 0 or abs(float(nearest) - number) > 0.02 * number:
        return None
    return write_fraction(nearest)


def _feet_and_inches(feet: float) -> str:
    whole, inches = divmod(round(feet * 12), 12)
    return f"{whole}'{inches}\"" if inches else f"{whole}'"
