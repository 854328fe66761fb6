"""The words of the trade: searched, and found in a sentence."""

import re
from collections.abc import Sequence

from rigbuilder.reference.load import Reference

Entry = tuple[str, str]


def entries(reference: Reference, wanted: str = "") -> tuple[Entry, ...]:
    """Return (word, meaning) by word; those whose word begins with what is wanted come first."""
    words = wanted.casefold().split()
    found = [
        (row.term, row.meaning)
        for row in reference.glossary.values()
        if all(word in f"{row.term} {row.meaning}".casefold() for word in words)
    ]
    start = words[0] if words else ""
    return tuple(
        sorted(found, key=lambda entry: (not entry[0].casefold().startswith(start), entry[0].casefold()))
    )


def words_in(texts: Sequence[str], reference: Reference) -> tuple[Entry, ...]:
    """Return the words of the glossary that stand in some texts, longest first where they overlap."""
    text = " ".join(texts)
    found: list[tuple[int, Entry]] = []
    for row in sorted(reference.glossary.values(), key=lambda row: -len(row.term)):
        match = re.search(rf"\b{re.escape(row.term)}s?\b", text, re.IGNORECASE)
        if match:
            found.append((match.start(), (row.term, row.meaning)))
            text = f"{text[: match.start()]}{' ' * len(match.group())}{text[match.end() :]}"
    return tuple(entry for _, entry in sorted(found))
