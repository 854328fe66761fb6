"""Progress of juniors: one small file each on this machine, under a name of their own choice.

Nothing of it leaves the machine unless somebody exports it, and deleting it deletes it for good.
"""

from dataclasses import dataclass
from pathlib import Path

from pydantic import ValidationError

from rigbuilder.lessons.progress import FORMAT, VERSION, Progress
from rigbuilder.store import atomic
from rigbuilder.store.cardfile import check_format
from rigbuilder.store.codec import Document, Limits, decode, encode
from rigbuilder.store.errors import (
    AlreadyThere,
    BadName,
    CardError,
    NewerVersion,
    NotFound,
    StoreError,
    shown,
)
from rigbuilder.store.migrations import version_of
from rigbuilder.store.names import slug
from rigbuilder.store.reading import read_file

SUFFIX = ".rigprogress"
LONGEST_NAME = 60

#: Some ten thousand rigs answered; nobody gets there, and a broken file is not read without end.
PROGRESS_LIMITS = Limits(size=8_000_000, depth=36, entries=400_000)


@dataclass(frozen=True, slots=True)
class Junior:
    """A junior in the list; ``trouble`` says why the file cannot be read, if so."""

    name: str
    path: Path
    trouble: str = ""


class ProgressStore:
    """The progress files in one folder."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def juniors(self) -> list[Junior]:
        """Return everyone with a file here, by name; files that cannot be read are listed with the reason."""
        found = []
        for path in sorted(self.folder.glob(f"*{SUFFIX}")) if self.folder.is_dir() else []:
            try:
                found.append(Junior(self._read(path).name, path))
            except StoreError as trouble:
                found.append(Junior(path.stem, path, str(trouble)))
        return sorted(found, key=lambda junior: junior.name.casefold())

    def load(self, name: str) -> Progress:
        """Return the progress of a junior, empty for one who is new.

        Raises:
            StoreError: the file is there and cannot be read; it is left as it is.
        """
        path = self.path(name)
        try:
            return self._read(path)
        except NotFound:
            return Progress(name=_plain(name))

    def save(self, progress: Progress) -> None:
        """Write the progress; returns only when it would survive a power cut.

        Raises:
            StoreError: it could not be written; the earlier version is whole.
        """
        atomic.make_folder(self.folder)
        atomic.write(self.path(progress.name), encode(progress.as_document(), PROGRESS_LIMITS))

    def delete(self, name: str) -> None:
        """Remove what is kept about a junior, for good.

        Raises:
            StoreError: it could not be removed.
        """
        atomic.remove(self.path(name))

    def export(self, name: str, target: Path, *, over: bool = False) -> None:
        """Write a junior's progress to another place.

        Raises:
            AlreadyThere: something is there and ``over`` was not given. StoreError: it could not be written.
        """
        data = encode(self.load(name).as_document(), PROGRESS_LIMITS)
        if target.exists() and not over:
            raise AlreadyThere(target, f"“{shown(target.name)}” exists already.", "Choose another name.")
        atomic.write(target, data)

    def path(self, name: str) -> Path:
        """Return the file of a junior.

        Raises:
            BadName: the name is empty or too long.
        """
        plain = _plain(name)
        if not plain or len(plain) > LONGEST_NAME:
            raise BadName(
                self.folder, "A first name or nickname is needed, of 60 letters at most.", "Type another one."
            )
        return self.folder / f"{slug(plain)}{SUFFIX}"

    def _read(self, path: Path) -> Progress:
        data, _ = read_file(path, limit=PROGRESS_LIMITS.size)
        document: Document = decode(data, path, PROGRESS_LIMITS)
        check_format(document, path, FORMAT)
        version = version_of(document, path)
        if version > VERSION:
            raise NewerVersion(path, version=version, known=VERSION)
        told = {key: value for key, value in document.items() if key not in ("format", "version")}
        try:
            return Progress.model_validate(told)
        except ValidationError as error:
            wrong = error.errors()[0]
            where = ".".join(map(str, wrong["loc"]))
            raise CardError(
                path, where=where, found=f"{wrong.get('input')!r:.60}", expected=wrong["msg"]
            ) from None


def _plain(name: str) -> str:
    return " ".join(name.split())
