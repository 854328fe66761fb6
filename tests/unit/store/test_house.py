import time

import pytest

from rigbuilder.store.errors import CannotWrite, CardError, NotAFile
from rigbuilder.store.house import read_house, write_house

ENTRIES = {
    "floating-fluorocarbon": "allowed",
    "ranges": {
        "drop shot": {"test": "6-10 lb", "depth_m": [1.5, 4.0]},
        "hollow-body frog": {"test": "50-65 lb"},
    },
    "adjusters": [{"when": "larkmere", "strength": 1.25, "on": True}],
}


def test_entries_come_back(tmp_path) -> None:
    path = tmp_path / "config" / "house.toml"
    assert read_house(path) == {}
    assert write_house(path, ENTRIES) == ()
    assert read_house(path) == ENTRIES
    text = path.read_text()
    assert "[ranges" in text


def test_a_hand_written_file_is_read(tmp_path) -> None:
    path = tmp_path / "house.toml"
    path.write_bytes(b'\xef\xbb\xbf# the club\r\n[ranges.jig]\r\ntest = "15-20 lb"\r\n')
    assert read_house(path) == {"ranges": {"jig": {"test": "15-20 lb"}}}


@pytest.mark.parametrize(
    ("data", "where", "found"),
    [
        (b'a = 1\nb = "open', "the last line", "unterminated"),
        (b"a = 1\na = 2\n", "line 2", "overwrite"),
        (b"a = 1\n= 2", "line 2", "invalid statement"),
        (b"a = 1\nb = '\xe9'", "line 2", "not UTF-8"),
        (b"a = [nan]", "a[0]", "nan"),
        (b"[a]\nb = -inf", "a.b", "-inf"),
        (b"a = " + b"[" * 50_000, "", "brackets"),
        (b".".join([b"a"] * 50_000) + b" = 1", "", "brackets"),
        (b"[" + b" . ".join([b'"a"'] * 30_000) + b"]", "", "brackets"),
        (b"a" * 200_001, "", "200,001 bytes"),
    ],
)
def test_what_is_refused(tmp_path, data, where, found) -> None:
    path = tmp_path / "house.toml"
    path.write_bytes(data)
    start = time.process_time()
    with pytest.raises(CardError) as refusal:
        read_house(path)
    assert refusal.value.where.startswith(where)
    assert found in refusal.value.found.lower() or found in refusal.value.found
    assert "house.toml" in str(refusal.value)
    assert path.read_bytes() == data
    assert time.process_time() - start < 0.5


def test_long_words_are_read_quickly(tmp_path) -> None:
    path = tmp_path / "house.toml"
    path.write_text('a = "' + "word " * 30_000 + "x" * 40_000 + '"')
    start = time.process_time()
    assert read_house(path)
    assert time.process_time() - start < 0.5


@pytest.mark.parametrize("entries", [{"a": None}, {"a": float("nan")}, {"a": {1: 2}}, {"a": object()}])
def test_what_toml_does_not_know_is_not_written(tmp_path, entries) -> None:
    path = tmp_path / "house.toml"
    path.write_text("kept = 1")
    with pytest.raises(CannotWrite):
        write_house(path, entries)
    assert path.read_text() == "kept = 1"


def test_a_folder_in_its_place(tmp_path) -> None:
    (tmp_path / "house.toml").mkdir()
    with pytest.raises(NotAFile):
        read_house(tmp_path / "house.toml")
