"""The bench: one document, what it means, what the review says; every change is one undoable edit.

Value in, value out: an edit makes a new document, everything else follows from
it. The chart is heavier than the review and is made when it is asked for.
"""

from collections.abc import Mapping
from typing import Any

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoStack

from rigbuilder.model.document import Document, drop, get, is_said, put, put_all
from rigbuilder.model.fields import BY_PATH
from rigbuilder.model.reading import Reading, read
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.review.chart import Cell, chart
from rigbuilder.review.core import Finding, Remedy
from rigbuilder.review.dressing import dressing_changes, line_changes
from rigbuilder.review.engine import Report, review
from rigbuilder.review.proof import MakeRight, make_right, proven
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.edits import Edit


class Bench(QObject):
    """One rig on the bench. Signals carry values; read-only properties, verbs to change."""

    document_changed = Signal(object)
    reading_changed = Signal(object)
    report_changed = Signal(object)
    preview_changed = Signal(object)
    units_changed = Signal(object)

    def __init__(self, document: Document, reference: Reference, house: House, parent: QObject | None = None):
        super().__init__(parent)
        self._reference, self._house = reference, house
        self._document = document
        self._reading = read(document, reference)
        self._report: Report | None = None
        self._cells: list[Cell] | None = None
        self._preview: Report | None = None
        self._speaker = Speaker()
        self.undo_stack = QUndoStack(self)
        self._review()

    @property
    def document(self) -> Document:
        """Return the card as typed."""
        return self._document

    @property
    def reading(self) -> Reading:
        """Return what the card means, with its problems and assumptions."""
        return self._reading

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
    def reference(self) -> Reference:
        """Return the reference tables."""
        return self._reference

    def cells(self) -> list[Cell]:
        """Return the line chart of the present rig, made on first use after a change."""
        if self._cells is None:
            rig = self._reading.rig
            self._cells = [] if rig is None else chart(rig, self._reference, self._house)
        return self._cells

    def remedies(self, finding: Finding) -> tuple[Remedy, ...]:
        """Return the proven remedies of one reason of the present report."""
        return () if self._report is None else proven(self._document, self._report, finding)

    def text(self, path: str) -> str | None:
        """Return what the card says at ``path``, ``None`` for nothing or "there is none"."""
        found = get(self._document, path)
        return found if isinstance(found, str) else None

    def says(self, path: str) -> bool:
        """Tell whether the card itself says something at ``path``."""
        return is_said(self._document, path)

    def edit(self, path: str, value: Any) -> None:
        """Put a value on the card as one undoable step; typing on in one field stays one step."""
        self._push(f"change {_label(path)}", put(self._document, path, value), field=path)

    def clear(self, path: str) -> None:
        """Say nothing at ``path`` any more."""
        self._push(f"clear {_label(path)}", drop(self._document, path), field=path)

    def settle(self) -> None:
        """End the run of typing: the next edit of the same field is a step of its own."""
        stack = self.undo_stack
        if stack.count() and stack.index() == stack.count():
            last = stack.command(stack.index() - 1)
            if isinstance(last, Edit):
                last.field = ""

    def apply(self, changes: Mapping[str, Any], text: str) -> None:
        """Make several changes as one undoable step."""
        self._push(text, put_all(self._document, changes))

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

    def replace(self, document: Document) -> None:
        """Put another card on the bench; its history begins here."""
        self.undo_stack.clear()
        self._show(document)

    def speak(self, system: UnitSystem) -> None:
        """Read figures in another unit system; nothing on the card changes."""
        if system is not self._speaker.system:
            self._speaker = Speaker(system)
            self.units_changed.emit(self._speaker)

    def use_house(self, reference: Reference, house: House) -> None:
        """Review by other house rules."""
        self._reference, self._house = reference, house
        self._show(self._document)

    def _push(self, text: str, after: Document, *, field: str = "") -> None:
        if after != self._document:
            self.undo_stack.push(Edit(text, self._document, after, self._show, field=field))

    def _show(self, document: Document) -> None:
        self._document = document
        self._reading = read(document, self._reference)
        self.look_at(None)
        self._review()
        self.document_changed.emit(document)
        self.reading_changed.emit(self._reading)
        self.report_changed.emit(self._report)

    def _review(self) -> None:
        self._cells = None
        rig = self._reading.rig
        self._report = None if rig is None else review(rig, self._reference, self._house)


def _label(path: str) -> str:
    field = BY_PATH.get(path)
    if field is None:
        return path
    group = path.partition(".")[0]
    return f"{group} {field.label.lower()}" if "." in path else field.label.lower()
