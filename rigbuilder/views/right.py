"""What is right: the points where the review has looked and found everything in order."""

from collections.abc import Sequence

from PySide6.QtWidgets import QLabel, QWidget

from rigbuilder.views.controls.card import Card
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.theme_look import Look


class RightCard(Card):
    """A sheet with a tick in the margin and one line for each point in order."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, severity="right", parent=parent)
        self._points: tuple[str, ...] = ()
        self._labels: list[QLabel] = []
        self.setAccessibleName("What is right")
        self.column.addWidget(text_label("What is right", "strong", parent=self))
        self.hide()

    def points(self) -> tuple[str, ...]:
        """Return the points shown."""
        return self._points

    def set_points(self, points: Sequence[str]) -> None:
        """Show these points; the sheet is hidden while there are none."""
        if tuple(points) == self._points:
            return
        self._points = tuple(points)
        for label in self._labels:
            label.hide()
            label.deleteLater()
        self._labels = [text_label(point, wrap=True, parent=self) for point in self._points]
        for label in self._labels:
            self.column.addWidget(label)
            label.show()
        self.setAccessibleDescription("; ".join(self._points))
        self.setVisible(bool(self._points))
