"""The length of line that one turn of a reel's handle brings in."""

import re

from rigbuilder.model.labels.label import Label
from rigbuilder.model.labels.measure import BEFORE_WORD, DECIMAL, LONE, offer_usual, quantity
from rigbuilder.model.labels.vocabulary import PER, RETRIEVE
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.numbers import NotANumber, read_number
from rigbuilder.units.spelling import SYMBOLS, unit_pattern

_SPAN = unit_pattern("in", "cm", "mm", "ft", "m")
_RETRIEVING = rf"{RETRIEVE}(?:{PER})?"
_RETRIEVE = re.compile(
    rf"(?:{BEFORE_WORD}{_RETRIEVING}\s*[:=]?\s*)?"
    rf"{LONE}(?:(?P<first>{DECIMAL}\s*{_SPAN})\s*[(/=,]\s*)?"
    rf"(?P<number>{DECIMAL})\s*-?(?P<unit>{_SPAN})\)?\.?"
    rf"(?:(?:\s*of line)?{PER}|\s*(?:line\s*)?(?:retrieve|recovery|ipt)(?![a-z]))"
    rf"|{BEFORE_WORD}{_RETRIEVING}[\s.:=(]*"
    rf"(?P<number2>{DECIMAL})\s*(?P<unit2>{_SPAN})\)?(?![a-z])"
    rf"|{BEFORE_WORD}{_RETRIEVING}[\s.:=]*\(?(?P<unit3>{unit_pattern('in', 'cm')})(?:{PER})?\)?[\s:=]*"
    rf"(?P<number3>{DECIMAL})(?!\s*{_SPAN}|[\d:])"
    rf"|{BEFORE_WORD}(?P<unit4>{unit_pattern('in', 'cm')}){PER}[\s:=]*(?P<number4>{DECIMAL})(?![\d:])"
    rf"(?:\s*(?P<unit5>{_SPAN}))?"
    rf"|{BEFORE_WORD}ipt[\s.:=]*(?P<ipt>{DECIMAL})(?![\d.,:/])"
    rf"|{LONE}(?P<ipt2>{DECIMAL})\s*ipt(?![a-z])"
)
_SECOND_RETRIEVE = re.compile(
    rf"\s*[(/,=]\s*(?P<number>{DECIMAL})\s*(?P<unit>{unit_pattern('in', 'cm')})(?:{PER})?\s*\)?"
)
_BARE_RETRIEVE = re.compile(rf"{LONE}(?P<number>{DECIMAL})\s*(?P<unit>{unit_pattern('in', 'cm')})")
_BARE_RETRIEVES = {"in": (15.0, 50.0), "cm": (40.0, 130.0)}
_BESIDE = r"(?:handle|spool|rod|knob|width|kurbel|spule|griff|manivelle|seat|long)"
_NOT_RETRIEVED = re.compile(rf"\s*{_BESIDE}(?![a-z])")
_NOT_RETRIEVED_BEFORE = re.compile(rf"{_BESIDE}[\s:=]*$")
_RETRIEVES_M = (0.2, 1.8)


def first(match: re.Match[str], *groups: str) -> str:
    """The first of these groups that took part in the match."""
    return next((match[group] for group in groups if match[group]), "")


def read_retrieve(label: Label) -> None:
    """Offer what the label says with a word for it or per turn."""
    for match in label.find(_RETRIEVE):
        ipt = first(match, "ipt", "ipt2")
        number = first(match, "number", "number2", "number3", "number4")
        unit = first(match, "unit", "unit2", "unit3", "unit5", "unit4")
        if match["first"]:
            _offer_retrieve(label, match.span("first"), match["first"])
            label.take(*match.span())
        span = match.span("number") if match["first"] else match.span()
        _offer_retrieve(label, span, f"{ipt} in" if ipt else f"{number} {unit}")
        if second := _SECOND_RETRIEVE.match(label.open, match.end()):
            text = f"{second['number']} {second['unit']}"
            _offer_retrieve(label, (second.start("number"), second.end("unit")), text)
            label.take(*second.span())


def _offer_retrieve(label: Label, span: tuple[int, int], text: str) -> None:
    value = quantity(label, span, text, dimension=Dimension.LENGTH)
    if value is not None:
        offer_usual(
            label, span, "retrieve", value,
            limits=_RETRIEVES_M, called="line retrieved per handle turn", of="length of line per handle turn",
        )  # fmt: skip


def read_bare_retrieve(label: Label) -> None:
    """Beside a gear ratio, so many inches or centimetres are what a turn of the handle brings in."""
    bare = list(label.find(_BARE_RETRIEVE))
    inches = [match for match in bare if _fits(match)]
    if label.has("ratio") and not label.has("retrieve") and len(bare) == len(inches):
        for match in inches:
            _offer_retrieve(label, match.span(), f"{match['number']} {match['unit']}")
        return
    if not label.has("retrieve"):
        for match in bare:
            label.doubt(match.span(), "a length without a word; line retrieved per handle turn?")


def _fits(match: re.Match[str]) -> bool:
    try:
        number = float(read_number(match["number"]))
    except NotANumber:
        return False
    before = match.string[: match.start()]
    if _NOT_RETRIEVED.match(match.string, match.end()) or _NOT_RETRIEVED_BEFORE.search(before):
        return False
    low, high = _BARE_RETRIEVES[SYMBOLS[match["unit"]]]
    return low <= number <= high
