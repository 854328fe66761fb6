"""Rod labels: length, power, action, line and lure range, pieces, in any order."""

import re

from rigbuilder.model.labels.label import Label
from rigbuilder.model.labels.measure import (
    AFTER_WORD,
    BEFORE_WORD,
    DECIMAL,
    PART,
    START,
    TO,
    UNIT,
    Captions,
    Measure,
    measures,
    quantity,
    without_lost_dashes,
    words,
)
from rigbuilder.model.labels.rod_length import read_length
from rigbuilder.model.labels.rod_words import (
    ACTION_CODE,
    ACTION_OF,
    POWER_CODE,
    POWER_OF,
    read_power_and_action,
)
from rigbuilder.model.labels.vocabulary import (
    ACTION,
    BRAID,
    CAST_WEIGHT,
    DRAG,
    FLUOROCARBON,
    LENGTH,
    LINE,
    LURE,
    NOISE,
    NYLON,
    PIECES,
    POWER,
    UP_TO,
    WEIGHT,
)
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import show

_CAPTIONS = {
    "drag": words(rf"(?:max\.?\s*|fighting\s*)?{DRAG}"),
    "lure": words(
        rf"(?:{LURE}|jigs?)(?:[ -]*(?:weight|wt|rating|range|size|cap|capacity))*\.?|{CAST_WEIGHT}"
    ),
    "line": words(rf"{LINE}(?:[ -]*(?:weight|wt|class|rating|range|size|test|strength|rec))*\.?"),
    "up to": words(UP_TO),
    "weight": words(rf"(?:rod\s*|own\s*|eigen)?{WEIGHT}"),
    "power": words(POWER),
    "action": words(ACTION),
    "": words(
        rf"{LENGTH}|l(?=\s*:)|model|rod|rute|canne|vapa|ca[ñn]a|canna|hengel|sp[öo]|recommended|recomm?\.?|rated"
        rf"|rating|range|test|class|{NOISE}"
    ),
}
_PIECES = re.compile(
    rf"{START}(?<!\+)(?P<count>\d|one|two|three|four|five|single|ein|zwei|drei|vier)"
    rf"[ -]*{PIECES}{AFTER_WORD}\.?"
    rf"|{BEFORE_WORD}{PIECES}\s*[:=]?\s*(?P<after>\d)(?![\d/\"']|[.,-]\d|\s*{UNIT})"
)
_FLY = re.compile(START + r"\d{1,2}\s*-?\s*(?:wt\.?|weight)(?![a-z])")
_BUTT_AND_TIP = re.compile(START + r"\d\s*\+\s*\d(?:[ -]*(?:pcs?|pieces?)(?![a-z])\.?)?(?![\d/.])")
_UPPER = re.compile(rf"(?:{UP_TO}|[<≤])[\s:=]*(?:(?:{LINE}|{LURE}|pe|{CAST_WEIGHT}|{WEIGHT})[\s:=]*)*$")
_UPPER_AFTER = re.compile(
    rf"\s*(?:{CAST_WEIGHT}\s*)?\(?(?:max|maks)(?:imum)?{AFTER_WORD}(?!\.?\s*[:=]?\s*[a-z]*\s*\d)"
)
_COUNTS = {"one": 1, "single": 1, "two": 2, "three": 3, "four": 4, "five": 5}
_COUNTS |= {"ein": 1, "zwei": 2, "drei": 3, "vier": 4}
_PE = re.compile(
    rf"(?:{BEFORE_WORD}p\.?e\.?(?:\s*(?:line|max\.?))?\s*(?:#|no\.?)?\s*[:=]?\s*"
    rf"(?P<low>{DECIMAL})(?:{TO}(?:pe|#)?\s*(?P<high>{DECIMAL}))?(?!{TO}\d)\s*(?:号|號)?(?![a-z]|\s?(?:lbs?|kg))"
    rf"|{PART}(?:#|no\.?)?(?P<low2>{DECIMAL})(?:{TO}#?(?P<high2>{DECIMAL}))?\s*(?:号\s*)?pe(?![a-z]))"
)
_NUMBERED = re.compile(
    rf"{BEFORE_WORD}(?:#|no\.?)\s*(?P<low>{DECIMAL})(?:{TO}#?(?P<high>{DECIMAL}))?(?![a-z0-9])"
    rf"|{PART}(?P<low2>{DECIMAL})(?:{TO}(?P<high2>{DECIMAL}))?\s*(?:号|號)"
)
_SLASH_RANGE = re.compile(
    START + r"(?P<low>\d{1,2})\s*/\s*(?P<high>\d{1,3})\s*(?P<unit>lbs?\.?|kgs?|g|#)(?![a-z0-9])"
)
_BRAID = words(rf"{BRAID}|pe(?=\s*[\d\x00])")
_NYLON = words(f"{NYLON}|{FLUOROCARBON}")
_TEST_RANGE = re.compile(rf"{START}{DECIMAL}(?:{TO}{DECIMAL})?\s*(?:lbs?\.?|kg|#)(?![a-z])")
_TEST_BEFORE = re.compile(r"(?:\d|#|lbs?|kg)$")
_CODE = re.compile(
    rf"{START}(?:[a-z]{{1,4}}-?)?(?P<feet>[4-9])(?P<inches>1[01]|0\d|\d)[1-4]?-?"
    rf"(?P<power>{POWER_CODE})-?(?P<action>{ACTION_CODE}|s|m)?(?:-?[1-4])?(?![a-z0-9])"
)
# What rods are rated for, SI; beyond it a figure is asked about.
_USUAL = {"line": (2.0, 700.0), "lure": (1e-4, 1.0)}


