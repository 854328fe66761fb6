"""Earlier versions of a card, the deleted cards, and what could be read of a broken one."""

import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from rigbuilder.model.document import Document, differences
from rigbuilder.store.bin import Binned
from rigbuilder.store.cardfile import parse_card
from rigbuilder.store.cards import CardStore
from rigbuilder.store.errors import StoreError, shown
from rigbuilder.store.history import Version, key_of
from rigbuilder.store.listing import Entry, read_entry
from rigbuilder.viewmodels.library_done import Deed
from rigbuilder.viewmodels.slate import field_words

_MOST_NAMED = 4
_SILENT = ("id", "format", "version")


@dataclass(frozen=True, slots=True)
class Earlier:
    """One earlier version of a card: when it was saved, and what is different in it from the card now."""

    version: Version
    when: str
    differs: str
    document: Document | None


@dataclass(frozen=True, slots=True)
class Deleted:
    """One card in the bin."""

    binned: Binned
    name: str
    when: str
    origin: str
    readable: bool


def earlier_versions(store: CardStore, path: Path) -> list[Earlier]:
    """Return the earlier versions of a card, the newest first, without the one that lies there now."""
    entry = read_entry(path)
    if entry.document is None:
        versions = store.history.of_file(path)
    else:
        versions = store.history.versions(key_of(entry.document, path), path)
    now = entry.fingerprint.sha256[:16] if entry.fingerprint else ""
    return [_earlier(store, version, entry) for version in versions if version.content != now]


def restore_version(store: CardStore, path: Path, earlier: Earlier) -> Deed:
    """Save an earlier version as the newest one; what lies there now becomes an earlier version itself."""
    entry = read_entry(path)
    if earlier.document is None:
        return Deed(troubles=("This version cannot be read.",))
    try:
        saved = store.save(earlier.document, path, expected=entry.fingerprint)
    except StoreError as trouble:
        return Deed(troubles=(str(trouble),))
    before = next(
        (other for other in earlier_versions(store, path) if _is(other.version, entry)), None
    )  # fmt: skip
    back = (lambda: restore_version(store, path, before)) if before and before.document else None
    return Deed(f"The version of {earlier.when} is back.", back, (saved.path,), saved.notes)


def deleted_cards(store: CardStore) -> list[Deleted]:
    """Return what is in the bin, the last deleted first."""
    return [
        Deleted(
            binned=entry,
            name=entry.name,
            when=entry.deleted,
            origin=shown(entry.origin.parent),
            readable=entry.document is not None,
        )
        for entry in store.bin.entries()
    ]


def salvaged(path: Path) -> tuple[str, Sequence[tuple[str, str]]]:
    """Return why a card cannot be read, and what could be read of it."""
    entry = read_entry(path)
    return (str(entry.trouble) if entry.trouble else ""), entry.salvaged


def _is(version: Version, entry: Entry) -> bool:
    return entry.fingerprint is not None and entry.fingerprint.sha256.startswith(version.content)


def _earlier(store: CardStore, version: Version, now: Entry) -> Earlier:
    when = time.strftime("%Y-%m-%d %H:%M", time.localtime(version.saved_ns / 1e9))
    try:
        document = parse_card(store.history.read(version), version.path)
    except StoreError as trouble:
        return Earlier(version, when, trouble.happened, None)
    return Earlier(version, when, _differs(now.document, document), document)


def _differs(now: Document | None, then: Document) -> str:
    if now is None:
        return "can be read"
    named = [
        f"{field_words(path)} {_words(old)}" for path, old, _ in differences(then, now) if path not in _SILENT
    ]
    if not named:
        return "says the same"
    more = f" and {len(named) - _MOST_NAMED} more" if len(named) > _MOST_NAMED else ""
    return ", ".join(named[:_MOST_NAMED]) + more


def _words(value: object) -> str:
    if value is None:
        return "not said"
    if isinstance(value, list):
        return ", ".join(map(str, value)) or "none"
    return str(value)
