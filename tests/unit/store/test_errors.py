import errno
import os
from pathlib import Path

import pytest

from rigbuilder.store import errors
from rigbuilder.store.errors import (
    CannotWrite,
    CardError,
    DiskTrouble,
    FolderGone,
    NewerVersion,
    NotFound,
    StoreError,
    explain,
    shown,
)

CODES = sorted(errno.errorcode)


@pytest.mark.parametrize("code", CODES)
def test_every_error_of_the_system_becomes_a_sentence_and_a_step(tmp_path, code) -> None:
    trouble = explain(OSError(code, os.strerror(code)), tmp_path / "frog.rigcard", "saved")
    text = str(trouble)
    assert text.startswith("“frog.rigcard” could not be saved: ")
    assert text.count(". ") >= 1
    assert trouble.advice[0].isupper()
    assert trouble.advice.endswith(".")
    assert "Errno" not in text
    assert type(trouble).__name__ not in text
    assert text.isprintable()


def test_an_error_without_a_code() -> None:
    trouble = explain(OSError("Odd thing"), Path("/x/frog.rigcard"), "read")
    assert isinstance(trouble, DiskTrouble)
    assert "odd thing" in str(trouble)
    assert "unknown error" in str(explain(OSError(), Path("/x/frog.rigcard"), "read"))


def test_a_missing_file_and_a_missing_folder_are_told_apart(tmp_path) -> None:
    gone = OSError(errno.ENOENT, "")
    assert type(explain(gone, tmp_path / "frog.rigcard", "read")) is NotFound
    trouble = explain(gone, tmp_path / "club" / "frog.rigcard", "read")
    assert type(trouble) is FolderGone
    assert str(tmp_path / "club") in str(trouble)


def test_free_space_is_told_where_it_can_be_known() -> None:
    assert "kB free" in errors.free_space(Path("/no/such/folder/frog.rigcard"))


@pytest.mark.parametrize("name", ["a\nb", "a\u202eb", "a\udcffb", "a\x1b[31mb"])
def test_names_are_shown_harmlessly(name) -> None:
    assert shown(name).isprintable()
    assert shown(name).encode()
    assert str(explain(OSError(errno.EIO, ""), Path(f"/x/{name}"), "read")).isprintable()


def test_a_card_error_names_place_found_and_expected() -> None:
    error = CardError(Path("/x/frog.rigcard"), where="main.test", found="a list", expected="text")
    assert str(error) == (
        "“frog.rigcard” cannot be read at main.test: found a list, expected text. "
        "The file was left as it is; an earlier version may be restored."
    )
    assert (error.where, error.found, error.expected) == ("main.test", "a list", "text")
    assert str(CardError(None, found="x", expected="y")).startswith("This text cannot be read: found x")
    assert "version 7, made by a newer Rigbuilder" in str(NewerVersion(None, version=7, known=1))
    assert str(CannotWrite(found="x", expected="y")).startswith("The card cannot be saved: found x")


def test_all_kinds_are_store_errors() -> None:
    kinds = [kind for kind in vars(errors).values() if isinstance(kind, type) and issubclass(kind, Exception)]
    assert len(kinds) > 15
    assert all(issubclass(kind, StoreError) for kind in kinds)
