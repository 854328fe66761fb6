"""Buttons by weight: the first action of a place, a plain one, a remedy, a quiet one, a link."""

from typing import Literal

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton, QSizePolicy, QWidget

from rigbuilder.viewmodels.literal import literal

Weight = Literal["first", "plain", "remedy", "quiet"]


class ActionButton(QPushButton):
    """A button whose text is a verb; ``weight`` says how much it asks to be pressed."""

    def __init__(
        self, text: str, *, weight: Weight = "plain", tip: str = "", parent: QWidget | None = None
    ) -> None:
        super().__init__(text, parent)
        self.setProperty("weight", weight)
        self.setAutoDefault(False)
        self.setToolTip(literal(tip))
        self.setAccessibleDescription(tip)


class LinkButton(QPushButton):
    """A button that reads as a link: it leads somewhere and changes nothing."""

    def __init__(self, text: str, *, tip: str = "", parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        self.setProperty("weight", "link")
        self.setFlat(True)
        self.setAutoDefault(False)
        self.setToolTip(literal(tip))
        self.setAccessibleDescription(tip)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
