"""A window that stands beside the bench."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QVBoxLayout, QWidget

from rigbuilder.views.theme_look import Look

_SIZE = QSize(1240, 720)


class SideWindow(QWidget):
    """A window beside the bench that Esc closes; it goes when the bench goes."""

    def __init__(self, title: str, content: QWidget, bench: QWidget, look: Look, size: QSize = _SIZE) -> None:
        super().__init__(bench, Qt.WindowType.Window)
        self.setWindowTitle(title)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(content)
        room = self.screen().availableGeometry().size()
        self.resize((size * look.zoom).boundedTo(room - QSize(24, 48)))
        QShortcut(QKeySequence(Qt.Key.Key_Escape), self, self.close)

    def bring_up(self) -> None:
        """Show the window and give it the focus."""
        self.show()
        self.activateWindow()
