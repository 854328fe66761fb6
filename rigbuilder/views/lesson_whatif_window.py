"""What-if for the card on the main bench, in a window beside it."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QCloseEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import QVBoxLayout, QWidget

from rigbuilder.views.lesson_whatif import WhatIfPanel


class WhatIfWindow(QWidget):
    """Holds the panel; the bench's drawing and questions follow. Closing it takes the look away again."""

    def __init__(self, panel: WhatIfPanel, parent: QWidget | None = None) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self.panel = panel
        self.setObjectName("what-if-window")
        self.setWindowTitle("What if — Rigbuilder")
        column = QVBoxLayout(self)
        column.addWidget(panel)
        self.resize(680, 260)
        QShortcut(QKeySequence(Qt.Key.Key_Escape), self, self.close)

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 (Qt's name)
        """Stop looking ahead."""
        self.panel.back.click()
        event.accept()
