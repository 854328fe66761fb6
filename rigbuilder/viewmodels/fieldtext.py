"""What a person types into a field and what of it goes on the card: a bare number gets its unit."""

from rigbuilder.model.fields import BY_PATH, Field, Holds
from rigbuilder.model.values import FieldError, read_value
from rigbuilder.reference.load import Reference
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import QuantityError, parse
from rigbuilder.units.systems import UnitSystem

NONE_WORD = "none"
MAY_BE_NONE = frozenset(
    {"lure.trailer", "lure.sinker", "lure.hook", "hardware.swivel", "hardware.snap", "water.current"}
)
_MEASURED = (Holds.QUANTITY, Holds.SPAN, Holds.TEST)


def offered_unit(path: str, system: UnitSystem) -> str:
    """Return the symbol in which a bare number in a field is taken, empty where none is needed."""
    field = BY_PATH.get(path)
    if field is None or field.holds not in _MEASURED:
        return ":1" if field is not None and field.holds is Holds.RATIO else ""
    return field.units[0 if system is UnitSystem.IMPERIAL else 1]


def card_text(path: str, typed: str, system: UnitSystem) -> str | None:
    """Return the text for the card: as typed, a bare number with the offered unit; ``None`` for "none".

    An empty text stands for "nothing said".
    """
    text = typed.strip()
    if path in MAY_BE_NONE and text.casefold() == NONE_WORD:
        return None
    field = BY_PATH.get(path)
    unit = offered_unit(path, system)
    if field is None or not unit or not text:
        return text
    if field.holds is Holds.RATIO:
        return f"{text}:1" if _is_number(text) else text
    return f"{text} {unit}" if _lacks_unit(field, text, unit) else text


def is_bare(path: str, typed: str, system: UnitSystem) -> bool:
    """Tell whether the offered unit belongs beside what stands in the field."""
    return card_text(path, typed, system) in ("", None) or card_text(path, typed, system) != typed.strip()


def reads(path: str, text: str | None, reference: Reference) -> bool:
    """Tell whether a text makes sense in its field, so that it can go on the card at once."""
    field = BY_PATH.get(path)
    if field is None or text is None:
        return True
    if not text:
        return not field.required
    try:
        read_value(field, text, reference)
    except FieldError:
        return False
    return True


def _lacks_unit(field: Field, text: str, unit: str) -> bool:
    dimensions = [Dimension.SIZE] if field.holds is Holds.TEST else []
    dimension = field.dimension or Dimension.LENGTH
    for known in (*dimensions, dimension):
        try:
            parse(text, known)
        except QuantityError:
            continue
        return False
    try:
        parse(text, dimension, assume=unit)
    except QuantityError:
        return False
    return True


def _is_number(text: str) -> bool:
    return text.replace(",", ".", 1).replace(".", "", 1).isdecimal()
