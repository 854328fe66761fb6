"""A row for a whole label, with chips below that show what was made of it."""

from PySide6.QtWidgets import QWidget

from rigbuilder.viewmodels.fieldstate import LabelWords
from rigbuilder.viewmodels.form import FormModel
from rigbuilder.views.controls.chips import Chip, ChipKind, Chips
from rigbuilder.views.form_plan import Row
from rigbuilder.views.form_rows import TextRow

_NOT_READ = "This part of the label was not understood. Correct it, or fill in the fields below."


def chips_of(words: LabelWords) -> list[Chip]:
    """Return the chips for a label: understood first, then what is doubtful, then what was not read."""
    return [
        *(Chip(text, why=meaning) for text, meaning in words.understood),
        *(Chip(text, ChipKind.DOUBTFUL, why) for text, why in words.doubtful),
        *(Chip(text, ChipKind.NOT_UNDERSTOOD, _NOT_READ) for text in words.not_understood),
    ]


class LabelRow(TextRow):
    """A label as printed, and what it says."""

    def __init__(self, model: FormModel, row: Row, section: str, parent: QWidget | None = None) -> None:
        super().__init__(model, row, section, parent)
        self.chips = Chips(f"{section}: what was understood of the label", parent=self)
        layout = self.field.layout()
        assert layout is not None  # noqa: S101 - the field is made with one
        layout.addWidget(self.chips)

    def refresh(self, *_: object) -> None:
        """Show the label, then what was made of it."""
        super().refresh()
        self.chips.set_chips(chips_of(self.model.label(self.path)))
