"""JSON, read strictly and written so that it reads back as it was.

Python's reader accepts NaN, keeps the last of two equal keys, gives up its
stack on deep nesting and takes numbers that no other program can hold. A card
is passed between people and programs, so all of that is refused, with the
place where it stands.
"""

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from rigbuilder.store.errors import CannotWrite, CardError
from rigbuilder.store.reading import too_large

Document = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Limits:
    """How much is read: bytes, levels of nesting, and entries (commas and brackets, a bound on memory)."""

    size: int
    depth: int
    entries: int


CARD_LIMITS = Limits(size=1_000_000, depth=32, entries=100_000)

#: Beyond 2^53 neighbouring whole numbers can no longer be told apart in a double (IEEE 754).
LARGEST_INTEGER = 2**53

# Possessive, so that text without a closing quote costs one pass and not a square of its length.
_STRING = re.compile(rb'"(?:[^"\\]++|\\.)*+"?', re.DOTALL)
_NOT_BRACKETS = bytes(set(range(256)) - set(b"[]{}"))
_ROUND = bytes.maketrans(b"{}", b"[]")
_SURROGATE_CODE = re.compile(r"\\u[dD][89a-fA-F]")
_LONE_SURROGATE = re.compile(r"[\ud800-\udfff]")


@dataclass(frozen=True, slots=True)
class _Refused:
    """Stands in the parsed tree where something unacceptable was, so that its place can be told."""

    found: str
    expected: str


def decode(data: bytes, path: Path | None = None, limits: Limits = CARD_LIMITS) -> Document:
    """Return the JSON object in ``data``.

    A byte order mark at the start is accepted and dropped: editors leave it.

    Raises:
        CardError: for everything else that is not one plain, finite, unambiguous JSON object.
    """
    if len(data) > limits.size:
        raise too_large(path, len(data), limits.size)
    text = _as_text(data, path)
    _check_shape(data, path, limits)
    tree = _parse(text, path)
    if not isinstance(tree, dict):
        raise CardError(path, found=_name_of(tree), expected="an object in curly brackets")
    return tree


def _as_text(data: bytes, path: Path | None) -> str:
    if not data.strip():
        raise CardError(path, found="an empty file", expected="a card")
    if not data.strip(b"\0"):
        raise CardError(path, found="nothing but zero bytes (as after a power cut)", expected="a card")
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise CardError(path, found="text in UTF-16", expected="text in UTF-8")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        found = f"the byte {data[error.start]:#04x}, which is not UTF-8"
        raise CardError(path, where=f"line {line}", found=found, expected="text in UTF-8") from None


def _check_shape(data: bytes, path: Path | None, limits: Limits) -> None:
    """Refuse too many entries and too deep nesting before the parser sees them.

    Brackets outside strings are paired off from the inside, one level a pass,
    by byte replacement; what still has a pair after ``depth`` passes is deeper.
    """
    if data.count(b",") + data.count(b"[") + data.count(b"{") > limits.entries or (
        data.count(b'"') > 4 * limits.entries
    ):
        raise CardError(path, found="too many entries", expected=f"at most {limits.entries:,}")
    brackets = _STRING.sub(b"", data).translate(_ROUND, _NOT_BRACKETS)
    for _ in range(limits.depth):
        brackets = brackets.replace(b"[]", b"")
    # Without pairs left, only closing brackets, then opening ones remain: broken, and the parser tells where.
    if b"[]" in brackets or brackets.count(b"[") > limits.depth:
        raise CardError(
            path, found="brackets in brackets in brackets", expected=f"at most {limits.depth} levels"
        )


def _parse(text: str, path: Path | None) -> Any:
    hooks = _Hooks()
    try:
        tree = json.loads(
            text,
            object_pairs_hook=hooks.object,
            parse_constant=hooks.constant,
            parse_float=hooks.number,
            parse_int=hooks.integer,
        )
    except json.JSONDecodeError as error:
        where = f"line {error.lineno}, column {error.colno}"
        if error.pos >= len(text.rstrip()) or error.msg.startswith("Unterminated string"):
            found, expected = (
                "the end of the file in the middle of the card",
                "the rest of it (the file is cut off)",
            )
        else:
            found, expected = f"“{_excerpt(text, error.pos)}”", _plain_words(error.msg)
        raise CardError(path, where=where, found=found, expected=expected) from None
    # The walk costs as much as the parsing, so it is left out when there is nothing to find.
    if hooks.refused or _SURROGATE_CODE.search(text):
        for where, refused in _refusals(tree, ""):
            raise CardError(path, where=where, found=refused.found, expected=refused.expected)
    return tree


