"""Who has a card open, and one writer at a time.

Two things that are easily confused. The *notice* beside a card tells a second
person who is at work on it; it may be overruled. The *turn* is held for the
few milliseconds in which a save compares and swaps; it ends by itself when a
program dies.
"""

import contextlib
import errno
import hashlib
import json
import os
import re
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from rigbuilder.store import atomic
from rigbuilder.store.codec import decode
from rigbuilder.store.errors import AlreadyThere, Busy, StoreError, explain, shown
from rigbuilder.store.process import Process, from_json, is_gone, this_process
from rigbuilder.store.reading import read_file

if sys.platform != "win32":
    import fcntl

_UNSUPPORTED = {errno.ENOLCK, errno.EBADF, errno.EINVAL, errno.ENOTSUP, errno.EOPNOTSUPP, errno.ENOSYS}

#: A notice from another machine that nobody renewed for this long is taken as left behind.
FORGOTTEN_AFTER_S = 12 * 3600.0


@dataclass(frozen=True, slots=True)
class Holder:
    """Who has a card open: ``str()`` says it to a person."""

    process: Process
    user: str
    since: str

    def __str__(self) -> str:
        host = self.process.host.split(" ")[0]
        who = self.user or "Someone"
        return shown(f"{who} on {host} (process {self.process.pid}, since {self.since})")


class Notice:
    """The small hidden file beside a card that says who has it open."""

    def __init__(self, card: Path, process: Process | None = None) -> None:
        card = Path(os.path.realpath(card))
        mark = hashlib.sha256(card.name.encode("utf-8", "surrogateescape")).hexdigest()[:16]
        self.path = card.with_name(f".rigbuilder-{mark}.open")
        self._process = process or this_process()

    def take(self, *, force: bool = False) -> Holder | None:
        """Put the notice up; return who else has the card open, or None when it is ours.

        In a place where nothing can be written there is no notice, and no harm.
        """
        other = self.holder()
        if other is not None and other.process != self._process and not force:
            return other
        data = json.dumps(
            {"by": self._process.as_json(), "user": _user(), "since": time.strftime("%Y-%m-%d %H:%M")}
        )
        with contextlib.suppress(StoreError):
            if other is None and not os.path.lexists(self.path):
                try:
                    atomic.write(self.path, data.encode(), new=True)
                except AlreadyThere:
                    return self.holder()
            else:
                atomic.write(self.path, data.encode())
        return None

    def holder(self) -> Holder | None:
        """Return who has the card open; None if nobody, or the notice was left by a program that ended."""
        try:
            data, _ = read_file(self.path, limit=4096)
            told = decode(data, self.path)
            age_s = abs(time.time() - self.path.stat().st_mtime)
        except (StoreError, OSError):
            return None
        process = from_json(told.get("by"))
        if process is None or is_gone(process, seen_from=self._process):
            return None
        if process.host != self._process.host and age_s > FORGOTTEN_AFTER_S:
            return None
        return Holder(process, str(told.get("user", "")), str(told.get("since", "")))

    def renew(self) -> None:
        """Say that the card is still open; worth doing every hour."""
        if self._is_ours():
            with contextlib.suppress(OSError):
                os.utime(self.path)

    def drop(self) -> None:
        """Take the notice down, if it is ours."""
        if self._is_ours():
            with contextlib.suppress(OSError):
                self.path.unlink()

    def _is_ours(self) -> bool:
        holder = self.holder()
        return holder is not None and holder.process == self._process


_NOTICE = re.compile(r"\.rigbuilder-[0-9a-f]{16}\.open")


def sweep_notices(folder: Path) -> int:
    """Remove the notices in ``folder`` that programs of this machine left when they were killed."""
    removed = 0
    try:
        paths = [path for path in folder.iterdir() if _NOTICE.fullmatch(path.name)]
    except OSError:
        return 0
    for path in paths:
        with contextlib.suppress(StoreError, OSError):
            data, _ = read_file(path, limit=4096)
            process = from_json(decode(data, path).get("by"))
            if process is not None and is_gone(process, seen_from=this_process()):
                path.unlink()
                removed += 1
    return removed


def _user() -> str:
    return os.environ.get("USER") or os.environ.get("USERNAME") or ""


@contextlib.contextmanager
def turn(card: Path, *, wait_s: float = 10.0) -> Iterator[atomic.Notes]:
    """Hold the only right to save in the folder of ``card``; yield remarks, if this disk knows no locks.

    The lock is on the folder itself: nothing is left behind, and the system
    frees it when the program ends in whatever way.

    Raises:
        Busy: another program held it for ``wait_s``.
        StoreError: the folder cannot be opened.
    """
    if sys.platform == "win32":
        yield ()
        return
    folder = Path(os.path.realpath(card)).parent
    try:
        handle = os.open(folder, os.O_RDONLY | os.O_CLOEXEC)
    except OSError as error:
        raise explain(error, folder / card.name, "saved") from error
    try:
        yield _lock(handle, folder, time.monotonic() + wait_s)
    finally:
        os.close(handle)


def _lock(handle: int, folder: Path, deadline: float) -> atomic.Notes:
    pause_s = 0.0005
    while True:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            if time.monotonic() > deadline:
                raise Busy(
                    folder,
                    f"Another program keeps saving in “{shown(folder)}”.",
                    "Wait a moment, then save again.",
                ) from None
            time.sleep(pause_s)
            pause_s = min(2 * pause_s, 0.004)
        except OSError as error:
            if error.errno not in _UNSUPPORTED:
                raise explain(error, folder, "locked") from error
            return (
                "This disk knows no locks; two programs that save in the same instant are not kept apart.",
            )
        else:
            return ()
