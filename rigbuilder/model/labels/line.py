"""Line labels: type, test, diameter, length and size number, in any order."""

import re

from rigbuilder.model.labels.label import Label
from rigbuilder.model.labels.measure import (
    BEFORE_WORD,
    DECIMAL,
    PART,
    START,
    TO,
    Captions,
    Measure,
    measures,
    offer_usual,
    quantity,
    without_lost_dashes,
    words,
)
from rigbuilder.model.labels.vocabulary import BRAID, FLUOROCARBON, LENGTH, LINE_WORD, NOISE, NYLON
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import show
from rigbuilder.units.spelling import unit_pattern

# The more particular name first; what follows is only tried if none before it was found.
_TYPES: tuple[tuple[str, str], ...] = (
    ("hybrid", r"hybrid|fluoro(?:carbon)?[\s-]*coated(?:[\s-]*(?:nylon|mono(?:filament)?|copoly(?:mer)?))?"),
    ("lead-core", r"lead[\s-]*core(?:[\s-]*line)?"),
    ("fused braid", rf"(?:thermal(?:ly)?[\s-]*)?fused(?:[\s-]*(?:{BRAID}|pe|line))?|thermo[\s-]*fused"),
    ("wire", r"(?:titanium|steel|stainless|wire)(?:[\s-]*(?:wire|leader))*"),
    (
        "fluorocarbon",
        rf"(?:100\s?%\s*)?(?:{FLUOROCARBON})",
    ),
    ("copolymer", r"co[\s-]*poly(?:mer)?(?:[\s-]*(?:nylon|mono(?:filament)?))?"),
    (
        "braid",
        rf"{BRAID}(?:[\s-]*(?:pe|{LINE_WORD}))?|pe[\s-]*(?:{BRAID})|multifil(?:ament[eo]?|e|o)?(?:\s*{LINE_WORD})?",
    ),
    ("nylon", rf"{NYLON}(?:[\s-]*(?:mono(?:filament)?|{LINE_WORD}))*"),
)
_COUNT_WORD = r"(?:braid(?:ed)?|strands?|carriers?|ply|fold|本(?:編み?|撚り?)?)(?![a-z])"
_COUNTS = "4|8|9|12|13|16"
_NO_MEASURE = r"(?![a-z0-9.,])(?!\s*(?:lbs?|kg|mm|m|yds?)(?![a-z]))"
_STRANDS = re.compile(
    rf"{START}(?:(?P<count>3|4|5|6|8|9|10|12|13|16)[\s-]*{_COUNT_WORD}"
    rf"|(?P<count_x>{_COUNTS})\s?x(?![a-z0-9])|x\s?(?P<x_count>{_COUNTS}){_NO_MEASURE})"
)
_PE = re.compile(
    rf"{BEFORE_WORD}p\.?e(?:\s*(?:{BRAID}|{LINE_WORD})(?=\s*\d(?:[.,]\d)?(?!\d)))?[\s.:-]*(?:#|no\.?)?\s*(?P<low>{DECIMAL})(?:{TO}(?P<high>{DECIMAL}))?\s*(?:号|號)?"
    rf"(?!\d|[.,]\d|\s*(?:lbs?|kg|mm|m|yds?)(?![a-z])|\s?x(?![a-z\d]))"
    rf"|{PART}(?:#|no\.?)?(?P<number>{DECIMAL})\s*(?:号|號)?\s*pe(?![a-z])"
)
_SIZE = re.compile(
    rf"{BEFORE_WORD}(?:#|no\.?|size|gou)\s*[:=]?\s*(?P<low>{DECIMAL})(?![\d/]|[.,]\d|\s*(?:lbs?|kg|mm|m|yds?)(?![a-z]))"
    rf"|{PART}(?P<number>{DECIMAL})\s*-?\s*(?:号|號|gou(?![a-z]))"
)
_EQUIVALENT = re.compile(
    PART + r"(?P<test>\d{1,3})\s*(?:lbs?\.?|#)?\s*/\s*(?P<thin>\d{1,2})(?![\d/]|[.,]\d)"
    r"(?:\s*(?:lbs?\.?|#)(?![a-z/]))?(?!\s*(?:kg|mm|cm|m|yds?|yards?)(?![a-z]))"
)
_THIN = re.compile(
    r"[(/\[]?\s*(?:(?:=|~|approx\.?|equals|equiv(?:alent)?\.?(?:\s*to)?|dia(?:meter)?\.?(?:\s*of)?|mono)\s*)*"
    rf"{PART}"
    r"(?P<thin>\d{1,2})\s*-?\s*(?:lbs?\.?|#)?\s*(?:mono(?:filament)?|nylon)?\s*"
    r"(?:dia(?:meter|m)?\.?|equiv(?:alent)?\.?)(?![a-z])(?:\s*(?:equiv(?:alent)?\.?|dia(?:meter)?\.?)(?![a-z]))?\s*[)\]]?"
    rf"(?!\s*(?:[:=(]|0?[.,]\d|\d{{1,2}}(?![\d.,/]|\s*(?:{unit_pattern('yd', 'm', 'ft')}))))"
)
_THIN_AFTER = re.compile(
    rf"{BEFORE_WORD}(?:equiv(?:alent)?\.?\s*(?:dia(?:meter|m)?\.?)?|dia(?:meter|m)?\.?)(?:\s*(?:equiv(?:alent)?\.?|of|to|as|is))*[\s:=]*"
    r"(?P<thin>\d{1,2})(?![\d.,/])(?!\s*(?:mm|in|inch|\"))\s*-?\s*(?:lbs?\.?|#)?(?![a-z])(?:\s*(?:mono(?:filament)?|nylon))?"
)
_SPOOL_WEIGHT = re.compile(rf"{START}(?:\d/\d|\d)\s*-?\s*(?:lbs?\.?|kg)\s*(?:spools?|bulk)(?![a-z])")
_DIAMETER_AND_LENGTH = re.compile(
    rf"{START}(?P<diameter>0?[.,]\d{{2,3}})\s?[-/x]\s?(?P<length>[1-9]\d{{1,3}}\s?{unit_pattern('m')})"
)
_PAIR = re.compile(
    rf"{START}(?:\d{{1,2}}|\d?[.,]\d{{2,3}})\s?[/-]\s?[1-9]\d{{1,3}}(?![\d/.,]|\s*(?:-\s*\d|lbs?(?!\s*/)|kg|mm|m(?![a-z])|yds?|\"))"
    rf"(?:\s*(?:lbs?|mm|kg)\s*/\s*(?:yds?|m)(?![a-z]))?"
)
_PARTS = (2, 4, 8, 16)
_TIPPET = re.compile(START + r"\d{1,2}x(?![a-z0-9])")
_BARE_MM = re.compile(START + r"(?:0?[.,]\d{2,3})(?![\d/]|[.,]\d|\s*[a-z\"'#])")
_HUNDREDTHS = re.compile(START + r"(?P<count>\d{1,3})\s*/\s*100(?:\s*(?P<unit>mm)(?![a-z])|(?![\d.,/]))")
_CAPTIONS = {
    "diameter": words(
        r"(?:line\s*)?(?:dia(?:meter|m)?\.?|thickness)|durchmesser|st[äa]rke|diam[èe]tre|halkaisija|paksuus|di[áa]metro"
        r"|diametro|tjocklek|dikte"
    ),
    "test": words(
        r"(?:(?:line|breaking|tensile|knot|linear)\s*)?(?:strength|strain|load|break|test|class|b\.?s\.?)"
        r"|tragkraft|bruchlast|r[ée]sistance|vetolujuus|lujuus|resistencia|carico(?:\s*di\s*rottura)?|trekkracht"
        r"|brottstyrka"
    ),
    "length": words(rf"{LENGTH}|spool|filler|bulk|spule|bobine|puola|bobina|spoel|spole"),
    "": words(rf"100\s?%|fishing|{LINE_WORD}|main|ø|material|{NOISE}"),
}
# Nylon of 0.04 mm holds about 1 N, the heaviest leaders are under 3 mm.
_THINNEST_M, _THICKEST_M = 3e-5, 3e-3
_LENGTHS_M = (0.05, 20_000.0)
_LIKE_A_DIAMETER_M = 0.5  # 0.25 m is more often a slip for 0.25 mm than a leader of a foot
_TESTS_N = (0.2, 2000.0)


