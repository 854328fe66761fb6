"""File names for cards: readable, and safe on every file system a card may travel to."""

import hashlib
import re
import unicodedata
from collections.abc import Iterable

from rigbuilder.store.cardfile import SUFFIX

#: Bytes in UTF-8; file systems allow 255, and a decomposing one needs up to three times the space.
LONGEST_SLUG = 80

#: Names that Windows keeps for devices, whatever follows the first dot.
_RESERVED = {"con", "prn", "aux", "nul", "conin$", "conout$"} | {
    port + digit for port in ("com", "lpt") for digit in "0123456789¹²³"
}


def slug(title: str) -> str:
    """Return a title as part of a file name: letters and digits of any script, joined by hyphens.

    Everything else goes: separators, characters that some system forbids,
    controls, marks that turn the reading direction round, and emoji. Never
    empty, never a reserved name, at most :data:`LONGEST_SLUG` bytes.
    """
    text = unicodedata.normalize("NFC", title).lower()
    kept = "".join(letter if unicodedata.category(letter)[0] in "LNM" else "-" for letter in text)
    text = re.sub("-+", "-", kept).strip("-")
    text = unicodedata.normalize("NFC", text).encode("utf-8")[:LONGEST_SLUG].decode("utf-8", "ignore")
    text = text.strip("-")
    # A combining mark needs a letter before it.
    while text and unicodedata.category(text[0])[0] == "M":
        text = text[1:].strip("-")
    if not text:
        return "card"
    return f"card-{text}" if text in _RESERVED else text


def short_id(identity: str) -> str:
    """Return six hexadecimal digits that stand for a card's identity in its file name."""
    digits = identity.replace("-", "").lower()[:6]
    if re.fullmatch("[0-9a-f]{6}", digits):
        return digits
    return hashlib.sha256(identity.encode("utf-8", "surrogatepass")).hexdigest()[:6]


def clash_key(name: str) -> str:
    """Return what two names share if some file system takes them for one (case, composed letters)."""
    folded = unicodedata.normalize("NFKD", unicodedata.normalize("NFKD", name).casefold())
    return unicodedata.normalize("NFC", folded)


def file_name(title: str, identity: str, taken: Iterable[str] = ()) -> str:
    """Return a file name for a card that clashes with none of ``taken``."""
    used = {clash_key(name) for name in taken}
    stem = f"{slug(title)}-{short_id(identity)}"
    name, number = stem + SUFFIX, 1
    while clash_key(name) in used:
        number += 1
        name = f"{stem}-{number}{SUFFIX}"
    return name


def beside(name: str, word: str, taken: Iterable[str]) -> str:
    """Return a free name next to the file ``name``, as ``frog-6f0c12-mine.rigcard``."""
    used = {clash_key(other) for other in taken}
    stem = name.removesuffix(SUFFIX)
    room = 200 - len(word)
    stem = stem.encode("utf-8", "surrogateescape")[:room].decode("utf-8", "ignore")
    number = 1
    while True:
        mark = f"-{word}" if number == 1 else f"-{word}-{number}"
        if clash_key(stem + mark + SUFFIX) not in used:
            return stem + mark + SUFFIX
        number += 1
