"""Which program, on which machine, since which start: and whether it still runs.

A process number alone is not enough: numbers are reused, machines restart, and
a network folder is seen from several machines.
"""

import hashlib
import os
import socket
from dataclasses import dataclass
from pathlib import Path
from typing import Any


@dataclass(frozen=True, slots=True)
class Process:
    """One running program: machine, start of that machine, number, start of the program."""

    host: str
    boot: str
    pid: int
    started: str

    def as_json(self) -> dict[str, Any]:
        """Return the plain form that is kept in lock files and drafts."""
        return {"host": self.host, "boot": self.boot, "pid": self.pid, "started": self.started}


def from_json(value: Any) -> Process | None:
    """Read back :meth:`Process.as_json`; None if it is not of that form."""
    if not isinstance(value, dict):
        return None
    host, boot, pid, started = (value.get(key) for key in ("host", "boot", "pid", "started"))
    if not (isinstance(host, str) and isinstance(boot, str) and isinstance(started, str)):
        return None
    if type(pid) is not int or not 0 < pid < 2**31:
        return None
    return Process(host, boot, pid, started)


def _first_line(path: str) -> str:
    try:
        return Path(path).read_text(encoding="ascii").strip()
    except (OSError, ValueError):
        return ""


def _namespace() -> str:
    # Two containers may share a host name and a folder, but count processes apart.
    try:
        return str(Path("/proc/self/ns/pid").readlink())
    except OSError:
        return ""


def started(pid: int) -> str:
    """Return when a process of this machine began (clock ticks since boot), "" if not known."""
    fields = _first_line(f"/proc/{pid}/stat").rpartition(")")[2].split()
    return fields[19] if len(fields) > 19 else ""


def this_process() -> Process:
    """Return the identity of the running program."""
    host = f"{socket.gethostname()} {_namespace()}".strip()
    return Process(host, _first_line("/proc/sys/kernel/random/boot_id"), os.getpid(), started(os.getpid()))


def runs(pid: int) -> bool:
    """Say whether a process of that number exists on this machine."""
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return False
    except PermissionError:
        return True
    return True


def is_gone(process: Process, *, seen_from: Process) -> bool:
    """Say whether ``process`` has certainly ended; a process of another machine is never certain."""
    if process.host != seen_from.host:
        return False
    if process.boot != seen_from.boot:
        return True
    if not runs(process.pid):
        return True
    now = started(process.pid)
    return bool(process.started and now and now != process.started)


def mark(process: Process) -> str:
    """Return a short mark for file names: machine, its start, process number."""
    host = hashlib.sha256(process.host.encode("utf-8", "surrogateescape")).hexdigest()[:6]
    boot = hashlib.sha256(process.boot.encode()).hexdigest()[:6]
    return f"{host}-{boot}-{process.pid}"


def mark_is_gone(text: str, *, seen_from: Process) -> bool:
    """Say whether the process that left a :func:`mark` has certainly ended."""
    host, boot, pid = text.split("-")
    own_host, own_boot, _ = mark(seen_from).split("-")
    if host != own_host:
        return False
    return boot != own_boot or not runs(int(pid))
