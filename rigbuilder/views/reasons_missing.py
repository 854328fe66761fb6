"""The sheet in place of reasons while the card cannot be read: what is missing, with links."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from rigbuilder.views.controls.buttons import LinkButton
from rigbuilder.views.controls.card import Card
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.theme_look import Look

Gap = tuple[str, str, str]
"""Path of a field, its name, and what is missing or wrong there."""


class MissingCard(Card):
    """Says what the review still needs."""

    field_wanted = Signal(str)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, severity="note", parent=parent)
        self._gaps: tuple[Gap, ...] = ()
        self._rows: list[QWidget] = []
        self.links: list[LinkButton] = []
        self.column.addWidget(text_label("The card cannot be read yet", "strong", wrap=True, parent=self))
        self.column.addWidget(
            text_label("The review begins as soon as this is there:", wrap=True, parent=self)
        )
        self.setAccessibleName("The card cannot be read yet")
        self.hide()

    def set_gaps(self, gaps: Sequence[Gap]) -> None:
        """Show what is missing; the sheet is hidden while nothing is."""
        if tuple(gaps) == self._gaps:
            return
        self._gaps = tuple(gaps)
        for row in self._rows:
            row.hide()
            row.deleteLater()
        self.links = []
        self._rows = [self._row(*gap) for gap in gaps]
        self.setAccessibleDescription("; ".join(f"{name}: {words}" for _, name, words in gaps))
        self.setVisible(bool(gaps))

    def _row(self, path: str, name: str, words: str) -> QWidget:
        row = QWidget(self)
        column = QVBoxLayout(row)
        column.setContentsMargins(0, 4, 0, 0)
        column.setSpacing(0)
        link = LinkButton(name, tip=f"Go to the field: {name}", parent=row)
        link.clicked.connect(lambda: self.field_wanted.emit(path))
        column.addWidget(link)
        column.addWidget(text_label(words, "caption", wrap=True, parent=row))
        self.column.addWidget(row)
        self.links.append(link)
        row.show()
        return row
