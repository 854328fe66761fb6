"""The menu bar, built from the actions, with the cards opened last."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtGui import QActionGroup
from PySide6.QtWidgets import QMenu, QMenuBar

from rigbuilder.viewmodels.literal import literal
from rigbuilder.viewmodels.preferences import Preferences
from rigbuilder.views.actions import MENUS, Actions, Spec


def fill_menus(bar: QMenuBar, actions: Actions, recent: QMenu) -> None:
    """Put every action into the menu bar."""
    groups: dict[str, QActionGroup] = {}
    for title, entries in MENUS:
        menu = bar.addMenu(title)
        for entry in entries:
            if isinstance(entry, Spec):
                action = actions[entry.name]
                menu.addAction(action)
                if entry.group:
                    group = groups.setdefault(entry.group, QActionGroup(menu))
                    group.addAction(action)
            elif entry == "recent":
                menu.addMenu(recent)
            elif entry:
                menu.addAction(actions[entry])
            else:
                menu.addSeparator()


class RecentMenu(QMenu):
    """The cards opened last; one that is gone stays in sight, switched off."""

    def __init__(self, preferences: Preferences, open_card: Callable[[Path], object]) -> None:
        super().__init__("Open &recent")
        self._preferences, self._open = preferences, open_card
        self.setToolTipsVisible(True)
        self.aboutToShow.connect(self.fill)

    def fill(self) -> None:
        """List the recent cards as they are now."""
        self.clear()
        recent = self._preferences.recent
        for number, path in enumerate(recent, start=1):
            key = f"&{number % 10} " if number <= 10 else ""
            name = path.name.replace("&", "&&")
            action = self.addAction(f"{key}{name}" + ("" if path.exists() else " (gone)"))
            action.setToolTip(literal(str(path)))
            action.setEnabled(path.exists())
            action.triggered.connect(lambda _=False, path=path: self._open(path))
        if not recent:
            self.addAction("No card was opened yet").setEnabled(False)
            return
        self.addSeparator()
        self.addAction("&Forget these").triggered.connect(self._preferences.forget_recent)
