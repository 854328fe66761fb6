"""Where a card lies: its file, what that file held when last seen, and the notice beside it."""

import os
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from rigbuilder.model.document import Document, differences
from rigbuilder.store.cards import CardStore, Change
from rigbuilder.store.errors import StoreError, shown
from rigbuilder.store.fingerprint import Fingerprint
from rigbuilder.store.lock import Holder, Notice
from rigbuilder.viewmodels.outcome import DONE, Fate, Outcome


@dataclass(slots=True)
class Place:
    """The file of the card on the bench; without a path the card was never saved.

    ``example`` marks a card that ships with the program and was opened as a new one.
    """

    path: Path | None = None
    base: Fingerprint | None = None
    notice: Notice | None = None
    example: bool = False

    def words(self, *, dirty: bool) -> str:
        """Return in a word or two whether the work on the bench is saved."""
        if dirty:
            return "unsaved changes"
        if self.path is not None:
            return "saved"
        return "example, not saved yet" if self.example else "not saved yet"

    def is_at(self, path: Path) -> bool:
        """Tell whether ``path`` leads to the same file."""
        return self.path is not None and os.path.realpath(path) == os.path.realpath(self.path)

    def announce(self, *, force: bool = False) -> Holder | None:
        """Put up the notice that the card is open here; return who else has it open."""
        if self.path is None:
            return None
        notice = Notice(self.path)
        holder = notice.take(force=force)
        if holder is None:
            self.notice = notice
        return holder

    def let_go(self) -> None:
        """Take the notice down."""
        if self.notice is not None:
            self.notice.drop()
            self.notice = None

    def look(self, store: CardStore) -> Outcome:
        """Say what became of the file since it was opened or saved."""
        if self.path is None or self.base is None:
            return DONE
        try:
            change = store.change(self.path, self.base)
        except StoreError:
            return DONE  # said when it matters: on saving
        name = shown(self.path.name)
        if change is Change.CHANGED:
            return Outcome(Fate.CHANGED, f"“{name}” was changed outside this window.", "", self.path)
        if change is Change.GONE:
            return Outcome(Fate.GONE, f"“{name}” was removed or renamed outside this window.", "", self.path)
        return DONE

    def compare(self, store: CardStore, document: Document) -> Sequence[tuple[str, Any, Any]] | str:
        """Return (field, in the file, here) for all that differs; a sentence if the file cannot be read."""
        if self.path is None:
            return ()
        try:
            return tuple(differences(store.load(self.path).document, document))
        except StoreError as trouble:
            return str(trouble)
