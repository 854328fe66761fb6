"""What the program remembers between two starts, kept in memory and written behind the person's back."""

from collections.abc import Iterator, MutableMapping
from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import QObject, QTimer, Signal

from rigbuilder.store.errors import StoreError
from rigbuilder.store.settings import Settings, SettingsFile
from rigbuilder.units.systems import UnitSystem

_WRITE_AFTER_MS = 800
_FOLD = "fold."


class Preferences(QObject):
    """The settings; each change is written soon after, and at the latest by ``flush``."""

    recent_changed = Signal(object)  # tuple of paths

    def __init__(self, file: SettingsFile, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._file = file
        self._settings, self.remarks = file.load()
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_WRITE_AFTER_MS)
        self._timer.timeout.connect(self._write)

    @property
    def units(self) -> UnitSystem:
        """Return the unit system in which figures are read."""
        return UnitSystem(self._settings.unit_system)

    @units.setter
    def units(self, system: UnitSystem) -> None:
        self._change(replace(self._settings, unit_system=str(system)))

    @property
    def theme(self) -> str:
        """Return ``system``, ``light`` or ``dark``."""
        return self._settings.theme

    @theme.setter
    def theme(self, theme: str) -> None:
        self._change(replace(self._settings, theme=theme))

    @property
    def recent(self) -> tuple[Path, ...]:
        """Return the cards opened last, the latest first."""
        return tuple(map(Path, self._settings.recent))

    def opened(self, path: Path) -> None:
        """Put a card first among the recent ones."""
        self._change(self._settings.with_recent(path))
        self.recent_changed.emit(self.recent)

    def forget_recent(self) -> None:
        """Empty the list of recent cards; the cards stay."""
        self._change(replace(self._settings, recent=()))
        self.recent_changed.emit(())

    def recall(self, name: str, default: str = "") -> str:
        """Return what the window wanted to find again under ``name``."""
        return self._settings.window.get(name, default)

    def remember(self, name: str, text: str) -> None:
        """Keep a text under ``name`` for the window."""
        self._change(replace(self._settings, window={**self._settings.window, name: text}))

    def flush(self) -> None:
        """Write now what is not yet written."""
        if self._timer.isActive():
            self._timer.stop()
            self._write()

    def _change(self, settings: Settings) -> None:
        if settings != self._settings:
            self._settings = settings
            self._timer.start()

    def _write(self) -> None:
        try:
            self._file.save(self._settings)
        except StoreError as trouble:
            self.remarks = (*self.remarks, str(trouble))


class Folds(MutableMapping[str, bool]):
    """Which sections are open, as a mapping that lives in the preferences."""

    def __init__(self, preferences: Preferences) -> None:
        self._preferences = preferences
        self._known: dict[str, bool] = {}

    def __getitem__(self, key: str) -> bool:
        text = self._preferences.recall(_FOLD + key)
        if not text:
            raise KeyError(key)
        return text == "open"

    def __setitem__(self, key: str, value: bool) -> None:
        self._known[key] = value
        self._preferences.remember(_FOLD + key, "open" if value else "folded")

    def __delitem__(self, key: str) -> None:
        del self._known[key]
        self._preferences.remember(_FOLD + key, "")

    def __iter__(self) -> Iterator[str]:
        return iter(self._known)

    def __len__(self) -> int:
        return len(self._known)
