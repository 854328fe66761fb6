"""The bench: one rig, what the review says of it, and what may be put on instead.

The chart is heavier than the review and is made when it is asked for.
"""

from PySide6.QtCore import QObject, Signal

from rigbuilder.model.document import Document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.review.chart import Cell, chart
from rigbuilder.review.core import Finding, Remedy
from rigbuilder.review.dressing import dressing_changes, line_changes
from rigbuilder.review.engine import Report, review
from rigbuilder.review.proof import MakeRight, make_right, proven
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.slate import Slate


class Bench(Slate):
    """One rig on the bench. Signals carry values; read-only properties, verbs to change."""

    report_changed = Signal(object)
    preview_changed = Signal(object)
    units_changed = Signal(object)

    def __init__(self, document: Document, reference: Reference, house: House, parent: QObject | None = None):
        super().__init__(document, reference, parent)
        self._house = house
        self._report: Report | None = None
        self._cells: list[Cell] | None = None
        self._preview: Report | None = None
        self._speaker = Speaker()
        self._follow()

    @property
    def report(self) -> Report | None:
        """Return the review, ``None`` while the card cannot be read."""
        return self._report

    @property
    def preview(self) -> Report | None:
        """Return the review of what is being looked at but not taken, if anything is."""
        return self._preview

    @property
    def speaker(self) -> Speaker:
        """Return the speaker for the chosen unit system."""
        return self._speaker

    @property
    def house(self) -> House:
        """Return the house rules by which the rig is reviewed."""
        return self._house

    def cells(self) -> list[Cell]:
        """Return the line chart of the present rig, made on first use after a change."""
        if self._cells is None:
            rig = self._reading.rig
            self._cells = (
                [] if rig is None else chart(rig, self._reference, self._house, present=self._report)
            )
        return self._cells

    def remedies(self, finding: Finding) -> tuple[Remedy, ...]:
        """Return the proven remedies of one reason of the present report."""
        return () if self._report is None else proven(self._document, self._report, finding)

    def put_line_on(self, cell: Cell) -> None:
        """Put the line of a chart cell on the rig, with what the cell has hung on it."""
        changes = self.line_changes(cell)
        self.apply(changes, f"put on {cell.type} {cell.test_lb:g} lb")

    def line_changes(self, cell: Cell) -> dict[str, str | None]:
        """Return the changes of the card that turn the present rig into a cell's."""
        rig = self._reading.rig
        if rig is None or cell.present:
            return {}
        after = cell.report.case.rig
        return line_changes(rig, after.main) | dressing_changes(rig, after)

    def make_right(self) -> MakeRight | None:
        """Return the smallest set of remedies that clears faults and risks, without taking it."""
        return None if self._report is None else make_right(self._document, self._report)

    def look_at(self, report: Report | None) -> None:
        """Preview a rig that is not on the bench, or stop previewing."""
        if report is not self._preview:
            self._preview = report
            self.preview_changed.emit(report)

    def speak(self, system: UnitSystem) -> None:
        """Read figures in another unit system; nothing on the card changes."""
        if system is not self._speaker.system:
            self._speaker = Speaker(system)
            self.units_changed.emit(self._speaker)

    def use_house(self, reference: Reference, house: House) -> None:
        """Review by other house rules."""
        self._reference, self._house = reference, house
        self._show(self._document)

    def _show(self, document: Document) -> None:
        super()._show(document)
        self.report_changed.emit(self._report)

    def _follow(self) -> None:
        self.look_at(None)
        self._cells = None
        rig = self._reading.rig
        self._report = None if rig is None else review(rig, self._reference, self._house)