def _excerpt(text: str, position: int) -> str:
    piece = text[position : position + 20].split("\n")[0]
    return "".join(letter if letter.isprintable() else "\N{REPLACEMENT CHARACTER}" for letter in piece)


_PARSER_WORDS = {
    "Expecting ',' delimiter": "a comma between two entries",
    "Expecting ':' delimiter": "a colon after the key",
    "Expecting property name enclosed in double quotes": "a key in double quotes",
    "Illegal trailing comma before end of object": "no comma after the last entry",
    "Illegal trailing comma before end of array": "no comma after the last entry",
    "Expecting value": "a value (text in double quotes, a number, true, false or null)",
    "Extra data": "the end of the file after the last bracket",
    "Invalid control character at": "\\n or \\t instead of a line break or tab inside text",
}


def _plain_words(message: str) -> str:
    return _PARSER_WORDS.get(message, "a backslash code that JSON knows, as \\n or \\u00e9")


class _Hooks:
    """What the parser calls; whatever is unacceptable is replaced by a mark and counted."""

    def __init__(self) -> None:
        self.refused = 0

    def _refuse(self, found: str, expected: str) -> _Refused:
        self.refused += 1
        return _Refused(found, expected)

    def object(self, pairs: list[tuple[str, Any]]) -> Document | _Refused:
        result = dict(pairs)
        if len(result) == len(pairs):
            return result
        keys = [key for key, _ in pairs]
        twice = next(key for number, key in enumerate(keys) if key in keys[:number])
        return self._refuse(f"the key “{_excerpt(twice, 0)}” twice", "every key once")

    def constant(self, name: str) -> _Refused:
        return self._refuse(name, "a finite number")

    def integer(self, text: str) -> int | _Refused:
        if len(text) > 17 or abs(int(text)) > LARGEST_INTEGER:
            return self._refuse(f"the number {_short(text)}", "whole numbers up to 9,007,199,254,740,992")
        return int(text)

    def number(self, text: str) -> float | _Refused:
        value = float(text)
        if value in (float("inf"), float("-inf")):
            return self._refuse(f"the number {_short(text)}", "a finite number")
        return value


def _short(text: str) -> str:
    return text if len(text) <= 24 else f"{text[:20]}… ({len(text):,} characters)"


def _refusals(value: Any, where: str) -> Iterator[tuple[str, _Refused]]:
    """Yield what is unacceptable in a parsed tree, with the JSON path to it."""
    if isinstance(value, _Refused):
        yield where, value
    elif isinstance(value, str):
        if not value.isascii() and _LONE_SURROGATE.search(value):
            yield where, _Refused("half of a surrogate pair, which is no character", "whole characters")
    elif isinstance(value, dict):
        for key, inner in value.items():
            yield from _refusals(key, where)
            name = _excerpt(key, 0)
            yield from _refusals(inner, f"{where}.{name}" if where else name)
    elif isinstance(value, list):
        for number, inner in enumerate(value):
            yield from _refusals(inner, f"{where}[{number}]")


def _name_of(value: Any) -> str:
    if isinstance(value, list):
        return "a list"
    return "nothing but a text, number or word"


def encode(document: Document, limits: Limits = CARD_LIMITS) -> bytes:
    """Return the text of ``document``: UTF-8, two spaces a level, keys in the order given, a last newline.

    The text is read back and compared before it is returned, so that nothing
    is written which :func:`decode` would refuse or understand otherwise.

    Raises:
        CannotWrite: the document holds something that JSON cannot keep exactly.
    """
    try:
        text = json.dumps(document, ensure_ascii=False, allow_nan=False, indent=2) + "\n"
        data = text.encode("utf-8")
    except UnicodeEncodeError:
        raise CannotWrite(
            found="half of a surrogate pair, which is no character", expected="whole characters"
        ) from None
    except RecursionError:
        raise CannotWrite(found="brackets without end", expected=f"at most {limits.depth} levels") from None
    except (ValueError, TypeError) as error:
        raise CannotWrite(
            found=f"a value that is not text or number ({error})", expected="plain values"
        ) from None
    try:
        back = decode(data, None, limits)
    except CardError as error:
        raise CannotWrite(where=error.where, found=error.found, expected=error.expected) from None
    if not same(back, document):
        raise CannotWrite(found="a value that reads back differently", expected="plain values")
    return data


def same(one: Any, other: Any) -> bool:
    """Say whether two JSON values are equal, with ``1``, ``1.0`` and ``true`` told apart."""
    if type(one) is not type(other):
        return False
    if isinstance(one, dict):
        return one.keys() == other.keys() and all(same(one[key], other[key]) for key in one)
    if isinstance(one, list):
        return len(one) == len(other) and all(map(same, one, other))
    return bool(one == other)
