"""The practice that the bench reviews by: what ships, under the coach's house rules and own pull tests."""

from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject, Signal

from rigbuilder.reference.house import House, UnusableHouse
from rigbuilder.reference.load import Reference
from rigbuilder.review.houses import house_from
from rigbuilder.store.errors import StoreError
from rigbuilder.store.house import read_house, write_house
from rigbuilder.store.pulltests import PullTestFile
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.pullshelf import PullShelf


class Practice(QObject):
    """House rules and pull tests of one person. ``changed`` tells that rigs have to be judged anew."""

    changed = Signal()

    def __init__(
        self, shipped: Reference, house_file: Path, pulls: PullTestFile, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self.shipped, self._path = shipped, house_file
        self.house = House.shipped()
        self.trouble = ""
        self.shelf = PullShelf(pulls, shipped, self)
        self.shelf.changed.connect(self.changed)
        try:
            self.house = house_from(read_house(house_file), shipped)
        except (StoreError, UnusableHouse) as trouble:
            self.trouble = f"The house file is left aside, the shipped practice is used. {trouble}"

    @property
    def remarks(self) -> list[str]:
        """Return what is worth a word at the start."""
        return [text for text in (self.trouble, self.shelf.trouble) if text]

    @property
    def reference(self) -> Reference:
        """Return the shipped tables as house and pull tests change them."""
        return self.shelf.dress(self.house.apply(self.shipped))

    def lead(self, bench: Bench) -> None:
        """Judge what is on a bench by this practice, now and after every change."""
        self.changed.connect(lambda: bench.use_house(self.reference, self.house))

    def decide(self, entries: dict[str, Any]) -> str:
        """Keep other house rules, none for the shipped practice; return what went wrong, or nothing."""
        try:
            house = house_from(entries, self.shipped)
            write_house(self._path, entries)
        except (StoreError, UnusableHouse) as trouble:
            return str(trouble)
        self.house, self.trouble = house, ""
        self.changed.emit()
        return ""
