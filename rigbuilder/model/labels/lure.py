"""Lure labels: weight, length, diving depth, buoyancy and hooks, in any order."""

import re

from rigbuilder.model.labels.label import Label
from rigbuilder.model.labels.measure import (
    DECIMAL,
    LONE,
    START,
    Captions,
    Measure,
    measures,
    offer_usual,
    quantity,
    without_lost_dashes,
    words,
)
from rigbuilder.model.labels.vocabulary import DEPTH, HOOKS, LENGTH, LURE, NOISE, WEIGHT
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.spelling import unit_pattern

_BUOYANCY: tuple[tuple[str, re.Pattern[str]], ...] = (
    ("slow floating", words(r"slow[\s-]*(?:float(?:ing|er)?|ris(?:ing|er|es?))|sf|langsam\s*schwimmend")),
    (
        "slow sinking",
        words(r"slow[\s-]*sink(?:ing|er|s)?|sinks?\s*slow(?:ly)?|ss|langsam\s*sinkend|coulant\s*lent"),
    ),
    (
        "fast sinking",
        words(r"fast[\s-]*sink(?:ing|er|s)?|fs|hs|heavy[\s-]*sink(?:ing|er)?|schnell\s*sinkend"),
    ),
    (
        "suspending",
        words(
            r"suspend(?:ing|er|s|ed)?|susp\.?|neutral(?:[\s-]*buoyan(?:t|cy))?|sp|suspendierend|schwebend|leijuva|suspendid[ao]|zwevend|sv[äa]vande"
        ),
    ),
    (
        "floating",
        words(
            r"float(?:ing|er|s)?|f|topwater|surface|schwimmend|flottante?|kelluva|flotante|galleggiante|drijvend|flytande"
        ),
    ),
    ("sinking", words(r"sink(?:ing|s)?|s|sinkend|coulante?|uppoava|hundible|affondante|zinkend|sjunkande")),
)
_WORDS = HOOKS
_COUNT = r"(?:(?:two|three|one|[1-4])\s*(?:x\s*)?)?"
_HOOK_SIZE = r"(?:(?:#|no\.?|size)\s*\d{1,2}(?:/0)?|\d{1,2}/0)"
_HOOK_SIZES = rf"{_HOOK_SIZE}(?:\s*(?:&|and|/|,)\s*{_HOOK_SIZE})?"
_HOOK = re.compile(
    rf"{START}(?:{_COUNT}(?P<sizes>{_HOOK_SIZES})(?:[\s-]+{_WORDS}(?![a-z])){{0,4}}"
    rf"|(?:{_COUNT}{_WORDS}(?![a-z])[\s:-]*+){{1,4}}(?:sizes?\s*|[1-4]\s*x\s*)?(?P<named>{_HOOK_SIZES}|\d{{1,2}}(?![\d.,/]|\s*(?:oz|g|mm|cm|in|ft|m|\"|'))))(?:\s?x\s?[1-4])?(?!\d|[.,/]\d)"
)
_SIZE_WORD = re.compile(r"^size\s*", re.IGNORECASE)
_BLADE = words(r"spinners?|blades?|in-?line|colou?rado|willow(?:leaf)?|l[öo]ffel")
_HOOK_WORD = words(rf"{HOOKS}|\d{{1,2}}/0")
_SINK_RATE = re.compile(
    rf"{START}{DECIMAL}\s*{unit_pattern('ft', 'in', 'm', 'cm')}\s*(?:/|per|pro|par)"
    r"\s*s(?:ec(?:onds?)?|ek(?:unde)?)?(?![a-z])"
)
_CODE = re.compile(LONE + r"(?P<length>\d{2,3})(?P<code>sp|ss|f|s)(?![a-z0-9])")
_CAPTIONS = {
    "depth": words(rf"{DEPTH}(?:\s*(?:to|at|down to|up to|from|about|of|de|bis))*"),
    "weight": words(WEIGHT),
    "length": words(rf"{LENGTH}|body|long|taille|koko|gr[öo]ße"),
    "hook": words(HOOKS),
    "": words(rf"{LURE}|deep|down|buoyancy|model|type|max(?:imum)?\.?|up to|{NOISE}"),
}
_CAST_WEIGHT = (5e-5, 1.5)
_LENGTHS_M = (0.005, 0.6)
_DEPTHS_M = (0.0, 60.0)


def read_lure(label: Label) -> None:
    """Read a whole lure label."""
    for match in label.find(_HOOK):
        if _BLADE.search(label.text) and not _HOOK_WORD.search(match[0]):
            label.doubt(match.span(), "the number of the blade, or the size of the hook?")
            continue
        size = match.span("sizes" if match["sizes"] else "named")
        printed = _SIZE_WORD.sub("", label.printed(*size))
        label.offer(match.span(), "hook", printed, f"hook: {printed}")
    for match in label.find(_CODE):
        code = match["code"].upper()
        label.doubt(match.span(), f"looks like a model code; {match['length']} mm long and {code}?")
    for match in label.find(_SINK_RATE):
        label.doubt(match.span(), "how fast it sinks, which is no depth")
    captions = Captions(label, _CAPTIONS)
    _read_buoyancy(label)
    found = without_lost_dashes(label, measures(label, captions))
    for measure in sorted(found, key=lambda measure: measure.symbol is None):
        _read_measure(label, measure)


def _read_buoyancy(label: Label) -> None:
    for name, pattern in _BUOYANCY:
        for match in label.find(pattern):
            label.offer(match.span(), "buoyancy", name, f"buoyancy: {name}")


def _read_measure(label: Label, measure: Measure) -> None:
    symbol, text = measure.symbol, measure.text
    if symbol is None:
        _read_bare(label, measure)
    elif symbol in {"oz", "g", "lb", "kg"}:
        _offer(label, measure.span, "weight", text, Dimension.MASS, _CAST_WEIGHT)
    elif measure.role == "depth" or (symbol in {"ft", "m", "yd"} and measure.role != "length"):
        _offer(label, measure.span, "depth", text, Dimension.LENGTH, _DEPTHS_M)
    else:
        _offer(label, measure.span, "length", text, Dimension.LENGTH, _LENGTHS_M)


def _read_bare(label: Label, measure: Measure) -> None:
    if measure.is_fraction and (measure.role == "weight" or (measure.role is None and label.has("weight"))):
        _offer(label, measure.span, "weight", f"{measure.text} oz", Dimension.MASS, _CAST_WEIGHT)
        return
    about = {"depth": "ft or m", "weight": "oz or g", "length": "in, cm or mm"}.get(measure.role or "")
    why = (
        f"the {measure.role} has no unit; {about}?"
        if about
        else (
            "a fraction without unit; oz?"
            if measure.is_fraction
            else "a number without unit; what does it measure?"
        )
    )
    label.doubt(measure.span, why)


def _offer(
    label: Label,
    span: tuple[int, int],
    key: str,
    text: str,
    dimension: Dimension,
    limits: tuple[float, float],
) -> None:
    value = quantity(label, span, text, dimension=dimension)
    if value is not None:
        offer_usual(label, span, key, value, limits=limits, called=key, of=f"{key} of a lure")
