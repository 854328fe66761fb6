"""Reel labels: capacity, gear ratio, retrieve per turn, drag, size, kind, in any order."""

import re

from rigbuilder.model.labels.capacity import read_capacities
from rigbuilder.model.labels.label import Label
from rigbuilder.model.labels.measure import (
    BEFORE_WORD,
    DECIMAL,
    LONE,
    START,
    TO,
    Captions,
    measures,
    quantity,
    words,
)
from rigbuilder.model.labels.vocabulary import (
    BRAID,
    CAPACITY,
    DRAG,
    FLUOROCARBON,
    LINE_WORD,
    NOISE,
    NYLON,
    PER,
    RATIO,
    REEL_SIZE,
    RETRIEVE,
)
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.numbers import NotANumber, read_number
from rigbuilder.units.quantity import show
from rigbuilder.units.spelling import SYMBOLS, unit_pattern

_FORCE = unit_pattern("lb", "kg", "N")
_SPAN = unit_pattern("in", "cm", "mm", "ft", "m")
_RATIO = re.compile(
    rf"(?:{BEFORE_WORD}{RATIO}\s*[:=]?\s*)?(?<![\d.:-])(?<!\d,)"
    rf"(?P<ratio>{DECIMAL})\s*(?::|to)\s*1(?:[.,]0)?(?![\d:]|\.\d)"
    rf"|(?<![\d.,/])1\s*:\s*(?P<reverse>{DECIMAL})(?![\d/:])"
    rf"|(?<![\d.,/:-])(?P<stroke>\d{{1,2}}[.,]\d{{1,2}})\s*/\s*1(?![\d/:]|[.,]\d|\s*[a-z])"
    rf"|{BEFORE_WORD}{RATIO}\s*(?:is\s*|of\s*)?[:=]?\s*(?P<named>{DECIMAL})(?![\d/:-]|\s*(?:{_FORCE}|{_SPAN}))"
)
_BARE_RATIO = re.compile(
    LONE
    + r"(?P<ratio>\d{1,2}[.,]\d)(?![\d/:.,-]|\s*[a-z\"'#(]*(?:oz|g|lbs?|kg|mm|cm|in|m|yds?)(?![a-z])|\"|')"
)
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
    rf"|{BEFORE_WORD}ipt[\s.:=]*(?P<ipt>{DECIMAL})(?![\d.,:/])"
    rf"|{LONE}(?P<ipt2>{DECIMAL})\s*ipt(?![a-z])"
)
_SECOND_RETRIEVE = re.compile(
    rf"\s*[(/,=]\s*(?P<number>{DECIMAL})\s*(?P<unit>{unit_pattern('in', 'cm')})(?:{PER})?\s*\)?"
)
_BARE_RETRIEVE = re.compile(rf"{LONE}(?P<number>{DECIMAL})\s*(?P<unit>{unit_pattern('in', 'cm')})")
_BARE_RETRIEVES = {"in": (15.0, 50.0), "cm": (40.0, 130.0)}
_BARE_NUMBER = re.compile(
    r"(?:^|(?<=[\x00,;|/]))\s*(?<!\d[,.])(?P<number>\d+(?:[.,]\d+)?)\s*(?=[\x00,;|/]|$)(?!,\d)"
)
_BARE_LENGTH = re.compile(rf"{LONE}{DECIMAL}\s*{unit_pattern('yd', 'm')}")
_MAX = r"max(?:imum)?\.?"
_DRAG = rf"(?:(?:{_MAX}|top|m\.)\s*)?{DRAG}(?:\s*(?:{_MAX}|power|force|system|cap(?:acity)?\.?))*"
_PULL = rf"{DECIMAL}\s*-?\s*{_FORCE}"
_PULLS = rf"(?P<pull>{_PULL})(?:\s*[(/=,]\s*(?P<second>{_PULL})\s*\)?)?"
_DRAG_AFTER = re.compile(
    rf"{LONE}{_PULLS}\s*(?:of\s*)?(?:{_MAX}\s*)?(?:{DRAG}|max(?:imum)?(?![a-z]))(?!\s*[:=]?\s*{_PULL})"
)
_DRAG_BEFORE = re.compile(
    rf"{BEFORE_WORD}(?:{_DRAG}|{_MAX})(?:\s*(?:of|up to))?[\s.:=(-]*{_PULLS}\)?(?:\s*max\.?(?![a-z]))?"
)
_DRAG_BARE = re.compile(
    rf"{BEFORE_WORD}{_DRAG}[\s.:=]*(?P<number>{DECIMAL})(?![\d.,:/-]|\s*(?:{_FORCE}|{_SPAN}))"
)
_DRAG_RANGE = re.compile(rf"{BEFORE_WORD}{_DRAG}[\s.:=]*{DECIMAL}(?:{TO}|\s*/\s*){_PULL}")
_PAIRED = rf"(?P<one>{DECIMAL})\s*/\s*(?P<other>{DECIMAL})"
_UNITS = r"(?P<unit>lb|kg)s?\s*/\s*(?P<other_unit>lb|kg)s?"
_DRAG_PAIR = re.compile(rf"(?:{BEFORE_WORD}{_DRAG}[\s.:=]*)?\(?(?<![a-z]){_UNITS}[)\s:=]*{_PAIRED}(?![\d/])")
_DRAG_PAIR_FIRST = re.compile(rf"(?:{BEFORE_WORD}{_DRAG}[\s.:=]*)?{LONE}{_PAIRED}\s*\(?{_UNITS}\)?(?![a-z])")
_WORKING_DRAG = re.compile(rf"{BEFORE_WORD}(?:working|fighting|practical|strike)\s*drag[\s.:=(]*{_PULL}")
_SIZE = re.compile(
    LONE + r"(?:sizes?\s*[:=]?\s*)?(?!\d+\s*(?:mm?|cm|yds?|g|oz|lbs?|kg|ft|in|n)(?![a-z]))"
    r"(?P<size>[a-z]{0,3}-?(?P<number>\d{3,5})(?:-?[a-z]{1,4}){0,2})"
    r"(?:[\s-]*(?:size|series)(?![a-z]))?(?![a-z0-9.:]|,\d|\s*(?:[-/:]\s*\d|(?:mm|cm|m|yds?|yards?|g|oz|lbs?|kg|ft)(?![a-z])))"
)
_NAMED_SIZE = re.compile(
    rf"{BEFORE_WORD}{REEL_SIZE}\s*[:=]?\s*"
    r"(?P<size>[a-z]{0,3}-?\d{2,5}(?:-?[a-z]{1,4}){0,2})(?![a-z0-9.,/])"
    rf"|{START}"
    r"(?P<size2>\d{2,5})[\s-]*size(?![a-z])"
)
_SPINNING_SIZES = range(500, 30001, 50)
_CASTING_SIZES = range(50, 500)
_KINDS = {
    "spincast": words(r"spin[\s-]?cast(?:ing|er)?|closed[\s-]?face|kapselrolle"),
    "baitcasting": words(r"bait[\s-]*cast(?:ing|er)?s?(?:[\s-]*rolle)?|casting|low[\s-]profile|multirolle"),
    "spinning": words(r"spinning|spin|fixed[\s-]spool|spinnrolle|station[äa]rrolle|avokela"),
}
_NOISE = {
    "": words(
        rf"reel|rolle|moulinet|kela|carrete|mulinello|molen|rulle|holds|or|turns?|max\.?|{DRAG}|{RATIO}"
        rf"|(?:drag )?system|{NOISE}"
    )
}
_CAPTIONS = {
    "capacity": words(rf"{CAPACITY}|line"),
    "fluorocarbon": words(FLUOROCARBON),
    "nylon": words(rf"{NYLON}(?:\s*{LINE_WORD})?"),
    "braid": words(rf"{BRAID}|pe(?=\s*\d+(?:[.,]\d+)?\s*(?:lbs?|kg|mm))"),
}
# What reels do, SI; beyond it a figure is asked about.
_RATIOS = (2.0, 12.0)
_RETRIEVES_M = (0.2, 1.8)
_DRAGS_N = (2.0, 600.0)


