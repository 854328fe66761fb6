"""Lessons as files, with the care that cards have: read strictly, written whole or not at all."""

from dataclasses import dataclass
from pathlib import Path

from rigbuilder.lessons.document import FORMAT, VERSION, Lesson, LessonUnreadable, read_lesson
from rigbuilder.reference.load import Reference
from rigbuilder.store import atomic
from rigbuilder.store.cardfile import check_format
from rigbuilder.store.codec import CARD_LIMITS, Document, Limits, decode, encode
from rigbuilder.store.errors import AlreadyThere, ChangedOnDisk, NewerVersion, NotFound, StoreError, shown
from rigbuilder.store.fingerprint import Fingerprint, digest
from rigbuilder.store.lock import turn
from rigbuilder.store.migrations import version_of
from rigbuilder.store.reading import read_file

SUFFIX = ".riglesson"

#: Room for sixty cards of eight kilobytes and their texts.
LESSON_LIMITS = Limits(size=4_000_000, depth=CARD_LIMITS.depth + 3, entries=200_000)


@dataclass(frozen=True, slots=True)
class LoadedLesson:
    """A lesson as read, and what to give as ``expected`` when saving it again."""

    path: Path
    lesson: Lesson
    fingerprint: Fingerprint


@dataclass(frozen=True, slots=True)
class ListedLesson:
    """A lesson in a list: the lesson, or why it cannot be read."""

    path: Path
    lesson: Lesson | None
    trouble: str = ""
    shipped: bool = False


def parse_lesson_document(data: bytes, path: Path | None = None) -> Document:
    """Return the JSON of a lesson file, its envelope checked.

    Raises:
        CardError: the bytes are no lesson; NewerVersion: one of a newer program.
    """
    document = decode(data, path, LESSON_LIMITS)
    check_format(document, path, FORMAT)
    version = version_of(document, path)
    if version > VERSION:
        raise NewerVersion(path, version=version, known=VERSION)
    return document


def load_lesson(path: Path, reference: Reference) -> LoadedLesson:
    """Read a lesson from anywhere.

    Raises:
        StoreError: the file cannot be read or is no lesson.
        LessonUnreadable: a rig or field in it is not in order, named with what was found and expected.
    """
    data, fingerprint = read_file(path, limit=LESSON_LIMITS.size)
    document = parse_lesson_document(data, path)
    return LoadedLesson(path, read_lesson(document, reference, file=shown(path.name)), fingerprint)


def save_lesson(lesson: Lesson, path: Path, *, expected: Fingerprint | None) -> Fingerprint:
    """Write a lesson over the ``expected`` version (None: nothing); return what to expect next time.

    Raises:
        AlreadyThere, ChangedOnDisk: the file is not what was expected; nothing was written.
        StoreError: it could not be written; the old version is whole.
    """
    data = encode(lesson.as_document(), LESSON_LIMITS)
    atomic.make_folder(path.parent)

    def guard() -> None:
        _guard(path, expected)

    with turn(path):
        guard()
        atomic.write(path, data, new=expected is None, check=guard)
    return Fingerprint(len(data), path.stat().st_mtime_ns, digest(data))


def list_lessons(shipped: Path, own: Path, reference: Reference) -> list[ListedLesson]:
    """Return the lessons that come with the program, then the person's own; broken ones with their reason."""
    return [
        _listed(path, reference, shipped=folder is shipped)
        for folder in (shipped, own)
        for path in (sorted(folder.glob(f"*{SUFFIX}")) if folder.is_dir() else [])
    ]


def _listed(path: Path, reference: Reference, *, shipped: bool) -> ListedLesson:
    try:
        return ListedLesson(path, load_lesson(path, reference).lesson, shipped=shipped)
    except (StoreError, LessonUnreadable) as trouble:
        return ListedLesson(path, None, str(trouble), shipped)


def _guard(path: Path, expected: Fingerprint | None) -> None:
    try:
        _, now = read_file(path, limit=LESSON_LIMITS.size)
    except NotFound:
        if expected is None:
            return
        raise
    if expected is None:
        raise AlreadyThere(path, f"“{shown(path.name)}” exists already.", "Choose another name.")
    if not now.same_content(expected):
        raise ChangedOnDisk(
            path,
            f"“{shown(path.name)}” was changed by someone else since you opened it.",
            "Save yours under another name; nothing is lost yet.",
        )
