"""Real full and read-only disks, where the machine lets an administrator mount them."""

import os
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore
from rigbuilder.store.drafts import Drafts
from rigbuilder.store.errors import DiskFull, ReadOnly, StoreError
from rigbuilder.store.history import History
from rigbuilder.store.importing import import_cards
from rigbuilder.store.sets import export_set


def _mount(*arguments: str) -> None:
    if os.geteuid() != 0 or shutil.which("mount") is None:
        pytest.skip("mounting a disk needs an administrator")
    done = subprocess.run(["mount", *arguments], capture_output=True, text=True, check=False)
    if done.returncode != 0:
        pytest.skip(f"this machine does not mount: {done.stderr.strip()}")


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of 64 kB."""
    disk = tmp_path / "disk"
    disk.mkdir()
    _mount("-t", "tmpfs", "-o", "size=64k", "tmpfs", str(disk))
    yield disk
    subprocess.run(["umount", str(disk)], check=True)


def store_on(disk: Path, aside: Path) -> CardStore:
    return CardStore(disk, history=History(aside / "history"), bin_=Bin(aside / "bin"))


def test_a_card_that_does_not_fit_leaves_the_old_one_and_a_sentence(small_disk, tmp_path, make_card) -> None:
    store = store_on(small_disk, tmp_path)
    saved = store.create(make_card(notes="x" * 30_000))
    with pytest.raises(DiskFull, match=r"the disk is full \([0-9]+ kB free\)") as trouble:
        store.save(make_card(notes="x" * 60_000), saved.path, expected=saved.fingerprint)
    assert "save in another place" in str(trouble.value)
    assert store.load(saved.path).document == saved.document
    assert [path.name for path in small_disk.iterdir()] == [saved.path.name]
    elsewhere = store.create(make_card(notes="x" * 60_000), tmp_path / "elsewhere")
    assert store.load(elsewhere.path).document["notes"] == "x" * 60_000
    store.save(make_card(notes="short"), saved.path, expected=saved.fingerprint)


def test_nothing_half_is_left_on_a_full_disk(small_disk, make_card) -> None:
    cards = [make_card(id=f"a{number}", notes="x" * 15_000) for number in range(6)]
    with pytest.raises(DiskFull):
        import_cards(cards, small_disk)
    with pytest.raises(DiskFull):
        export_set(cards, small_disk / "club.rigset")
    with pytest.raises(DiskFull):
        Drafts(small_disk).write(make_card(notes="x" * 80_000), None, None)
    assert list(small_disk.iterdir()) == []


def test_a_history_on_a_full_disk_does_not_hold_up_the_card(small_disk, tmp_path, make_card) -> None:
    store = CardStore(tmp_path / "cards", history=History(small_disk), bin_=Bin(tmp_path / "bin"))
    saved = store.create(make_card(notes="x" * 80_000))
    assert "the disk is full" in saved.notes[0]
    assert store.load(saved.path).document == saved.document


def test_a_read_only_disk_is_told_before_and_when_saving(tmp_path, make_card) -> None:
    disk = tmp_path / "disk"
    disk.mkdir()
    saved = store_on(disk, tmp_path).create(make_card())
    _mount("--bind", str(disk), str(disk))
    try:
        subprocess.run(["mount", "-o", "remount,bind,ro", str(disk)], check=True)
        store = store_on(disk, tmp_path)
        loaded = store.load(saved.path)
        assert not loaded.writable
        with pytest.raises(ReadOnly):
            store.save(make_card(notes="x"), saved.path, expected=loaded.fingerprint)
        with pytest.raises(ReadOnly, match="read-only"):
            store.create(make_card())
        with pytest.raises(StoreError):
            store.delete(saved.path)
        assert store.bin.entries() == []
        assert store.load(saved.path).document == make_card()
    finally:
        subprocess.run(["umount", str(disk)], check=True)
