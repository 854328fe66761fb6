"""The words typed into the library's search field, and which cards they mean."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from rigbuilder.store.rows import Row, fold


class Field(StrEnum):
    """Where a word is looked for: everywhere, or where its prefix says."""

    ANY = ""
    LINE = "line"
    TECHNIQUE = "technique"
    TAG = "tag"
    VERDICT = "verdict"


#: What the trade also calls the line types.
LINE_WORDS = {
    "mono": "nylon",
    "monofilament": "nylon",
    "fc": "fluorocarbon",
    "copoly": "copolymer",
    "pe": "braid",
    "superline": "braid",
    "leadcore": "lead-core",
}


@dataclass(frozen=True, slots=True)
class Term:
    """One word or quoted phrase, folded; ``wanted`` is False for ``-word``."""

    field: Field
    text: str
    wanted: bool


_TERM = re.compile(
    r'(?P<no>-?)(?:(?P<field>line|technique|tag|verdict):)?(?:"(?P<phrase>[^"]*)"?|(?P<word>[^\s"]+))'
)


def parse_query(text: str) -> tuple[Term, ...]:
    """Return the terms of a query; every text is one, whatever is typed half-way.

    ``frog``, ``"hollow-body frog"``, ``line:braid``, ``line:"16 lb"``, ``technique:frog``, ``tag:larkmere``,
    ``verdict:fault``, and each with ``-`` before it to leave those cards out.
    """
    terms = []
    for match in _TERM.finditer(fold(text)):
        said = (match["phrase"] if match["phrase"] is not None else match["word"]).strip()
        if said.strip("-"):
            terms.append(Term(Field(match["field"] or ""), said, not match["no"]))
    return tuple(terms)


def matches(row: Row, terms: tuple[Term, ...], verdict: str) -> bool:
    """Say whether a card meets every term."""
    for term in terms:
        if term.field is Field.ANY:
            met = term.text in row.words
        else:
            met = _FIELDS[term.field](row, term.text, verdict)
        if met is not term.wanted:
            return False
    return True


def _line(row: Row, text: str, verdict: str) -> bool:
    if text[0].isdecimal():  # 6 is not 16
        return re.search(rf"(?<![0-9.,]){re.escape(text)}(?![0-9])", row.line_words) is not None
    return text in row.line_words or LINE_WORDS.get(text, text) in row.line_words


def _technique(row: Row, text: str, verdict: str) -> bool:
    return text in fold(row.technique)


def _tag(row: Row, text: str, verdict: str) -> bool:
    return any(fold(tag).startswith(text) for tag in row.tags)


def _verdict(row: Row, text: str, verdict: str) -> bool:
    return (verdict or ("broken" if row.trouble else "")).startswith(text)


_FIELDS = {Field.LINE: _line, Field.TECHNIQUE: _technique, Field.TAG: _tag, Field.VERDICT: _verdict}


def search(rows: Mapping[str, Row], query: str, verdicts: Mapping[str, str]) -> list[Row]:
    """Return the rows that a query means, in their order; ``verdicts`` by hash of the card's bytes."""
    terms = parse_query(query)
    if not terms:
        return list(rows.values())
    plain = [term.text for term in terms if term.field is Field.ANY and term.wanted]
    rest = tuple(term for term in terms if term.field is not Field.ANY or not term.wanted)
    found = list(rows.values())
    for word in plain:
        found = [row for row in found if word in row.words]
    return [row for row in found if matches(row, rest, verdicts.get(row.sha256, ""))] if rest else found
