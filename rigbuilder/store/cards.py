"""The cards a person owns: load, save, copy, rename, delete, bring back.

A card may lie in any folder; new ones go into the store's own. No method
overwrites what it has not been shown: whoever saves says which version was
loaded.
"""

import contextlib
import os
from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import Enum
from pathlib import Path

from rigbuilder.store import atomic, listing, names
from rigbuilder.store.bin import Bin, Binned
from rigbuilder.store.cardfile import card_bytes, id_of, new_id, parse_card
from rigbuilder.store.codec import CARD_LIMITS, Document
from rigbuilder.store.errors import (
    AlreadyThere,
    CardError,
    ChangedOnDisk,
    Gone,
    NotFlushed,
    NotFound,
    StoreError,
    explain,
    shown,
)
from rigbuilder.store.fingerprint import Fingerprint, digest
from rigbuilder.store.history import LARGEST, History, key_of
from rigbuilder.store.lock import turn
from rigbuilder.store.reading import read_file


@dataclass(frozen=True, slots=True)
class Loaded:
    """A card as read; ``writable`` is False where saving to the same place would be refused."""

    path: Path
    document: Document
    fingerprint: Fingerprint
    writable: bool


@dataclass(frozen=True, slots=True)
class Saved:
    """A card as written: its place, what to give as ``expected`` next time, and remarks (usually none)."""

    path: Path
    document: Document
    fingerprint: Fingerprint
    notes: atomic.Notes = ()


class Change(Enum):
    """What became of a file since it was loaded."""

    NONE = "the same"
    CHANGED = "changed on disk"
    GONE = "removed or renamed"


class CardStore:
    """Cards in ``folder`` (made when the first card needs it), their earlier versions and the bin."""

    def __init__(self, folder: Path, *, history: History, bin_: Bin) -> None:
        self.folder = folder
        self.history = history
        self.bin = bin_

    def load(self, path: Path) -> Loaded:
        """Read a card from anywhere.

        Raises:
            StoreError: it cannot be read; CardError: it is no card; NewerVersion: of a newer program.
        """
        data, fingerprint = read_file(path, limit=CARD_LIMITS.size)
        return Loaded(path, parse_card(data, path), fingerprint, is_writable(path))

    def save(self, document: Document, path: Path, *, expected: Fingerprint | None) -> Saved:
        """Write a card over the version that was ``expected`` there (None: nothing).

        The version on the disk is kept in the history first, the new one after.
        Saving what is there already is no conflict.

        Raises:
            ChangedOnDisk, Gone, AlreadyThere: the file is not what was expected; nothing was written.
            StoreError: it could not be written; the old version is whole.
            CardError: the document cannot be kept in a file.
        """
        data = card_bytes(document)
        key = key_of(document, path)
        with turn(path) as remarks:
            old = _guard(path, expected, digest(data))
            kept = () if old is None else self.history.try_to_keep(key, path, old)
            try:
                # Looked at once more just before the swap: other programs do not wait for their turn.
                notes = atomic.write(
                    path, data, new=old is None, check=lambda: _unchanged(path, old, digest(data))
                )
            except NotFlushed as trouble:
                trouble.fingerprint = _fingerprint(path, data)
                raise
            kept += self.history.try_to_keep(key, path, data)
        return Saved(path, document, _fingerprint(path, data), remarks + notes + kept)

    def create(self, document: Document, folder: Path | None = None) -> Saved:
        """Write a new card under a free name made from its title; an identity it has already is kept.

        Raises:
            StoreError: it could not be written.
        """
        folder = folder or self.folder
        atomic.make_folder(folder)
        title = document.get("name")
        identity = id_of(document) or new_id()
        return self._create(
            document | {"id": identity},
            folder,
            lambda taken: names.file_name(title if isinstance(title, str) else "", identity, taken),
        )

    def keep_aside(self, document: Document, path: Path) -> Saved:
        """Write my version beside a card that changed on disk, as a card of its own."""
        aside = document | {"id": new_id()}
        return self._create(aside, path.parent, lambda taken: names.beside(path.name, "mine", taken))

    def change(self, path: Path, fingerprint: Fingerprint) -> Change:
        """Say whether a file is still what was loaded, by its content.

        Raises:
            StoreError: it is there but cannot be looked at.
        """
        try:
            _, now = read_file(path, limit=CARD_LIMITS.size)
        except NotFound:
            return Change.GONE
        except CardError:
            return Change.CHANGED
        return Change.NONE if now.same_content(fingerprint) else Change.CHANGED

    def entries(self, folder: Path | None = None) -> list[listing.Entry]:
        """Return everything in a folder that is named as a card, broken ones with their reason."""
        return [listing.read_entry(path) for path in listing.card_paths(folder or self.folder)]

    def duplicate(self, path: Path, title: str | None = None) -> Saved:
        """Write a copy of a card with an identity of its own into the same folder."""
        document = self.load(path).document
        name = title if title is not None else f"{document.get('name') or path.stem} (copy)"
        return self.create(document | {"id": new_id(), "name": name}, path.parent)

    def rename(self, path: Path, title: str) -> Saved:
        """Give a card another title, and its file the name that goes with it.

        The file keeps its name if it was not made from the title, or is a link.
        """
        loaded = self.load(path)
        document = loaded.document | {"name": title}
        saved = self.save(document, path, expected=loaded.fingerprint)
        identity, old_title = id_of(document), loaded.document.get("name")
        if identity is None or not isinstance(old_title, str) or path.is_symlink():
            return saved
        if not path.name.startswith(names.file_name(old_title, identity).removesuffix(".rigcard")):
            return saved
        return self._move(saved, title, identity, document)

    def delete(self, path: Path) -> Binned:
        """Move a card, also a broken one, into the bin."""
        with turn(path):
            return self.bin.put(path)

    def restore(self, binned: Binned) -> Path:
        """Bring a card back from the bin; return its place."""
        return self.bin.restore(binned, self.folder)

    def _create(self, document: Document, folder: Path, choose: Callable[[list[str]], str]) -> Saved:
        while True:
            path = folder / choose(_names_in(folder))
            with contextlib.suppress(AlreadyThere):
                return self.save(document, path, expected=None)

    def _move(self, saved: Saved, title: str, identity: str, document: Document) -> Saved:
        taken = [name for name in _names_in(saved.path.parent) if name != saved.path.name]
        target = saved.path.with_name(names.file_name(title, identity, taken))
        if target == saved.path:
            return saved
        moved = self.save(document, target, expected=None)
        with turn(target):
            if self.change(saved.path, saved.fingerprint) is Change.NONE:
                atomic.remove(saved.path)
        return replace(moved, notes=saved.notes + moved.notes)


