"""The parts of a card that are not single fields: prices, silenced rules, log, tags."""

from collections.abc import Callable
from datetime import date
from functools import partial
from typing import Any

from pydantic import ValidationError

from rigbuilder.model.document import Document, get
from rigbuilder.model.problems import Problem, nearest, quoted
from rigbuilder.model.rig import LogEntry, Price, Silenced
from rigbuilder.reference.words import LogEvent
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import QuantityError, parse

_MOST = 1000
PINNABLE = ("leader", "knots", "backing", "drag")


class _Wrong(Exception):  # noqa: N818 - carries one problem, caught in this module only
    def __init__(self, problem: Problem) -> None:
        self.problem = problem


def read_lists(document: Document, problems: list[Problem]) -> dict[str, Any]:
    """Return prices, silenced rules and log of a card; what is wrong with them goes onto ``problems``."""
    found: dict[str, Any] = {}
    for group in ("main", "leader", "backing"):
        price = get(document, f"{group}.price")
        if price is not None:
            _keep(found, f"{group}.price", problems, partial(_price, f"{group}.price", price))
    taped, refills = get(document, "fill.taped"), get(document, "fill.season_refills")
    if taped is not None:
        _keep(found, "fill.taped", problems, lambda: _yes_or_no("fill.taped", taped))
    if refills is not None:
        _keep(found, "fill.season_refills", problems, lambda: _count("fill.season_refills", refills))
    _keep(found, "silenced", problems, lambda: _entries(document, "silenced", _silenced))
    _keep(found, "log", problems, lambda: _entries(document, "log", _log_entry))
    _keep(found, "pinned", problems, lambda: _pinned(document))
    tags = document.get("tags")
    if tags is not None and not (isinstance(tags, list) and all(isinstance(tag, str) for tag in tags)):
        problems.append(Problem("tags", quoted(tags), "a list of words in quotes"))
    return found


def _keep(found: dict[str, Any], path: str, problems: list[Problem], read: Callable[[], Any]) -> None:
    try:
        found[path] = read()
    except _Wrong as wrong:
        problems.append(wrong.problem)


def _price(path: str, found: Any) -> Price:
    example = 'a price such as {"amount": 24.0, "currency": "EUR", "length": "200 yd"}'
    if not isinstance(found, dict) or not isinstance(found.get("length"), str):
        raise _Wrong(Problem(path, quoted(found), example))
    amount = found.get("amount")
    if isinstance(amount, bool) or not isinstance(amount, int | float):
        raise _Wrong(Problem(f"{path}.amount", quoted(amount), "a number such as 24.0"))
    try:
        length = parse(found["length"], Dimension.LENGTH).si
        return Price(amount=amount, currency=str(found.get("currency") or ""), length_m=length)
    except QuantityError as error:
        raise _Wrong(
            Problem(f"{path}.length", quoted(found["length"]), error.expected, f"It {error.reason}.")
        ) from None
    except (ValidationError, ValueError):
        raise _Wrong(Problem(path, quoted(found), example)) from None


def _yes_or_no(path: str, found: Any) -> bool:
    if not isinstance(found, bool):
        raise _Wrong(Problem(path, quoted(found), "true or false, without quotes"))
    return found


def _count(path: str, found: Any) -> float:
    if isinstance(found, bool) or not isinstance(found, int | float) or not 0 < found <= 100:
        raise _Wrong(Problem(path, quoted(found), "a number between 0 and 100, such as 3"))
    return float(found)


def _entries(document: Document, path: str, read: Callable[[str, Any], Any]) -> tuple[Any, ...]:
    found = document.get(path)
    if found is None:
        return ()
    if not isinstance(found, list) or len(found) > _MOST:
        raise _Wrong(Problem(path, quoted(found), f"a list of at most {_MOST} entries"))
    return tuple(read(f"{path}.{index}", entry) for index, entry in enumerate(found))


def _pinned(document: Document) -> frozenset[str]:
    found = document.get("pinned") or []
    if not isinstance(found, list) or not set(map(str, found)) <= set(PINNABLE):
        raise _Wrong(Problem("pinned", quoted(found), "a list of any of " + ", ".join(PINNABLE)))
    return frozenset(found)


def _silenced(path: str, entry: Any) -> Silenced:
    wanted = 'an entry such as {"rule": "braid-on-bare-arbor", "why": "taped spool"}'
    if not isinstance(entry, dict) or not isinstance(entry.get("rule"), str):
        raise _Wrong(Problem(path, quoted(entry), wanted))
    why = entry.get("why")
    if not isinstance(why, str) or not why.strip():
        raise _Wrong(Problem(f"{path}.why", quoted(why), "a reason, in a few words"))
    return Silenced(rule=entry["rule"], why=why.strip())


def _log_entry(path: str, entry: Any) -> LogEntry:
    wanted = 'an entry such as {"on": "2026-05-02", "what": "filled"}'
    if not isinstance(entry, dict):
        raise _Wrong(Problem(path, quoted(entry), wanted))
    try:
        on = date.fromisoformat(entry.get("on", ""))
    except (TypeError, ValueError):
        expected = "a date such as 2026-05-02"
        raise _Wrong(Problem(f"{path}.on", quoted(entry.get("on")), expected)) from None
    what = entry.get("what")
    words = [str(word) for word in LogEvent]
    if what not in words:
        hint = nearest(what, words) if isinstance(what, str) else ""
        raise _Wrong(Problem(f"{path}.what", quoted(what), "one of " + ", ".join(words), hint))
    note = entry.get("note", "")
    return LogEntry(on=on, what=LogEvent(what), note=note if isinstance(note, str) else "")
