"""The desk: which file the card on the bench belongs to, and what becomes of it.

Nothing here asks: every verb returns an outcome, and the work on the bench
stays as it is unless the verb was to put something else there.
"""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from rigbuilder import resources
from rigbuilder.model.document import Document, new_document
from rigbuilder.model.usual import usual_document
from rigbuilder.store.cardfile import SUFFIX, new_id
from rigbuilder.store.cards import CardStore, Saved
from rigbuilder.store.errors import NotFlushed, StoreError, shown
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.draftkeeper import DraftKeeper, Offer
from rigbuilder.viewmodels.outcome import DONE, Fate, Outcome, outcome_of
from rigbuilder.viewmodels.place import Place
from rigbuilder.viewmodels.preferences import Preferences


class Desk(QObject):
    """Opens and saves the card on the bench."""

    state_changed = Signal()  # place or saved state
    said = Signal(str)  # a remark to show in passing

    def __init__(
        self,
        bench: Bench,
        store: CardStore,
        keeper: DraftKeeper,
        preferences: Preferences,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._bench, self._preferences = bench, preferences
        self.store, self.keeper = store, keeper
        self.place = Place()
        self._identity = str(bench.document.get("id") or new_id())
        keeper.said.connect(self.said)
        bench.undo_stack.cleanChanged.connect(lambda _: self.state_changed.emit())
        bench.undo_stack.indexChanged.connect(self._changed)

    @property
    def path(self) -> Path | None:
        """Return the file of the card, ``None`` while it was never saved."""
        return self.place.path

    @property
    def is_dirty(self) -> bool:
        """Tell whether there is something that no file holds yet."""
        return not self._bench.undo_stack.isClean()

    @property
    def document(self) -> Document:
        """Return the card as it would be saved: as typed, under its identity."""
        return self._bench.document | {"id": self._identity}

    def new(self, technique: str = "") -> None:
        """Put a new card on the bench: the usual rig of a technique, or an empty one."""
        document = usual_document(technique) if technique else new_document("", "New rig")
        self._put_on(document | {"id": new_id()}, Place())

    def open(self, path: Path, *, force: bool = False) -> Outcome:
        """Open a card; with ``force`` also one that another window has open.

        A card that ships with the program is opened as a new one, so that it stays as it is.
        """
        try:
            loaded = self.store.load(path)
        except StoreError as trouble:
            return outcome_of(trouble)
        if path.resolve().is_relative_to(resources.root()):
            self._put_on(loaded.document | {"id": new_id()}, Place(example=True))
            return DONE
        place = Place(path, loaded.fingerprint)
        holder = place.announce(force=force or self.place.is_at(path))
        if holder is not None:
            return Outcome(
                Fate.ELSEWHERE,
                f"“{shown(path.name)}” is open in another window: {holder}.",
                "If both are changed, whoever saves last is asked which one counts.",
                path,
            )
        self._put_on(loaded.document, place)
        self._preferences.opened(path)
        if not loaded.writable:
            self.said.emit("This card is write-protected where it lies; save it in another place.")
        return DONE

    def save(self, *, again: bool = False) -> Outcome:
        """Save the card to its file; a card without one gets a safe name in the cards folder.

        With ``again`` it is written anew where its file was removed.
        """
        if again:
            self.place.base = None
        path, base, document = self.place.path, self.place.base, self.document
        if path is None:
            return self._written(lambda: self.store.create(document))
        return self._written(lambda: self.store.save(document, path, expected=base), path)

    def save_as(self, path: Path, *, over: bool = False) -> Outcome:
        """Save the card as another file; with ``over`` in place of what is there."""
        path = path if path.suffix == SUFFIX else path.with_name(path.name + SUFFIX)
        if self.place.is_at(path):
            return self.save()
        document = self.document
        if self.place.path is not None:  # the card left behind keeps its identity
            document = document | {"id": new_id()}
        try:
            expected = self.store.load(path).fingerprint if over else None
        except StoreError as trouble:
            return outcome_of(trouble)
        return self._written(lambda: self.store.save(document, path, expected=expected), path)

    def keep_both(self) -> Outcome:
        """Save the card beside a file that changed meanwhile, as a card of its own."""
        path, document = self.place.path, self.document
        if path is None:
            return self.save()
        return self._written(lambda: self.store.keep_aside(document, path))

    def reload(self) -> Outcome:
        """Put what the file holds now on the bench, instead of what is there."""
        return DONE if self.place.path is None else self.open(self.place.path, force=True)

    def recover(self, offer: Offer) -> None:
        """Put a draft on the bench as unsaved work on its card."""
        draft = offer.draft
        place = Place(draft.card, draft.base)
        place.announce(force=True)
        self._put_on(draft.document, place)
        self._bench.undo_stack.resetClean()
        self.keeper.keep(self.document, place.path, place.base)
        self.keeper.flush()
        self.keeper.discard(draft)

    def leave(self) -> None:
        """Let go of the card: its draft is no longer needed, others may open it."""
        self.keeper.drop(self.document, self.place.path)
        self.place.let_go()

    def _put_on(self, document: Document, place: Place) -> None:
        if not self.place.is_at(place.path or Path()):
            self.place.let_go()
        self.keeper.drop(self.document, self.place.path)
        self.place = place
        self._identity = str(document.get("id") or new_id())
        self._bench.replace(document)
        self.state_changed.emit()

    def _written(self, write: Callable[[], Saved], path: Path | None = None) -> Outcome:
        before, was = self.document, self.place.path
        notes: tuple[str, ...] = ()
        try:
            saved = write()
            where, base, document, notes = saved.path, saved.fingerprint, saved.document, saved.notes
        except NotFlushed as trouble:
            if path is None or trouble.fingerprint is None:
                return outcome_of(trouble)
            where, base, document, notes = path, trouble.fingerprint, before, (str(trouble),)
        except StoreError as trouble:
            return outcome_of(trouble)
        self.keeper.drop(before, was)
        if not self.place.is_at(where):
            self.place.let_go()
            self.place = Place(where)
            self.place.announce(force=True)
        self.place.base = base
        self._identity = str(document.get("id") or self._identity)
        self._bench.undo_stack.setClean()
        self._preferences.opened(where)
        self.state_changed.emit()
        for note in notes:
            self.said.emit(note)
        return DONE

    def _changed(self, _: int) -> None:
        if self.is_dirty:
            self.keeper.keep(self.document, self.place.path, self.place.base)
        else:
            self.keeper.drop(self.document, self.place.path)
