import errno
import os
import signal
import stat
import time
from pathlib import Path

import pytest

from rigbuilder.store import atomic, syscalls
from rigbuilder.store.errors import (
    AlreadyThere,
    BadName,
    Denied,
    DiskFull,
    DiskTrouble,
    FolderGone,
    LinkLoop,
    NotAFile,
    NotFlushed,
    ReadOnly,
    StoreError,
)
from rigbuilder.store.process import Process, mark, this_process

CALLS = [
    name
    for name, value in vars(syscalls).items()
    if callable(value) and name not in ("read", "stat_open")  # not on the write path
]
NEW_CALLS = ["open_file", "write", "flush", "close", "link", "stat"]
OLD_CALLS = ["stat", "access", "open_file", "chown_open", "chmod_open", "write", "flush", "close", "replace"]
ERRNOS = ["EIO", "ENOSPC", "EDQUOT", "EFBIG", "EACCES", "EROFS", "ESTALE", "ENOMEM", "EBUSY"]


def fail_nth(monkeypatch: pytest.MonkeyPatch, call: str, nth: int, code: int) -> list[str]:
    """Let the nth use of one file call fail; the list returned has one entry once it did."""
    real, failed, used = getattr(syscalls, call), [], 0

    def failing(*arguments, **options):
        nonlocal used
        used += 1
        if used == nth:
            failed.append(call)
            if call == "close":  # the system has closed it all the same
                real(*arguments)
            raise OSError(code, os.strerror(code))
        return real(*arguments, **options)

    monkeypatch.setattr(syscalls, call, failing)
    return failed


def trouble_of(path: Path) -> StoreError | None:
    try:
        atomic.write(path, b"new")
    except StoreError as trouble:
        return trouble
    return None


@pytest.mark.parametrize("code", ERRNOS)
@pytest.mark.parametrize("nth", [1, 2, 3])
@pytest.mark.parametrize("call", OLD_CALLS)
def test_any_failing_call_leaves_the_old_card_whole(tmp_path, monkeypatch, call, nth, code) -> None:
    path = tmp_path / "frog.rigcard"
    path.write_bytes(b"old")
    failed = fail_nth(monkeypatch, call, nth, getattr(errno, code))
    trouble = trouble_of(path)
    if trouble is None:
        assert path.read_bytes() == b"new"
        assert not failed or (call == "chown_open" and code == "EACCES")
    elif isinstance(trouble, NotFlushed):
        assert path.read_bytes() == b"new"
        assert "in place" in str(trouble)
    else:
        assert path.read_bytes() == b"old"
        assert "frog.rigcard" in str(trouble)
        assert "Errno" not in str(trouble)
        assert failed
    monkeypatch.undo()
    assert [entry.name for entry in tmp_path.iterdir()] == ["frog.rigcard"]


@pytest.mark.parametrize("code", ["EIO", "ENOSPC", "EACCES", "EROFS"])
@pytest.mark.parametrize("call", NEW_CALLS)
def test_any_failing_call_leaves_no_new_card(tmp_path, monkeypatch, call, code) -> None:
    path = tmp_path / "frog.rigcard"
    failed = fail_nth(monkeypatch, call, 1, getattr(errno, code))
    with pytest.raises(StoreError, match=r"frog\.rigcard"):
        atomic.write(path, b"new", new=True)
    monkeypatch.undo()
    assert failed
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("code", "kind", "words"),
    [
        ("ENOSPC", DiskFull, "kB free"),
        ("EDQUOT", DiskFull, "share of the disk"),
        ("EROFS", ReadOnly, "read-only"),
        ("EACCES", Denied, "not allowed"),
        ("ENAMETOOLONG", BadName, "shorter name"),
        ("ESTALE", DiskTrouble, "network folder went away"),
        ("EIO", DiskTrouble, "reported an error"),
        ("EUSERS", DiskTrouble, "too many users"),
    ],
)
def test_errors_say_what_and_what_to_do(tmp_path, monkeypatch, code, kind, words) -> None:
    fail_nth(monkeypatch, "open_file", 1, getattr(errno, code))
    with pytest.raises(kind) as trouble:
        atomic.write(tmp_path / "frog.rigcard", b"new")
    assert words in str(trouble.value)
    assert trouble.value.advice.endswith(".")


