"""How far a long command has come, on the error output; and its end by Ctrl+C."""

import sys
import time

#: So few cards need no counting.
_FEW = 50
_EVERY_S = 0.2
_EVERY_PLAIN_S = 5.0

STOPPED = 130
"""The exit code that shells give to a command ended with Ctrl+C."""


class Stopped(Exception):  # noqa: N818 - named for what happened
    """The person ended the command."""

    def __init__(self, done: int, total: int) -> None:
        super().__init__(done, total)
        self.done, self.total = done, total

    def tell(self) -> int:
        """Say so in one line; return the exit code."""
        print(f"rigbuilder: stopped after {self.done:,} of {self.total:,} cards.", file=sys.stderr)
        return STOPPED


class Progress:
    """Counts on one line of a terminal; elsewhere a line now and then."""

    def __init__(self, total: int) -> None:
        self._total = total
        self._live = sys.stderr.isatty()
        self._pause_s = _EVERY_S if self._live else _EVERY_PLAIN_S
        self._last = time.monotonic()

    def at(self, done: int) -> None:
        """Tell that so many are done."""
        if self._total <= _FEW:
            return
        now = time.monotonic()
        if now - self._last < self._pause_s and done < self._total:
            return
        self._last = now
        if self._live:
            end = "\n" if done >= self._total else ""
            print(f"\r{done:,} of {self._total:,} cards", end=end, file=sys.stderr, flush=True)
        else:
            print(f"{done:,} of {self._total:,} cards", file=sys.stderr, flush=True)

    def cut_off(self) -> None:
        """Leave the line that was counted on."""
        if self._live and self._total > _FEW:
            print(file=sys.stderr)
