"""The file of pull tests: kept as a whole, refused with a word where it is damaged."""

import json
from pathlib import Path

import pytest

from rigbuilder.model.pulltests import PullSeries, read_series
from rigbuilder.reference.load import load
from rigbuilder.store import syscalls
from rigbuilder.store.errors import CardError, NewerVersion, StoreError
from rigbuilder.store.pulltests import FORMAT, NAME, PullTestFile


def pulls(knot: str | None = "palomar") -> PullSeries:
    entry = {"type": "nylon", "test": "10 lb", "knot": knot, "readings": ["8.2 lb", "3.7 kg"]}
    return read_series(entry, load())


@pytest.fixture
def file(tmp_path: Path) -> PullTestFile:
    return PullTestFile(tmp_path / "data" / NAME, load())


def test_without_a_file_there_are_no_tests(file: PullTestFile) -> None:
    assert file.load() == ()


def test_what_is_saved_is_loaded(file: PullTestFile) -> None:
    kept = (pulls(), pulls(None))
    assert file.save(kept) == ()
    assert file.load() == kept
    assert json.loads(file.path.read_text(encoding="utf-8"))["format"] == FORMAT


def test_a_failed_save_leaves_the_old_file(file: PullTestFile, monkeypatch: pytest.MonkeyPatch) -> None:
    file.save([pulls()])

    def full(*_: object) -> int:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(syscalls, "write", full)
    with pytest.raises(StoreError):
        file.save([pulls(), pulls(None)])
    monkeypatch.undo()
    assert file.load() == (pulls(),)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"format": "other"}, "format"),
        ({"series": "none"}, "series"),
        ({"series": [{"type": "nylon"}]}, "series 1, readings"),
        ({"series": [{"type": "nilon", "test": "10 lb", "readings": ["8 lb"]}]}, "series 1, type"),
    ],
)
def test_damage_is_named(file: PullTestFile, change: dict[str, object], words: str) -> None:
    file.save([pulls()])
    told = json.loads(file.path.read_text(encoding="utf-8")) | change
    file.path.write_text(json.dumps(told), encoding="utf-8")
    with pytest.raises(CardError) as error:
        file.load()
    assert words in str(error.value)


def test_a_newer_file_is_left_alone(file: PullTestFile) -> None:
    file.save([pulls()])
    told = json.loads(file.path.read_text(encoding="utf-8")) | {"version": 2}
    file.path.write_text(json.dumps(told), encoding="utf-8")
    with pytest.raises(NewerVersion):
        file.load()
