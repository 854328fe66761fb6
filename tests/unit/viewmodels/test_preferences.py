"""What is remembered between two starts, whatever happened to the file."""

from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from rigbuilder.store.settings import SettingsFile
from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.preferences import Folds, Preferences

pytestmark = pytest.mark.usefixtures("qapp")


def _at(path: Path) -> Preferences:
    return Preferences(SettingsFile(path))


def test_choices_come_back_at_the_next_start(tmp_path: Path) -> None:
    path = tmp_path / "deep" / "settings.json"
    first = _at(path)
    first.units, first.theme = UnitSystem.METRIC, "dark"
    first.remember("zoom", "1.25")
    first.opened(tmp_path / "a.rigcard")
    first.flush()
    again = _at(path)
    assert (again.units, again.theme, again.recall("zoom")) == (UnitSystem.METRIC, "dark", "1.25")
    assert again.recent == (tmp_path / "a.rigcard",)


def test_changes_are_written_without_being_asked(tmp_path: Path, qtbot: QtBot) -> None:
    path = tmp_path / "settings.json"
    preferences = _at(path)
    preferences.theme = "light"
    qtbot.waitUntil(path.exists, timeout=3000)


def test_damage_costs_the_defaults_and_a_word(tmp_path: Path) -> None:
    path = tmp_path / "settings.json"
    path.write_text("{")
    preferences = _at(path)
    assert preferences.theme == "system"
    assert "damaged" in preferences.remarks[0]


def test_a_place_that_cannot_be_written_stops_nothing(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    preferences = _at(tmp_path / "file" / "settings.json")
    preferences.theme = "dark"
    preferences.flush()
    assert preferences.theme == "dark"
    assert preferences.remarks


def test_recent_cards_are_forgotten_on_demand(tmp_path: Path, qtbot: QtBot) -> None:
    preferences = _at(tmp_path / "settings.json")
    preferences.opened(tmp_path / "a.rigcard")
    with qtbot.waitSignal(preferences.recent_changed):
        preferences.forget_recent()
    assert preferences.recent == ()


def test_folds_are_a_mapping_over_the_preferences(tmp_path: Path) -> None:
    preferences = _at(tmp_path / "settings.json")
    folds = Folds(preferences)
    assert folds.get("lure", True) is True
    folds["lure"] = False
    folds["rod"] = True
    assert (folds["lure"], len(folds), sorted(folds)) == (False, 2, ["lure", "rod"])
    assert Folds(preferences)["rod"] is True
    del folds["lure"]
    assert "lure" not in folds
