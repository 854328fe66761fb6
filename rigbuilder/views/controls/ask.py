"""Questions to the person, through one object that is handed in: tests answer without a dialog."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Protocol

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QMessageBox, QPushButton, QWidget

_ROLE = QMessageBox.ButtonRole


@dataclass(frozen=True, slots=True)
class Answer:
    """One possible answer: ``value`` for the program, ``verb`` for its button.

    ``harmful`` marks what loses work; it is never the default.
    """

    value: str
    verb: str
    harmful: bool = False


CANCEL = Answer("cancel", "Cancel")


class Ask(Protocol):
    """Everything the program may ask in the middle of something."""

    def choose(self, title: str, text: str, answers: Sequence[Answer], *, detail: str = "") -> str:
        """Return the value of the answer chosen; the last answer stands for Esc."""

    def tell(self, title: str, text: str, *, detail: str = "") -> None:
        """Say something that must be read before going on."""

    def open_path(self, title: str, start: Path, pattern: str) -> Path | None:
        """Return a file to open, or None if the person thought better of it."""

    def save_path(self, title: str, start: Path, pattern: str) -> Path | None:
        """Return a file to write, or None if the person thought better of it."""


class WindowAsk:
    """Asks with dialogs over a window; every text is shown as plain text."""

    def __init__(self, parent: QWidget | None = None) -> None:
        self._parent = parent

    def choose(self, title: str, text: str, answers: Sequence[Answer], *, detail: str = "") -> str:
        """Return the value of the answer chosen; the last answer stands for Esc."""
        box, buttons = self.box(title, text, answers, detail=detail)
        box.exec()
        clicked = box.clickedButton()
        for button, answer in buttons:
            if button is clicked:
                return answer.value
        return answers[-1].value

    def tell(self, title: str, text: str, *, detail: str = "") -> None:
        """Say something that must be read before going on."""
        self.choose(title, text, [Answer("close", "Close")], detail=detail)

    def open_path(self, title: str, start: Path, pattern: str) -> Path | None:
        """Return a file to open, or None if the person thought better of it."""
        name, _ = QFileDialog.getOpenFileName(self._parent, title, str(start), pattern)
        return Path(name) if name else None

    def save_path(self, title: str, start: Path, pattern: str) -> Path | None:
        """Return a file to write, or None if the person thought better of it."""
        name, _ = QFileDialog.getSaveFileName(self._parent, title, str(start), pattern)
        return Path(name) if name else None

    def box(
        self, title: str, text: str, answers: Sequence[Answer], *, detail: str = ""
    ) -> tuple[QMessageBox, list[tuple[QPushButton, Answer]]]:
        """Return the dialog and its buttons without showing it."""
        box = QMessageBox(self._parent)
        box.setWindowTitle(title)
        box.setTextFormat(Qt.TextFormat.PlainText)
        box.setText(text)
        box.setInformativeText(detail)
        buttons = []
        for index, answer in enumerate(answers):
            last = index == len(answers) - 1
            role = _ROLE.RejectRole if last else _ROLE.DestructiveRole if answer.harmful else _ROLE.AcceptRole
            buttons.append((box.addButton(answer.verb, role), answer))
        box.setEscapeButton(buttons[-1][0])
        safe = next((button for button, answer in buttons if not answer.harmful), buttons[-1][0])
        box.setDefaultButton(safe)
        return box, buttons


@dataclass
class ScriptedAsk:
    """Answers from a list, in order, and keeps what was asked: for scripted runs and tests."""

    answers: list[str | Path | None] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)

    def choose(self, title: str, text: str, answers: Sequence[Answer], *, detail: str = "") -> str:
        """Return the next answer, which must be among those offered."""
        value = self._next(text)
        offered = [answer.value for answer in answers]
        if value not in offered:
            raise AssertionError(f"{value!r} is not an answer to {text!r}; offered: {', '.join(offered)}")
        return str(value)

    def tell(self, title: str, text: str, *, detail: str = "") -> None:
        """Keep what was said."""
        self.asked.append(text)

    def open_path(self, title: str, start: Path, pattern: str) -> Path | None:
        """Return the next answer as a path."""
        return self._path(title)

    def save_path(self, title: str, start: Path, pattern: str) -> Path | None:
        """Return the next answer as a path."""
        return self._path(title)

    def _path(self, title: str) -> Path | None:
        value = self._next(title)
        return None if value is None else Path(value)

    def _next(self, text: str) -> str | Path | None:
        self.asked.append(text)
        if not self.answers:
            raise AssertionError(f"Nobody was expected to be asked: {text!r}")
        return self.answers.pop(0)
