"""Read a whole file without ever waiting, following a trap or filling the memory."""

import errno
import os
import stat
from pathlib import Path

from rigbuilder.store import syscalls
from rigbuilder.store.errors import CardError, NotAFile, explain, shown
from rigbuilder.store.fingerprint import Fingerprint, digest

_CHUNK = 1 << 20


def not_a_file(path: Path, mode: int) -> NotAFile:
    """Return the error for something that is no ordinary file, naming what it is."""
    kinds = ((stat.S_ISDIR, "a folder"), (stat.S_ISFIFO, "a pipe"), (stat.S_ISSOCK, "a socket"))
    what = next((word for test, word in kinds if test(mode)), "a device")
    return NotAFile(path, f"“{shown(path.name)}” is {what}, not a file.", "Choose a file.")


def read_file(path: Path, *, limit: int) -> tuple[bytes, Fingerprint]:
    """Return the bytes of an ordinary file of at most ``limit`` bytes, and its fingerprint.

    A pipe or device is refused before it is opened, and opened without waiting
    in case it was put there in between.

    Raises:
        StoreError: the file is missing, not ordinary, not readable.
        CardError: it is larger than ``limit``.
    """
    try:
        before = syscalls.stat(path)
        if not stat.S_ISREG(before.st_mode):
            raise not_a_file(path, before.st_mode)
        handle = syscalls.open_file(
            path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_CLOEXEC", 0)
        )
        try:
            return _read_open(handle, path, limit)
        finally:
            syscalls.close(handle)
    except ValueError as error:  # a NUL in the name
        raise explain(OSError(errno.EINVAL, str(error)), path, "read") from None
    except OSError as error:
        raise explain(error, path, "read") from error


def _read_open(handle: int, path: Path, limit: int) -> tuple[bytes, Fingerprint]:
    facts = syscalls.stat_open(handle)
    if not stat.S_ISREG(facts.st_mode):
        raise not_a_file(path, facts.st_mode)
    if facts.st_size > limit:
        raise too_large(path, facts.st_size, limit)
    chunks: list[bytes] = []
    total = 0
    while chunk := syscalls.read(handle, min(_CHUNK, limit + 1)):
        chunks.append(chunk)
        total += len(chunk)
        if total > limit:
            raise too_large(path, total, limit)
    data = b"".join(chunks)
    return data, Fingerprint(len(data), facts.st_mtime_ns, digest(data))


def too_large(path: Path | None, size: int, limit: int) -> CardError:
    """Return the error for a file above the limit."""
    return CardError(path, found=f"{size:,} bytes", expected=f"at most {limit:,} bytes")
