"""What is asked when cards are opened, saved and left; the answers go to the desk."""

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Protocol

from PySide6.QtCore import QObject, Signal

from rigbuilder.viewmodels.desk import Desk
from rigbuilder.viewmodels.naming import suggested_name
from rigbuilder.viewmodels.outcome import Fate, Outcome
from rigbuilder.viewmodels.slate import field_words
from rigbuilder.views.controls.ask import CANCEL, Answer, Ask

PATTERN = "Rig cards (*.rigcard);;All files (*)"
_MOST_DIFFERENCES = 30

_SAVE = Answer("save", "Save")
_DISCARD = Answer("discard", "Discard changes", harmful=True)
_BOTH = Answer("both", "Keep both")
_RELOAD = Answer("reload", "Load the file's", harmful=True)
_LOAD = Answer("reload", "Load it")
_COMPARE = Answer("compare", "Compare…")
_AGAIN = Answer("again", "Save it there again")
_ELSEWHERE = Answer("elsewhere", "Save in another place…")
_RETRY = Answer("retry", "Try again")
_LATER = Answer("later", "Not now")
_ANYWAY = Answer("anyway", "Open it anyway")


class PickTechnique(Protocol):
    """Asks which usual rig to start from."""

    def __call__(self) -> str | None:
        """Return a technique id, "" for an empty card, None if the person thought better of it."""


