"""Own pull tests: one line, one knot or none, and what the scale read when it broke."""

import re
from collections.abc import Mapping
from datetime import date
from typing import Any

from rigbuilder.model.base import Frozen, Positive
from rigbuilder.model.problems import nearest, quoted
from rigbuilder.reference.load import Reference, UnknownName
from rigbuilder.reference.words import LineType
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import QuantityError, parse

MOST_READINGS = 200
LARGEST_N = 2500.0  # no fishing line bears more [N]; catches a slip of the unit


class SeriesError(ValueError):
    """What is wrong with an entry: its field, what was found, what is expected, as one sentence."""

    def __init__(self, field: str, found: object, expected: str, hint: str = "") -> None:
        self.field, self.found, self.expected = field, quoted(found), expected
        more = f" {hint[0].upper()}{hint[1:].rstrip('.')}." if hint else ""
        super().__init__(f"{field}: found {self.found}; expected {expected}.{more}")


class PullSeries(Frozen):
    """Pulls of one line with one knot; ``knot`` is ``None`` for straight pulls. Texts are as typed."""

    type: LineType
    test: str
    test_n: Positive
    knot: str | None
    readings: tuple[str, ...]
    readings_n: tuple[Positive, ...]
    wet: bool = False
    on: date | None = None
    note: str = ""

    def as_entry(self) -> dict[str, Any]:
        """Return the series as plain data, the way it is kept."""
        entry: dict[str, Any] = {"type": str(self.type), "test": self.test, "knot": self.knot}
        entry |= {"wet": self.wet, "readings": list(self.readings)}
        if self.on is not None:
            entry["on"] = self.on.isoformat()
        if self.note:
            entry["note"] = self.note
        return entry


def read_series(entry: Any, reference: Reference, *, assume: str | None = None) -> PullSeries:
    """Return a series from plain data; ``assume`` is the unit of a reading that has none.

    Raises:
        SeriesError: naming the field, what was found and what is expected.
    """
    if not isinstance(entry, Mapping):
        raise SeriesError("entry", entry, "a group of fields in braces")
    readings = split_readings(entry.get("readings"), assume=assume)
    test = entry.get("test")
    wet, note = entry.get("wet", False), entry.get("note", "")
    if not isinstance(wet, bool):
        raise SeriesError("wet", wet, "true or false")
    return PullSeries(
        type=_type(entry.get("type")),
        test=str(test),
        test_n=_force("test", test, assume),
        knot=_knot(entry.get("knot"), reference),
        readings=readings,
        readings_n=tuple(_force("readings", text, None) for text in readings),
        wet=wet,
        on=_day(entry.get("on")),
        note=note if isinstance(note, str) else "",
    )


def split_readings(found: Any, *, assume: str | None = None) -> tuple[str, ...]:
    """Return readings one by one, each with its unit, from a list or a text such as ``8.2, 7.9, 8.4 lb``.

    Raises:
        SeriesError: if there is none, or too many.
    """
    if isinstance(found, str):
        found = _from_text(found, assume)
    if not isinstance(found, list | tuple) or not found or not all(isinstance(one, str) for one in found):
        raise SeriesError("readings", found, "readings from a scale, such as 8.2, 7.9, 8.4 lb")
    if len(found) > MOST_READINGS:
        raise SeriesError("readings", f"{len(found)} readings", f"at most {MOST_READINGS}")
    return tuple(one.strip() for one in found)


_UNIT_AT_END = re.compile(r"(lb|kg|N)\s*$", re.IGNORECASE)


def _from_text(text: str, assume: str | None) -> list[str]:
    parts = [part for part in re.split(r"[;\n]+|,\s+|(?<=[\d])\s+(?=[\d])", text.strip()) if part.strip()]
    last = _UNIT_AT_END.search(text)
    unit = last[1] if last else assume
    return [part if _UNIT_AT_END.search(part) or not unit else f"{part.strip()} {unit}" for part in parts]


def _force(field: str, text: Any, assume: str | None) -> float:
    wanted = "a pull such as 8.2 lb, 3.7 kg or 36 N"
    if not isinstance(text, str) or not text.strip():
        raise SeriesError(field, text, wanted)
    try:
        quantity = parse(text, Dimension.FORCE, assume=assume)
    except QuantityError as error:
        raise SeriesError(field, text, wanted, f"That {error.reason}") from None
    if quantity.is_range or not 0.0 < quantity.si_high <= LARGEST_N:
        raise SeriesError(field, text, wanted, "One value for a fishing line; check the unit.")
    return quantity.si


def _type(found: Any) -> LineType:
    words = [str(kind) for kind in LineType]
    if found not in words:
        hint = nearest(found, words) if isinstance(found, str) else ""
        raise SeriesError("type", found, "one of " + ", ".join(words), hint)
    return LineType(found)


def _knot(found: Any, reference: Reference) -> str | None:
    if found is None or found == "":
        return None
    try:
        return reference.knot(str(found)).name
    except UnknownName as unknown:
        hint = f"Did you mean {' or '.join(unknown.nearest)}?" if unknown.nearest else ""
        raise SeriesError("knot", found, "the name of a knot, or none for straight line", hint) from None


def _day(found: Any) -> date | None:
    if found is None or found == "":
        return None
    try:
        return date.fromisoformat(found)
    except (TypeError, ValueError):
        raise SeriesError("on", found, "a date such as 2026-05-02") from None
