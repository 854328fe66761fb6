"""The earlier versions of a card: when each was saved, what is different in it, and how it comes back."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from rigbuilder.viewmodels.library_versions import Earlier
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label

_EDGE, _GAP = 8, 3  # pixels: as far from the edge as the card beside it; between two entries


class HistoryPane(QWidget):
    """A list of versions; ``wanted`` carries the one to bring back."""

    wanted = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._versions: Sequence[Earlier] = ()
        self.says = text_label("", "label", wrap=True, parent=self)
        self.list = QListWidget(self)
        self.list.setAccessibleName("Earlier versions")
        self.list.setWordWrap(True)
        self.list.setSpacing(_GAP)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.button = ActionButton(
            "Bring this version back",
            tip="What lies there now becomes an earlier version itself",
            parent=self,
        )
        column = QVBoxLayout(self)
        column.setContentsMargins(_EDGE, _EDGE, _EDGE, 0)
        column.addWidget(self.says)
        column.addWidget(self.list, 1)
        column.addWidget(self.button, 0, Qt.AlignmentFlag.AlignLeft)
        self.button.clicked.connect(self._want)
        self.list.itemActivated.connect(lambda _: self._want())
        self.list.currentRowChanged.connect(lambda _: self._allow())
        self.show_versions(())

    def show_versions(self, versions: Sequence[Earlier]) -> None:
        """Show the earlier versions of a card."""
        self._versions = versions
        self.list.clear()
        for version in versions:
            QListWidgetItem(f"{version.when}\n{version.differs}", self.list)
        self.list.setVisible(bool(versions))
        self.button.setVisible(bool(versions))
        self.says.setText(
            "The last ten versions are kept. Each line says what is different from now."
            if versions
            else "There is no earlier version of this card yet: one is kept at every save."
        )
        self.list.setCurrentRow(0 if versions else -1)
        self._allow()

    def _allow(self) -> None:
        row = self.list.currentRow()
        self.button.setEnabled(0 <= row < len(self._versions) and self._versions[row].document is not None)

    def _want(self) -> None:
        row = self.list.currentRow()
        if self.button.isEnabled() and 0 <= row < len(self._versions):
            self.wanted.emit(self._versions[row])
