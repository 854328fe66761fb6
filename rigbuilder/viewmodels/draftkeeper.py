"""Unsaved work is kept as a draft within two seconds, and offered at the next start, never merged."""

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from PySide6.QtCore import QObject, QTimer, Signal

from rigbuilder.model.document import Document
from rigbuilder.store.cards import CardStore
from rigbuilder.store.drafts import Base, Draft, Drafts, compare
from rigbuilder.store.errors import StoreError
from rigbuilder.store.fingerprint import Fingerprint

WRITE_AFTER_MS = 1200


@dataclass(frozen=True, slots=True)
class Offer:
    """A draft that an earlier run left, and what became of its card."""

    draft: Draft
    name: str
    says: str


class DraftKeeper(QObject):
    """Writes the draft of the card on the bench soon after an edit, and drops it after a save."""

    said = Signal(str)

    def __init__(self, drafts: Drafts, store: CardStore, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._drafts, self._store = drafts, store
        self._waiting: tuple[Document, Path | None, Fingerprint | None] | None = None
        self._failed = False
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(WRITE_AFTER_MS)
        self._timer.timeout.connect(self.flush)

    def keep(self, document: Document, path: Path | None, base: Fingerprint | None) -> None:
        """Have this state written soon; typing on does not put it off."""
        self._waiting = (document, path, base)
        if not self._timer.isActive():
            self._timer.start()

    def flush(self) -> None:
        """Write what waits now."""
        self._timer.stop()
        if self._waiting is None:
            return
        document, path, base = self._waiting
        try:
            self._drafts.write(document, path, base)
        except StoreError as trouble:
            if not self._failed:  # said once, not after every keystroke
                self.said.emit(f"Unsaved work cannot be kept aside against a crash. {trouble}")
            self._failed = True
            return
        self._waiting, self._failed = None, False

    def drop(self, document: Document, path: Path | None) -> None:
        """Forget the draft of a card: it is saved, or given up."""
        self._timer.stop()
        self._waiting = None
        try:
            self._drafts.remove(document, path)
        except StoreError as trouble:
            self.said.emit(str(trouble))

    def offers(self) -> list[Offer]:
        """Return the drafts that earlier runs left and that hold more than their cards."""
        found = []
        for draft in self._drafts.pending():
            standing = compare(draft, self._load)
            if standing.base is Base.SAVED:
                self.discard(draft)
                continue
            when = datetime.fromtimestamp(draft.written_ns / 1e9).strftime("%Y-%m-%d %H:%M")
            says = f"Unsaved work of {when}; {standing.base.value}."
            found.append(Offer(draft, draft.name, says))
        return found

    def discard(self, draft: Draft) -> None:
        """Remove a draft for good: the person gave it up, or it lives on in another."""
        try:
            self._drafts.discard(draft.path)
        except StoreError as trouble:
            self.said.emit(str(trouble))

    def dismiss(self, draft: Draft) -> None:
        """Keep a draft, but do not offer it again."""
        try:
            self._drafts.dismiss(draft)
        except StoreError as trouble:
            self.said.emit(str(trouble))

    def _load(self, path: Path) -> tuple[Document, Fingerprint]:
        loaded = self._store.load(path)
        return loaded.document, loaded.fingerprint
