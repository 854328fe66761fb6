"""A card as bytes: the envelope every ``*.rigcard`` has, and the order of its keys."""

import re
import uuid
from pathlib import Path
from typing import Any

from rigbuilder.store import migrations
from rigbuilder.store.codec import CARD_LIMITS, Document, decode, encode
from rigbuilder.store.errors import CannotWrite, CardError

FORMAT = "rigbuilder.card"
SUFFIX = ".rigcard"

_LINE = ["type", "test", "diameter", "length", "condition", "knot", "measured", "price"]

#: Keys in the order in which they are written; unknown ones follow in their own order.
ORDER: dict[str, list[str]] = {
    "": [
        *("format", "version", "id", "name", "notes", "tags", "presentation"),
        *("lure", "rod", "reel", "main", "backing", "leader", "knots", "hardware", "drag", "fill"),
        *("water", "from", "cast", "fish", "silenced", "log"),
    ],
    "lure": ["technique", "weight", "trailer", "sinker", "hook", "buoyancy", "depth"],
    "rod": ["label", "length", "power", "action", "line", "lure", "line_for"],
    "reel": ["kind", "label", "capacity", "ratio", "drag", "retrieve", "size", "spool"],
    "spool": ["arbor", "rim", "width"],
    "fill": ["backing", "main", "lip_gap", "taped", "season_refills"],
    "main": _LINE,
    "backing": _LINE,
    "leader": _LINE,
    "measured": ["diameter", "strength"],
    "price": ["amount", "currency", "length"],
    "knots": ["lure", "arbor"],
    "hardware": ["swivel", "snap"],
    "water": ["kind", "temperature", "clarity", "depth", "current", "cover", "pressure", "wind", "air"],
    "fish": ["weight", "teeth"],
    "silenced": ["rule", "why"],
    "log": ["on", "what"],
}

_SAFE_ID = re.compile(r"[0-9A-Za-z-]{1,64}")


def check_format(document: Document, path: Path | None, expected: str = FORMAT) -> None:
    """Refuse a document that does not say it is of the ``expected`` format.

    Raises:
        CardError: the key ``format`` is missing or says something else.
    """
    said = document.get("format")
    if said == expected:
        return
    found = "no format" if "format" not in document else f"{said!r:.60}"
    raise CardError(
        path,
        where="format",
        found=found,
        expected=f"“{expected}”",
        advice="This is some other program's file; it was left untouched.",
    )


def parse_card(data: bytes, path: Path | None = None) -> Document:
    """Return the document in the bytes of a card, brought up to date.

    Raises:
        CardError: the bytes are no card; NewerVersion: they are one of a newer program.
    """
    return accept_card(decode(data, path), path)


def accept_card(document: Document, path: Path | None = None) -> Document:
    """Check the envelope of a card that is already parsed, and bring it up to date."""
    check_format(document, path)
    return migrations.bring_up_to_date(document, path)


def card_bytes(document: Document) -> bytes:
    """Return the bytes of a card of the current version, keys in :data:`ORDER`.

    Raises:
        CardError: the envelope is not that of a current card, or a value cannot be kept exactly.
    """
    try:
        ordered = in_order(accept_card(document))
    except RecursionError:
        raise CannotWrite(found="brackets without end", expected="a card of 32 levels at most") from None
    return encode(ordered, CARD_LIMITS)


def in_order(value: Any, part: str = "") -> Any:
    """Return ``value`` with its known keys in the order of cards, unknown keys after them."""
    if isinstance(value, list):
        return [in_order(item, part) for item in value]
    if not isinstance(value, dict):
        return value
    known = ORDER.get(part, [])
    keys = [key for key in known if key in value] + [key for key in value if key not in known]
    # Only inside the parts of a card does a name mean the same everywhere.
    return {key: in_order(value[key], key if isinstance(key, str) else "?") for key in keys}


def new_id() -> str:
    """Return a fresh identity for a card."""
    return str(uuid.uuid4())


def id_of(document: Document) -> str | None:
    """Return the identity of a card if it has one that may stand in a file name."""
    identity = document.get("id")
    return identity if isinstance(identity, str) and _SAFE_ID.fullmatch(identity) else None
