"""A row that goes on below where it would be too wide."""

from PySide6.QtWidgets import QSizePolicy, QWidget

from rigbuilder.views.controls.flow_layout import FlowLayout


class FlowRow(QWidget):
    """Widgets beside each other, as many as the width allows."""

    def __init__(self, gap: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._flow = FlowLayout(self, gap=gap)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def add(self, widget: QWidget) -> None:
        """Put one more widget at the end."""
        self._flow.addWidget(widget)

    def remove(self, widget: QWidget) -> None:
        """Take a widget out of the row."""
        self._flow.removeWidget(widget)
