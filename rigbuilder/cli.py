"""The way in: a command, or the window. What only one of the two needs is loaded by that one."""

import sys
from collections.abc import Sequence
from pathlib import Path

from rigbuilder import __version__
from rigbuilder.store.handover import hand_over

_COMMANDS = ("review", "plan", "rules", "techniques", "schema", "label", "cards", "lesson")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command, or open the window on the files named; return the exit code.

    Exit codes: 0 no fault, 1 a fault, 2 the card or the call cannot be read.
    """
    given = list(sys.argv[1:] if arguments is None else arguments)
    if not given or (given[0] not in _COMMANDS and not given[0].startswith("-")):
        return _open_window([Path(name) for name in given])
    if given == ["--version"]:
        print(f"rigbuilder {__version__}")
        return 0
    try:
        from rigbuilder.commands.parser import run_command  # half a second of libraries: not for the window

        return run_command(given)
    except KeyboardInterrupt:
        print("rigbuilder: stopped.", file=sys.stderr)
        return 130  # what shells give for Ctrl+C


def _open_window(files: Sequence[Path]) -> int:
    if hand_over(files):
        return 0
    from rigbuilder.app import run  # the window's libraries are loaded by this one command only

    return run(files)
