"""A row of a few exclusive choices, all in sight."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QPushButton, QSizePolicy, QWidget

MOST_OPTIONS = 5


class SegmentRow(QWidget):
    """Up to five exclusive buttons; arrow keys move among them, Tab enters and leaves the row."""

    chosen = Signal(str)  # the value a person chose

    def __init__(
        self, name: str, options: Sequence[tuple[str, str]] = (), *, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._name = name
        self.setAccessibleName(name)
        self._group = QButtonGroup(self)
        self._group.setExclusive(True)
        self._values: dict[str, QPushButton] = {}
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(0)
        self._group.buttonClicked.connect(self._clicked)
        self.set_options(options)

    def set_options(self, options: Sequence[tuple[str, str]]) -> None:
        """Offer these (value, text) pairs.

        Raises:
            ValueError: if there are more than five; use a ``ChoiceField`` then.
        """
        if len(options) > MOST_OPTIONS:
            raise ValueError(f"A segment row takes {MOST_OPTIONS} options, not {len(options)}.")
        for button in self._values.values():
            self._group.removeButton(button)
            self._row.removeWidget(button)
            button.deleteLater()
        self._values = {value: self._button(text) for value, text in options}
        buttons = list(self._values.values())
        if buttons:
            buttons[0].setProperty("place", "first")
            buttons[-1].setProperty("place", "last")
            self.setFocusProxy(buttons[0])

    def value(self) -> str:
        """Return the value chosen, empty if none is."""
        for value, button in self._values.items():
            if button.isChecked():
                return value
        return ""

    def set_value(self, value: str) -> None:
        """Choose ``value`` without telling anyone; an unknown one clears the row."""
        button = self._values.get(value)
        if button is not None:
            button.setChecked(True)
            self.setFocusProxy(button)
            return
        self._group.setExclusive(False)
        for other in self._values.values():
            other.setChecked(False)
        self._group.setExclusive(True)

    def button(self, value: str) -> QPushButton:
        """Return the button of one value."""
        return self._values[value]

    def _button(self, text: str) -> QPushButton:
        button = QPushButton(text, self)
        button.setCheckable(True)
        button.setAutoDefault(False)
        button.setProperty("segment", True)
        button.setAccessibleName(f"{self._name}: {text}")
        button.setSizePolicy(QSizePolicy.Policy.MinimumExpanding, QSizePolicy.Policy.Fixed)
        self._group.addButton(button)
        self._row.addWidget(button, 1)
        return button

    def _clicked(self, button: QPushButton) -> None:
        for value, known in self._values.items():
            if known is button:
                self.setFocusProxy(button)
                self.chosen.emit(value)