def is_writable(path: Path) -> bool:
    """Say whether a card could be saved where it lies (file and folder; asked again on saving)."""
    try:
        target = atomic.resolve(path)
        return os.access(target.parent, os.W_OK)
    except (StoreError, OSError):
        return False


def _names_in(folder: Path) -> list[str]:
    try:
        return [entry.name for entry in os.scandir(folder)]
    except OSError as error:
        raise explain(error, folder, "listed") from error


def _guard(path: Path, expected: Fingerprint | None, coming: str) -> bytes | None:
    """Return what lies at ``path`` if that is what was expected."""
    try:
        data, now = read_file(path, limit=LARGEST)
    except NotFound:
        if expected is not None:
            happened = f"“{shown(path.name)}” was removed or renamed since you opened it."
            raise Gone(path, happened, "Save it as a new file, or look for it.") from None
        return None
    except CardError:  # too large: certainly not what was loaded
        raise _changed(path) if expected else _taken(path) from None
    if now.sha256 == coming:
        return data
    if expected is None:
        raise _taken(path)
    if not now.same_content(expected):
        raise _changed(path)
    return data


def _unchanged(path: Path, old: bytes | None, coming: str) -> None:
    expected = None if old is None else Fingerprint(len(old), 0, digest(old))
    _guard(path, expected, coming)


def _taken(path: Path) -> AlreadyThere:
    return AlreadyThere(path, f"“{shown(path.name)}” exists already.", "Choose another name.")


def _changed(path: Path) -> ChangedOnDisk:
    return ChangedOnDisk(
        path,
        f"“{shown(path.name)}” was changed by someone else since you opened it.",
        "Compare both, load theirs, or keep yours as a new card; nothing is lost yet.",
    )


def _fingerprint(path: Path, data: bytes) -> Fingerprint:
    try:
        mtime_ns = path.stat().st_mtime_ns
    except OSError:
        mtime_ns = 0
    return Fingerprint(len(data), mtime_ns, digest(data))
