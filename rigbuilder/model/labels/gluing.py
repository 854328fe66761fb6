"""Words and numbers that were typed without the space between them, and words that join a range."""

import re
from typing import Literal

from rigbuilder.units.normal import Normal
from rigbuilder.units.spelling import unit_pattern

_GRADE = r"(?:x?xh|mh|ml|ul|h|l|m)?[ /-]?(?:exf|xf|mf|f)"
_POWER = r"(?:x?xh|mh|ml|ul|h|l|m)"
_NEXT_MEASURE = r"(?=\d{1,3}(?:[.,/]\d+)?\s*(?:-|~|to\b|lb|kg|g\b|oz|#))"
_UNIT = r"(?:lbs?\.?|kgs?|oz|yds?|mm|cm|gr|g|m|in|\"|'\d{1,2})"
_BEFORE_GRADE = r"(?:lbs?\.?|kgs?|oz|cm|gr|g|in|\"|'\d{1,2})"
_WORD = (
    r"(?:nylon|mono|braid|fluoro|copoly|geflecht|tresse|drag|test|max|line|lure|spool|per\s|floating|sinking|susp"
    r"|treble|hooks?|class|of\s)"
)
_WORD_NUMBER = r"(?P<word>[^\W\d_]{4,}|cap|max|cw|wg|ipt|len|dia|(?<![a-z])wt|mono)(?=\d)"
_UNIT_WORD = rf"(?<=\d){_UNIT}(?={_WORD})"
_ANY = re.compile(rf"(?<![^\W_]){_WORD_NUMBER}|{_UNIT_WORD}")
_ROD = re.compile(
    rf"(?<![^\W_]){_WORD_NUMBER}|{_UNIT_WORD}|(?<=\d){_BEFORE_GRADE}(?=(?:{_GRADE}|{_POWER})(?![a-z]))"
    rf"|(?<=[.,]\d)m(?=(?:mh|ml|ul|x?xh)(?![a-z]))|(?<=[.,]\d\d)m(?=(?:mh|ml|ul|x?xh)(?![a-z]))"
    rf"|(?<![a-z])(?:{_GRADE}|{_POWER}){_NEXT_MEASURE}"
)
# The stroke beside a reel's size of four figures parts two entries.
_BESIDE_SIZE = re.compile(r"(?<=\d{4})/(?=\d)|(?<=[a-z\"])/(?=\d{4}(?!\d))|(?<=:1)/(?=\d)")
# A list without spaces whose decimal mark is the point: its commas part the entries.
_LIST_COMMA = re.compile(r"\S,(?=\S)")
_POINT = re.compile(r"\d\.\d")
_MEASURED = unit_pattern("lb", "kg", "oz", "g", "m", "cm", "mm", "ft", "in", "yd")
_JOINT = re.compile(
    rf"(?P<before>\d\s*(?P<unit>{_MEASURED})?\s+)(?P<joint>bis|tot|till|thru|through|until|à|a|al)"
    rf"(?=\s+\d[\d.,/ ]*(?P<after>{_MEASURED})?)"
)


def unglue(normal: Normal, kind: Literal["rod", "reel", "line", "lure"]) -> Normal:
    """``normal`` in lower case with a space put in where a word and a number run into each other."""
    normal = _without_long_gaps(normal)
    lower = "".join(c.lower() if len(c.lower()) == 1 else c for c in normal.text)
    out: list[str] = []
    origin: list[int] = []
    at = 0
    for match in (_ROD if kind == "rod" else _ANY).finditer(lower):
        out.append(lower[at : match.end()] + " ")
        origin.extend((*normal.origin[at : match.end()], normal.origin[match.end() - 1]))
        at = match.end()
    text = "".join(out) + lower[at:]
    if kind == "reel":
        text = _BESIDE_SIZE.sub(";", text)
    if len(_LIST_COMMA.findall(text)) > 2 and _POINT.search(text) and ", " not in text:
        text = text.replace(",", ";")
    return Normal(_JOINT.sub(_dash, text), (*origin, *normal.origin[at:]))


def _without_long_gaps(normal: Normal) -> Normal:
    """``normal`` with no more than two spaces on end: long gaps would make the patterns slow."""
    if "   " not in normal.text:
        return normal
    kept = [at for at in range(len(normal.text)) if normal.text[max(0, at - 2) : at + 1] != "   "]
    return Normal("".join(normal.text[at] for at in kept), tuple(normal.origin[at] for at in kept))


def _dash(match: re.Match[str]) -> str:
    """A range joined by a word, joined by a dash of the same width."""
    unit, after = match["unit"], match["after"]
    if unit and after and unit != after:
        return match[0]
    return match["before"] + "-".ljust(len(match["joint"]))