def read_line(label: Label) -> None:
    """Read a whole line label."""
    _read_pairs(label)
    _read_sizes(label)
    _read_strands(label)
    _read_types(label)
    captions = Captions(label, _CAPTIONS)
    found = without_lost_dashes(label, measures(label, captions))
    for measure in found:
        if measure.symbol is not None:
            _read_measure(label, measure)
    sure = label.marks_diameter or label.has("test") or label.has("length")
    for match in label.find(_BARE_MM):
        if sure or captions.role(*match.span()) == "diameter":
            _offer_diameter(label, match.span(), f"{match[0]} mm")
        else:
            label.doubt(match.span(), f"a number without unit; the diameter {match[0]} mm?")
    for measure in measures(label, captions):
        question = f"is it the {measure.role}" if measure.role else "what does it measure"
        label.doubt(measure.span, f"a number without unit; {question}?")


def _read_pairs(label: Label) -> None:
    """Two numbers with a stroke or a dash between them, which no unit tells apart."""
    for match in label.find(_HUNDREDTHS):
        text = f"{int(match['count']) / 100} mm"
        if match["unit"]:
            _offer_diameter(label, match.span(), text)
        else:
            label.doubt(match.span(), f"hundredths of a millimetre; {text}?")
    _read_equivalent(label)
    for match in label.find(_SPOOL_WEIGHT):
        label.doubt(match.span(), "the weight of the line on the spool, not its test")
    for match in label.find(_DIAMETER_AND_LENGTH):
        _offer_diameter(label, match.span("diameter"), f"{match['diameter']} mm")
        _offer(label, match.span("length"), "length", match["length"], Dimension.LENGTH, _LENGTHS_M)
        label.take(*match.span())
    for match in label.find(_PAIR):
        label.doubt(match.span(), "two numbers without units; the line and its length?")


