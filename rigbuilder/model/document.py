"""A card as typed: plain JSON values, changed only by making a new one.

Paths name fields by their keys, joined by dots (``main.test``). A missing key
means that nothing was said; ``None`` means that there is none.
"""

from collections.abc import Iterator, Mapping
from typing import Any

Document = dict[str, Any]

FORMAT = "rigbuilder.card"
VERSION = 1

_MISSING = object()


def get(document: Mapping[str, Any], path: str, default: Any = None) -> Any:
    """Return what stands at ``path``, or ``default`` where the path leads nowhere."""
    here: Any = document
    for key in path.split("."):
        if not isinstance(here, Mapping) or key not in here:
            return default
        here = here[key]
    return here


def is_said(document: Mapping[str, Any], path: str) -> bool:
    """Tell whether the card says something at ``path``: a value, or null for "none".

    A group that is null (``"leader": null``) says of each field below it that there is none.
    """
    here: Any = document
    for key in path.split("."):
        if here is None:
            return True
        if not isinstance(here, Mapping) or key not in here:
            return False
        here = here[key]
    return True


def put(document: Mapping[str, Any], path: str, value: Any) -> Document:
    """Return a new document with ``value`` at ``path``; groups on the way are made where missing."""
    key, _, rest = path.partition(".")
    new = dict(document)
    if rest:
        group = new.get(key)
        new[key] = put(group if isinstance(group, Mapping) else {}, rest, value)
    else:
        new[key] = value
    return new


def drop(document: Mapping[str, Any], path: str) -> Document:
    """Return a new document in which nothing is said at ``path``."""
    key, _, rest = path.partition(".")
    new = dict(document)
    if rest:
        group = new.get(key)
        if isinstance(group, Mapping):
            new[key] = drop(group, rest)
    else:
        new.pop(key, None)
    return new


def put_all(document: Mapping[str, Any], changes: Mapping[str, Any]) -> Document:
    """Return a new document with every change made, in order; the paths are as in ``put``."""
    new = dict(document)
    for path, value in changes.items():
        new = put(new, path, value)
    return new


def differences(old: Mapping[str, Any], new: Mapping[str, Any]) -> Iterator[tuple[str, Any, Any]]:
    """Yield ``(path, old value, new value)`` for every field that differs; ``None`` for missing."""
    before, after = dict(leaves(old)), dict(leaves(new))
    for path in list(before) + [path for path in after if path not in before]:
        one, two = before.get(path, _MISSING), after.get(path, _MISSING)
        if one != two:
            yield path, None if one is _MISSING else one, None if two is _MISSING else two


def leaves(document: Mapping[str, Any], prefix: str = "") -> Iterator[tuple[str, Any]]:
    """Yield ``(path, value)`` for every value that is not itself a group."""
    for key, value in document.items():
        path = f"{prefix}{key}"
        if isinstance(value, Mapping):
            yield from leaves(value, f"{path}.")
        else:
            yield path, value


def new_document(identity: str, name: str) -> Document:
    """Return an empty card with its format, version, id and name."""
    return {"format": FORMAT, "version": VERSION, "id": identity, "name": name}