class DeskTalk(QObject):
    """Every way to a card and away from it, with the questions that belong to it."""

    said = Signal(str)

    def __init__(
        self,
        desk: Desk,
        ask: Ask,
        pick: PickTechnique,
        commit: Callable[[], None],
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._desk, self._ask, self._pick, self._commit = desk, ask, pick, commit
        self._seen: Outcome | None = None

    def new(self) -> None:
        """Start a new card from a usual rig or from nothing."""
        if not self.may_leave():
            return
        technique = self._pick()
        if technique is not None:
            self._desk.new(technique)

    def open_asked(self) -> None:
        """Ask for a card and open it."""
        path = self._ask.open_path("Open a card", _folder(self._desk), PATTERN)
        if path is not None:
            self.open(path)

    def open(self, path: Path) -> bool:
        """Open a card, unless unsaved work is to be kept on the bench."""
        if not self.may_leave():
            return False
        outcome = self._desk.open(path)
        if outcome.fate is Fate.ELSEWHERE:
            answers = [_ANYWAY, CANCEL]
            if (
                self._ask.choose("Open elsewhere", outcome.happened, answers, detail=outcome.advice)
                != "anyway"
            ):
                return False
            outcome = self._desk.open(path, force=True)
        if not outcome.done:
            self._ask.tell("Not opened", outcome.happened, detail=outcome.advice)
        return outcome.done

    def save(self) -> bool:
        """Save the card where it lies, or in the cards folder the first time."""
        self._commit()
        return self._finish(self._desk.save())

    def save_as(self) -> bool:
        """Ask for a place and save the card there."""
        self._commit()
        start = self._desk.path or _folder(self._desk) / _name(self._desk)
        path = self._ask.save_path("Save the card as", start, PATTERN)
        if path is None:
            return False
        return self._finish(self._desk.save_as(path, over=path.exists()))

    def may_leave(self) -> bool:
        """Make sure that nothing is lost when the bench is cleared; False to stay."""
        self._commit()
        if not self._desk.is_dirty:
            return True
        name = str(self._desk.document.get("name") or "This rig")
        text = f"“{name}” has changes that are not saved."
        answer = self._ask.choose(
            "Unsaved changes", text, [_SAVE, _DISCARD, CANCEL], detail="Save them before going on?"
        )
        if answer == "save":
            return self.save()
        return answer == "discard"

    def look(self) -> None:
        """Ask what to do when the file was changed or removed by someone else; each change once."""
        outcome = self._desk.place.look(self._desk.store)
        if outcome.done:
            self._seen = None
        elif outcome != self._seen:
            self._seen = outcome
            self._finish(outcome)

    def offer_drafts(self) -> None:
        """Offer the unsaved work that an earlier run left; take up one at most."""
        answers = [
            Answer("take", "Take it up"),
            Answer("discard", "Throw it away", harmful=True),
            Answer("later", "Ask again next time"),
        ]
        for offer in self._desk.keeper.offers():
            text = f"“{offer.name}” was left with unsaved work."
            answer = self._ask.choose("Unsaved work", text, answers, detail=offer.says)
            if answer == "discard":
                self._desk.keeper.discard(offer.draft)
            elif answer == "take":
                self._desk.recover(offer)
                return

    def _finish(self, outcome: Outcome) -> bool:
        """Ask until the outcome is settled; True if the card is where it should be."""
        while not outcome.done:
            match outcome.fate:
                case Fate.CHANGED:
                    following = self._changed(outcome)
                case Fate.GONE:
                    following = self._gone(outcome)
                case Fate.UNSAVEABLE:
                    self._ask.tell("Not saved", outcome.happened, detail=outcome.advice)
                    return False
                case _:
                    following = self._trouble(outcome)
            if following is None:
                return False
            outcome = following
        self._seen = None
        return True

    def _changed(self, outcome: Outcome) -> Outcome | None:
        dirty = self._desk.is_dirty
        answers = [_BOTH, _COMPARE, _RELOAD, _LATER] if dirty else [_LOAD, _BOTH, _COMPARE, _LATER]
        detail = (
            "Your work is still here. Keep both: yours becomes a card of its own beside the file."
            if dirty
            else "Load what the file holds now, or keep what is here as a card of its own."
        )
        answer = self._ask.choose("Changed on disk", outcome.happened, answers, detail=detail)
        if answer == "compare":
            self._compare()
            return outcome
        if answer == "both":
            return self._desk.keep_both()
        return self._desk.reload() if answer == "reload" else None

    def _gone(self, outcome: Outcome) -> Outcome | None:
        answers = [_AGAIN, _ELSEWHERE, _LATER]
        detail = "The card is still here in the window."
        answer = self._ask.choose("Removed on disk", outcome.happened, answers, detail=detail)
        if answer == "again":
            return self._desk.save(again=True)
        return self._other_place() if answer == "elsewhere" else None

    def _trouble(self, outcome: Outcome) -> Outcome | None:
        text = f"{outcome.happened} {outcome.advice}"
        detail = "Nothing is lost: the card is still here in the window."
        answer = self._ask.choose("Not saved", text, [_ELSEWHERE, _RETRY, _LATER], detail=detail)
        if answer == "retry":
            return self._desk.save()
        return self._other_place() if answer == "elsewhere" else None

    def _other_place(self) -> Outcome | None:
        path = self._ask.save_path("Save the card as", _folder(self._desk) / _name(self._desk), PATTERN)
        return None if path is None else self._desk.save_as(path, over=path.exists())

    def _compare(self) -> None:
        found = self._desk.place.compare(self._desk.store, self._desk.document)
        if isinstance(found, str):
            self._ask.tell("The file", found)
            return
        self._ask.tell("What differs", _told(found) or "Both say the same.")


def _folder(desk: Desk) -> Path:
    return desk.path.parent if desk.path is not None else desk.store.folder


def _name(desk: Desk) -> str:
    return suggested_name(str(desk.document.get("name") or ""), ".rigcard")


def _told(found: Sequence[tuple[str, object, object]]) -> str:
    lines = [
        f"{field_words(path)}: the file has {_value(theirs)}, here it is {_value(mine)}"
        for path, theirs, mine in found[:_MOST_DIFFERENCES]
    ]
    if len(found) > _MOST_DIFFERENCES:
        lines.append(f"and {len(found) - _MOST_DIFFERENCES} more")
    return "\n".join(lines)


def _value(value: object) -> str:
    return "nothing" if value is None else f"“{value}”"
