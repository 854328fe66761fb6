"""The coach's house file: ranges that override the shipped practice, in TOML.

It is written by hand as well as by the program, so the errors name the line.
What its entries mean is decided by ``reference``.
"""

import math
import re
import tomllib
from pathlib import Path
from typing import Any

import tomli_w

from rigbuilder.store import atomic
from rigbuilder.store.errors import CannotWrite, CardError, NotFound
from rigbuilder.store.reading import read_file

LARGEST = 200_000
DEEPEST = 32

# The TOML reader takes a time that grows with the square of the parts of a dotted key.
_DEEP_KEY = re.compile(rf"""(?<![\w"'-])(?:[\w"'-]++[ \t]*+\.[ \t]*+){{{DEEPEST + 1}}}""")

_MEND = "Mend the file, or remove it to return to the shipped practice; it was left as it is."


def read_house(path: Path) -> dict[str, Any]:
    """Return the entries of the house file, none if there is no file.

    Raises:
        StoreError: it cannot be read; CardError: it is not TOML, with the line where it stops making sense.
    """
    try:
        data, _ = read_file(path, limit=LARGEST)
    except NotFound:
        return {}
    try:
        text = data.decode("utf-8-sig").replace("\r\n", "\n")
        if _DEEP_KEY.search(text):
            raise RecursionError
        told = tomllib.loads(text)
        numbers = _numbers(told, "", 0)
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise CardError(
            path, where=f"line {line}", found="bytes that are not UTF-8", expected="text", advice=_MEND
        ) from None
    except RecursionError:
        found, expected = "brackets in brackets in brackets", f"at most {DEEPEST} levels"
        raise CardError(path, found=found, expected=expected, advice=_MEND) from None
    except tomllib.TOMLDecodeError as error:
        what, _, where = str(error).rpartition(" (at ")
        where = where.rstrip(")").replace("end of document", "the last line")
        found, expected = f"something that is not TOML ({what})", "lines as key = value"
        raise CardError(path, where=where, found=found, expected=expected, advice=_MEND) from None
    for where, value in numbers:
        if not math.isfinite(value):
            raise CardError(path, where=where, found=str(value), expected="a finite number", advice=_MEND)
    return told


def _numbers(value: Any, where: str, depth: int) -> list[tuple[str, float]]:
    if depth > DEEPEST:
        raise RecursionError
    if isinstance(value, float):
        return [(where, value)]
    if isinstance(value, dict):
        pairs = [(f"{where}.{key}" if where else key, inner) for key, inner in value.items()]
    elif isinstance(value, list):
        pairs = [(f"{where}[{number}]", inner) for number, inner in enumerate(value)]
    else:
        return []
    return [found for place, inner in pairs for found in _numbers(inner, place, depth + 1)]


def write_house(path: Path, entries: dict[str, Any]) -> atomic.Notes:
    """Write the house file as a whole; comments in it are lost. Return remarks, usually none.

    Raises:
        CannotWrite: a value that TOML does not know; StoreError: the file could not be written.
    """
    try:
        text = tomli_w.dumps(entries)
        same = tomllib.loads(text) == entries
    except (TypeError, ValueError, AttributeError, RecursionError) as error:
        raise CannotWrite(
            found=f"a value that TOML does not know ({error})", expected="texts and numbers"
        ) from None
    if not same:
        raise CannotWrite(found="a value that reads back differently", expected="texts and finite numbers")
    atomic.make_folder(path.parent)
    return atomic.write(path, text.encode("utf-8"))
