"""What lies in a folder of cards, the broken ones included."""

import json
import os
import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path

from rigbuilder.store.cardfile import SUFFIX, parse_card
from rigbuilder.store.codec import CARD_LIMITS, Document
from rigbuilder.store.errors import CardError, StoreError, explain
from rigbuilder.store.fingerprint import Fingerprint
from rigbuilder.store.reading import read_file


@dataclass(frozen=True, slots=True)
class Entry:
    """One file of a folder: a card, or the reason why it is none and what could be read of it."""

    path: Path
    fingerprint: Fingerprint | None = None
    document: Document | None = None
    trouble: StoreError | None = None
    salvaged: tuple[tuple[str, str], ...] = field(default=())


def card_paths(folder: Path) -> list[Path]:
    """Return everything in ``folder`` that is named as a card, hidden names left out, in order of name.

    Raises:
        StoreError: the folder cannot be listed.
    """
    return [folder / name for name in card_names(folder)]


def card_names(folder: Path) -> list[str]:
    """Return the names in ``folder`` that are those of cards, hidden ones left out, in order.

    Raises:
        StoreError: the folder cannot be listed.
    """
    try:
        names = [
            entry.name
            for entry in os.scandir(folder)
            if entry.name.lower().endswith(SUFFIX) and not entry.name.startswith(".")
        ]
    except OSError as error:
        raise explain(error, folder, "listed") from error
    return sorted(names)


def read_entry(path: Path) -> Entry:
    """Read one card; whatever is wrong with it becomes part of the entry and never an exception."""
    try:
        data, fingerprint = read_file(path, limit=CARD_LIMITS.size)
    except StoreError as trouble:
        return Entry(path, trouble=trouble)
    try:
        return Entry(path, fingerprint, parse_card(data, path))
    except CardError as trouble:
        return Entry(path, fingerprint, trouble=trouble, salvaged=salvage(data))


_TELLING = re.compile(
    r'"(id|name|presentation|technique|type|test|weight|label|notes)"\s{0,20}:\s{0,20}("(?:[^"\\\n]++|\\.)*+")'
)


def salvage(data: bytes) -> tuple[tuple[str, str], ...]:
    """Return the telling pairs of key and text in a card that cannot be read as a whole."""
    text = data[: CARD_LIMITS.size].decode("utf-8", "replace")
    pairs = []
    for match in _TELLING.finditer(text):
        try:
            value = json.loads(match[2])
        except ValueError:
            continue
        if value:
            pairs.append((match[1], value[:500].encode("utf-8", "replace").decode()))
        if len(pairs) == 20:
            break
    return tuple(pairs)


_CONFLICT = re.compile(
    r"(?P<base>.+?)(?: \([^()]{0,100}?conflicted copy[^()]{0,100}\)"
    r"|\.sync-conflict-[0-9]{8}-[0-9]{6}(?:-[0-9A-Za-z]{1,16})?)\.rigcard",
    re.IGNORECASE | re.DOTALL,
)


def conflict_base(name: str) -> str | None:
    """Return the name of the file that a synced folder's conflict copy ``name`` belongs to, if it is one."""
    match = _CONFLICT.fullmatch(name)
    return match["base"] + SUFFIX if match else None


def conflicts(cards: Iterable[tuple[Path, str | None]]) -> dict[Path, Path]:
    """Return which cards are conflict copies, and of which other card.

    A copy is known by its name *and* by carrying the same identity as a card
    beside it; a card that is merely called so is left in peace.
    """
    by_id: dict[tuple[Path, str], list[Path]] = {}
    copies: list[tuple[Path, str, str]] = []
    for path, identity in cards:
        if identity is None:
            continue
        base = conflict_base(path.name)
        if base is None:
            by_id.setdefault((path.parent, identity), []).append(path)
        else:
            copies.append((path, identity, base))
    found = {}
    for path, identity, base in copies:
        originals = by_id.get((path.parent, identity), [])
        if originals:
            found[path] = next((card for card in originals if card.name == base), originals[0])
    return found


def twins(cards: Iterable[tuple[Path, str | None]]) -> list[list[Path]]:
    """Return the groups of cards that share one identity without being conflict copies."""
    by_id: dict[str, list[Path]] = {}
    for path, identity in cards:
        if identity is not None and conflict_base(path.name) is None:
            by_id.setdefault(identity, []).append(path)
    return [group for group in by_id.values() if len(group) > 1]
