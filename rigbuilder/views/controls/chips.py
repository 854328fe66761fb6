"""Chips: what was understood of a label, what is doubtful, what was not read."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from rigbuilder.viewmodels.literal import literal
from rigbuilder.views.controls.flow_layout import FlowLayout
from rigbuilder.views.controls.texts import text_label


class ChipKind(StrEnum):
    """How well a part of a label was understood; each has its own outline and wording."""

    UNDERSTOOD = "understood"
    DOUBTFUL = "doubtful"
    NOT_UNDERSTOOD = "not understood"


_WORDING = {
    ChipKind.UNDERSTOOD: "{}",
    ChipKind.DOUBTFUL: "{} ?",
    ChipKind.NOT_UNDERSTOOD: "not read: {}",
}


@dataclass(frozen=True, slots=True)
class Chip:
    """One chip: its text, its kind, and why (shown as a tip)."""

    text: str
    kind: ChipKind = ChipKind.UNDERSTOOD
    why: str = ""


class Chips(QWidget):
    """A paragraph of read-only chips; takes no room while it is empty."""

    def __init__(self, name: str, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self._flow = FlowLayout(self, gap=4)
        self._chips: tuple[Chip, ...] = ()
        self._labels: list[QLabel] = []
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.hide()

    def chips(self) -> tuple[Chip, ...]:
        """Return the chips shown."""
        return self._chips

    def set_chips(self, chips: Sequence[Chip]) -> None:
        """Show these chips; does nothing when they are the ones shown already."""
        if tuple(chips) == self._chips:
            return
        self._chips = tuple(chips)
        for label in self._labels:
            self._flow.removeWidget(label)
            label.deleteLater()
        self._labels = [self._label(chip) for chip in self._chips]
        for label in self._labels:
            self._flow.addWidget(label)
        self.setAccessibleDescription("; ".join(label.accessibleName() for label in self._labels))
        self.setVisible(bool(self._labels))
        self.updateGeometry()

    def _label(self, chip: Chip) -> QLabel:
        label = text_label(_WORDING[chip.kind].format(chip.text), "chip", parent=self)
        label.setProperty("chip", str(chip.kind))
        label.setToolTip(literal(chip.why))
        spoken = f"{chip.kind}: {chip.text}"
        label.setAccessibleName(f"{spoken} ({chip.why})" if chip.why else spoken)
        label.show()
        return label
