"""A second start hands its cards to the window that is open already: the part that needs no window.

A start without cards brings the open window to the front.

The open window listens on a socket that belongs to this user and to this
folder of cards; whoever starts later sends one line of JSON and waits for a
word. Where sockets of that kind do not exist, every start opens its own window.
"""

import contextlib
import hashlib
import json
import os
import socket
from collections.abc import Sequence
from pathlib import Path

import platformdirs

_APP = "Rigbuilder"
_LONGEST_PATH = 100  # bytes that every system accepts for a socket
_LONGEST_LINE = 100_000
_WAIT_S = 0.25
_WORD = b"ok\n"


def address() -> Path | None:
    """Return where the open window listens; None where there can be no such place."""
    if not hasattr(socket, "AF_UNIX"):
        return None
    dirs = platformdirs.PlatformDirs(_APP, appauthor=False)
    mark = hashlib.sha256(os.fsencode(dirs.user_data_dir)).hexdigest()[:12]
    for folder in (os.environ.get("XDG_RUNTIME_DIR", ""), dirs.user_state_dir):
        path = Path(folder, f"rigbuilder-{mark}.sock")
        if folder and path.is_absolute() and path.parent.is_dir() and len(os.fsencode(path)) <= _LONGEST_PATH:
            return path
    return None


def hand_over(cards: Sequence[Path]) -> bool:
    """Give files to the window that is open, and have it come to the front.

    False if there is none, or it does not answer at once.
    """
    place = address()
    if place is None or not place.exists():
        return False
    line = json.dumps(
        {"open": [os.fsencode(card.absolute()).decode("utf-8", "surrogateescape") for card in cards]}
    )
    with contextlib.suppress(OSError), socket.socket(socket.AF_UNIX) as line_to:
        line_to.settimeout(_WAIT_S)
        line_to.connect(str(place))
        line_to.sendall(line.encode() + b"\n")
        return line_to.recv(len(_WORD)) == _WORD
    return False


def listen() -> socket.socket | None:
    """Return a socket on which later starts will ring, None if another window has it or there is no place."""
    place = address()
    if place is None:
        return None
    door = socket.socket(socket.AF_UNIX)
    try:
        if place.exists() and _is_answered(place):
            raise OSError
        place.unlink(missing_ok=True)  # left by a window that was killed
        door.bind(str(place))
        place.chmod(0o600)
        door.listen(8)
        door.setblocking(False)
    except OSError:
        door.close()
        return None
    return door


def answer(door: socket.socket) -> list[Path] | None:
    """Take one ring and return the files that it brings, none if the window is only to come to the front.

    ``None`` if it says nothing that makes sense.
    """
    with contextlib.suppress(OSError, ValueError):
        caller, _ = door.accept()
        with caller:
            caller.settimeout(_WAIT_S)
            cards = _told(_line_from(caller))
            caller.sendall(_WORD)
            return cards
    return None


def close(door: socket.socket) -> None:
    """Stop listening and leave nothing behind."""
    place = door.getsockname()
    door.close()
    with contextlib.suppress(OSError):
        Path(place).unlink()


def _is_answered(place: Path) -> bool:
    with contextlib.suppress(OSError), socket.socket(socket.AF_UNIX) as line_to:
        line_to.settimeout(_WAIT_S)
        line_to.connect(str(place))
        return True
    return False


def _line_from(caller: socket.socket) -> bytes:
    line = b""
    while not line.endswith(b"\n"):
        part = caller.recv(4096)
        if not part or len(line) > _LONGEST_LINE:
            raise ValueError
        line += part
    return line


def _told(line: bytes) -> list[Path]:
    told = json.loads(line)
    names = told.get("open") if isinstance(told, dict) else None
    if not isinstance(names, list) or not all(isinstance(name, str) and "\0" not in name for name in names):
        raise ValueError
    return [path for path in map(Path, names) if path.is_absolute()]
