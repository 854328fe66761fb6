import os
import stat
from pathlib import Path

import pytest

from rigbuilder.store import paths
from rigbuilder.store.paths import find_places


def test_folders_lie_where_the_system_wants_them_and_are_private(home) -> None:
    places = find_places()
    assert places.troubles == ()
    assert places.data == home / ".local/share/Rigbuilder"
    assert places.config == home / ".config/Rigbuilder"
    assert places.state == home / ".local/state/Rigbuilder"
    assert places.cards.parent == places.history.parent == places.bin.parent == places.data
    assert places.drafts.parent == places.state
    assert places.settings.parent == places.house.parent == places.config
    for folder in (places.data, places.config, places.state, places.cache):
        assert stat.S_IMODE(folder.stat().st_mode) == 0o700


def _file(home: Path) -> None:
    (home / ".local/share").mkdir(parents=True)
    (home / ".local/share/Rigbuilder").write_text("mine")


def _file_above(home: Path) -> None:
    (home / ".local").write_text("mine")


def _loop(home: Path) -> None:
    (home / ".local").symlink_to(home / ".local")


def _dangling(home: Path) -> None:
    (home / ".local/share").mkdir(parents=True)
    (home / ".local/share/Rigbuilder").symlink_to("nowhere")


@pytest.mark.parametrize(
    ("prepare", "words"),
    [
        (_file, "is a file, not a folder"),
        (_file_above, "is a file, not a folder"),
        (_loop, "a link that leads to no folder"),
        (_dangling, "a link that leads to no folder"),
    ],
)
def test_what_is_in_the_way_is_told_and_left(home, prepare, words) -> None:
    prepare(home)
    places = find_places()
    assert any(words in str(trouble) for trouble in places.troubles)
    assert all(trouble.advice.endswith(".") for trouble in places.troubles)
    assert all(
        path.read_text() == "mine" for path in home.rglob("*") if path.is_file() and path.stat().st_size
    )


@pytest.mark.parametrize("value", ["", "relative/path", ".", "~/x", "$HOME"])
def test_a_relative_xdg_folder_is_not_used(home, monkeypatch, tmp_path, value) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_DATA_HOME", value)
    places = find_places()
    assert places.data == home / ".local/share/Rigbuilder" or places.troubles
    assert list(tmp_path.iterdir()) == []


def test_without_a_home_the_account_s_is_used_or_the_trouble_told(monkeypatch, tmp_path) -> None:
    monkeypatch.chdir(tmp_path)
    for name in ("DATA", "CONFIG", "STATE", "CACHE"):
        monkeypatch.delenv(f"XDG_{name}_HOME")
    monkeypatch.setattr(paths, "make_folder", lambda folder: None)  # this may be a real home
    monkeypatch.delenv("HOME")
    assert find_places().data.is_absolute()

    class Homeless:
        @property
        def user_data_dir(self) -> str:
            raise RuntimeError("could not determine the home directory")

        user_config_dir = user_state_dir = user_cache_dir = "~/.x"

    monkeypatch.setattr(paths.platformdirs, "PlatformDirs", lambda *names, **options: Homeless())
    troubles = find_places().troubles
    assert len(troubles) == 4
    assert all("Set HOME" in str(trouble) for trouble in troubles)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("code", "words"), [(13, "not allowed"), (30, "read-only"), (28, "disk is full"), (5, "error")]
)
def test_a_folder_that_cannot_be_made(monkeypatch, code, words) -> None:
    def fail(self, *arguments, **options):
        raise OSError(code, os.strerror(code))

    monkeypatch.setattr(Path, "mkdir", fail)
    places = find_places()
    assert len(places.troubles) == 4
    assert all(words in str(trouble) for trouble in places.troubles)


def test_a_folder_that_cannot_be_listed_or_written(monkeypatch) -> None:
    assert find_places().troubles == ()
    monkeypatch.setattr(os, "access", lambda *arguments: False)
    assert all("Nothing can be saved" in str(trouble) for trouble in find_places().troubles)
    monkeypatch.undo()

    def fail(self):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "iterdir", fail)
    assert all("not allowed" in str(trouble) for trouble in find_places().troubles)