def read_reel(label: Label) -> None:
    """Read a whole reel label."""
    _read_kind(label)
    _read_ratio(label)
    _read_retrieve(label)
    _read_drag(label)
    for match in label.find(_NAMED_SIZE):
        text = match["size"] or match["size2"]
        label.offer(
            match.span(),
            "size",
            label.printed(*match.span("size" if match["size"] else "size2")),
            f"size: {text}",
        )
    _read_line_types_with_capacity(label)
    _read_left_over(label)


def _read_line_types_with_capacity(label: Label) -> None:
    captions = Captions(label, _CAPTIONS)
    read_capacities(label, captions)
    for measure in measures(label, captions):
        if measure.symbol in {"lb", "kg"} and not measure.is_range:
            _offer_drag(label, measure.span, measure.text)


def _read_kind(label: Label) -> None:
    for kind, pattern in _KINDS.items():
        for match in label.find(pattern):
            label.offer(match.span(), "kind", kind, f"kind: {kind} reel")


def _read_ratio(label: Label) -> None:
    for match in label.find(_RATIO):
        _offer_ratio(
            label, match.span(), match["ratio"] or match["reverse"] or match["stroke"] or match["named"]
        )


def _offer_ratio(label: Label, span: tuple[int, int], text: str) -> None:
    try:
        ratio = float(read_number(text))
    except NotANumber as error:
        label.doubt(span, str(error))
        return
    if _RATIOS[0] <= ratio <= _RATIOS[1]:
        label.offer(
            span, "ratio", ratio, f"gear ratio: {ratio:g} turns of the spool or rotor per handle turn"
        )
    else:
        label.doubt(span, f"{text} is no usual gear ratio")


