from pathlib import Path

import pytest

from rigbuilder.store.errors import FolderGone, StoreError
from rigbuilder.store.listing import card_paths, conflict_base, conflicts, read_entry, salvage, twins

A, B = Path("/cards/frog.rigcard"), Path("/cards/jig.rigcard")


@pytest.mark.parametrize(
    ("name", "base"),
    [
        ("frog (conflicted copy 2026-05-02).rigcard", "frog.rigcard"),
        ("frog (Anna's conflicted copy 2026-05-02).rigcard", "frog.rigcard"),
        ("frog (conflicted copy 2026-05-02 101500).rigcard", "frog.rigcard"),
        ("frog.sync-conflict-20260502-101500-ABCDEFG.rigcard", "frog.rigcard"),
        ("frog.sync-conflict-20260502-101500.rigcard", "frog.rigcard"),
        ("frog (copy).rigcard", None),
        ("frog.rigcard", None),
        ("(conflicted copy).rigcard", None),
        ("frog.sync-conflict-2026.rigcard", None),
    ],
)
def test_conflict_names(name, base) -> None:
    assert conflict_base(name) == base


def test_a_conflict_copy_needs_the_same_identity_beside_it() -> None:
    copy = Path("/cards/frog (conflicted copy 2026-05-02).rigcard")
    assert conflicts([(A, "x"), (copy, "x")]) == {copy: A}
    assert conflicts([(A, "x"), (copy, "y")]) == {}
    assert conflicts([(copy, "x")]) == {}
    assert conflicts([(A, None), (copy, None)]) == {}
    assert conflicts([(Path("/other/frog.rigcard"), "x"), (copy, "x")]) == {}
    assert conflicts([(B, "x"), (copy, "x")]) == {copy: B}  # the original was renamed


def test_twins_are_copies_of_another_kind() -> None:
    copy = Path("/cards/frog (conflicted copy 2026-05-02).rigcard")
    assert twins([(A, "x"), (B, "x"), (copy, "x")]) == [[A, B]]
    assert twins([(A, "x"), (B, "y"), (copy, "x")]) == []


def test_what_can_be_read_of_a_broken_card(golden) -> None:
    data = golden("v1.rigcard")
    pairs = salvage(data[:600])
    assert dict(pairs)["name"] == "Pad frog, rod 3"
    assert dict(pairs)["notes"].startswith("Élise’s rod")
    assert salvage(b"\xff\0" * 500_000) == ()
    assert salvage(b'{"name": "\\ud800"}') == (("name", "?"),)
    assert salvage(b'{"name": "\\x"}') == ()
    assert len(salvage(b'"name": "a",' * 1000)) == 20


def test_a_missing_folder_is_an_error_and_a_broken_card_is_not(tmp_path) -> None:
    with pytest.raises(StoreError):
        card_paths(tmp_path / "none")
    with pytest.raises(FolderGone):
        card_paths(tmp_path / "none" / "cards")
    (tmp_path / "x.RIGCARD").write_bytes(b"\0" * 9)
    assert [path.name for path in card_paths(tmp_path)] == ["x.RIGCARD"]
    entry = read_entry(tmp_path / "x.RIGCARD")
    assert entry.document is None
    assert "zero bytes" in str(entry.trouble)
