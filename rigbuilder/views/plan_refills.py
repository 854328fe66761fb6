"""How often a year the main line is renewed: one field over the table of costs."""

from PySide6.QtWidgets import QHBoxLayout, QWidget

from rigbuilder.viewmodels.fillview import FillModel
from rigbuilder.views.controls.quantity_field import QuantityField
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.theme_look import Look

_WHERE = "Prices stand in the form, under “Tags, price and log”."


class RefillsRow(QWidget):
    """The field, filled with practice's number until a person says another."""

    def __init__(self, model: FillModel, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._model = model
        self.field = QuantityField("Main line renewed, times a year", parent=self)
        self.field.setMaximumWidth(look.theme.px(96))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.theme.px(8))
        row.addWidget(text_label("Renewed, times a year", "label", buddy=self.field.edit, parent=self))
        row.addWidget(self.field)
        row.addWidget(text_label(_WHERE, "caption", wrap=True, parent=self), 1)
        self.field.edited.connect(self._typed)
        self.field.left.connect(self._left)

    def refresh(self) -> None:
        """Show what the card says, or practice's number as a hint; what is being typed stays."""
        self.field.edit.setPlaceholderText(self._model.usual_refills())
        if not self.field.edit.hasFocus():
            self.field.set_text(self._model.refills())
            self.field.set_problem("")

    def _typed(self, text: str) -> None:
        self.field.set_problem(self._model.set_refills(text))

    def _left(self) -> None:
        self._model.bench.settle()
        self.refresh()
