"""What was done in the library, and the way back and forth again."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class Deed:
    """What was done, in one sentence, the files it left, and how to take it back.

    ``troubles`` are sentences about what could not be done; nothing is lost by them.
    """

    says: str = ""
    back: "Callable[[], Deed] | None" = None
    paths: tuple[Path, ...] = ()
    troubles: tuple[str, ...] = ()

    @property
    def text(self) -> str:
        """Return all of it as one text."""
        return " ".join(filter(None, (self.says, *self.troubles)))


class Trail:
    """The deeds of one sitting, to be taken back and done again in turn."""

    def __init__(self) -> None:
        self._done: list[Deed] = []
        self._undone: list[Deed] = []

    @property
    def can_undo(self) -> bool:
        """Whether there is something to take back."""
        return bool(self._done)

    @property
    def can_redo(self) -> bool:
        """Whether something that was taken back can be done again."""
        return bool(self._undone)

    def add(self, deed: Deed) -> Deed:
        """Remember a deed that can be taken back."""
        if deed.back is not None:
            self._done.append(deed)
            self._undone.clear()
        return deed

    def undo(self) -> Deed:
        """Take the last deed back."""
        return _reverse(self._done, self._undone)

    def redo(self) -> Deed:
        """Do again what was taken back last."""
        return _reverse(self._undone, self._done)


def _reverse(taken: list[Deed], put: list[Deed]) -> Deed:
    deed = taken.pop() if taken else Deed()
    if deed.back is None:
        return Deed()
    reverse = deed.back()
    if reverse.back is not None:
        put.append(reverse)
    return reverse
