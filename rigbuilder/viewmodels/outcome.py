"""What came of opening or saving: a value that the window can ask about, never an exception."""

from dataclasses import dataclass
from enum import Enum, auto
from pathlib import Path

from rigbuilder.store.errors import AlreadyThere, CannotWrite, ChangedOnDisk, Gone, StoreError


class Fate(Enum):
    """The ways in which a request to the desk may end."""

    DONE = auto()
    CHANGED = auto()  # the file is no longer what was opened
    GONE = auto()  # the file was removed or renamed
    TAKEN = auto()  # a file of that name exists
    ELSEWHERE = auto()  # another window has the card open
    UNSAVEABLE = auto()  # the card itself holds something that no file can keep
    TROUBLE = auto()  # disk, permission, broken file ...


@dataclass(frozen=True, slots=True)
class Outcome:
    """How it ended, what happened in one sentence, and the next step in another."""

    fate: Fate = Fate.DONE
    happened: str = ""
    advice: str = ""
    path: Path | None = None

    @property
    def done(self) -> bool:
        """Tell whether it is done."""
        return self.fate is Fate.DONE


DONE = Outcome()


def outcome_of(trouble: StoreError) -> Outcome:
    """Return the outcome that a trouble of the store leads to."""
    fates: tuple[tuple[type[StoreError], Fate], ...] = (
        (ChangedOnDisk, Fate.CHANGED),
        (Gone, Fate.GONE),
        (AlreadyThere, Fate.TAKEN),
        (CannotWrite, Fate.UNSAVEABLE),
    )
    fate = next((fate for kind, fate in fates if isinstance(trouble, kind)), Fate.TROUBLE)
    return Outcome(fate, trouble.happened, trouble.advice, trouble.path)
