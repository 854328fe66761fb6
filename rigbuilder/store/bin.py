"""The bin: deleted cards, byte for byte, with the place they came from."""

import contextlib
import json
import os
import secrets
import time
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import quote, unquote_to_bytes

from rigbuilder.store import atomic, names
from rigbuilder.store.cardfile import parse_card
from rigbuilder.store.codec import Document, decode
from rigbuilder.store.errors import AlreadyThere, CardError, StoreError, shown
from rigbuilder.store.reading import read_file

#: Larger files are not taken: they are no cards.
LARGEST = 20_000_000

_SUFFIX = ".binned"


@dataclass(frozen=True, slots=True)
class Binned:
    """One deleted card; ``document`` is None when its bytes are no readable card."""

    path: Path
    origin: Path
    deleted: str
    document: Document | None

    @property
    def name(self) -> str:
        """The card's name, or its file's when it cannot be read."""
        name = self.document.get("name") if self.document else None
        return name if isinstance(name, str) and name.strip() else shown(self.origin.stem)


class Bin:
    """A folder with one file per deleted card: a line of JSON about it, then its bytes."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def put(self, card: Path) -> Binned:
        """Move a file into the bin: first a copy that would survive a power cut, then the removal.

        A link is deleted as a link; what it leads to is kept in the bin and stays in its place.

        Raises:
            StoreError: nothing was moved.
        """
        data, fingerprint = read_file(card, limit=LARGEST)
        atomic.make_folder(self._folder)
        number = 1 + max((_number(path) for path in self._files()), default=0)
        where = self._folder / f"{number:08d}-{secrets.token_hex(4)}{_SUFFIX}"
        about = {"from": quote(os.fsencode(card.absolute())), "deleted": time.strftime("%Y-%m-%d %H:%M:%S")}
        atomic.write(where, json.dumps(about).encode() + b"\n" + data, new=True)
        _, now = read_file(card, limit=LARGEST)
        if not now.same_content(fingerprint):
            atomic.remove(where)
            raise StoreError(
                card, f"“{shown(card.name)}” changed while it was being deleted.", "Look at it again."
            )
        try:
            atomic.remove(card)
        except StoreError:
            if os.path.lexists(card):
                atomic.remove(where)
            raise
        return self._read(where)

    def entries(self) -> list[Binned]:
        """Return what is in the bin, the last deleted first; damaged entries are left out, not removed."""
        found = []
        for path in sorted(self._files(), key=lambda path: (_number(path), path.name), reverse=True):
            with contextlib.suppress(StoreError):
                found.append(self._read(path))
        return found

    def restore(self, binned: Binned, fallback: Path) -> Path:
        """Put a card back where it was, or into ``fallback`` if that folder is gone; return its place.

        A file that has taken its name meanwhile is left alone: the card comes back beside it.

        Raises:
            StoreError: the card is still in the bin.
        """
        data, _ = read_file(binned.path, limit=2 * LARGEST)
        content = data.partition(b"\n")[2]
        folder = binned.origin.parent if binned.origin.parent.is_dir() else fallback
        atomic.make_folder(folder)
        target = folder / binned.origin.name
        while True:
            try:
                atomic.write(target, content, new=True)
                break
            except AlreadyThere:
                target = folder / names.beside(
                    binned.origin.name, "restored", (path.name for path in folder.iterdir())
                )
        atomic.remove(binned.path)
        return target

    def _files(self) -> list[Path]:
        try:
            return [path for path in self._folder.iterdir() if path.suffix == _SUFFIX]
        except OSError:
            return []

    def _read(self, path: Path) -> Binned:
        data, _ = read_file(path, limit=2 * LARGEST)
        head, _, content = data.partition(b"\n")
        about = decode(head, path)
        origin, deleted = about.get("from"), about.get("deleted")
        if not isinstance(origin, str) or not isinstance(deleted, str) or not Path(origin).name:
            raise CardError(path, found="no note of where it came from", expected="a deleted card")
        try:
            document = parse_card(content, path)
        except CardError:
            document = None
        return Binned(path, Path(os.fsdecode(unquote_to_bytes(origin))), deleted, document)


def _number(path: Path) -> int:
    digits = path.name.partition("-")[0]
    return int(digits) if digits.isascii() and digits.isdecimal() and len(digits) < 18 else 0
