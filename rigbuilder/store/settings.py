"""What the program remembers between two starts: a small file nobody should ever have to mend."""

import contextlib
import os
from collections.abc import Callable
from dataclasses import asdict, dataclass, field, fields, replace
from pathlib import Path
from typing import Any

from rigbuilder.store import atomic
from rigbuilder.store.codec import CARD_LIMITS, decode, encode
from rigbuilder.store.errors import NotFound, StoreError, shown
from rigbuilder.store.reading import read_file

LONGEST_RECENT = 10

UNIT_SYSTEMS = ("lb·in", "kg·mm")
THEMES = ("system", "light", "dark")


@dataclass(frozen=True, slots=True)
class Settings:
    """The settings; ``window`` holds what the window wants to find again, as text by name."""

    unit_system: str = UNIT_SYSTEMS[0]
    theme: str = THEMES[0]
    label_convention: str = ""
    recent: tuple[str, ...] = ()
    window: dict[str, str] = field(default_factory=dict)

    def with_recent(self, path: Path) -> "Settings":
        """Return the settings with ``path`` first among the recent cards, each real file once."""
        real = os.path.realpath(path)
        others = tuple(other for other in self.recent if os.path.realpath(other) != real)
        return replace(self, recent=(str(path.absolute()), *others)[:LONGEST_RECENT])


def _text(value: Any) -> bool:
    return isinstance(value, str) and len(value) < 100_000


_ACCEPTABLE: dict[str, Callable[[Any], bool]] = {
    "unit_system": lambda value: value in UNIT_SYSTEMS,
    "theme": lambda value: value in THEMES,
    "label_convention": _text,
    "recent": lambda value: isinstance(value, list) and all(map(_text, value)),
    "window": lambda value: isinstance(value, dict) and all(map(_text, value.values())),
}


class SettingsFile:
    """The settings on the disk. Damage never stops a start: it costs the defaults and a word."""

    def __init__(self, path: Path) -> None:
        self.path = path

    def load(self) -> tuple[Settings, atomic.Notes]:
        """Return the settings and remarks; a file that cannot be read is copied to ``.bad`` first."""
        try:
            data, _ = read_file(self.path, limit=CARD_LIMITS.size)
        except NotFound:
            return Settings(), ()
        except StoreError as trouble:
            return Settings(), (f"The settings could not be read; the usual ones are used. {trouble}",)
        try:
            told = decode(data, self.path)
        except StoreError:
            bad = self.path.with_name(self.path.name + ".bad")
            with contextlib.suppress(StoreError):
                atomic.write(bad, data)
            kept = f"The file was kept as “{shown(bad.name)}”."
            return Settings(), (f"The settings were damaged; the usual ones are used. {kept}",)
        return _from_json(told), ()

    def save(self, settings: Settings) -> None:
        """Write the settings.

        Raises:
            StoreError: they could not be written.
        """
        atomic.make_folder(self.path.parent)
        told = asdict(settings)
        # File names need not be valid text; such a one is not remembered.
        told["recent"] = [path for path in settings.recent if path.isprintable()]
        atomic.write(self.path, encode(told))


def _from_json(told: dict[str, Any]) -> Settings:
    """Return the settings in ``told``, each one that makes no sense replaced by its default."""
    good = {
        each.name: told[each.name]
        for each in fields(Settings)
        if each.name in told and _ACCEPTABLE[each.name](told[each.name])
    }
    if "recent" in good:
        good["recent"] = tuple(good["recent"][:LONGEST_RECENT])
    return Settings(**good)