def _read_retrieve(label: Label) -> None:
    for match in label.find(_RETRIEVE):
        ipt = match["ipt"] or match["ipt2"]
        number = match["number"] or match["number2"] or match["number3"]
        unit = match["unit"] or match["unit2"] or match["unit3"]
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
    if value is None:
        return
    if _RETRIEVES_M[0] <= value.si_low <= _RETRIEVES_M[1]:
        label.offer(span, "retrieve", value, f"line retrieved per handle turn: {show(value)}")
    else:
        label.doubt(span, f"{show(value)} is no usual length of line per handle turn")


def _read_drag(label: Label) -> None:
    for match in label.find(_WORKING_DRAG):
        label.doubt(match.span(), "a working drag; the reel's drag is the greatest one")
    for pattern in (_DRAG_PAIR, _DRAG_PAIR_FIRST):
        for match in label.find(pattern):
            _offer_drag(label, match.span("one"), f"{match['one']} {match['unit']}")
            _offer_drag(label, match.span("other"), f"{match['other']} {match['other_unit']}")
            label.take(*match.span())
    for match in label.find(_DRAG_RANGE):
        label.doubt(match.span(), "a range of drag; is its upper end the greatest drag?")
    for pattern in (_DRAG_AFTER, _DRAG_BEFORE):
        for match in label.find(pattern):
            _offer_drag(label, match.span("pull"), match["pull"])
            if match["second"]:
                _offer_drag(label, match.span("second"), match["second"])
            label.take(*match.span())
    for match in label.find(_DRAG_BARE):
        label.doubt(match.span(), "the drag has no unit; lb or kg?")


def _offer_drag(label: Label, span: tuple[int, int], text: str) -> None:
    value = quantity(label, span, text, dimension=Dimension.FORCE)
    if value is None:
        return
    if _DRAGS_N[0] <= value.si_low <= _DRAGS_N[1]:
        label.offer(span, "drag", value, f"greatest drag: {show(value)}")
    else:
        label.doubt(span, f"{show(value)} is no usual drag")


def _read_left_over(label: Label) -> None:
    """What carries no unit or caption: a ratio, a size, a length that is hardly anything else."""
    _read_bare_retrieve(label)
    for match in label.find(_BARE_RATIO):
        if 3 <= float(match["ratio"].replace(",", ".")) <= _RATIOS[1]:
            label.doubt(match.span(), f"a number without a word; the gear ratio {match['ratio']}:1?")
    for match in label.find(_SIZE):
        number = int(match["number"])
        if (number in _SPINNING_SIZES and number % 50 == 0) or number in _CASTING_SIZES:
            printed = label.printed(*match.span("size"))
            label.offer(match.span(), "size", printed, f"size: {printed}")
    for match in label.find(_BARE_LENGTH):
        label.doubt(match.span(), "a length of line, but not of which line")
    Captions(label, _NOISE)
    for match in label.find(_BARE_NUMBER):
        label.doubt(match.span(), "a number without unit or word; what does it measure?")


def _read_bare_retrieve(label: Label) -> None:
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
    low, high = _BARE_RETRIEVES[SYMBOLS[match["unit"]]]
    return low <= number <= high
