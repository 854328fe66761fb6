import os
import random
import time

import pytest

from rigbuilder.store import atomic, syscalls
from rigbuilder.store.cards import Change
from rigbuilder.store.errors import (
    AlreadyThere,
    CardError,
    ChangedOnDisk,
    FolderGone,
    Gone,
    NewerVersion,
    NotAFile,
    NotFlushed,
    NotFound,
    StoreError,
)


def contents(store):
    return {path.name: path.read_bytes() for path in store.folder.iterdir()}


def test_a_new_card_gets_a_name_from_its_title(store, make_card) -> None:
    saved = store.create(make_card())
    assert saved.path.name == "pad-frog-rod-3-6f0c2d.rigcard"
    loaded = store.load(saved.path)
    assert loaded.document == make_card()
    assert loaded.fingerprint == saved.fingerprint
    assert loaded.writable
    second = store.create(make_card())
    assert second.path.name == "pad-frog-rod-3-6f0c2d-2.rigcard"


def test_a_card_without_identity_gets_one(store, make_card) -> None:
    card = make_card()
    del card["id"]
    saved = store.create(card)
    assert saved.document["id"]
    assert store.load(saved.path).document == saved.document


def test_half_finished_cards_are_saved_as_typed(store, make_card) -> None:
    card = make_card(name="", main={"test": "5o lb?"}, lure=None, extra={"kept": [1, "two", None]})
    assert store.load(store.create(card).path).document == card


def test_unknown_keys_and_values_survive_unchanged(store, tmp_path, golden) -> None:
    path = tmp_path / "v1.rigcard"
    path.write_bytes(golden("v1.rigcard"))
    loaded = store.load(path)
    assert loaded.document["shelf"] == {"row": 3, "colour": "moss"}
    store.save(loaded.document, path, expected=loaded.fingerprint)
    assert path.read_bytes() == golden("v1.rigcard")


def test_saving_over_another_version_is_refused(store, make_card) -> None:
    saved = store.create(make_card())
    theirs = store.save(make_card(notes="theirs"), saved.path, expected=saved.fingerprint)
    with pytest.raises(ChangedOnDisk, match="Compare both"):
        store.save(make_card(notes="mine"), saved.path, expected=saved.fingerprint)
    assert store.load(saved.path).document["notes"] == "theirs"
    mine = store.keep_aside(make_card(notes="mine"), saved.path)
    assert mine.path.name == "pad-frog-rod-3-6f0c2d-mine.rigcard"
    assert mine.document["id"] != make_card()["id"]
    forced = store.save(make_card(notes="mine"), saved.path, expected=theirs.fingerprint)
    assert store.load(forced.path).document["notes"] == "mine"
    kept = [store.history.read(version) for version in store.history.versions(make_card()["id"])]
    assert any(b"theirs" in data for data in kept)


def test_other_bytes_of_same_size_and_time_are_noticed(store, make_card) -> None:
    saved = store.create(make_card(notes="aaaa"))
    before = saved.path.stat()
    saved.path.write_bytes(saved.path.read_bytes().replace(b"aaaa", b"bbbb"))
    os.utime(saved.path, ns=(before.st_atime_ns, before.st_mtime_ns))
    assert store.change(saved.path, saved.fingerprint) is Change.CHANGED
    with pytest.raises(ChangedOnDisk):
        store.save(make_card(notes="mine"), saved.path, expected=saved.fingerprint)


def test_a_touched_file_is_no_change(store, make_card) -> None:
    saved = store.create(make_card())
    for when in (0, time.time() + 10 * 365 * 86400):  # 1970 and ten years ahead
        os.utime(saved.path, (when, when))
        assert store.change(saved.path, saved.fingerprint) is Change.NONE
        store.save(make_card(notes=str(when)), saved.path, expected=saved.fingerprint)
        saved = store.save(make_card(), saved.path, expected=store.load(saved.path).fingerprint)


def test_a_removed_file_is_noticed(store, make_card) -> None:
    saved = store.create(make_card())
    saved.path.unlink()
    assert store.change(saved.path, saved.fingerprint) is Change.GONE
    with pytest.raises(Gone, match="removed or renamed"):
        store.save(make_card(), saved.path, expected=saved.fingerprint)
    again = store.save(make_card(), saved.path, expected=None)
    assert store.load(again.path).document == make_card()


