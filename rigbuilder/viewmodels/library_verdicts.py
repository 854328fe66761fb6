"""Verdicts in the library: from a cache that may be thrown away, filled up behind the person's back."""

import hashlib
from collections.abc import Iterable
from pathlib import Path

from rigbuilder import __version__, resources
from rigbuilder.reference.house import House
from rigbuilder.review.rules.book import RULES
from rigbuilder.store.library import VerdictCache
from rigbuilder.store.rows import Row


def rules_mark(house: House) -> str:
    """Return a text that changes when anything does on which a verdict rests."""
    mark = hashlib.sha256(__version__.encode())
    for rule in RULES:
        mark.update(f"{rule.name}|{rule.severity}|{rule.what}|{rule.why}".encode())
    for table in sorted(resources.root().glob("*.toml")):
        mark.update(table.read_bytes())
    mark.update(house.file.model_dump_json().encode())
    return mark.hexdigest()


class Verdicts:
    """What is known of each card under the house rules in force."""

    def __init__(self, file: Path | None, house: House) -> None:
        self.house = house
        self._cache = None if file is None else VerdictCache(file, rules_mark(house))
        self.known: dict[str, str] = {} if self._cache is None else self._cache.known

    def missing(self, rows: Iterable[Row]) -> list[Row]:
        """Return the readable cards of which nothing is known."""
        known = self.known
        return [row for row in rows if not row.trouble and row.sha256 not in known]

    def learn(self, verdicts: dict[str, str]) -> None:
        """Take over new verdicts."""
        self.known.update(verdicts)

    def keep(self, rows: dict[str, Row]) -> None:
        """Write what is known for the next start."""
        if self._cache is not None:
            self._cache.save(rows)