def test_a_short_write_is_continued(tmp_path, monkeypatch) -> None:
    real = syscalls.write
    monkeypatch.setattr(syscalls, "write", lambda handle, data: real(handle, data[:7]))
    atomic.write(tmp_path / "card", b"0123456789" * 20)
    assert (tmp_path / "card").read_bytes() == b"0123456789" * 20


def test_a_write_that_takes_nothing_is_a_full_disk(tmp_path, monkeypatch) -> None:
    monkeypatch.setattr(syscalls, "write", lambda handle, data: 0)
    with pytest.raises(DiskFull):
        atomic.write(tmp_path / "card", b"new")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("code", ["EINVAL", "ENOTSUP", "ENOSYS"])
def test_a_disk_that_cannot_flush_is_noted(tmp_path, monkeypatch, code) -> None:
    def cannot(handle):
        raise OSError(getattr(errno, code), "")

    monkeypatch.setattr(syscalls, "flush", cannot)
    notes = atomic.write(tmp_path / "card", b"new")
    assert all("power cut" in note for note in notes)
    assert len(notes) == 2
    assert (tmp_path / "card").read_bytes() == b"new"


def test_a_disk_without_links_still_never_overwrites(tmp_path, monkeypatch) -> None:
    def cannot(*arguments):
        raise OSError(errno.EPERM, "")

    monkeypatch.setattr(syscalls, "link", cannot)
    atomic.write(tmp_path / "card", b"first", new=True)
    with pytest.raises(AlreadyThere):
        atomic.write(tmp_path / "card", b"second", new=True)
    assert (tmp_path / "card").read_bytes() == b"first"
    assert [entry.name for entry in tmp_path.iterdir()] == ["card"]


def test_a_last_look_stops_the_swap(tmp_path) -> None:
    path = tmp_path / "card"
    path.write_bytes(b"old")

    def look() -> None:
        raise AlreadyThere(path, "No.", "No.")

    with pytest.raises(AlreadyThere):
        atomic.write(path, b"new", check=look)
    assert path.read_bytes() == b"old"
    assert [entry.name for entry in tmp_path.iterdir()] == ["card"]


@pytest.mark.parametrize("mode", [0o600, 0o644, 0o664, 0o640])
def test_mode_is_kept(tmp_path, mode) -> None:
    path = tmp_path / "card"
    path.write_bytes(b"old")
    path.chmod(mode)
    atomic.write(path, b"new")
    assert stat.S_IMODE(path.stat().st_mode) == mode


def test_new_files_and_folders_are_private_whatever_the_umask(tmp_path) -> None:
    before = os.umask(0)
    try:
        atomic.make_folder(tmp_path / "a" / "b")
        atomic.write(tmp_path / "a" / "b" / "card", b"new")
    finally:
        os.umask(before)
    assert stat.S_IMODE((tmp_path / "a").stat().st_mode) == 0o700
    assert stat.S_IMODE((tmp_path / "a" / "b" / "card").stat().st_mode) == 0o600


def test_links_are_followed_and_stay(tmp_path) -> None:
    (tmp_path / "real").mkdir()
    real = tmp_path / "real" / "card"
    real.write_bytes(b"old")
    link = tmp_path / "link"
    link.symlink_to(real)
    (tmp_path / "second").symlink_to(link)
    atomic.write(tmp_path / "second", b"new")
    assert real.read_bytes() == b"new"
    assert link.is_symlink()
    assert len(list((tmp_path / "real").iterdir())) == 1


def test_the_other_name_of_a_hard_link_keeps_the_old_content(tmp_path) -> None:
    (tmp_path / "card").write_bytes(b"old")
    os.link(tmp_path / "card", tmp_path / "kept")
    atomic.write(tmp_path / "card", b"new")
    assert (tmp_path / "kept").read_bytes() == b"old"


def _loop(path: Path) -> None:
    path.symlink_to(path.with_name("other"))
    path.with_name("other").symlink_to(path)


def _read_only(path: Path) -> None:
    path.write_bytes(b"old")
    path.chmod(0o444)


