"""Replace a file as a whole: after any crash there is the old one or the new one.

The order is what makes it safe (T. S. Pillai et al., "All File Systems Are Not
Created Equal", OSDI 2014): a temporary file of a name nobody can guess in the
same folder, written to the last byte, flushed, renamed over the target, and
the folder flushed too, or a power cut may bring back the old version after the
new one was acknowledged.
"""

import contextlib
import errno
import os
import re
import secrets
import stat
import time
from collections.abc import Callable
from pathlib import Path

from rigbuilder.store import syscalls
from rigbuilder.store.errors import (
    AlreadyThere,
    FolderGone,
    LinkLoop,
    NotFlushed,
    ReadOnly,
    explain,
    shown,
)
from rigbuilder.store.process import mark, mark_is_gone, this_process
from rigbuilder.store.reading import not_a_file

_TEMPORARY = re.compile(r"\.rigbuilder-([0-9a-f]{6}-[0-9a-f]{6}-[0-9]{1,10})-[0-9a-f]{16}\.part")

#: Some network and user-space file systems cannot flush, or cannot link; the rename is atomic all the same.
_UNSUPPORTED = {errno.EINVAL, errno.ENOTSUP, errno.EOPNOTSUPP, errno.ENOSYS}
_NO_LINKS = _UNSUPPORTED | {errno.EPERM, errno.EMLINK, errno.EXDEV}

Notes = tuple[str, ...]


def write(path: Path, data: bytes, *, new: bool = False, check: Callable[[], None] | None = None) -> Notes:
    """Put ``data`` in the file ``path`` and return only when it would survive a power cut.

    Links are followed and stay; the mode of an existing file is kept, a new
    one is readable by its owner only. With ``new`` nothing may be there yet.
    ``check`` is called just before the swap; what it raises stops it.
    Returns remarks for the user, usually none.

    Raises:
        StoreError: nothing was changed; only after NotFlushed is the new version in place.
    """
    try:
        target = path if new else resolve(path)
        return _swap(target, data, new, check)
    except ValueError as error:  # a NUL in the name
        raise explain(OSError(errno.EINVAL, str(error)), path, "saved") from None
    except OSError as error:
        raise explain(error, path, "saved") from error


def resolve(path: Path) -> Path:
    """Return the ordinary file that ``path`` leads to, which may not exist yet.

    Raises:
        StoreError: links lead nowhere or in a circle, or something else than a file is there.
    """
    try:
        facts = syscalls.stat(path)
    except FileNotFoundError:
        if path.is_symlink():
            raise LinkLoop(
                path,
                f"“{shown(path.name)}” is a link to a file that is gone.",
                "Remove the link, then save again.",
            ) from None
        return path
    if not stat.S_ISREG(facts.st_mode):
        raise not_a_file(path, facts.st_mode)
    target = Path(os.path.realpath(path))
    # The mode is looked at as well because an administrator may write to anything.
    if not facts.st_mode & 0o222 or not syscalls.access(target, os.W_OK):
        raise ReadOnly(path, f"“{shown(path.name)}” is write-protected.", "Save it under another name.")
    return target


def _swap(target: Path, data: bytes, new: bool, check: Callable[[], None] | None) -> Notes:
    temporary = target.parent / f".rigbuilder-{mark(this_process())}-{secrets.token_hex(8)}.part"
    flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_CLOEXEC", 0)
    handle = syscalls.open_file(temporary, flags, 0o600)
    notes: list[str] = []
    try:
        try:
            _keep_mode(handle, target)
            _write_all(handle, data)
            _flush(handle, notes)
        finally:
            syscalls.close(handle)
        if check is not None:
            check()
        _put_in_place(temporary, target, new)
    except BaseException:
        with contextlib.suppress(OSError):
            syscalls.unlink(temporary)
        raise
    _flush_folder_of(target, new, notes)
    return tuple(notes)


def _keep_mode(handle: int, target: Path) -> None:
    try:
        old = syscalls.stat(target)
    except FileNotFoundError:
        return
    with contextlib.suppress(PermissionError):  # someone else's file in a shared folder becomes ours
        syscalls.chown_open(handle, old.st_uid, old.st_gid)
    syscalls.chmod_open(handle, stat.S_IMODE(old.st_mode) & 0o777)


def _write_all(handle: int, data: bytes) -> None:
    # A full disk shows first as a short write, which is no error by itself.
    rest = memoryview(data)
    while rest:
        written = syscalls.write(handle, rest)
        if written <= 0:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        rest = rest[written:]


