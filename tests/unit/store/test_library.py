import os
import time

import pytest

from rigbuilder.store.errors import FolderGone
from rigbuilder.store.library import Library, VerdictCache


@pytest.fixture
def library(store) -> Library:
    return Library(store.folder)


def test_only_what_changed_is_read_again(store, library, make_card, monkeypatch) -> None:
    saved = [store.create(make_card(id=f"a{number}", name=f"Rod {number}")) for number in range(5)]
    assert library.refresh() == 5
    assert library.refresh() == 0
    store.save(saved[2].document | {"notes": "new"}, saved[2].path, expected=saved[2].fingerprint)
    store.delete(saved[4].path)
    [[row]] = list(library.scan())
    assert row.path == saved[2].path
    assert sorted(each.name for each in library.rows.values()) == ["Rod 0", "Rod 1", "Rod 2", "Rod 3"]


def test_a_swapped_file_of_same_size_and_time_is_read_again(store, library, make_card) -> None:
    saved = store.create(make_card(notes="aaaa"))
    library.refresh()
    before = saved.path.stat()
    again = store.save(make_card(notes="bbbb"), saved.path, expected=saved.fingerprint)
    os.utime(again.path, ns=(before.st_atime_ns, before.st_mtime_ns))
    assert library.refresh() == 1
    assert "bbbb" in next(iter(library.rows.values())).words


def test_broken_files_are_rows_with_their_reason(store, library, make_card) -> None:
    good = store.create(make_card())
    (store.folder / "cut.rigcard").write_bytes(good.path.read_bytes()[:-30])
    os.mkfifo(store.folder / "pipe.rigcard")
    (store.folder / "loop.rigcard").symlink_to("loop.rigcard")
    library.refresh()
    assert library.rows["cut.rigcard"].name == "Pad frog, rod 3"
    assert "cut.rigcard" in library.rows["cut.rigcard"].trouble
    assert "pipe" in library.rows["pipe.rigcard"].trouble
    assert len(library.rows) == 4
    found = library.search("verdict:broken", VerdictCache(store.folder / "none", ""))
    assert {row.file_name for row in found} == {"cut.rigcard", "pipe.rigcard", "loop.rigcard"}


def test_conflict_copies_and_twins_are_shown(store, library, make_card) -> None:
    good = store.create(make_card()).path
    copy = good.with_name(good.stem + " (conflicted copy 2026-05-02).rigcard")
    copy.write_bytes(good.read_bytes())
    twin = good.with_name("my own copy.rigcard")
    twin.write_bytes(good.read_bytes())
    library.refresh()
    assert library.conflicts() == {copy: good}
    assert library.twins() == [sorted([good, twin], key=lambda path: path.name)]


def test_the_last_changed_come_first(store, library, make_card) -> None:
    for number in range(120):
        path = store.create(make_card(id=f"a{number}", name=f"Rod {number}")).path
        os.utime(path, (1000 + number, 1000 + number))
    batches = list(library.scan())
    assert len(batches) == 2
    assert batches[0][0].name == "Rod 119"
    assert [row.changed_ns for row in batches[0]] == sorted(
        (row.changed_ns for row in batches[0]), reverse=True
    )


def test_a_missing_folder(tmp_path) -> None:
    with pytest.raises(FolderGone):
        Library(tmp_path / "a" / "b").refresh()


def test_verdicts_may_be_thrown_away(tmp_path, store, library, make_card) -> None:
    store.create(make_card())
    library.refresh()
    [row] = library.rows.values()
    path = tmp_path / "cache" / "verdicts.json"
    cache = VerdictCache(path, "rules 1")
    cache.put(row.sha256, "risk")
    cache.put("of a card that is gone", "fault")
    cache.save(library.rows)
    assert VerdictCache(path, "rules 1").known == {row.sha256: "risk"}
    assert VerdictCache(path, "rules 2").known == {}
    for damage in (b"", b"{", b'{"rules": "rules 1", "verdicts": {"a": "great", "b": ["x"]}}', b"\0" * 99):
        path.write_bytes(damage)
        assert VerdictCache(path, "rules 1").known == {}


def test_hundreds_of_cards_are_scanned_without_a_wait(store, library, make_card) -> None:
    """A coarse guard; the benchmark measures ten thousand."""
    store.folder.mkdir()
    for number in range(500):
        text = f'{{"format": "rigbuilder.card", "version": 1, "id": "a{number}", "name": "Rod {number}"}}'
        (store.folder / f"{number}.rigcard").write_text(text)
    start = time.process_time()
    library.refresh()
    assert time.process_time() - start < 1
    assert len(library.search('"rod 49"', VerdictCache(store.folder / "x", ""))) == 11