def read_rod(label: Label) -> None:
    """Read a whole rod label."""
    for match in label.find(_PIECES):
        count = match["count"] or match["after"]
        number = _COUNTS.get(count) or int(count)
        label.offer(match.span(), "pieces", number, f"pieces: {number}")
    for match in label.find(_BUTT_AND_TIP):
        label.doubt(match.span(), "butt and tip counted apart; how many pieces in all?")
    for match in label.find(_FLY):
        label.doubt(match.span(), "a weight of fly line, which is no test")
    _read_sizes(label)
    captions = Captions(label, _CAPTIONS)
    _read_code(label)
    read_length(label)
    for match in label.find(_SLASH_RANGE):
        if int(match["low"]) < int(match["high"]):
            text = f"{match['low']}-{match['high']} {match['unit']}"
            _offer_range(label, captions, match.span(), text, captions.role(*match.span()), match["unit"])
    _read_line_type(label)
    read_power_and_action(label, captions)
    found = without_lost_dashes(label, measures(label, captions))
    for measure in found:
        if measure.symbol is not None:
            _read_measure(label, captions, measure)
    for measure in found:
        if measure.symbol is None:
            _read_bare(label, captions, measure)


def _read_code(label: Label) -> None:
    for match in label.find(_CODE):
        power = POWER_OF.get(match["power"], match["power"])
        action = ACTION_OF.get(match["action"] or "", "")
        reading = f"{match['feet']}'{int(match['inches'])}\", {power} power"
        label.doubt(
            match.span(),
            "looks like a model code; it may mean " + reading + (f", {action} action" if action else ""),
        )


