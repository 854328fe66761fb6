import os
from pathlib import Path

import pytest

from rigbuilder.store.errors import StoreError
from rigbuilder.store.history import KEEP, History, key_of

CARD = Path("/cards/frog.rigcard")


def test_the_oldest_go_first_and_equal_ones_are_kept_once(tmp_path) -> None:
    history = History(tmp_path)
    for number in range(20):
        history.keep("frog", CARD, f"version {number}".encode())
        history.keep("frog", CARD, f"version {number}".encode())
    versions = history.versions("frog")
    assert len(versions) == KEEP + 1
    assert [history.read(version) for version in versions][:2] == [b"version 19", b"version 18"]
    assert [version.number for version in versions] == list(range(20, 9, -1))


def test_two_files_of_one_identity_have_ten_each(tmp_path) -> None:
    history = History(tmp_path)
    other = Path("/cards/frog (conflicted copy).rigcard")
    history.keep("frog", CARD, b"the first")
    for number in range(30):
        history.keep("frog", other, f"version {number}".encode())
    assert [history.read(version) for version in history.versions("frog", CARD)] == [b"the first"]
    assert len(history.versions("frog", other)) == KEEP + 1
    assert history.of_file(CARD) == history.versions("frog", CARD)


def test_order_does_not_depend_on_the_clock(tmp_path) -> None:
    history = History(tmp_path)
    for number in range(4):
        history.keep("frog", CARD, f"version {number}".encode())
        os.utime(history.versions("frog")[0].path, (10**9 - number, 10**9 - number))
    assert history.read(history.versions("frog")[0]) == b"version 3"


def test_a_damaged_version_is_not_handed_out(tmp_path) -> None:
    history = History(tmp_path)
    history.keep("frog", CARD, b"good")
    version = history.versions("frog")[0]
    version.path.write_bytes(b"bad")
    with pytest.raises(StoreError, match="damaged"):
        history.read(version)


def test_foreign_files_are_left_alone(tmp_path) -> None:
    history = History(tmp_path)
    history.keep("frog", CARD, b"good")
    (tmp_path / "frog" / "notes.txt").write_text("mine")
    (tmp_path / "notes.txt").write_text("mine")
    for number in range(20):
        history.keep("frog", CARD, f"version {number}".encode())
    assert (tmp_path / "frog" / "notes.txt").read_text() == "mine"
    assert history.sweep() == 0
    assert History(tmp_path / "none").versions("frog") == []
    assert History(tmp_path / "none").of_file(CARD) == []
    assert History(tmp_path / "none").sweep() == 0


def test_identities_never_lead_out_of_the_folder() -> None:
    assert key_of({"id": "6f0c"}, CARD) == "6f0c"
    for identity in ("../../etc", "/etc", "~", "a/b", "..", "", None, 7):
        key = key_of({"id": identity}, CARD)
        assert key.startswith("at-")
        assert "/" not in key
    assert key_of(None, CARD) == key_of({}, CARD) != key_of({}, Path("/cards/jig.rigcard"))
