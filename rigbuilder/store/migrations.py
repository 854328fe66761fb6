"""Bring a card of an older version up to date, one small pure step at a time.

To change the form of a card: raise ``CURRENT``, add the step from the version
before, and freeze a card of that version under ``tests/unit/store/versions``.
"""

import copy
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from rigbuilder.store.errors import CardError, NewerVersion

Step = Callable[[dict[str, Any]], dict[str, Any]]

CURRENT = 1

#: ``STEPS[n]`` turns version n into n + 1. Version 1 is the first.
STEPS: Mapping[int, Step] = {}


def version_of(document: dict[str, Any], path: Path | None) -> int:
    """Return the version a document claims.

    Raises:
        CardError: there is none, or it is not a whole number from 1.
    """
    version = document.get("version")
    if type(version) is not int or version < 1:
        found = "no version" if "version" not in document else f"{version!r:.40}"
        raise CardError(path, where="version", found=found, expected=f"a whole number from 1 to {CURRENT}")
    return version


def bring_up_to_date(
    document: dict[str, Any],
    path: Path | None = None,
    *,
    current: int = CURRENT,
    steps: Mapping[int, Step] = STEPS,
) -> dict[str, Any]:
    """Return ``document`` in the current version; the one given stays as it is.

    Raises:
        NewerVersion: it comes from a newer program.
        CardError: its version is missing or nonsense.
    """
    version = version_of(document, path)
    if version > current:
        raise NewerVersion(path, version=version, known=current)
    while version < current:
        document = steps[version](copy.deepcopy(document))
        if document["version"] != version + 1:
            raise AssertionError(f"the step from version {version} did not lead to version {version + 1}")
        version += 1
    return document
