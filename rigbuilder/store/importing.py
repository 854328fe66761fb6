"""Bring many cards into a folder: all of them or none, also if the program dies half-way.

The cards are first written into a hidden folder beside their target. Renaming
that folder is the decision: before it the import never happened, after it
:func:`finish_imports` completes it at the next start.
"""

import contextlib
import re
import secrets
import shutil
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from rigbuilder.store import atomic, names
from rigbuilder.store.cardfile import card_bytes, id_of, new_id
from rigbuilder.store.codec import CARD_LIMITS, Document, same
from rigbuilder.store.errors import AlreadyThere, StoreError, explain
from rigbuilder.store.fingerprint import digest
from rigbuilder.store.listing import card_paths, read_entry
from rigbuilder.store.lock import turn
from rigbuilder.store.process import mark, mark_is_gone, this_process
from rigbuilder.store.reading import read_file

_IMPORT = re.compile(r"\.rigbuilder-import-([0-9a-f]{6}-[0-9a-f]{6}-[0-9]{1,10})-[0-9a-f]{8}(\.ready)?")


@dataclass(frozen=True, slots=True)
class Imported:
    """What an import did: new files; cards that were there already; how many got a new identity."""

    paths: tuple[Path, ...]
    present: tuple[Path, ...]
    renewed: int


def import_cards(documents: Sequence[Document], folder: Path) -> Imported:
    """Write all of ``documents`` as new cards into ``folder``, or none of them.

    A card that is there already is not written twice. One whose identity is
    taken by a different card comes in beside it with an identity of its own.

    Raises:
        StoreError: nothing was imported.
    """
    atomic.make_folder(folder)
    with turn(folder / "import"):
        known: dict[str | None, tuple[Path, Document]] = {
            id_of(entry.document): (entry.path, entry.document)
            for entry in map(read_entry, card_paths(folder))
            if entry.document is not None
        }
        present = []
        fresh: list[Document] = []
        renewed = 0
        used = set(known) - {None}
        for document in documents:
            identity = id_of(document)
            if identity in used and identity in known and same(known[identity][1], document):
                present.append(known[identity][0])
                continue
            if identity is None or identity in used:
                renewed += identity is not None
                document = document | {"id": new_id()}
            used.add(document["id"])
            fresh.append(document)
        paths = _bring_in(fresh, folder) if fresh else []
    return Imported(tuple(paths), tuple(present), renewed)


def _bring_in(documents: list[Document], folder: Path) -> list[Path]:
    stage = folder / f".rigbuilder-import-{mark(this_process())}-{secrets.token_hex(4)}"
    ready = stage.with_name(stage.name + ".ready")
    try:
        taken = {entry.name for entry in folder.iterdir()}
        atomic.make_folder(stage)
        for document in documents:
            title = document.get("name")
            name = names.file_name(title if isinstance(title, str) else "", document["id"], taken)
            taken.add(name)
            atomic.write(stage / name, card_bytes(document), new=True)
        stage.rename(ready)
        atomic.flush_folder(folder, [])
    except BaseException as error:
        for place in (stage, ready):
            shutil.rmtree(place, ignore_errors=True)
        if isinstance(error, OSError):
            raise explain(error, folder, "imported into") from error
        raise
    return _move_all(ready, folder)


def _move_all(ready: Path, folder: Path) -> list[Path]:
    moved: list[Path] = []
    try:
        for source in sorted(ready.iterdir()):
            moved.append(_place(source, folder))  # noqa: PERF401 - what was moved must be known after a failure
        atomic.flush_folder(folder, [])
        shutil.rmtree(ready)
        atomic.flush_folder(folder, [])
    except (OSError, StoreError) as error:
        # Taken back in this order, a kill in between still leaves all for the next start to complete.
        for path in moved:
            path.unlink(missing_ok=True)
        shutil.rmtree(ready, ignore_errors=True)
        if isinstance(error, OSError):
            raise explain(error, folder, "imported into") from error
        raise
    return moved


def _place(source: Path, folder: Path) -> Path:
    """Put one decided card into ``folder`` under its name or one beside it; one already there is done."""
    data, _ = read_file(source, limit=CARD_LIMITS.size)
    target = folder / source.name
    while True:
        try:
            atomic.write(target, data, new=True)
        except AlreadyThere:
            entry = read_entry(target)
            if entry.fingerprint is not None and entry.fingerprint.sha256 == digest(data):
                return target
            target = folder / names.beside(source.name, "imported", (path.name for path in folder.iterdir()))
        else:
            return target


def finish_imports(folder: Path) -> int:
    """Complete the imports into ``folder`` that were decided when a program died; drop the others.

    Done once at the start. Returns how many cards came in.
    """
    here = this_process()
    try:
        names_there = [entry.name for entry in folder.iterdir()]
    except OSError:
        return 0
    count = 0
    for name in names_there:
        match = _IMPORT.fullmatch(name)
        if match is None or not mark_is_gone(match[1], seen_from=here):
            continue
        if match[2] is None:
            shutil.rmtree(folder / name, ignore_errors=True)
        else:
            with contextlib.suppress(StoreError):
                count += len(_move_all(folder / name, folder))
    return count