def _read_types(label: Label) -> None:
    for name, pattern in _TYPES:
        for match in label.find(words(pattern)):
            known = label.has("type")
            if known and name == "nylon" and "mono" in match[0] and _says_one_filament(label, match):
                label.take(*match.span())  # says only that it is one filament
                continue
            label.offer(match.span(), "type", name, f"line type: {name}")


def _says_one_filament(label: Label, match: re.Match[str]) -> bool:
    """Whether ``mono`` only describes a fluorocarbon or copolymer, rather than names another line."""
    either = "/" in label.text[: match.start()].rstrip()[-1:] + label.text[match.end() :].lstrip()[:1]
    return not either and not label.has_value("type", "braid")


def _read_sizes(label: Label) -> None:
    braided = bool(re.search(rf"(?<![a-z])(?:pe|{BRAID})(?![a-z])", label.text))
    for match in label.find(_PE):
        numbers = match["number"] or match["low"]
        high = match["high"]
        _offer_size(label, match.span(), f"PE {numbers}-{high}" if high else f"PE {numbers}")
        _offer_braid(label, (match.start(), match.start()), "line type: braid")
    for match in label.find(_SIZE):
        number = match["low"] or match["number"]
        _offer_size(label, match.span(), f"PE {number}" if braided else f"No. {number}")
    for match in label.find(words(r"pe")):
        _offer_braid(label, match.span(), "line type: braid")


def _offer_braid(label: Label, span: tuple[int, int], meaning: str) -> None:
    label.offer(span, "type", "fused braid" if "fused" in label.text else "braid", meaning)


def _offer_size(label: Label, span: tuple[int, int], text: str) -> None:
    value = quantity(label, span, text, dimension=Dimension.SIZE)
    if value is not None:
        label.offer(span, "size", value, f"line size: {show(value)}")


def _read_strands(label: Label) -> None:
    """``8x`` counts the strands of a braid, but is a size of tippet on other lines."""
    other = re.search(r"nylon|fluoro|mono|copoly|tippet", label.text)
    braided = re.search(r"braid|(?<![a-z])pe(?![a-z])|strand|carrier", label.text)
    for match in label.find(_TIPPET if other and not braided else _STRANDS):
        if other and not braided:
            label.doubt(match.span(), "a tippet size; give the diameter instead")
        elif match["count_x"] and not braided:
            label.doubt(match.span(), "could be the strands of a braid or a tippet size")
        else:
            count = match["count"] or match["count_x"] or match["x_count"]
            _offer_braid(label, match.span(), f"braid of {count} strands")


def _read_equivalent(label: Label) -> None:
    """Braid labels that name the nylon of equal thickness."""
    for match in (*label.find(_THIN), *label.find(_THIN_AFTER)):
        thin = match["thin"]
        label.doubt(match.span(), f"as thick as {thin} lb nylon; makers differ, so this is no diameter")
    for match in label.find(_EQUIVALENT):
        test, thin = match["test"], match["thin"]
        if int(test) <= int(thin) and int(thin) in _PARTS:
            continue
        if int(test) <= int(thin):
            label.doubt(match.span(), "two numbers for one test; a range is written with a dash")
            continue
        label.doubt(match.span(), f"likely {test} lb test, about as thick as {thin} lb nylon")


def _read_measure(label: Label, measure: Measure) -> None:
    symbol = str(measure.symbol)
    if symbol in {"lb", "kg"}:
        _offer(label, measure.span, "test", measure.text, Dimension.FORCE, _TESTS_N)
    elif symbol in {"mm", "in"}:
        _offer_diameter(label, measure.span, measure.text)
    elif symbol in {"m", "yd", "ft", "cm"}:
        _offer(label, measure.span, "length", measure.text, Dimension.LENGTH, _LENGTHS_M)


def _offer_diameter(label: Label, span: tuple[int, int], text: str) -> None:
    _offer(label, span, "diameter", text, Dimension.LENGTH, (_THINNEST_M, _THICKEST_M))


def _offer(
    label: Label,
    span: tuple[int, int],
    key: str,
    text: str,
    dimension: Dimension,
    limits: tuple[float, float],
) -> None:
    value = quantity(label, span, text, dimension=dimension)
    if value is None:
        return
    if key == "length" and value.is_range:
        label.doubt(span, "two numbers joined by a dash; a line and its length?")
    elif key == "length" and value.unit.symbol == "m" and value.si_high < _LIKE_A_DIAMETER_M:
        label.doubt(span, f"{show(value)} is short for a length of line; a diameter in mm?")
    else:
        offer_usual(label, span, key, value, limits=limits, called=key, of=f"{key} of a fishing line")
