import json
import random

import pytest

from rigbuilder.store.errors import StoreError
from rigbuilder.store.settings import LONGEST_RECENT, Settings, SettingsFile


@pytest.fixture
def file(tmp_path) -> SettingsFile:
    return SettingsFile(tmp_path / "config" / "settings.json")


def test_settings_come_back(file, tmp_path) -> None:
    assert file.load() == (Settings(), ())
    settings = Settings(unit_system="kg·mm", theme="dark", window={"geometry": "AdnQ"}).with_recent(
        tmp_path / "a"
    )
    file.save(settings)
    assert file.load() == (settings, ())


def test_recent_cards_are_few_and_each_once(tmp_path) -> None:
    settings = Settings()
    card = tmp_path / "frog.rigcard"
    card.touch()
    (tmp_path / "link.rigcard").symlink_to(card)
    for number in range(20):
        settings = settings.with_recent(tmp_path / f"{number}.rigcard")
    settings = settings.with_recent(card).with_recent(tmp_path / "x" / ".." / "19.rigcard")
    assert len(settings.recent) == LONGEST_RECENT
    settings = settings.with_recent(tmp_path / "link.rigcard")
    assert settings.recent[0].endswith("link.rigcard")
    assert not any(path.endswith("frog.rigcard") for path in settings.recent)
    assert sum("19.rigcard" in path for path in settings.recent) == 1


@pytest.mark.parametrize("text", ["", "{", "[]", "\0\0", '{"theme": NaN}', "nonsense"])
def test_damage_costs_the_defaults_and_a_word(file, text) -> None:
    file.path.parent.mkdir()
    file.path.write_text(text)
    settings, notes = file.load()
    assert settings == Settings()
    assert "settings.json.bad" in notes[0]
    assert file.path.with_name("settings.json.bad").read_text() == text
    file.save(settings)
    assert file.load() == (Settings(), ())


@pytest.mark.parametrize(
    "told",
    [
        {"unit_system": "furlongs", "theme": "dark"},
        {"theme": "dark", "recent": "none"},
        {"theme": "dark", "recent": [1]},
        {"theme": "dark", "window": {"geometry": 3}},
        {"theme": "dark", "label_convention": None, "newer": True},
        {"theme": "dark", "unit_system": ["kg·mm"]},
    ],
)
def test_one_senseless_entry_spoils_no_other(file, told) -> None:
    file.path.parent.mkdir()
    file.path.write_text(json.dumps(told))
    assert file.load() == (Settings(theme="dark"), ())


def test_bit_flips_never_stop_a_start(file) -> None:
    file.save(Settings(unit_system="kg·mm", recent=("/a", "/b"), window={"geometry": "AdnQ"}))
    data = file.path.read_bytes()
    chance = random.Random(3)
    for _ in range(100):
        flipped = bytearray(data)
        flipped[chance.randrange(len(data))] ^= 1 << chance.randrange(8)
        file.path.write_bytes(flipped)
        settings, _ = file.load()
        assert isinstance(settings, Settings)


def test_settings_that_cannot_be_read_or_written(file) -> None:
    file.path.mkdir(parents=True)
    settings, notes = file.load()
    assert settings == Settings()
    assert "is a folder" in notes[0]
    with pytest.raises(StoreError):
        file.save(settings)
