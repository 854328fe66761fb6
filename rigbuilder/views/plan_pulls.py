"""Entering own pull tests: which line, which knot or none, and what the scale read."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QDialog, QGridLayout, QHBoxLayout, QListWidget, QVBoxLayout, QWidget

from rigbuilder.model.pulltests import PullSeries
from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.pullshelf import PullShelf
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.choice_field import ChoiceField
from rigbuilder.views.controls.quantity_field import QuantityField
from rigbuilder.views.controls.texts import text_label

_HOW = (
    "Tie the knot to something that gives nowhere, hook the scale to the line and pull slowly until it "
    "breaks; read the highest figure. Wear glasses and gloves, and stand to the side. Straight pulls of the "
    "same line, wound several times round a smooth rod at both ends, make the answer sharper. From five "
    "pulls of a knot on, your range replaces the catalogue's."
)


class PullDialog(QDialog):
    """A list of what was pulled, and a form for the next series."""

    def __init__(
        self,
        shelf: PullShelf,
        types: tuple[str, ...],
        knots: tuple[str, ...],
        system: UnitSystem,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Own pull tests")
        self._shelf, self._system = shelf, system
        unit = "lb" if system is UnitSystem.IMPERIAL else "kg"
        self.type = ChoiceField("Line", parent=self)
        self.type.set_options([(name, name) for name in types])
        self.test = QuantityField("Test", unit=unit, placeholder="10 lb", parent=self)
        self.knot = ChoiceField("Knot", parent=self)
        self.knot.set_options([("", "none: straight line"), *((name, name) for name in knots)])
        self.knot.set_value("")
        self.readings = QuantityField("Readings", unit=unit, placeholder="8.2, 7.9, 8.4", parent=self)
        self.wet = QCheckBox("The line was wet", self)
        self.problem = text_label("", "problem", wrap=True, parent=self)
        self.add = ActionButton("Keep these pulls", weight="first", parent=self)
        self.remove = ActionButton("Take the chosen series away", parent=self)
        self.list = QListWidget(self)
        self.list.setAccessibleName("Series kept")
        self.results = text_label("", wrap=True, parent=self)
        self._lay_out()
        self.add.clicked.connect(self._add)
        self.remove.clicked.connect(self._remove)
        shelf.changed.connect(self._render)
        self._render()

    def start_with(self, kind: str, test: str, knot: str) -> None:
        """Fill in the line and knot that were being looked at."""
        self.type.set_value(kind)
        self.test.set_text(test)
        self.knot.set_value(knot)

    def _lay_out(self) -> None:
        grid = QGridLayout()
        rows = (("Line", self.type), ("Test", self.test), ("Knot", self.knot), ("Readings", self.readings))
        for place, (label, field) in enumerate(rows):
            grid.addWidget(text_label(label, "label", buddy=field), place, 0, Qt.AlignmentFlag.AlignTop)
            grid.addWidget(field, place, 1)
        grid.addWidget(self.wet, len(rows), 1)
        grid.setColumnStretch(1, 1)
        buttons = QHBoxLayout()
        buttons.addWidget(self.remove)
        buttons.addStretch(1)
        buttons.addWidget(self.add)
        column = QVBoxLayout(self)
        column.addWidget(text_label("What did the scale read?", "heading"))
        column.addWidget(text_label(_HOW, "label", wrap=True))
        column.addLayout(grid)
        column.addWidget(self.problem)
        column.addWidget(self.list, 1)
        column.addWidget(self.results)
        column.addLayout(buttons)
        self.resize(self.fontMetrics().averageCharWidth() * 74, self.fontMetrics().lineSpacing() * 34)

    def _add(self) -> None:
        entry = {
            "type": self.type.value(),
            "test": self.test.text(),
            "knot": self.knot.value() or None,
            "readings": self.readings.text(),
            "wet": self.wet.isChecked(),
        }
        problem = self._shelf.add(entry, self._system)
        self.problem.setText(problem)
        self.problem.setVisible(bool(problem))
        if not problem:
            self.readings.set_text("")
            self.readings.setFocus()

    def _remove(self) -> None:
        if self.list.currentRow() >= 0:
            self.problem.setText(self._shelf.remove(self.list.currentRow()))

    def _render(self) -> None:
        self.list.clear()
        self.list.addItems([_words(one) for one in self._shelf.series])
        self.remove.setEnabled(bool(self._shelf.series))
        found = [
            f"{one.knot} in {one.type}: {100 * one.share.low:.0f} to {100 * one.share.high:.0f} per cent of "
            f"the line, {one.count} pulls" + ("" if one.enough else ", too few yet to count")
            for one in self._shelf.results()
        ]
        self.results.setText("\n".join(found))
        self.problem.setText(self._shelf.trouble)
        self.problem.setVisible(bool(self._shelf.trouble))


def _words(one: PullSeries) -> str:
    state = "wet" if one.wet else "dry"
    return f"{one.type} {one.test}, {one.knot or 'straight'}, {state}: {', '.join(one.readings)}"
