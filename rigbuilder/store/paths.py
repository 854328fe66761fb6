"""Where the program keeps things, and what is wrong with those places if something is."""

import os
from dataclasses import dataclass
from pathlib import Path

import platformdirs

from rigbuilder.store.atomic import make_folder
from rigbuilder.store.errors import Denied, FolderGone, StoreError, explain, shown

APP = "Rigbuilder"


@dataclass(frozen=True, slots=True)
class Places:
    """The folders of one user. ``troubles`` says, for a person, which cannot be used and why."""

    data: Path
    config: Path
    state: Path
    cache: Path
    troubles: tuple[StoreError, ...] = ()

    @property
    def cards(self) -> Path:
        """Where cards lie unless the person chose another folder."""
        return self.data / "cards"

    @property
    def history(self) -> Path:
        """Where earlier versions lie."""
        return self.data / "history"

    @property
    def bin(self) -> Path:
        """Where deleted cards lie."""
        return self.data / "bin"

    @property
    def lessons(self) -> Path:
        """Where the person's own lessons lie."""
        return self.data / "lessons"

    @property
    def progress(self) -> Path:
        """Where the progress of juniors lies."""
        return self.data / "progress"

    @property
    def drafts(self) -> Path:
        """Where unsaved work lies."""
        return self.state / "drafts"

    @property
    def settings(self) -> Path:
        """The file of settings."""
        return self.config / "settings.json"

    @property
    def house(self) -> Path:
        """The coach's house file."""
        return self.config / "house.toml"


def find_places() -> Places:
    """Find the folders by the system's rules and make them for the user alone.

    Whatever the surroundings look like, this returns: a place that cannot be
    used stands in ``troubles``, and the program starts without it.
    """
    dirs = platformdirs.PlatformDirs(APP, appauthor=False)
    found: dict[str, Path] = {}
    troubles: list[StoreError] = []
    for name in ("data", "config", "state", "cache"):
        try:
            place = Path(getattr(dirs, f"user_{name}_dir"))
        except RuntimeError:
            place = Path(f"~/{APP}/{name}")
        found[name] = place
        trouble = _trouble_with(place)
        if trouble is not None:
            troubles.append(trouble)
    return Places(found["data"], found["config"], found["state"], found["cache"], tuple(troubles))


def _trouble_with(place: Path) -> StoreError | None:
    if not place.is_absolute():
        return FolderGone(
            place,
            f"The folder “{shown(place)}” has no full path: the home folder is not known.",
            "Set HOME to your home folder and start again.",
        )
    try:
        make_folder(place)
        next(place.iterdir(), None)
    except StoreError as trouble:
        return trouble
    except OSError as error:
        return explain(error, place, "listed")
    if not os.access(place, os.W_OK | os.X_OK):
        return Denied(
            place,
            f"Nothing can be saved in “{shown(place)}”.",
            "Ask for permission, or choose another place.",
        )
    return None
