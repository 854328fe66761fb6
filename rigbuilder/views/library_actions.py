"""What can be done in the library as data: words, keys, drawing; buttons, menu and keys are made from it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QHBoxLayout, QMenu, QToolButton, QWidget

from rigbuilder.views.icons import icon
from rigbuilder.views.theme_look import Look


@dataclass(frozen=True, slots=True)
class Act:
    """One action. ``needs`` is the least number of cards it acts on, ``most`` the greatest (0: any)."""

    name: str
    text: str = ""
    keys: str = ""
    drawing: str = ""
    needs: int = 0
    most: int = 0
    button: bool = False
    whole: bool = False  # only for cards that can be read


ACTS = (
    Act("open", "&Open on the bench", "", "open", 1, 1, button=True, whole=True),
    Act("rename", "Re&name", "F2", "", 1, 1, whole=True),
    Act("duplicate", "D&uplicate", "Ctrl+D", "duplicate", 1, button=True, whole=True),
    Act("tags", "&Tags…", "Ctrl+T", "pin", 1, button=True, whole=True),
    Act("compare", "&Compare", "Ctrl+K", "compare", 2, 3, button=True, whole=True),
    Act("bench", "Compare with the &bench", "Ctrl+Shift+K", "", 1, 2, whole=True),
    Act(""),
    Act("copy", "Copy as te&xt", "Ctrl+Shift+C", "copy", 1, whole=True),
    Act("paste", "&Paste a card", "Ctrl+Shift+V", "card"),
    Act("export", "&Export…", "Ctrl+E", "export", 1, button=True, whole=True),
    Act("import", "&Import…", "Ctrl+I", "card", button=True),
    Act(""),
    Act("delete", "&Delete", "Del", "bin", 1, button=True),
    Act("undo", "T&ake back", "Ctrl+Z", "undo", button=True),
    Act("redo", "Do a&gain", "Ctrl+Shift+Z", "redo"),
    Act(""),
    Act("find", "&Find", "Ctrl+F", "search"),
    Act("folder", "Another fo&lder…", "Ctrl+L"),
)


class LibraryActions(QObject):
    """The actions by name; each is on only while it makes sense."""

    def __init__(self, look: Look, over: QWidget) -> None:
        super().__init__(over)
        self._look = look
        self._made: dict[str, QAction] = {}
        for act in ACTS:
            if act.name:
                self._made[act.name] = self._make(act, over)
        look.changed.connect(lambda _: self._draw())
        self._draw()

    def __getitem__(self, name: str) -> QAction:
        return self._made[name]

    def connect_all(self, verbs: Mapping[str, Callable[[], object]]) -> None:
        """Connect every action with what it does."""
        for name, verb in verbs.items():
            self._made[name].triggered.connect(lambda _=False, verb=verb: verb())

    def allow(self, chosen: int, broken: int, *, undo: bool, redo: bool) -> None:
        """Switch the actions on and off for so many chosen cards, some of them broken."""
        for act in ACTS:
            if act.name:
                fits = chosen >= act.needs and not (act.most and chosen > act.most)
                self._made[act.name].setEnabled(fits and not (act.whole and broken))
        self._made["undo"].setEnabled(undo)
        self._made["redo"].setEnabled(redo)

    def menu(self, parent: QWidget) -> QMenu:
        """Return a menu of all of them."""
        menu = QMenu(parent)
        for act in ACTS:
            if act.name:
                menu.addAction(self._made[act.name])
            else:
                menu.addSeparator()
        return menu

    def buttons(self, parent: QWidget) -> QHBoxLayout:
        """Return a row of buttons for the most wanted."""
        row = QHBoxLayout()
        for act in (act for act in ACTS if act.button):
            button = QToolButton(parent)
            button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
            button.setDefaultAction(self._made[act.name])
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            button.setAccessibleName(act.text.replace("&", "").rstrip("…"))
            row.addWidget(button)
        row.addStretch(1)
        return row

    def _make(self, act: Act, over: QWidget) -> QAction:
        action = QAction(act.text, self)
        action.setObjectName(f"library:{act.name}")
        if act.keys:
            action.setShortcut(QKeySequence(act.keys))
        action.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        action.setIconText(act.text.replace("&", ""))
        over.addAction(action)
        return action

    def _draw(self) -> None:
        for act in ACTS:
            if act.drawing:
                self._made[act.name].setIcon(icon(act.drawing, self._look.theme))
