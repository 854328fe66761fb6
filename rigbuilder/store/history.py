"""Earlier versions of every card, so that any of the last ten can come back."""

import contextlib
import hashlib
import os
import re
from dataclasses import dataclass
from pathlib import Path

from rigbuilder.store import atomic
from rigbuilder.store.cardfile import id_of
from rigbuilder.store.codec import Document
from rigbuilder.store.errors import AlreadyThere, StoreError
from rigbuilder.store.fingerprint import digest
from rigbuilder.store.reading import read_file

KEEP = 10

#: Versions are kept byte for byte, also those of a file that is broken or too large for a card.
LARGEST = 20_000_000

_NAME = re.compile(r"([0-9]{8})-([0-9a-f]{8})-([0-9a-f]{16})\.rigcard")


@dataclass(frozen=True, slots=True)
class Version:
    """One earlier version: ``number`` orders them, since clocks may be wrong."""

    path: Path
    number: int
    saved_ns: int
    origin: str
    content: str


def key_of(document: Document | None, path: Path) -> str:
    """Return the name under which a card's versions are kept: its identity, or one made from its place."""
    identity = id_of(document) if document is not None else None
    return identity or f"at-{_origin_of(path)}"


def _origin_of(path: Path) -> str:
    return hashlib.sha256(os.fsencode(os.path.realpath(path))).hexdigest()[:8]


class History:
    """The folder of earlier versions, one folder per card in it.

    Versions of two files with one identity (a copy, a synced conflict) lie
    together, but each file has its own ten.
    """

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def keep(self, key: str, origin: Path, data: bytes) -> None:
        """Keep one version, unless it is the newest of that file already.

        The one on the disk counts as well, so one more than :data:`KEEP` lie here.

        Raises:
            StoreError: there is no place for it.
        """
        content, mark = digest(data)[:16], _origin_of(origin)
        versions = self.versions(key)
        own = [version for version in versions if version.origin == mark]
        if own and own[0].content == content:
            return
        folder = self._folder / key
        atomic.make_folder(folder)
        number = versions[0].number + 1 if versions else 1
        while True:
            try:
                atomic.write(folder / f"{number:08d}-{mark}-{content}.rigcard", data, new=True)
                break
            except AlreadyThere:
                number += 1
        for version in own[KEEP:]:
            with contextlib.suppress(OSError):
                version.path.unlink()

    def versions(self, key: str, origin: Path | None = None) -> list[Version]:
        """Return the versions kept of a card, the newest first; with ``origin``, only of that file."""
        found = []
        try:
            with os.scandir(self._folder / key) as entries:
                for entry in entries:
                    if match := _NAME.fullmatch(entry.name):
                        saved = entry.stat(follow_symlinks=False).st_mtime_ns
                        found.append(Version(Path(entry.path), int(match[1]), saved, match[2], match[3]))
        except OSError:
            return []
        if origin is not None:
            found = [version for version in found if version.origin == _origin_of(origin)]
        return sorted(found, key=lambda version: (version.number, version.path.name), reverse=True)

    def try_to_keep(self, key: str, origin: Path, data: bytes) -> atomic.Notes:
        """Keep one version; a failure becomes a remark, since the card itself comes first."""
        try:
            self.keep(key, origin, data)
        except StoreError as trouble:
            return (f"The earlier version could not be kept: {trouble}",)
        return ()

    def of_file(self, path: Path) -> list[Version]:
        """Return the versions kept of a file whose identity is not known (broken or gone), newest first."""
        try:
            keys = [entry.name for entry in os.scandir(self._folder)]
        except OSError:
            return []
        found = [version for key in keys for version in self.versions(key, path)]
        return sorted(found, key=lambda version: version.saved_ns, reverse=True)

    def sweep(self) -> int:
        """Remove what killed writes left behind; return how many files."""
        try:
            entries = list(os.scandir(self._folder))
        except OSError:
            return 0
        folders = [Path(entry.path) for entry in entries if entry.is_dir(follow_symlinks=False)]
        return sum(map(atomic.sweep, folders))

    def read(self, version: Version) -> bytes:
        """Return the bytes of a version.

        Raises:
            StoreError: they cannot be read, or are no longer what was kept.
        """
        data, fingerprint = read_file(version.path, limit=LARGEST)
        if not fingerprint.sha256.startswith(version.content):
            raise StoreError(version.path, "This earlier version is damaged.", "Choose another version.")
        return data
