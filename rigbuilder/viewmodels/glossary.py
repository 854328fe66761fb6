"""The words of the trade: searched, and found in a sentence."""

import re
from collections.abc import Sequence
from functools import lru_cache

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
    """Return the words of the glossary that stand in some texts, in the order in which they come up."""
    found = (match[1].casefold() for match in _pattern(tuple(reference.glossary)).finditer(" ".join(texts)))
    terms = {row.term.casefold(): (row.term, row.meaning) for row in reference.glossary.values()}
    return tuple(terms[word] for word in dict.fromkeys(found))


def told(found: Sequence[Entry]) -> tuple[str, ...]:
    """Return words with their meanings, one line each."""
    return tuple(f"{word[0].upper()}{word[1:]}: {meaning}" for word, meaning in found)


@lru_cache(maxsize=4)
def _pattern(terms: tuple[str, ...]) -> re.Pattern[str]:
    """Return what finds any of the words, also in the plural; the longest wins where they overlap."""
    longest_first = sorted(terms, key=len, reverse=True)
    return re.compile(rf"\b({'|'.join(map(re.escape, longest_first))})s?\b", re.IGNORECASE)
