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
    Measure,
    measures,
    offer_usual,
    quantity,
    words,
)
from rigbuilder.model.labels.reel_retrieve import first, read_bare_retrieve, read_retrieve
from rigbuilder.model.labels.vocabulary import (
    BRAID,
    CAPACITY,
    DRAG,
    FLUOROCARBON,
    LINE_WORD,
    NOISE,
    NYLON,
    RATIO,
    REEL_SIZE,
)
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.numbers import NotANumber, read_number
from rigbuilder.units.spelling import unit_pattern

_FORCE = unit_pattern("lb", "kg", "N")
_SPAN = unit_pattern("in", "cm", "mm", "ft", "m")
_RATIO = re.compile(
    rf"(?:{BEFORE_WORD}{RATIO}\s*[:=]?\s*)?(?<![\d.:-])(?<!\d,)"
    rf"(?P<ratio>{DECIMAL})\s*(?::|to)\s*1(?:[.,]0)?(?![\d:]|\.\d)"
    rf"|(?<![\d.,/])1\s*:\s*(?P<reverse>{DECIMAL})(?![\d/:])"
    rf"|(?<![\d.,/:-])(?P<stroke>\d{{1,2}}[.,]\d{{1,2}})\s*/\s*1(?![\d/:]|[.,]\d|\s*[a-z])"
    rf"|(?<![\d.,/:-])(?P<behind>\d{{1,2}}[.,]\d{{1,2}})\s*{RATIO}(?![^\W\d_])(?!\s*[:=]?\s*\d)"
    rf"|{BEFORE_WORD}{RATIO}\s*(?:is\s*|of\s*)?[:=]?\s*(?P<named>{DECIMAL})(?![\d/:-]|\s*(?:{_FORCE}|{_SPAN}))"
)
_BARE_RATIO = re.compile(
    LONE
    + r"(?P<ratio>\d{1,2}[.,]\d)(?![\d/:.,-]|\s*[a-z\"'#(]*(?:oz|g|lbs?|kg|mm|cm|in|m|yds?)(?![a-z])|\"|')"
)
_DASHED_RATIO = re.compile(LONE + r"(?P<ratio>\d{1,2}[.,]\d)\s*-\s*1(?![\d/:]|[.,]\d|\s*[a-z])")
_BARE_NUMBER = re.compile(
    r"(?:^|(?<=[\x00,;|/(])|(?<=\s-))\s*(?<!\d[,.])(?P<number>\d+(?:[.,]\d+)?(?:\s+\d+)*)\s*(?=[\x00,;|/]|$)(?!,\d)"
)
_BARE_DIAMETER = re.compile(r"[01]?[.,]\d")
_LINE_ROLES = frozenset({"nylon", "fluorocarbon", "braid", "capacity"})
_JOINED = re.compile(r"[/x](?:\d{1,3}|\d?[.,]\d+)(?![\d.,]|\s*[:/-])(?!\s*(?:cm|in|\"|kg|lb))")
_JOINS = re.compile(r"(?<![:\d.,/])(?:\d{1,3}|\d?[.,]\d+)[/x]$")
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
_DRAGS_N = (2.0, 600.0)


def read_reel(label: Label) -> None:
    """Read a whole reel label."""
    _read_kind(label)
    _read_ratio(label)
    read_retrieve(label)
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
            _read_bare_pull(label, measure)
        elif measure.symbol == "mm" and _BARE_DIAMETER.match(measure.text):
            label.doubt(measure.span, "a diameter of line without the length that the reel holds")


def _read_bare_pull(label: Label, measure: Measure) -> None:
    """A strength without a word is the drag, unless it may be the test of a line."""
    start, end = measure.span
    if measure.role in _LINE_ROLES or _BARE_LENGTH.search(label.open):
        label.doubt(measure.span, "the test of a line, or the drag?")
    elif _JOINED.match(label.text, end) or _JOINS.search(label.text[:start]):
        label.doubt(measure.span, "looks like half a line capacity")
    else:
        _offer_drag(label, measure.span, measure.text)


def _read_kind(label: Label) -> None:
    for kind, pattern in _KINDS.items():
        for match in label.find(pattern):
            label.offer(match.span(), "kind", kind, f"kind: {kind} reel")


def _read_ratio(label: Label) -> None:
    for match in label.find(_RATIO):
        _offer_ratio(label, match.span(), first(match, "ratio", "reverse", "stroke", "behind", "named"))


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
    if value is not None:
        offer_usual(label, span, "drag", value, limits=_DRAGS_N, called="greatest drag", of="drag")


def _read_left_over(label: Label) -> None:
    """What carries no unit or caption: a ratio, a size, a length that is hardly anything else."""
    read_bare_retrieve(label)
    for match in label.find(_BARE_RATIO):
        if 3 <= float(match["ratio"].replace(",", ".")) <= _RATIOS[1]:
            label.doubt(match.span(), f"a number without a word; the gear ratio {match['ratio']}:1?")
    for match in label.find(_DASHED_RATIO):
        label.doubt(match.span(), f"the gear ratio {match['ratio']}:1, or a range?")
    for match in label.find(_SIZE):
        number = int(match["number"])
        named = label.has("kind") or not match["size"].isdigit()
        if number in _SPINNING_SIZES or (number in _CASTING_SIZES and named):
            printed = label.printed(*match.span("size"))
            label.offer(match.span(), "size", printed, f"size: {printed}")
    for match in label.find(_BARE_LENGTH):
        label.doubt(match.span(), "a length of line, but not of which line")
    Captions(label, _NOISE)
    for match in label.find(_BARE_NUMBER):
        label.doubt(match.span(), "a number without unit or word; what does it measure?")
