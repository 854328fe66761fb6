import os
import socket
from pathlib import Path

import pytest

from rigbuilder.store import syscalls
from rigbuilder.store.errors import BadName, CardError, LinkLoop, NotAFile, NotFound, StoreError
from rigbuilder.store.fingerprint import digest
from rigbuilder.store.reading import read_file


def test_bytes_and_fingerprint(tmp_path) -> None:
    path = tmp_path / "frog.rigcard"
    path.write_bytes(b"x" * 3_000_000)
    data, fingerprint = read_file(path, limit=3_000_000)
    assert data == b"x" * 3_000_000
    assert fingerprint.size == 3_000_000
    assert fingerprint.mtime_ns == path.stat().st_mtime_ns
    assert fingerprint.sha256 == digest(data)
    with pytest.raises(CardError, match="3,000,000 bytes, expected at most 2,999,999"):
        read_file(path, limit=2_999_999)


def _socket(path: Path) -> None:
    with socket.socket(socket.AF_UNIX) as server:
        os.chdir(path.parent)
        server.bind(path.name)


@pytest.mark.parametrize(
    ("prepare", "kind"),
    [
        (os.mkfifo, NotAFile),
        (os.mkdir, NotAFile),
        (_socket, NotAFile),
        (lambda path: path.symlink_to("/dev/zero"), NotAFile),
        (lambda path: path.symlink_to("/dev/tty"), NotAFile),
        (lambda path: path.symlink_to(path), LinkLoop),
        (lambda path: path.symlink_to("nowhere"), NotFound),
        (lambda path: None, NotFound),
    ],
)
def test_nothing_but_files_is_opened(tmp_path, monkeypatch, prepare, kind) -> None:
    monkeypatch.chdir(tmp_path)
    prepare(tmp_path / "odd.rigcard")

    def opened(*arguments):
        raise AssertionError("opened")

    monkeypatch.setattr(syscalls, "open_file", opened)
    with pytest.raises(kind):
        read_file(tmp_path / "odd.rigcard", limit=100)


def test_a_pipe_put_there_in_between_does_not_block(tmp_path, monkeypatch) -> None:
    path = tmp_path / "odd.rigcard"
    os.mkfifo(path)
    (tmp_path / "file").touch()
    monkeypatch.setattr(syscalls, "stat", lambda _: (tmp_path / "file").stat())
    with pytest.raises(NotAFile, match="a pipe"):
        read_file(path, limit=100)


def test_a_file_that_grows_while_it_is_read(tmp_path, monkeypatch) -> None:
    path = tmp_path / "frog.rigcard"
    path.write_bytes(b"x" * 10)
    real = syscalls.stat_open

    def grow(handle):
        facts = real(handle)
        with path.open("ab") as file:
            file.write(b"y" * 1000)
        return facts

    monkeypatch.setattr(syscalls, "stat_open", grow)
    with pytest.raises(CardError, match="at most 100 bytes"):
        read_file(path, limit=100)


def test_a_name_with_a_zero_byte() -> None:
    with pytest.raises(BadName):
        read_file(Path("a\0b"), limit=1)


@pytest.mark.parametrize("call", ["stat", "open_file", "stat_open", "read", "close"])
def test_any_failing_call_is_explained(tmp_path, monkeypatch, call) -> None:
    path = tmp_path / "frog.rigcard"
    path.write_bytes(b"x")
    handles = len(list(Path("/proc/self/fd").iterdir()))
    real = getattr(syscalls, call)

    def fail(*arguments):
        if call == "close":
            real(*arguments)
        raise OSError(5, "Input/output error")

    monkeypatch.setattr(syscalls, call, fail)
    with pytest.raises(StoreError, match="the disk reported an error"):
        read_file(path, limit=100)
    assert len(list(Path("/proc/self/fd").iterdir())) == handles