@pytest.mark.parametrize(
    ("kind", "prepare"),
    [
        (LinkLoop, _loop),
        (LinkLoop, lambda path: path.symlink_to("nowhere")),
        (ReadOnly, _read_only),
        (NotAFile, lambda path: path.mkdir()),
        (NotAFile, os.mkfifo),
        (NotAFile, lambda path: path.symlink_to("/dev/null")),
        (FolderGone, lambda path: path.parent.rmdir()),
    ],
)
def test_what_may_not_be_replaced(tmp_path, kind, prepare) -> None:
    path = tmp_path / "folder" / "card"
    path.parent.mkdir()
    prepare(path)
    before = sorted(path.parent.iterdir()) if path.parent.exists() else None
    with pytest.raises(kind) as trouble:
        atomic.write(path, b"new")
    assert "card" in str(trouble.value)
    assert (sorted(path.parent.iterdir()) if path.parent.exists() else None) == before


@pytest.mark.parametrize("name", ["a\0b", "n" * 256])
def test_impossible_names(tmp_path, name) -> None:
    with pytest.raises(BadName):
        atomic.write(tmp_path / name, b"new")


def test_a_file_in_the_way_of_a_folder(tmp_path) -> None:
    (tmp_path / "data").write_text("mine")
    with pytest.raises(FolderGone, match="is a file, not a folder"):
        atomic.make_folder(tmp_path / "data" / "cards")
    (tmp_path / "loop").symlink_to("loop")
    with pytest.raises(FolderGone, match="a link that leads to no folder"):
        atomic.make_folder(tmp_path / "loop")


KILLED = """
import itertools, os, signal, sys
from pathlib import Path
from rigbuilder.store import atomic, syscalls
path, at = Path(sys.argv[1]), int(sys.argv[2])
count = itertools.count(1)
def stepping(real):
    def step(*arguments, **options):
        if next(count) == at:
            os.kill(os.getpid(), signal.SIGKILL)
        return real(*arguments, **options)
    return step
for name in sys.argv[4:]:
    setattr(syscalls, name, stepping(getattr(syscalls, name)))
atomic.write(path, b"new" * 5000, new=sys.argv[3] == "new")
print(next(count) - 1, flush=True)
"""


@pytest.mark.parametrize("new", [False, True])
def test_a_kill_before_any_step_leaves_one_whole_card(tmp_path, start_python, new) -> None:
    path = tmp_path / "card"
    how = "new" if new else "old"

    def prepare() -> None:
        path.unlink(missing_ok=True)
        if not new:
            path.write_bytes(b"old")

    prepare()
    steps = int(start_python(KILLED, path, 0, how, *CALLS).communicate()[0])
    assert steps >= 8
    seen = set()
    for at in range(1, steps + 1):
        prepare()
        killed = start_python(KILLED, path, at, how, *CALLS)
        killed.communicate()
        assert killed.returncode == -signal.SIGKILL
        seen.add(path.read_bytes() if path.exists() else None)
        atomic.sweep(tmp_path)
        assert [entry.name for entry in tmp_path.iterdir()] in (["card"], [])
    assert seen == {None if new else b"old", b"new" * 5000}


def test_sweeping_spares_what_is_not_certainly_left_behind(tmp_path) -> None:
    here = this_process()
    end = "0123456789abcdef.part"
    other = Process("other", here.boot, 1, "")
    dead = Process(here.host, "earlier boot", 1, "")
    (tmp_path / f".rigbuilder-{mark(here)}-{end}").write_text("being written")
    (tmp_path / f".rigbuilder-{mark(other)}-{end}").write_text("on another machine")
    (tmp_path / f".rigbuilder-{mark(dead)}-{end}").write_text("left")
    (tmp_path / f".rigbuilder-{mark(dead)}-1{end}").write_text("not ours: name too long")
    (tmp_path / ".rigbuilder-notes.part").write_text("mine")
    (tmp_path / f".rigbuilder-{mark(dead)}-{'f' * 16}.part").symlink_to("nowhere")
    assert atomic.sweep(tmp_path) == 1
    assert len(list(tmp_path.iterdir())) == 5
    old = tmp_path / f".rigbuilder-{mark(other)}-{end}"
    os.utime(old, (time.time() - 7200, time.time() - 7200))
    assert atomic.sweep(tmp_path) == 1
    assert not old.exists()
    assert atomic.sweep(tmp_path / "missing") == 0


def test_a_thousand_remnants_are_swept_at_once(tmp_path) -> None:
    for number in range(1000):
        (tmp_path / f".rigbuilder-000000-000000-1-{number:016x}.part").touch()
    start = time.perf_counter()
    assert atomic.sweep(tmp_path, older_than_s=-1) == 1000
    assert time.perf_counter() - start < 1
