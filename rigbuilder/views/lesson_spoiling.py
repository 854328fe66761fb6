"""Where a spoilt rig comes from: a technique, a kind of mistake, a seed."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtGui import QIntValidator
from PySide6.QtWidgets import QFormLayout, QLineEdit, QWidget

from rigbuilder.viewmodels.lesson_editing import mistakes
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.choice_field import ChoiceField


class SeedField(QLineEdit):
    """A whole number from 0 to 9999; the same number gives the same choices."""

    def __init__(self, seed: int, name: str, parent: QWidget | None = None) -> None:
        super().__init__(str(seed), parent)
        self.setValidator(QIntValidator(0, 9999, self))
        self.setAccessibleName(name)
        self.setMaximumWidth(self.fontMetrics().averageCharWidth() * 12)

    def value(self) -> int:
        """Return the number, 0 where nothing is typed."""
        return int(self.text() or 0)


class SpoilingRow(QWidget):
    """Technique, mistake and seed; ``wanted`` carries all three."""

    wanted = Signal(str, str, int)

    def __init__(self, techniques: Sequence[tuple[str, str]], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.technique = ChoiceField("Technique", searchable=True, parent=self)
        self.technique.set_options(techniques)
        self.technique.set_value(techniques[0][0])
        self.mistake = ChoiceField("Kind of mistake", searchable=True, parent=self)
        self.mistake.set_options(mistakes())
        self.mistake.set_value(mistakes()[0][0])
        self.seed = SeedField(1, "Seed of the spoilt rig", self)
        self.button = ActionButton(
            "Spoil a right rig", tip="Adds the usual rig with one thing wrong", parent=self
        )
        self.button.clicked.connect(
            lambda: self.wanted.emit(self.technique.value(), self.mistake.value(), self.seed.value())
        )
        form = QFormLayout(self)
        form.setContentsMargins(0, 0, 0, 0)
        form.addRow("Technique", self.technique)
        form.addRow("Mistake", self.mistake)
        form.addRow("Seed", self.seed)
        form.addRow("", self.button)
