"""What a card keeps beside the rig: tags, prices of line, the log."""

import json
import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from rigbuilder.model.document import get
from rigbuilder.reference.words import LogEvent
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import QuantityError, parse, show
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.fieldstate import words
from rigbuilder.viewmodels.library_deeds import tags_in

PRICED = (("main", "main line"), ("leader", "leader"), ("backing", "backing"))
EVENTS = tuple(str(event) for event in LogEvent)
PRICE_EXAMPLE = "24 EUR for 200 yd"

# An amount with an optional currency on either side, then the length that it buys.
_PRICE = re.compile(
    r"\s*(?P<before>[^\d\s.,]*)\s*(?P<amount>\d+(?:[.,]\d+)?)\s*(?P<after>[^\d\s/.,]*)"
    r"\s*(?:for|per|/)\s*(?P<length>.+?)\s*"
)


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry of the log in words, and what is wrong with it."""

    text: str
    problem: str = ""


def tags_text(bench: Bench) -> str:
    """Return the tags of the card, separated by commas."""
    found = get(bench.document, "tags")
    if isinstance(found, list):
        return ", ".join(map(str, found))
    return "" if found is None else str(found)


def write_tags(bench: Bench, text: str) -> None:
    """Put tags on the card; none at all is said by nothing."""
    tags = list(tags_in(text))
    if tags:
        bench.edit("tags", tags)
    else:
        bench.clear("tags")


def price_text(bench: Bench, group: str) -> str:
    """Return the price of a line as a person writes it, empty if the card names none."""
    found = get(bench.document, f"{group}.price")
    if isinstance(found, dict) and isinstance(found.get("amount"), int | float) and found.get("length"):
        return " ".join(f"{found['amount']:g} {found.get('currency') or ''} for {found['length']}".split())
    if found is None or isinstance(found, str):
        return found or ""
    return json.dumps(found, ensure_ascii=False)


def write_price(bench: Bench, group: str, text: str) -> None:
    """Put the price of a line on the card; what cannot be read stays as it was typed."""
    if not text.strip():
        bench.clear(f"{group}.price")
    elif price_text(bench, group) != text.strip():
        bench.edit(f"{group}.price", read_price(text) or text.strip())


def read_price(text: str) -> dict[str, Any] | None:
    """Return what a price means, ``None`` if it cannot be read."""
    match = _PRICE.fullmatch(text)
    if match is None:
        return None
    try:
        length = parse(match["length"], Dimension.LENGTH)
    except QuantityError:
        return None
    amount = float(match["amount"].replace(",", "."))
    return {"amount": amount, "currency": match["before"] or match["after"], "length": show(length)}


def trouble(bench: Bench, path: str) -> str:
    """Return what is wrong with the part of the card at a path, as the form says it."""
    for problem in bench.reading.problems:
        if problem.field == path or problem.field.startswith(f"{path}."):
            if path.endswith(".price"):
                return f"This is not a price. Write the amount and what it buys, such as {PRICE_EXAMPLE}."
            return words(problem)
    return ""


def log_entries(bench: Bench) -> tuple[Entry, ...]:
    """Return the log in words, in the order of the card."""
    found = get(bench.document, "log")
    rows = found if isinstance(found, list) else [] if found is None else [found]
    return tuple(Entry(_entry_text(row), trouble(bench, f"log.{place}")) for place, row in enumerate(rows))


def add_entry(bench: Bench, on: str, what: str, note: str = "") -> str:
    """Note something in the log; return what is wrong with the day, empty if it was noted."""
    try:
        day = date.fromisoformat(on.strip())
    except ValueError:
        return f"“{on}” is not a day. Write it as 2026-05-02: year, month, day."
    entry = {"on": day.isoformat(), "what": what} | ({"note": note.strip()} if note.strip() else {})
    bench.apply({"log": [*_rows(bench), entry]}, f"note “{what}”")
    return ""


def remove_entry(bench: Bench, place: int) -> None:
    """Take one entry out of the log."""
    rows: Sequence[Any] = [row for index, row in enumerate(_rows(bench)) if index != place]
    bench.apply({"log": list(rows)}, "take a note out of the log")


def _rows(bench: Bench) -> list[Any]:
    found = get(bench.document, "log")
    return list(found) if isinstance(found, list) else []


def _entry_text(row: Any) -> str:
    if not isinstance(row, dict):
        return json.dumps(row, ensure_ascii=False)
    note = row.get("note")
    said = f"{row.get('on') or 'no day'}: {row.get('what') or 'nothing noted'}"
    return f"{said}, {note}" if isinstance(note, str) and note else said