def test_a_vanished_folder_is_named(store, make_card) -> None:
    saved = store.create(make_card())
    saved.path.unlink()
    store.folder.rmdir()
    assert store.change(saved.path, saved.fingerprint) is Change.GONE
    with pytest.raises(FolderGone, match="no longer exists"):
        store.save(make_card(), saved.path, expected=saved.fingerprint)
    with pytest.raises(FolderGone):
        store.load(saved.path)
    assert store.create(make_card()).path.exists()


def test_nothing_is_written_over_an_unexpected_file(store, make_card, tmp_path) -> None:
    mine = tmp_path / "notes.rigcard"
    mine.write_text("mine")
    with pytest.raises(AlreadyThere):
        store.save(make_card(), mine, expected=None)
    assert mine.read_text() == "mine"


def test_a_change_between_the_look_and_the_swap_is_noticed(store, make_card, monkeypatch) -> None:
    saved = store.create(make_card())
    real = syscalls.flush

    def meddle(handle):
        real(handle)
        saved.path.write_bytes(b"someone else's")

    monkeypatch.setattr(syscalls, "flush", meddle)
    with pytest.raises(ChangedOnDisk):
        store.save(make_card(notes="mine"), saved.path, expected=saved.fingerprint)
    assert saved.path.read_bytes() == b"someone else's"


def test_after_an_unconfirmed_save_the_next_one_is_no_conflict(store, make_card, monkeypatch) -> None:
    saved = store.create(make_card())
    real = atomic.flush_folder

    def fail(folder, notes):
        if folder == store.folder:
            raise OSError(5, "Input/output error")
        real(folder, notes)

    monkeypatch.setattr(atomic, "flush_folder", fail)
    with pytest.raises(NotFlushed) as trouble:
        store.save(make_card(notes="one"), saved.path, expected=saved.fingerprint)
    monkeypatch.undo()
    assert trouble.value.fingerprint is not None
    store.save(make_card(notes="two"), saved.path, expected=trouble.value.fingerprint)
    assert store.load(saved.path).document["notes"] == "two"


def test_a_history_that_cannot_be_kept_is_a_remark(store, make_card, tmp_path) -> None:
    (tmp_path / "history").write_text("in the way")
    saved = store.create(make_card())
    assert "could not be kept" in saved.notes[0]
    assert store.load(saved.path).document == make_card()


def test_the_last_ten_versions_come_back(store, make_card) -> None:
    saved = store.create(make_card(notes="version 0"))
    for number in range(1, 15):
        saved = store.save(make_card(notes=f"version {number}"), saved.path, expected=saved.fingerprint)
    versions = store.history.versions(make_card()["id"])
    said = [store.history.read(version) for version in versions]
    assert len(said) == 11  # ten and the one on the disk
    for number, data in zip(range(14, 3, -1), said, strict=True):
        assert f'version {number}"'.encode() in data


@pytest.mark.parametrize(
    ("prepare", "kind", "words"),
    [
        (lambda path: path.write_bytes(b""), CardError, "an empty file"),
        (lambda path: path.write_text('{"format": "rigbuilder.card"}'), CardError, "no version"),
        (lambda path: path.write_text('{"format": "other", "version": 1}'), CardError, "'other'"),
        (lambda path: path.write_text("{}"), CardError, "no format"),
        (lambda path: path.write_text('{"format": "rigbuilder.card", "version": 2}'), NewerVersion, "Update"),
        (lambda path: path.write_text('{"format": "rigbuilder.card", "version": 101}'), NewerVersion, "101"),
        (
            lambda path: path.write_text('{"format": "rigbuilder.card", "version": "1.10"}'),
            CardError,
            "'1.10'",
        ),
        (lambda path: path.write_text('{"format": "rigbuilder.card", "version": true}'), CardError, "True"),
        (lambda path: path.write_text('{"format": "rigbuilder.card", "version": 0}'), CardError, "found 0"),
        (lambda path: None, NotFound, "does not exist"),
        (lambda path: path.mkdir(), NotAFile, "a folder"),
        (os.mkfifo, NotAFile, "a pipe"),
        (lambda path: path.symlink_to("/dev/zero"), NotAFile, "a device"),
    ],
)
def test_what_cannot_be_loaded_is_explained_and_untouched(store, tmp_path, prepare, kind, words) -> None:
    path = tmp_path / "odd.rigcard"
    prepare(path)
    before = path.read_bytes() if path.is_file() else None
    with pytest.raises(kind) as trouble:
        store.load(path)
    assert words in str(trouble.value)
    assert "odd.rigcard" in str(trouble.value)
    assert before is None or path.read_bytes() == before


