"""Windows that explain: the keys, the help on a field, the program itself."""

import platform

from PySide6.QtCore import Qt, qVersion
from PySide6.QtGui import QGuiApplication, QKeySequence
from PySide6.QtWidgets import QDialog, QGridLayout, QMenu, QMenuBar, QScrollArea, QVBoxLayout, QWidget

from rigbuilder import __version__
from rigbuilder.model.fields import BY_PATH
from rigbuilder.viewmodels.form import FormModel
from rigbuilder.viewmodels.glossary import told, words_in
from rigbuilder.views.controls.ask import Answer, Ask
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.form_help import expects, help_for

_FURTHER = (
    ("Go to the next control, or back", "Tab, Shift+Tab"),
    ("Choose among options side by side", "Arrow keys"),
    ("Open a list of choices", "Alt+Down"),
    ("Open a menu", "Alt and the letter underlined"),
    ("Close a question without answering", "Esc"),
)


class KeysDialog(QDialog):
    """Every key of the window, menu by menu."""

    def __init__(self, bar: QMenuBar, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Keys")
        sheet = QWidget()
        sheet.setProperty("plain", True)
        grid = QGridLayout(sheet)
        grid.setColumnStretch(0, 1)
        grid.setHorizontalSpacing(24)
        for entry in bar.actions():
            menu = entry.menu()
            if isinstance(menu, QMenu):
                self._add_menu(grid, entry.text(), menu)
        grid.addWidget(text_label("Everywhere", "heading"), grid.rowCount(), 0)
        for what, keys_text in _FURTHER:
            self._add(grid, what, keys_text)
        area = QScrollArea()
        area.setAccessibleName("Keys")
        area.setWidget(sheet)
        area.setWidgetResizable(True)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setMinimumWidth(sheet.sizeHint().width() + area.verticalScrollBar().sizeHint().width())
        close = ActionButton("Close", weight="first", parent=self)
        close.setDefault(True)
        close.clicked.connect(self.accept)
        column = QVBoxLayout(self)
        column.addWidget(area, 1)
        column.addWidget(close, 0, Qt.AlignmentFlag.AlignRight)
        room = self.screen().availableGeometry().height() - 80
        self.resize(self.sizeHint().width(), min(room, self.fontMetrics().lineSpacing() * 32))

    def _add_menu(self, grid: QGridLayout, title: str, menu: QMenu) -> None:
        grid.addWidget(text_label(_plain(title), "heading"), grid.rowCount(), 0)
        for action in menu.actions():
            keys = [key.toString(QKeySequence.SequenceFormat.NativeText) for key in action.shortcuts()]
            if keys:
                self._add(grid, _plain(action.text()), " or ".join(dict.fromkeys(keys)))

    def _add(self, grid: QGridLayout, what: str, keys: str) -> None:
        row = grid.rowCount()
        grid.addWidget(text_label(what), row, 0)
        grid.addWidget(text_label(keys, "strong"), row, 1)


def _plain(text: str) -> str:
    return text.replace("&", "")


def tell_field(ask: Ask, model: FormModel, path: str) -> None:
    """Say what a field is for, what may stand in it and what stands in for it."""
    state = model.state(path)
    parts = [help_for(path), expects(path)]
    if state.instead:
        parts.append(f"{state.placeholder[0].upper()}{state.placeholder[1:]}. {state.why}")
    if state.problem:
        parts.append(state.problem)
    parts.extend(told(words_in([BY_PATH[path].label, *parts], model.bench.reference)))
    ask.tell(BY_PATH[path].label, parts[0], detail="\n".join(parts[1:]))


def tell_about(ask: Ask, folders: list[tuple[str, str]]) -> None:
    """Say which program this is and where it keeps things; the details can be copied."""
    details = [
        f"Rigbuilder {__version__}",
        f"Python {platform.python_version()}, Qt {qVersion()}, {platform.platform()}",
        *(f"{name}: {place}" for name, place in folders),
        "Licence: MIT. Qt for Python is used under the LGPL, version 3.",
    ]
    answers = [Answer("copy", "Copy details"), Answer("close", "Close")]
    text = f"Rigbuilder {__version__}\nA bench for building a fishing rig and understanding it."
    if ask.choose("About Rigbuilder", text, answers, detail="\n".join(details[1:])) == "copy":
        QGuiApplication.clipboard().setText("\n".join(details))
