"""The coach's house file against the rule book: what it means, and which names it gets wrong."""

from collections.abc import Mapping
from difflib import get_close_matches
from typing import Any

from rigbuilder.reference.house import House, HouseProblem, UnusableHouse
from rigbuilder.reference.load import Reference
from rigbuilder.review.rules.book import RULES


def house_from(entries: Mapping[str, Any], reference: Reference) -> House:
    """Return the house that a file's entries describe.

    Raises:
        UnusableHouse: naming every entry that has a wrong shape or an unknown name, rules included.
    """
    house = House.read(entries, reference)
    names = [rule.name for rule in RULES]
    problems = tuple(
        HouseProblem(f"severity.{name}", f"“{name}”", f"expected the name of a rule, {_hint(name, names)}")
        for name in house.file.severity
        if name not in names
    )
    if problems:
        raise UnusableHouse(problems)
    return house


def _hint(name: str, names: list[str]) -> str:
    near = get_close_matches(name, names, n=2, cutoff=0.5)
    return f"perhaps {' or '.join(near)}" if near else "as the list of rules has them"
