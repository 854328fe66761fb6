"""Drafts: what was typed and not yet saved, kept aside against a crash.

A draft never touches the card. At the next start it is offered, with what
became of the card meanwhile; which one counts is the person's choice.
"""

import contextlib
import hashlib
import os
import re
import secrets
import time
from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from pathlib import Path
from typing import Any
from urllib.parse import quote, unquote_to_bytes

from rigbuilder.store import atomic
from rigbuilder.store.cardfile import accept_card, id_of, in_order
from rigbuilder.store.codec import CARD_LIMITS, Document, Limits, decode, encode
from rigbuilder.store.errors import CardError, NotFound, StoreError, shown
from rigbuilder.store.fingerprint import Fingerprint
from rigbuilder.store.process import Process, from_json, is_gone, this_process
from rigbuilder.store.reading import read_file

FORMAT = "rigbuilder.draft"

#: The card, and a little about it.
_LIMITS = Limits(CARD_LIMITS.size + 20_000, CARD_LIMITS.depth + 2, CARD_LIMITS.entries + 100)

_NAME = re.compile(r"[0-9A-Za-z-]{1,100}\.json")


class Base(Enum):
    """What became of the card on which a draft is based."""

    SAME = "the card is as it was when the draft was begun"
    CHANGED = "the card was changed after the draft was begun"
    GONE = "the card was removed or renamed after the draft was begun"
    NEW = "the card was never saved"
    SAVED = "the card holds what the draft holds"
    UNREADABLE = "the card cannot be read"


@dataclass(frozen=True, slots=True)
class Draft:
    """One draft: the document as typed, the card it belongs to, and when it was written."""

    path: Path
    document: Document
    card: Path | None
    base: Fingerprint | None
    written_ns: int
    dismissed: bool
    by: Process | None

    @property
    def name(self) -> str:
        """The title of the card, or of its file."""
        name = self.document.get("name")
        if isinstance(name, str) and name.strip():
            return name
        return shown(self.card.stem) if self.card else "New card"


class Drafts:
    """The drafts of one running program, and those which earlier ones left in the same folder."""

    def __init__(self, folder: Path, process: Process | None = None) -> None:
        self._folder = folder
        self._process = process or this_process()
        self._session = secrets.token_hex(4)

    def write(self, document: Document, card: Path | None, base: Fingerprint | None) -> Path:
        """Keep the state of one card; the same card of the same program replaces its draft.

        ``base`` is the fingerprint of the card when it was loaded or last saved.

        Raises:
            StoreError: the draft could not be written.
        """
        atomic.make_folder(self._folder)
        path = self._place(document, card)
        self._put(path, self._wrap(document, card, base, time.time_ns(), dismissed=False))
        return path

    def remove(self, document: Document, card: Path | None) -> None:
        """Drop this program's draft of a card, after a clean save; no matter if there is none."""
        self.discard(self._place(document, card))

    def discard(self, path: Path) -> None:
        """Remove one draft for good, once its content was saved or given up by the person."""
        with contextlib.suppress(NotFound):
            atomic.remove(path)

    def pending(self) -> list[Draft]:
        """Return the drafts to offer at the start: of programs that ended, not dismissed, newest first."""
        return [draft for draft in self.all() if not draft.dismissed and self._is_left(draft)]

    def all(self) -> list[Draft]:
        """Return every readable draft, newest first; unreadable files stay where they are."""
        found = []
        for path in self._files():
            with contextlib.suppress(StoreError):
                found.append(read_draft(path))
        return sorted(found, key=lambda draft: (draft.written_ns, draft.path.name), reverse=True)

    def unreadable(self) -> list[StoreError]:
        """Return why files among the drafts cannot be read."""
        troubles = []
        for path in self._files():
            try:
                read_draft(path)
            except StoreError as trouble:
                troubles.append(trouble)
        return troubles

    def dismiss(self, draft: Draft) -> None:
        """Remember that a draft is not wanted now; it stays among :meth:`all`."""
        wrapped = self._wrap(draft.document, draft.card, draft.base, draft.written_ns, dismissed=True)
        wrapped["by"] = draft.by.as_json() if draft.by else None
        self._put(draft.path, wrapped)

    def sweep(self, *, older_than_days: float = 90.0) -> int:
        """Remove dismissed drafts that are old, and remnants of killed writes; return how many of these."""
        removed = atomic.sweep(self._folder)
        now = time.time_ns()
        for draft in self.all():
            if draft.dismissed and now - draft.written_ns > older_than_days * 86_400e9:
                with contextlib.suppress(StoreError):
                    self.discard(draft.path)
        return removed

    def _is_left(self, draft: Draft) -> bool:
        return draft.by is None or is_gone(draft.by, seen_from=self._process)

    def _place(self, document: Document, card: Path | None) -> Path:
        origin = hashlib.sha256(os.fsencode(os.path.realpath(card))).hexdigest()[:8] if card else "new"
        return self._folder / f"{id_of(document) or 'card'}-{origin}-{self._session}.json"

    def _files(self) -> list[Path]:
        try:
            return [path for path in self._folder.iterdir() if _NAME.fullmatch(path.name)]
        except OSError:
            return []

    def _put(self, path: Path, wrapped: Document) -> None:
        atomic.write(path, encode(wrapped, _LIMITS))

    def _wrap(
        self,
        document: Document,
        card: Path | None,
        base: Fingerprint | None,
        written_ns: int,
        *,
        dismissed: bool,
    ) -> Document:
        return {
            "format": FORMAT,
            "version": 1,
            "path": quote(os.fsencode(card.absolute())) if card else None,
            "base": [base.size, str(base.mtime_ns), base.sha256] if base else None,
            "written": str(written_ns),  # beyond the whole numbers of JSON
            "dismissed": dismissed,
            "by": self._process.as_json(),
            "card": in_order(document),
        }


