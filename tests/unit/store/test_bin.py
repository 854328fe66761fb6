import os
from pathlib import Path

import pytest

from rigbuilder.store import atomic, syscalls
from rigbuilder.store.bin import Bin
from rigbuilder.store.errors import NotAFile, StoreError


def test_broken_cards_are_kept_byte_for_byte(tmp_path) -> None:
    data = bytes(range(256)) + b"\n\n\0"
    card = tmp_path / "cut.rigcard"
    card.write_bytes(data)
    waste = Bin(tmp_path / "bin")
    binned = waste.put(card)
    assert binned.document is None
    assert binned.name == "cut"
    assert waste.restore(binned, tmp_path) == card
    assert card.read_bytes() == data
    assert waste.entries() == []


def test_the_last_deleted_comes_first(tmp_path) -> None:
    waste = Bin(tmp_path / "bin")
    for number in range(12):
        card = tmp_path / f"card {number}.rigcard"
        card.write_text("x")
        waste.put(card)
    assert [entry.name for entry in waste.entries()] == [f"card {number}" for number in range(11, -1, -1)]


def test_a_card_whose_folder_is_gone_comes_back_elsewhere(tmp_path) -> None:
    folder = tmp_path / "gone"
    folder.mkdir()
    (folder / "frog.rigcard").write_text("x")
    waste = Bin(tmp_path / "bin")
    binned = waste.put(folder / "frog.rigcard")
    folder.rmdir()
    assert waste.restore(binned, tmp_path / "cards") == tmp_path / "cards" / "frog.rigcard"


def test_names_that_are_no_text_come_back(tmp_path) -> None:
    card = Path(os.fsdecode(os.fsencode(tmp_path) + b"/\xff\xfe.rigcard"))
    card.write_text("x")
    waste = Bin(tmp_path / "bin")
    binned = waste.put(card)
    assert binned.name.isprintable()
    assert waste.restore(waste.entries()[0], tmp_path) == card


def test_a_link_is_deleted_as_a_link(tmp_path) -> None:
    (tmp_path / "real.rigcard").write_text("x")
    (tmp_path / "link.rigcard").symlink_to("real.rigcard")
    Bin(tmp_path / "bin").put(tmp_path / "link.rigcard")
    assert (tmp_path / "real.rigcard").read_text() == "x"
    assert not os.path.lexists(tmp_path / "link.rigcard")


def test_what_cannot_be_deleted_stays(tmp_path, monkeypatch) -> None:
    waste = Bin(tmp_path / "bin")
    (tmp_path / "folder.rigcard").mkdir()
    with pytest.raises(NotAFile):
        waste.put(tmp_path / "folder.rigcard")
    card = tmp_path / "frog.rigcard"
    card.write_text("x")

    def full(handle, data):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(syscalls, "write", full)
    with pytest.raises(StoreError, match="disk is full"):
        waste.put(card)
    assert card.read_text() == "x"
    assert waste.entries() == []


def test_a_card_that_changes_while_being_deleted_stays(tmp_path, monkeypatch) -> None:
    card = tmp_path / "frog.rigcard"
    card.write_text("old")
    waste = Bin(tmp_path / "bin")
    real = atomic.write

    def meddle(path, data, **options):
        card.write_text("new")
        return real(path, data, **options)

    monkeypatch.setattr(atomic, "write", meddle)
    with pytest.raises(StoreError, match="changed while"):
        waste.put(card)
    assert card.read_text() == "new"
    assert waste.entries() == []


def test_damaged_entries_hide_no_others(tmp_path) -> None:
    waste = Bin(tmp_path / "bin")
    card = tmp_path / "frog.rigcard"
    card.write_text("x")
    waste.put(card)
    (tmp_path / "bin" / "00000009-aa.binned").write_bytes(b"{}")
    (tmp_path / "bin" / "nonsense.binned").write_bytes(b"\0")
    (tmp_path / "bin" / "notes.txt").write_text("mine")
    assert [entry.name for entry in waste.entries()] == ["frog"]
    assert len(list((tmp_path / "bin").iterdir())) == 4


def test_an_interrupted_deletion_or_return_loses_nothing(tmp_path, monkeypatch) -> None:
    card = tmp_path / "frog.rigcard"
    card.write_text("x")
    waste = Bin(tmp_path / "bin")

    def stop(path):
        raise KeyboardInterrupt

    monkeypatch.setattr(atomic, "remove", stop)
    with pytest.raises(KeyboardInterrupt):
        waste.put(card)
    assert card.read_text() == "x"
    monkeypatch.undo()
    binned = waste.entries()[0]
    card.unlink()
    monkeypatch.setattr(atomic, "remove", stop)
    with pytest.raises(KeyboardInterrupt):
        waste.restore(binned, tmp_path)
    assert card.read_text() == "x"
    assert len(waste.entries()) == 1