def _flush(handle: int, notes: list[str]) -> None:
    try:
        syscalls.flush(handle)
    except OSError as error:
        if error.errno not in _UNSUPPORTED:
            raise
        notes.append("This disk cannot confirm that a saved file would survive a power cut.")


def _put_in_place(temporary: Path, target: Path, new: bool) -> None:
    if not new:
        syscalls.replace(temporary, target)
        return
    try:
        syscalls.link(temporary, target)
    except FileExistsError:
        raise AlreadyThere(
            target, f"“{shown(target.name)}” exists already.", "Choose another name."
        ) from None
    except OSError as error:
        if error.errno not in _NO_LINKS:
            raise
        # Memory cards know no links; the moment between looking and renaming cannot be closed there.
        if os.path.lexists(target):
            raise AlreadyThere(
                target, f"“{shown(target.name)}” exists already.", "Choose another name."
            ) from None
        syscalls.replace(temporary, target)
    else:
        with contextlib.suppress(OSError):
            syscalls.unlink(temporary)


def _flush_folder_of(target: Path, new: bool, notes: list[str]) -> None:
    try:
        flush_folder(target.parent, notes)
    except OSError as error:
        trouble = explain(error, target, "made safe against a power cut")
        if not new:
            happened = f"{trouble.happened} The new version is in place."
            raise NotFlushed(target, happened, "Save once more.") from error
        with contextlib.suppress(OSError):
            syscalls.unlink(target)  # what did not exist before is not left half acknowledged
        raise trouble from error


def flush_folder(folder: Path, notes: list[str]) -> None:
    """Make the names in ``folder`` survive a power cut, or note that this disk cannot."""
    if os.name == "nt":  # Windows has no such call, and does not need it
        return
    handle = syscalls.open_file(folder, os.O_RDONLY | getattr(os, "O_CLOEXEC", 0))
    try:
        _flush(handle, notes)
    finally:
        syscalls.close(handle)


def make_folder(folder: Path) -> None:
    """Make ``folder`` and what is missing above it, for the user alone (mode 0700).

    Raises:
        StoreError: it cannot be made, or something else is there.
    """
    try:
        missing = [place for place in (folder, *folder.parents) if not place.exists()]
        for place in reversed(missing):
            place.mkdir(mode=0o700, exist_ok=True)
            flush_folder(place.parent, [])
        if not folder.is_dir():
            raise NotADirectoryError(errno.ENOTDIR, os.strerror(errno.ENOTDIR))
    except ValueError as error:  # a NUL in the name
        raise explain(OSError(errno.EINVAL, str(error)), folder, "made") from None
    except (FileExistsError, NotADirectoryError):
        blocking = next((place for place in (folder, *folder.parents) if os.path.lexists(place)), folder)
        what = "a link that leads to no folder" if blocking.is_symlink() else "a file, not a folder"
        raise FolderGone(
            folder,
            f"The folder “{shown(folder)}” cannot be made: “{shown(blocking)}” is {what}.",
            "Remove or rename it, or choose another place.",
        ) from None
    except OSError as error:
        raise explain(error, folder, "made") from error


def remove(path: Path) -> None:
    """Remove one file for good, and return when that would survive a power cut.

    Raises:
        StoreError: it cannot be removed.
    """
    try:
        syscalls.unlink(path)
        flush_folder(path.parent, [])
    except OSError as error:
        raise explain(error, path, "removed") from error


def sweep(folder: Path, *, older_than_s: float = 3600.0) -> int:
    """Remove temporary files that a killed program left in ``folder``; return how many.

    A file goes at once if its program ran on this machine and has ended, and
    after an hour otherwise. Only ordinary files of our own pattern are touched.
    """
    here = this_process()
    removed = 0
    try:
        with os.scandir(folder) as entries:
            ours = [(entry, match) for entry in entries if (match := _TEMPORARY.fullmatch(entry.name))]
        for entry, match in ours:
            with contextlib.suppress(OSError):
                facts = entry.stat(follow_symlinks=False)
                old = (
                    abs(time.time() - facts.st_mtime) > older_than_s
                )  # a date ahead of the clock is no better
                if stat.S_ISREG(facts.st_mode) and (old or mark_is_gone(match[1], seen_from=here)):
                    syscalls.unlink(Path(entry.path))
                    removed += 1
    except OSError:
        return removed  # a folder that cannot be listed has other messages
    return removed
