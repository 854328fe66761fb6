"""The three quantities of a fill with their pins: hold any two, the third follows."""

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtWidgets import QCheckBox, QGridLayout, QPushButton, QWidget

from rigbuilder.plans.pins import Quantity
from rigbuilder.viewmodels.fillview import FillModel, PinShown
from rigbuilder.views.controls.quantity_field import QuantityField
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.theme_look import Look

_HINT = "Pin any two; the third follows."


class PinRow:
    """Label, field, pin and remark of one quantity, laid into a grid."""

    def __init__(self, quantity: Quantity, label: str, parent: QWidget) -> None:
        self.quantity = str(quantity)
        self.field = QuantityField(label, parent=parent)
        self.label = text_label(label, "label", buddy=self.field.edit, parent=parent)
        self.pin = QPushButton("Pin", parent)
        self.pin.setCheckable(True)
        self.pin.setAutoDefault(False)
        self.pin.setAccessibleName(f"Pin: {label}")
        self.origin = text_label("", "caption", wrap=True, parent=parent)

    def lay(self, grid: QGridLayout, row: int) -> None:
        """Put the row into the grid."""
        top = Qt.AlignmentFlag.AlignTop
        grid.addWidget(self.label, row, 0, top)
        grid.addWidget(self.field, row, 1, top)
        grid.addWidget(self.pin, row, 2, top)
        grid.addWidget(self.origin, row, 3)

    def show(self, shown: PinShown) -> None:
        """Show a quantity; what is being typed stays."""
        if not self.field.edit.hasFocus():
            self.field.set_text(shown.text)
            self.field.set_problem("")
        with QSignalBlocker(self.pin):
            self.pin.setChecked(shown.pinned)
        self.pin.setText("Pinned" if shown.pinned else "Pin")
        self.pin.setEnabled(shown.pinned or bool(shown.text))
        self.field.setEnabled(bool(shown.text) or shown.pinned)
        self.origin.setText("" if shown.pinned else shown.origin)


class PinGrid(QWidget):
    """Main line, backing and lip gap, and whether the spool is taped."""

    def __init__(self, model: FillModel, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._model = model
        self.setAccessibleName("Pins of the fill")
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(look.theme.px(8))
        grid.setVerticalSpacing(look.theme.px(6))
        grid.setColumnStretch(1, 2)
        grid.setColumnStretch(3, 3)
        names = {Quantity.MAIN: "Main line", Quantity.BACKING: "Backing", Quantity.LIP_GAP: "Lip gap"}
        self.rows = {str(name): PinRow(name, label, self) for name, label in names.items()}
        for place, row in enumerate(self.rows.values()):
            row.lay(grid, place)
            row.field.edited.connect(lambda text, row=row: self._typed(row, text))
            row.field.left.connect(lambda row=row: self._left(row))
            row.pin.clicked.connect(lambda checked, row=row: self._pressed(row, checked))
        self.taped = QCheckBox("Tape on the bare spool", self)
        self.taped.clicked.connect(model.tape)
        grid.addWidget(self.taped, len(self.rows), 1, 1, 2)
        grid.addWidget(text_label(_HINT, "caption", wrap=True, parent=self), len(self.rows), 3)

    def show_pins(self, pins: tuple[PinShown, ...]) -> None:
        """Show the quantities."""
        for shown in pins:
            self.rows[shown.quantity].show(shown)
        with QSignalBlocker(self.taped):
            self.taped.setChecked(self._model.taped)

    def _typed(self, row: PinRow, text: str) -> None:
        row.field.set_problem(self._model.pin(row.quantity, text))

    def _left(self, row: PinRow) -> None:
        self._model.bench.settle()
        shown = self._model.shown()
        if shown is not None:
            self.show_pins(shown.pins)

    def _pressed(self, row: PinRow, checked: bool) -> None:
        if checked:
            self._model.pin(row.quantity, row.field.text())
            self._model.bench.settle()
        else:
            self._model.release(row.quantity)
