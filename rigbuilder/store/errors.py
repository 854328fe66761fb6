"""What can go wrong with a person's files, said so that they know what to do.

Every failure of the store is a :class:`StoreError`: a sentence about what
happened to which file, and the next step. Nothing here is shown as a
traceback, and no message begins with the name of an exception.
"""

# ruff: noqa: N818 - the names say what happened, and "Error" after each would say it no better
import errno
import os
import shutil
from pathlib import Path

from rigbuilder.store.fingerprint import Fingerprint


def shown(path: Path | str) -> str:
    """Return a path for display: what cannot be printed, or would turn the text round, becomes a mark."""
    return "".join(letter if letter.isprintable() else "\N{REPLACEMENT CHARACTER}" for letter in str(path))


class StoreError(Exception):
    """A file could not be read, written or found; ``str()`` is what a person reads.

    Attributes:
        path: the file or folder concerned, or None for text from the clipboard.
        happened: one sentence.
        advice: the next step, one sentence.
    """

    def __init__(self, path: Path | None, happened: str, advice: str) -> None:
        super().__init__(path, happened, advice)
        self.path = path
        self.happened = happened
        self.advice = advice

    def __str__(self) -> str:
        return f"{self.happened} {self.advice}"


class DiskFull(StoreError):
    """No space, or the quota is used up."""


class NotFound(StoreError):
    """The file does not exist."""


class FolderGone(NotFound):
    """The folder that should hold the file does not exist (any more)."""


class ReadOnly(StoreError):
    """The file or its disk is write-protected."""


class Denied(StoreError):
    """This user may not read or write there."""


class NotAFile(StoreError):
    """A folder, pipe, device or socket stands where a file is expected."""


class LinkLoop(StoreError):
    """Links that point at each other, or at nothing."""


class BadName(StoreError):
    """The file system does not accept the name."""


class DiskTrouble(StoreError):
    """The disk or network reported an error of its own."""


class Busy(StoreError):
    """Another program is saving in the same folder and does not finish."""


class AlreadyThere(StoreError):
    """A new file was to be made, but one of that name exists."""


class ChangedOnDisk(StoreError):
    """The file changed since it was loaded; both versions are still there."""


class Gone(StoreError):
    """The file was removed or renamed since it was loaded."""


class NotFlushed(StoreError):
    """The new version is in place, but the disk did not confirm that it would survive a power cut.

    ``fingerprint`` is that of the new version: what to expect when saving again.
    """

    fingerprint: Fingerprint | None = None


class CardError(StoreError):
    """A card, or a set of cards, does not say what it should.

    Attributes:
        where: field as ``main.test``, or ``line 3, column 14``, or "" for the whole file.
        found, expected: in plain words.
    """

    def __init__(
        self,
        path: Path | None,
        *,
        found: str,
        expected: str,
        where: str = "",
        advice: str = "The file was left as it is; an earlier version may be restored.",
    ) -> None:
        name = f"“{shown(path.name)}”" if path is not None else "This text"
        place = f" at {where}" if where else ""
        super().__init__(path, f"{name} cannot be read{place}: found {found}, expected {expected}.", advice)
        self.where = where
        self.found = found
        self.expected = expected


class CannotWrite(CardError):
    """A card holds something that cannot be kept exactly in a file."""

    def __init__(self, *, found: str, expected: str, where: str = "") -> None:
        super().__init__(None, found=found, expected=expected, where=where)
        place = f" at {where}" if where else ""
        self.happened = f"The card cannot be saved{place}: found {found}, expected {expected}."
        self.advice = "Change that entry and save again; nothing was written."


class NewerVersion(CardError):
    """The file was written by a newer Rigbuilder."""

    def __init__(self, path: Path | None, *, version: int, known: int) -> None:
        super().__init__(
            path,
            where="version",
            found=f"version {version}, made by a newer Rigbuilder",
            expected=f"version {known} or older",
            advice="Update Rigbuilder to open it; the file was left untouched.",
        )
        self.version = version


_KINDS: dict[int, tuple[type[StoreError], str, str]] = {
    errno.ENOSPC: (DiskFull, "the disk is full", "Free some space, or save in another place."),
    errno.EDQUOT: (
        DiskFull,
        "your share of the disk is used up",
        "Free some space, or save in another place.",
    ),
    errno.EFBIG: (DiskFull, "the disk does not take a file of this size", "Save in another place."),
    errno.EROFS: (ReadOnly, "the disk is read-only", "Save in another place."),
    errno.EACCES: (Denied, "you are not allowed to", "Ask for permission, or choose another place."),
    errno.EPERM: (Denied, "you are not allowed to", "Ask for permission, or choose another place."),
    errno.ENOENT: (NotFound, "it does not exist", "It may have been moved or renamed; look for it."),
    errno.ENOTDIR: (FolderGone, "its folder is not a folder", "Choose another place."),
    errno.EISDIR: (NotAFile, "it is a folder", "Choose a file."),
    errno.ENXIO: (NotAFile, "it is not an ordinary file", "Choose a file."),
    errno.ELOOP: (LinkLoop, "its links point at each other", "Remove the link, or choose another place."),
    errno.ENAMETOOLONG: (BadName, "its name is too long", "Give it a shorter name."),
    errno.EILSEQ: (BadName, "the disk does not accept its name", "Give it a plainer name."),
    errno.EINVAL: (BadName, "the disk does not accept the request", "Choose another name or place."),
    errno.EEXIST: (AlreadyThere, "a file of that name exists", "Choose another name."),
    errno.ESTALE: (DiskTrouble, "the network folder went away", "Connect it again, then try again."),
    errno.ETIMEDOUT: (DiskTrouble, "the network folder does not answer", "Connect it again, then try again."),
    errno.EIO: (DiskTrouble, "the disk reported an error", "Try again, or save in another place."),
}


def free_space(path: Path) -> str:
    """Return the free space where ``path`` lies, as `` (12 kB free)``, or "" when unknown."""
    for place in (path, *path.parents):
        try:
            free_bytes = shutil.disk_usage(place).free
        except OSError:
            continue
        return f" ({free_bytes / 1000:,.0f} kB free)"
    return ""


def explain(error: OSError, path: Path, doing: str) -> StoreError:
    """Turn an operating system's error into a sentence and a next step.

    ``doing`` completes "... could not be", as ``saved`` or ``read``.
    """
    code = error.errno or 0
    known = _KINDS.get(code)
    if known is None:
        reason = (os.strerror(code) if code else str(error)) or "unknown error"
        kind, advice = DiskTrouble, "Try again, or choose another place."
        reason = reason[:1].lower() + reason[1:]
        return kind(path, f"“{shown(path.name)}” could not be {doing}: {reason}.", advice)
    found_kind, reason, advice = known
    if found_kind is DiskFull:
        reason += free_space(path)
    if found_kind is NotFound and not os.path.lexists(path.parent):
        return FolderGone(
            path,
            f"“{shown(path.name)}” could not be {doing}: the folder “{shown(path.parent)}” no longer exists.",
            "Choose another place.",
        )
    return found_kind(path, f"“{shown(path.name)}” could not be {doing}: {reason}.", advice)
