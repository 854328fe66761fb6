"""Hands and eyes for real-window stories: a thin layer over xdotool."""

import subprocess
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TypeVar

Found = TypeVar("Found")

PATIENCE_S = 15.0
"""How long anything may take on a busy machine before a story fails."""


def wait_for(look: Callable[[], Found], what: str) -> Found:
    """Call ``look`` until it returns something true, and return that."""
    deadline = time.monotonic() + PATIENCE_S
    while not (found := look()):
        if time.monotonic() > deadline:
            raise AssertionError(f"waited {PATIENCE_S:g} s in vain for {what}")
        time.sleep(0.02)
    return found


@dataclass(frozen=True)
class Box:
    """A window's place on the screen, in pixels."""

    x: int
    y: int
    width: int
    height: int


class Desk:
    """The keyboard, the mouse and the windows of the display."""

    def _xdotool(self, *words: str, check: bool = True) -> str:
        result = subprocess.run(["xdotool", *words], capture_output=True, text=True, timeout=PATIENCE_S)
        if check and result.returncode != 0:
            raise AssertionError(f"xdotool {' '.join(words)}: {result.stderr.strip()}")
        return result.stdout.strip()

    def windows(self, *, process: int) -> list[str]:
        """Return the ids of the visible windows of one process."""
        return self._xdotool(
            "search", "--onlyvisible", "--pid", str(process), "--name", ".", check=False
        ).split()

    def wait_for_window(self, title: str, *, of: "subprocess.Popen[bytes]") -> str:
        """Wait while ``of`` runs for a visible window with ``title`` in its title; return its id."""

        def look() -> str:
            assert of.poll() is None, f"the command ended early with {of.returncode}"
            shown = self._xdotool("search", "--onlyvisible", "--name", ".", check=False).split()
            return next((window for window in shown if title in self.title(window)), "")

        return wait_for(look, f"a window titled {title!r}")

    def title(self, window: str) -> str:
        """Return a window's title."""
        return self._xdotool("getwindowname", window, check=False)  # it may just have closed

    def box(self, window: str) -> Box:
        """Return where a window is and how large."""
        pairs = (line.split("=") for line in self._xdotool("getwindowgeometry", "--shell", window).split())
        values = dict(pairs)
        return Box(*(int(values[key]) for key in ("X", "Y", "WIDTH", "HEIGHT")))

    def active(self) -> str:
        """Return the id of the window that has the focus, or nothing."""
        return self._xdotool("getactivewindow", check=False)

    def activate(self, window: str) -> None:
        """Bring a window to the front and wait until it has the focus."""
        self._xdotool("windowactivate", "--sync", window)
        wait_for(lambda: self.active() == window, "the window to get the focus")

    def resize(self, window: str, *, width: int, height: int) -> None:
        """Give a window a size, as a person does by its frame."""
        self._xdotool("windowsize", "--sync", window, str(width), str(height))

    def key(self, *keys: str) -> None:
        """Press keys one after another, named as X names them: ``key("ctrl+s", "Tab")``."""
        self._xdotool("key", "--clearmodifiers", "--delay", "20", *keys)

    def type(self, text: str) -> None:
        """Type text as on a keyboard."""
        self._xdotool("type", "--clearmodifiers", "--delay", "20", text)

    def click(self, window: str, *, x: int, y: int) -> None:
        """Click with the left button at a place inside a window."""
        self._xdotool("mousemove", "--sync", "--window", window, str(x), str(y), "click", "1")

    def click_screen(self, *, x: int, y: int) -> None:
        """Click with the left button at a place on the screen."""
        self._xdotool("mousemove", "--sync", str(x), str(y), "click", "1")

    def close(self, window: str) -> None:
        """Ask a window to close, as its frame's button does."""
        self.activate(window)
        self.key("alt+F4")


@dataclass
class Program:
    """One running program and the windows it shows."""

    process: "subprocess.Popen[bytes]"
    log: Path
    desk: Desk

    def output(self) -> str:
        """Return everything it has printed so far."""
        return self.log.read_text(encoding="utf-8", errors="replace")

    def window(self, title: str = "") -> str:
        """Wait for a window whose title contains ``title``, bring it to the front and return its id."""
        window = wait_for(lambda: self._find(title), f"a window titled {title or 'anything'!r}")
        self.desk.activate(window)
        return window

    def wait_for_title(self, part: str) -> None:
        """Wait until one of its windows has ``part`` in its title."""
        wait_for(lambda: self._find(part), f"{part!r} in a title")

    def _find(self, title: str) -> str:
        if self.process.poll() is not None:
            raise AssertionError(f"the program ended early with {self.process.returncode}:\n{self.output()}")
        for window in self.desk.windows(process=self.process.pid):
            if title in self.desk.title(window):
                return window
        return ""

    def wait(self) -> int:
        """Wait until it has ended by itself, and return its exit code."""
        return self.process.wait(timeout=PATIENCE_S)

    def end(self) -> None:
        """End it if it still runs: politely, then not."""
        if self.process.poll() is not None:
            return
        self.process.terminate()
        try:
            self.process.wait(timeout=5)
        except subprocess.TimeoutExpired:
            self.process.kill()
            self.process.wait()