def test_a_write_protected_card_says_so_before_editing(store, make_card) -> None:
    saved = store.create(make_card())
    saved.path.chmod(0o444)
    assert not store.load(saved.path).writable


def test_duplicate_and_rename(store, make_card) -> None:
    saved = store.create(make_card())
    copy = store.duplicate(saved.path)
    assert copy.document["name"] == "Pad frog, rod 3 (copy)"
    assert copy.document["id"] != saved.document["id"]
    renamed = store.rename(saved.path, "Élan / über: rod?")
    assert renamed.path.name == "élan-über-rod-6f0c2d.rigcard"
    assert not saved.path.exists()
    assert store.load(renamed.path).document == make_card(name="Élan / über: rod?")
    assert len(store.history.versions(make_card()["id"])) >= 2
    same = store.rename(renamed.path, "ÉLAN über rod")
    assert same.path == renamed.path


def test_a_file_with_a_name_of_its_own_keeps_it(store, make_card, tmp_path) -> None:
    path = tmp_path / "my own.rigcard"
    store.save(make_card(), path, expected=None)
    assert store.rename(path, "Other").path == path
    link = tmp_path / "pad-frog-rod-3-6f0c2d.rigcard"
    link.symlink_to(path)
    store.rename(path, "Pad frog, rod 3")
    assert store.rename(link, "New").path == link
    assert link.is_symlink()


def test_a_clash_by_case_or_composition_is_avoided(store, make_card) -> None:
    store.folder.mkdir()
    (store.folder / "PAD-FROG-ROD-3-6F0C2D.RIGCARD").write_text("mine")
    (store.folder / "e\u0301lan-6f0c2d.rigcard").write_text("mine")
    assert store.create(make_card()).path.name == "pad-frog-rod-3-6f0c2d-2.rigcard"
    assert store.create(make_card(name="\u00e9lan")).path.name == "\u00e9lan-6f0c2d-2.rigcard"


def test_one_bad_file_hides_no_other(store, make_card, tmp_path) -> None:
    good = store.create(make_card()).path
    (store.folder / "cut.rigcard").write_bytes(good.read_bytes()[:-30])
    os.mkfifo(store.folder / "pipe.rigcard")
    (store.folder / "folder.rigcard").mkdir()
    (store.folder / "loop.rigcard").symlink_to("loop.rigcard")
    (store.folder / "dangling.rigcard").symlink_to("nowhere")
    (store.folder / "device.rigcard").symlink_to("/dev/zero")
    (store.folder / "large.rigcard").write_bytes(b" " * 1_000_001)
    (store.folder / ".hidden.rigcard").write_text("")
    (store.folder / "notes.txt").write_text("mine")
    entries = {entry.path.name: entry for entry in store.entries()}
    assert len(entries) == 8
    assert entries[good.name].document == make_card()
    for name in set(entries) - {good.name}:
        assert entries[name].document is None
        assert str(entries[name].trouble)
    salvaged = dict(entries["cut.rigcard"].salvaged)
    assert salvaged["name"] == "Pad frog, rod 3"
    assert salvaged["technique"] == "hollow-body frog"


def test_delete_and_restore(store, make_card) -> None:
    saved = store.create(make_card())
    data = saved.path.read_bytes()
    binned = store.delete(saved.path)
    assert not saved.path.exists()
    assert binned.name == "Pad frog, rod 3"
    other = store.create(make_card(notes="came later"))
    assert other.path == saved.path
    back = store.restore(binned)
    assert back.name == "pad-frog-rod-3-6f0c2d-restored.rigcard"
    assert back.read_bytes() == data
    assert store.bin.entries() == []


