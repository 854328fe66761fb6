"""The words of the trade, to be searched."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QLineEdit, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.glossary import entries
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.theme_look import Look


class GlossaryDialog(QDialog):
    """A search field, the words, and the meaning of the one chosen."""

    def __init__(self, bench: Bench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Words of the trade")
        self._bench = bench
        self.search = QLineEdit(self)
        self.search.setAccessibleName("Find a word")
        self.search.setPlaceholderText("Find a word")
        self.search.setClearButtonEnabled(True)
        self.words = QListWidget(self)
        self.words.setAccessibleName("Words of the trade")
        self.words.setUniformItemSizes(True)
        self.meaning = text_label("", wrap=True, parent=self)
        self.meaning.setMinimumHeight(self.fontMetrics().lineSpacing() * 4)
        self.meaning.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.meaning.setAccessibleName("Meaning")
        self.known = text_label("How we know: common practice.", "caption", parent=self)
        close = ActionButton("Close", weight="first", parent=self)
        close.setDefault(True)
        close.clicked.connect(self.accept)
        column = QVBoxLayout(self)
        column.setSpacing(look.theme.px(8))
        for widget in (self.search, self.words, self.meaning, self.known):
            column.addWidget(widget, 1 if widget is self.words else 0)
        column.addWidget(close, 0, Qt.AlignmentFlag.AlignRight)
        self.search.textChanged.connect(self.look_up)
        self.words.currentItemChanged.connect(lambda *_: self._tell())
        room = self.screen().availableGeometry()
        self.resize(min(look.theme.px(520), room.width() - 40), min(look.theme.px(520), room.height() - 80))
        self.look_up("")

    def look_up(self, wanted: str) -> None:
        """List the words that hold what is wanted, in the word or in its meaning."""
        self.words.clear()
        for word, meaning in entries(self._bench.reference, wanted):
            item = QListWidgetItem(word)
            item.setData(Qt.ItemDataRole.UserRole, meaning)
            item.setData(Qt.ItemDataRole.AccessibleDescriptionRole, meaning)
            self.words.addItem(item)
        self.words.setCurrentRow(0)
        self._tell()

    def _tell(self) -> None:
        item = self.words.currentItem()
        found = None if item is None else item.data(Qt.ItemDataRole.UserRole)
        self.meaning.setText("No such word here." if found is None else str(found))
        self.meaning.setAccessibleDescription(self.meaning.text())