def _read_sizes(label: Label) -> None:
    """Line ranges given as size numbers: PE for braid, plain numbers for nylon."""
    has_test = _TEST_RANGE.search(label.open) is not None
    for pattern, prefix in ((_PE, "PE"), (_NUMBERED, "No.")):
        for match in label.find(pattern):
            low, high = match["low"] or match["low2"], match["high"] or match["high2"]
            text = f"{prefix} {low}-{high}" if high else f"{prefix} {low}"
            if prefix == "PE" and has_test:
                label.doubt(match.span(), "a second line range, for braid; the one in lb or kg is used")
            elif match[0].startswith("#"):
                label.doubt(match.span(), "a size of line; nylon or fly line?")
            elif not high and _only_upper(label, match):
                label.doubt(match.span(), "only the upper end of the line range is given")
            elif size := quantity(label, match.span(), text, dimension=Dimension.SIZE):
                label.offer(match.span(), "line", size, f"line range: {show(size)}")
                if prefix == "PE":
                    braid = (match.start(), match.start())
                    label.offer(braid, "line_for", "braid", "the line range is for braid")


def _only_upper_of(label: Label, span: tuple[int, int]) -> bool:
    before, after = label.text[: span[0]], label.text[span[1] :]
    return _UPPER.search(before) is not None or _UPPER_AFTER.match(after) is not None


def _only_upper(label: Label, match: re.Match[str]) -> bool:
    return "max" in match[0] or _UPPER.search(label.text[: match.start()]) is not None


def _read_measure(label: Label, captions: Captions, measure: Measure) -> None:
    symbol = str(measure.symbol)
    role = measure.role
    if role == "drag":
        return
    if symbol in {"ft", "in", "m", "cm", "mm", "yd"}:
        if role in {"line", "lure"}:
            label.doubt(measure.span, f"a length stands where the {role} range is expected")
        return
    _offer_range(label, captions, measure.span, measure.text, role, symbol)


def _offer_range(
    label: Label, captions: Captions, span: tuple[int, int], text: str, role: str | None, symbol: str
) -> None:
    key = "lure" if symbol in {"oz", "g"} else "line"
    if role in {"line", "lure"} and role != key:
        if key == "lure" or symbol not in {"lb", "#"}:
            label.doubt(span, f"{symbol} does not fit the {role} range that it stands beside")
            return
        key = "lure"
    dimension = Dimension.FORCE if key == "line" else Dimension.MASS
    value = quantity(label, span, text, dimension=dimension)
    if value is None:
        return
    least, most = _USUAL[key]
    if value.si_low < least or value.si_high > most:
        label.doubt(span, f"{show(value)} is outside what rods are made for as a {key} range")
    elif role == "weight" and not value.is_range:
        label.doubt(span, "the weight of the rod itself, or of the lures it casts?")
    elif not value.is_range and _only_upper_of(label, span):
        label.doubt(span, f"only the upper end of the {key} range is given")
    else:
        label.offer(span, key, value, f"{key} range: {show(value)}")


def _read_bare(label: Label, captions: Captions, measure: Measure) -> None:
    """A number without unit: fractions are ounces, anything else is asked about."""
    if measure.role == "drag":
        return
    if measure.is_fraction and measure.role != "line":
        _offer_range(label, captions, measure.span, f"{measure.text} oz", measure.role, "oz")
    elif measure.role in {"line", "lure"}:
        units = "lb or kg" if measure.role == "line" else "oz or g"
        label.doubt(measure.span, f"the {measure.role} range has no unit; {units}?")
    elif measure.is_range:
        label.doubt(measure.span, "a range without unit; line in lb or kg, or lures in g?")
    else:
        label.doubt(measure.span, "a number without unit; what does it measure?")


def _read_line_type(label: Label) -> None:
    """For which line the range is; of two ranges, the one for nylon is the rod's."""
    types = Captions(label, {"braid": _BRAID, "nylon": _NYLON})
    both = {caption.role for caption in types.found} == {"braid", "nylon"}
    for match in label.find(_TEST_RANGE) if both else ():
        if types.said_of(*match.span(), ("braid", "nylon"), follows=_TEST_BEFORE) == "braid":
            label.doubt(match.span(), "a second line range, for braid; the one for nylon is used")
    for caption in types.found:
        if caption.role == "nylon" or not both:
            said = f"the line range is for {caption.role}"
            label.offer((caption.start, caption.end), "line_for", caption.role, said)