def test_a_failed_save_keeps_everything(store, make_card, monkeypatch) -> None:
    saved = store.create(make_card())
    before = contents(store)

    def full(handle, data):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(syscalls, "write", full)
    with pytest.raises(StoreError, match="the disk is full"):
        store.save(make_card(notes="more"), saved.path, expected=saved.fingerprint)
    monkeypatch.undo()
    assert contents(store) == before
    store.save(make_card(notes="more"), saved.path, expected=saved.fingerprint)


WRITER = """
import sys
from pathlib import Path
from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore
from rigbuilder.store.errors import ChangedOnDisk
from rigbuilder.store.history import History
path, who, count = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
root = path.parent.parent
store = CardStore(path.parent, history=History(root / "history"), bin_=Bin(root / "bin"))
asked = 0
loaded = store.load(path)
for _ in range(count):
    while True:
        document = loaded.document | {who: loaded.document.get(who, 0) + 1}
        try:
            saved = store.save(document, path, expected=loaded.fingerprint)
        except ChangedOnDisk:
            asked += 1
            loaded = store.load(path)
        else:
            break
    loaded = store.load(path)
print(asked)
"""


def test_two_programs_lose_no_update_without_a_question(store, make_card, start_python) -> None:
    saved = store.create(make_card())
    writers = [start_python(WRITER, saved.path, who, 100) for who in ("one", "two")]
    for writer in writers:
        told, trouble = writer.communicate(timeout=60)
        assert trouble == ""
        assert int(told) >= 0
    document = store.load(saved.path).document
    assert (document["one"], document["two"]) == (100, 100)
    assert list(contents(store)) == [saved.path.name]


SAVER = """
import sys
from pathlib import Path
from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore
from rigbuilder.store.history import History
path = Path(sys.argv[1])
root = path.parent.parent
store = CardStore(path.parent, history=History(root / "history"), bin_=Bin(root / "bin"))
loaded = store.load(path)
number, fingerprint = loaded.document["n"], loaded.fingerprint
while True:
    number += 1
    document = loaded.document | {"n": number, "notes": "x" * 50_000}
    fingerprint = store.save(document, path, expected=fingerprint).fingerprint
    print(number, flush=True)
"""


def test_kills_at_random_moments_lose_no_acknowledged_save(store, make_card, start_python, tmp_path) -> None:
    """A few of the thousands of the long run, storm_kills."""
    chance = random.Random(5)
    path = store.create(make_card(n=0)).path
    for _ in range(6):
        saver = start_python(SAVER, path)
        first = saver.stdout.readline()
        assert first, saver.stderr.read()
        time.sleep(chance.uniform(0, 0.05))
        saver.kill()
        told = first + saver.communicate()[0]
        last = int(told.split("\n")[-2])  # a line that ended
        assert store.load(path).document["n"] in (last, last + 1)
        atomic.sweep(store.folder)
        store.history.sweep()
        assert list(store.folder.iterdir()) == [path]
        assert not list((tmp_path / "history").rglob(".rigbuilder-*"))


STARVED = """
import resource, sys
from pathlib import Path
from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore
from rigbuilder.store.history import History
path = Path(sys.argv[1])
root = path.parent.parent
store = CardStore(path.parent, history=History(root / "history"), bin_=Bin(root / "bin"))
loaded = store.load(path)
used = int(Path("/proc/self/statm").read_text().split()[0]) * resource.getpagesize()
resource.setrlimit(resource.RLIMIT_AS, (used + int(sys.argv[2]), used + int(sys.argv[2])))
try:
    store.save(loaded.document | {"notes": "x" * 900_000}, path, expected=loaded.fingerprint)
    print("saved")
except MemoryError:
    print("refused")
"""


def test_without_memory_there_is_the_old_card_or_the_new(store, make_card, start_python) -> None:
    told = set()
    for room in (0, 1_000_000, 2_000_000, 3_000_000, 4_000_000, 5_000_000, 7_000_000, 60_000_000):
        saved = store.create(make_card())
        said, trouble = start_python(STARVED, saved.path, room).communicate()
        length = len(store.load(saved.path).document.get("notes", ""))
        assert length == (900_000 if said == "saved\n" else 0), trouble
        told.add(said)
        assert not list(store.folder.glob(".rigbuilder-*"))
    assert "saved\n" in told
    assert len(told) > 1