def read_draft(path: Path) -> Draft:
    """Read one draft.

    Raises:
        StoreError: it cannot be read; CardError: it is none.
    """
    data, _ = read_file(path, limit=_LIMITS.size)
    told = decode(data, path, _LIMITS)
    card = told.get("card")
    if told.get("format") != FORMAT or told.get("version") != 1 or not isinstance(card, dict):
        raise CardError(path, found="something else", expected="a draft of this version")
    where = told.get("path")
    return Draft(
        path=path,
        document=accept_card(card, path),
        card=Path(os.fsdecode(unquote_to_bytes(where))) if isinstance(where, str) else None,
        base=_as_fingerprint(told.get("base")),
        written_ns=_as_whole(told.get("written")),
        dismissed=told.get("dismissed") is True,
        by=from_json(told.get("by")),
    )


def _as_fingerprint(value: Any) -> Fingerprint | None:
    if not isinstance(value, list) or len(value) != 3:
        return None
    size, mtime, sha256 = value
    if type(size) is not int or not isinstance(sha256, str):
        return None
    return Fingerprint(size, _as_whole(mtime), sha256)


def _as_whole(value: Any) -> int:
    return int(value) if isinstance(value, str) and re.fullmatch("[0-9]{1,20}", value) else 0


@dataclass(frozen=True, slots=True)
class Standing:
    """A draft against its card: what became of the card, and which of the two is the later."""

    base: Base
    draft_is_newer: bool


def compare(draft: Draft, load: Callable[[Path], tuple[Document, Fingerprint]]) -> Standing:
    """Say how a draft stands to its card on the disk; ``load`` reads a card or raises StoreError.

    The hash of the base decides whether the card changed; times are only told.
    """
    if draft.card is None:
        return Standing(Base.NEW, draft_is_newer=True)
    try:
        document, now = load(draft.card)
    except StoreError:
        there = os.path.lexists(draft.card)
        return Standing(Base.UNREADABLE if there else Base.GONE, draft_is_newer=True)
    newer = draft.written_ns >= now.mtime_ns
    if document == draft.document:
        return Standing(Base.SAVED, newer)
    if draft.base is not None and draft.base.same_content(now):
        return Standing(Base.SAME, newer)
    return Standing(Base.CHANGED, newer)
