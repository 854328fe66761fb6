"""Taking what was previewed: one undoable step each, and a way back that undoes exactly that step."""

from collections.abc import Callable, Mapping
from typing import Any

from rigbuilder.model.document import get
from rigbuilder.review.chart import Cell
from rigbuilder.viewmodels.bench import Bench


def take(bench: Bench, sets: Mapping[str, Any], text: str) -> Callable[[], None] | None:
    """Make changes as one step; return how to take just them back, ``None`` if nothing changed."""
    before = bench.undo_stack.index()
    bench.apply(sets, text)
    return way_back(bench, before)


def way_back(bench: Bench, before: int) -> Callable[[], None] | None:
    """Return how to undo the step made since ``before``, ``None`` if there was none."""
    stack = bench.undo_stack
    after = stack.index()
    if after != before + 1:
        return None

    def back() -> None:
        if stack.index() == after:
            stack.undo()

    return back


def put_on(bench: Bench, cell: Cell) -> Callable[[], None] | None:
    """Put the line of a chart cell on the rig."""
    before = bench.undo_stack.index()
    bench.put_line_on(cell)
    return way_back(bench, before)


def silence(bench: Bench, rule: str, why: str) -> Callable[[], None] | None:
    """Silence a rule on this card with a written why."""
    entries = [entry for entry in _entries(bench) if entry.get("rule") != rule]
    return take(bench, {"silenced": [*entries, {"rule": rule, "why": why.strip()}]}, f"silence {_said(rule)}")


def hear_again(bench: Bench, rule: str) -> Callable[[], None] | None:
    """Take the silencing of a rule off the card."""
    entries = [entry for entry in _entries(bench) if entry.get("rule") != rule]
    return take(bench, {"silenced": entries}, f"hear {_said(rule)} again")


def _entries(bench: Bench) -> list[dict[str, Any]]:
    found = get(bench.document, "silenced")
    return [entry for entry in found if isinstance(entry, dict)] if isinstance(found, list) else []


def _said(rule: str) -> str:
    return f"“{rule.replace('-', ' ')}”"
