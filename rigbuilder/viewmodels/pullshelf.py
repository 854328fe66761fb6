"""The person's pull tests: kept on the disk, and given to the bench as soon as there are enough of them."""

from typing import Any

from PySide6.QtCore import QObject, Signal

from rigbuilder.model.pulltests import PullSeries, SeriesError, read_series
from rigbuilder.plans.pulltests import OwnKnot, own_results, with_own
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.store.errors import StoreError
from rigbuilder.store.pulltests import PullTestFile
from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.bench import Bench


class PullShelf(QObject):
    """All series that were entered. ``changed`` tells that the reference has to be dressed anew."""

    changed = Signal()

    def __init__(self, file: PullTestFile, reference: Reference, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._file, self._reference = file, reference
        self.series: tuple[PullSeries, ...] = ()
        self.trouble = ""
        try:
            self.series = file.load()
        except StoreError as trouble:
            self.trouble = str(trouble)

    def dress(self, reference: Reference) -> Reference:
        """Return a reference with own results in place of the catalogue's ranges, where there are enough."""
        return with_own(reference, self.series)

    def serve(self, bench: Bench, reference: Reference, house: House) -> None:
        """Let the bench review by own results on top of a house's reference, now and after each change."""

        def dress() -> None:
            bench.use_house(self.dress(reference), house)

        self.changed.connect(dress)
        if self.series:
            dress()

    def results(self) -> tuple[OwnKnot, ...]:
        """Return what the pulls say so far, knot by knot."""
        return own_results(self.series, self._reference)

    def add(self, entry: dict[str, Any], system: UnitSystem) -> str:
        """Keep one more series; return what is wrong with it, empty if it was kept."""
        assume = "lb" if system is UnitSystem.IMPERIAL else "kg"
        try:
            one = read_series(entry, self._reference, assume=assume)
        except SeriesError as error:
            return str(error)
        return self._keep((*self.series, one))

    def remove(self, place: int) -> str:
        """Take one series away; return what went wrong, empty if nothing did."""
        return self._keep(tuple(one for index, one in enumerate(self.series) if index != place))

    def _keep(self, series: tuple[PullSeries, ...]) -> str:
        if self.trouble:
            return self.trouble  # the file on the disk could not be read: it is not written over
        try:
            self._file.save(series)
        except StoreError as trouble:
            return str(trouble)
        self.series = series
        self.changed.emit()
        return ""
