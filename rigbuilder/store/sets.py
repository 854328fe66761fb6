"""A set of cards as one plain file, and a card as text between other text.

Cards that come from elsewhere are checked exactly as single files are. No
name or place is taken from them: every card gets a file name made here.
"""

import re
from collections.abc import Sequence
from pathlib import Path

from rigbuilder.store import atomic
from rigbuilder.store.cardfile import FORMAT, accept_card, card_bytes, check_format, in_order, parse_card
from rigbuilder.store.codec import CARD_LIMITS, Document, Limits, decode, encode
from rigbuilder.store.errors import CannotWrite, CardError, NewerVersion
from rigbuilder.store.migrations import version_of
from rigbuilder.store.reading import read_file

SET_FORMAT = "rigbuilder.set"
SET_VERSION = 1
SET_SUFFIX = ".rigset"
MOST_CARDS = 2_000

#: Room for 2,000 cards of eight kilobytes; reading so much takes less than 200 MB of memory.
SET_LIMITS = Limits(size=16_000_000, depth=CARD_LIMITS.depth + 2, entries=400_000)

#: What is looked through for cards when pasted.
LONGEST_TEXT = 4_000_000

_LEFT = "Nothing was imported; the file was left as it is."


def set_bytes(documents: Sequence[Document]) -> bytes:
    """Return the bytes of a set that holds ``documents``.

    Raises:
        CannotWrite: there are too many, or one cannot be kept in a file.
    """
    if len(documents) > MOST_CARDS:
        raise CannotWrite(found=f"{len(documents):,} cards", expected=f"at most {MOST_CARDS:,} in one set")
    for document in documents:
        card_bytes(document)
    cards = [in_order(document) for document in documents]
    return encode({"format": SET_FORMAT, "version": SET_VERSION, "cards": cards}, SET_LIMITS)


def export_set(documents: Sequence[Document], path: Path) -> atomic.Notes:
    """Write a set of cards to ``path``, over a file that may be there; the window has asked.

    Raises:
        StoreError: it could not be written; CannotWrite: see :func:`set_bytes`.
    """
    return atomic.write(path, set_bytes(documents))


def read_set(path: Path) -> list[Document]:
    """Read all cards of a set, or of a file with a single card.

    Raises:
        StoreError: it cannot be read; CardError: any card in it is not in order.
    """
    data, _ = read_file(path, limit=SET_LIMITS.size)
    return parse_set(data, path)


def parse_set(data: bytes, path: Path | None = None) -> list[Document]:
    """Return the cards in the bytes of a set, each checked and brought up to date."""
    told = decode(data, path, SET_LIMITS)
    if told.get("format") == FORMAT:
        return [parse_card(data, path)]
    check_format(told, path, SET_FORMAT)
    version = version_of(told, path)
    if version > SET_VERSION:
        raise NewerVersion(path, version=version, known=SET_VERSION)
    cards = told.get("cards")
    if not isinstance(cards, list):
        raise CardError(path, where="cards", found="no list", expected="a list of cards", advice=_LEFT)
    if len(cards) > MOST_CARDS:
        found, expected = f"{len(cards):,} cards", f"at most {MOST_CARDS:,}"
        raise CardError(path, where="cards", found=found, expected=expected, advice=_LEFT)
    return [_checked(card, number, path) for number, card in enumerate(cards, start=1)]


def _checked(card: object, number: int, path: Path | None) -> Document:
    where = f"card {number}"
    if not isinstance(card, dict):
        raise CardError(path, where=where, found="something else", expected="a card", advice=_LEFT)
    try:
        document = accept_card(card, path)
        card_bytes(document)  # the limits of a single file
    except NewerVersion:
        raise
    except CardError as error:
        where = f"{where}, {error.where}" if error.where else where
        raise CardError(path, where=where, found=error.found, expected=error.expected, advice=_LEFT) from None
    return document


_CURLY = re.compile("[{}]")  # in a heading they would look like the beginning of the card


def to_text(document: Document) -> str:
    """Return a card as text for the clipboard: its name in plain words, then the card itself."""
    name = document.get("name")
    title = " ".join(_CURLY.sub(" ", name).split()) if isinstance(name, str) else ""
    return f"Rigbuilder card: {title or 'without a name'}\n\n{card_bytes(document).decode('utf-8')}"


# Mail and chat put these before each line; no text in JSON goes over a line, so they are never part of one.
_LINE_START = re.compile(r"^[>\t \u00a0|]+", re.MULTILINE)
# A card begins with a key; a lone bracket in the words around it is no card.
_OBJECT_START = re.compile(r'\{(?=\s*")')
_TOKEN = re.compile(r'"(?:[^"\\]++|\\.)*+"?|[{}]', re.DOTALL)


def from_text(text: str) -> list[Document]:
    """Return the cards in a text that may have other words, fences or quotation marks of mail around them.

    Raises:
        CardError: there is no card in it, or one of them is broken.
    """
    if len(text) > LONGEST_TEXT:
        raise CardError(None, found=f"{len(text):,} characters", expected="a card as text")
    text = _LINE_START.sub("", text.replace("\r\n", "\n"))
    documents: list[Document] = []
    start = _OBJECT_START.search(text)
    while start:
        end = _end_of_object(text, start.start())
        piece = text[start.start() : end]
        if '"rigbuilder.' in piece:
            documents += parse_set(piece.encode("utf-8", "surrogatepass"))
        start = _OBJECT_START.search(text, end)
    if not documents:
        raise CardError(
            None,
            found="no card",
            expected="the text of a card, from its first curly bracket to its last",
            advice="Copy the whole card and paste it again.",
        )
    return documents


def _end_of_object(text: str, start: int) -> int:
    depth = 0
    for match in _TOKEN.finditer(text, start):
        if match[0] == "{":
            depth += 1
        elif match[0] == "}":
            depth -= 1
            if depth == 0:
                return match.end()
    return len(text)
