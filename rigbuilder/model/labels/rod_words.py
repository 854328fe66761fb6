"""Power and action of a rod: the words, the abbreviations and the pairs written as one."""

import re
from dataclasses import dataclass

from rigbuilder.model.labels.label import Label
from rigbuilder.model.labels.measure import AFTER_WORD, BEFORE_WORD, Captions
from rigbuilder.model.labels.vocabulary import (
    EXTRA,
    FAST,
    HEAVY,
    LIGHT,
    MEDIUM,
    MODERATE,
    NO_GRADE_AFTER,
    NO_GRADE_BEFORE,
    SLOW,
)

POWER_OF = {
    "ul": "ultralight",
    "l": "light",
    "ml": "medium light",
    "m": "medium",
    "mh": "medium heavy",
    "h": "heavy",
    "xh": "extra heavy",
    "xxh": "extra extra heavy",
}
ACTION_OF = {
    "s": "slow",
    "m": "moderate",
    "r": "moderate",
    "mf": "moderate fast",
    "rf": "moderate fast",
    "f": "fast",
    "xf": "extra fast",
}
POWER_CODE = r"(?:x?xh|2xh|exh|eh|mh|ml|ul|h|l|m)"
ACTION_CODE = r"(?:xf|exf|ef|mf|rf|f|r)"
_SPELT_CODES = {"2xh": "xxh", "exh": "xh", "eh": "xh", "exf": "xf", "ef": "xf"}

_ANY_POWER = rf"(?:{EXTRA}|{MEDIUM}[ /-]*|ultra[ -]*)?(?:{HEAVY}|{LIGHT}|{MEDIUM})"
# Longer phrases first: each takes its words off the label before a shorter one looks.
_PHRASES: tuple[tuple[str, str, str], ...] = (
    ("doubt", rf"(?:{MODERATE})[ -]*{HEAVY}", "moderate names an action, heavy a power; medium heavy?"),
    (
        "doubt",
        rf"{EXTRA}(?:ultra[ -]*)?{LIGHT}|super ultra[ -]*{LIGHT}|x?s?xul|sul",
        "lighter than the usual words for power; ultralight?",
    ),
    ("doubt", r"s", "could be slow action, or the letter for a spinning rod"),
    (
        "doubt",
        r"(?:semi-?)?paraboli(?:c|que|sch)|through action|full flex",
        "bends through to the handle; slow or moderate action?",
    ),
    ("doubt", rf"{_ANY_POWER} to {_ANY_POWER}", "may be one power or lie between two; which of them?"),
    ("doubt", rf"(?:{HEAVY}|{LIGHT})-{MEDIUM}(?![ /-]*{FAST})", "two powers; which of them?"),
    ("power", rf"(?:double[ -]*{EXTRA}|{EXTRA}{EXTRA}|xx[ -]*|2x[ -]*){HEAVY}|xx-h", "xxh"),
    ("power", rf"{EXTRA}{HEAVY}|x-h|x\. ?h\.?", "xh"),
    ("power", rf"{MEDIUM}[ /-]*{HEAVY}|med[ -]h|m\. ?h\.?", "mh"),
    ("power", rf"{MEDIUM}[ /-]*{LIGHT}|med[ -]l|m\. ?l\.?", "ml"),
    ("power", rf"(?:ultra|u)[ -]*{LIGHT}|u/l|u-l|u\. ?l\.?", "ul"),
    ("action", rf"(?:{EXTRA}|very ){FAST}|x-f", "xf"),
    ("action", rf"{MODERATE}[ /-]*{FAST}", "mf"),
    ("action", rf"{MODERATE}[ -]*{SLOW}", "ms"),
    ("medium-fast", rf"{MEDIUM}-{FAST}|m-f", ""),
    ("medium fast", rf"{MEDIUM}[ /,]+{FAST}|m[ /,]+f", ""),
    ("power", rf"{HEAVY}", "h"),
    ("power", rf"{LIGHT}", "l"),
    ("medium", rf"{MEDIUM}", ""),
    ("action", FAST, "f"),
    ("action", SLOW, "s"),
    ("action", MODERATE, "m"),
)


def _whole(pattern: str) -> re.Pattern[str]:
    return re.compile(rf"{BEFORE_WORD}(?<![a-z]')(?:{pattern}){AFTER_WORD}(?!\d|'[a-z])")


def _grade(pattern: str) -> str:
    return rf"{NO_GRADE_BEFORE}(?:{pattern}){NO_GRADE_AFTER}"


_READY = tuple((sort, _whole(_grade(pattern)), code) for sort, pattern, code in _PHRASES)
# A word of three letters that was taken off the label, such as "and".
_OR = r"\s*(?:/|-|to|or|&|\x00{3})\s*"
_BETWEEN = _whole(rf"{POWER_CODE}{_OR}(?:x?xh|mh|ml|h|l)|(?:mh|ml){_OR}m|{POWER_CODE}\+|m[ ]+(?:h|l)")
_PAIR = _whole(rf"(?P<power>{POWER_CODE})[ /,-]*(?P<action>{ACTION_CODE})")
_MODERATE_M = _whole(r"(?P<power>x?xh|mh|ml|ul|h|l)[ /,-]+m")
_POWER = _whole(r"x?xh|2xh|exh|eh|mh|ml|ul|h|l")
_ACTION = _whole(r"xf|exf|ef|rf|f|r")
_MEDIUM_FAST = _whole(r"mf")
_M = _whole(r"m")
_WORD_BEFORE = re.compile(r"[a-z]$")


@dataclass(frozen=True, slots=True)
class _Unsettled:
    """A word that names a power or an action, depending on the words around it."""

    span: tuple[int, int]
    sort: str


def read_power_and_action(label: Label, captions: Captions) -> None:
    """Offer what the label says of power and action; note what may be either."""
    for match in label.find(_BETWEEN):
        if not _is_pair(match[0]):
            label.doubt(match.span(), "may be one power or lie between two; which of them?")
    unsettled = _phrases(label)
    for match in label.find(_MODERATE_M):
        _offer_power(label, match.span("power"), match["power"])
        _offer_action(label, (match.end() - 1, match.end()), "m")
    unsettled += _codes(label)
    said = [
        (word, captions.said_of(*word.span, ("power", "action"), follows=_WORD_BEFORE)) for word in unsettled
    ]
    for word, role in sorted(said, key=lambda pair: (pair[1] != "power", pair[0].span)):
        _settle(label, word, role)


def _is_pair(text: str) -> bool:
    return bool(_PAIR.fullmatch(text))


def _phrases(label: Label) -> list[_Unsettled]:
    unsettled = []
    for sort, pattern, code in _READY:
        for match in label.find(pattern):
            if sort == "power":
                _offer_power(label, match.span(), code)
            elif sort == "action":
                _offer_action(label, match.span(), code)
            elif sort == "doubt":
                label.doubt(match.span(), code)
            else:
                unsettled.append(_Unsettled(match.span(), sort))
                label.take(*match.span())
    return unsettled


def _codes(label: Label) -> list[_Unsettled]:
    unsettled = []
    for match in label.find(_PAIR):
        if match[0] == "mf":
            continue
        _offer_power(label, match.span("power"), match["power"])
        _offer_action(label, match.span("action"), match["action"])
    for match in label.find(_POWER):
        _offer_power(label, match.span(), match[0])
    for match in label.find(_ACTION):
        _offer_action(label, match.span(), match[0])
    for pattern, sort in ((_MEDIUM_FAST, "medium-fast"), (_M, "medium")):
        for match in label.find(pattern):
            unsettled.append(_Unsettled(match.span(), sort))
            label.take(*match.span())
    return unsettled


def _settle(label: Label, word: _Unsettled, role: str | None) -> None:
    if word.sort == "medium":
        _settle_medium(label, word.span, role)
        return
    has_power, has_action = label.has("power"), label.has("action")
    start, end = word.span
    if (has_power or role == "action") and not has_action:
        _offer_action(label, word.span, "mf")
    elif word.sort == "medium fast" and not has_power and not has_action:
        split = next(i for i in range(start, end) if not label.text[i].isalpha())
        _offer_power(label, (start, split), "m")
        _offer_action(label, (split, end), "f")
    else:
        label.doubt(word.span, "could be medium power with fast action, or moderate fast action")


def _settle_medium(label: Label, span: tuple[int, int], role: str | None) -> None:
    if role == "power" or (not label.has("power") and role != "action"):
        _offer_power(label, span, "m")
    elif not label.has("power"):
        label.doubt(span, "medium is often said of the power; as an action it would be moderate")
    elif not label.has("action"):
        _offer_action(label, span, "m")
    else:
        label.doubt(span, "power and action are both given already")


def _offer_power(label: Label, span: tuple[int, int], code: str) -> None:
    name = POWER_OF[_SPELT_CODES.get(code, code)]
    label.offer(span, "power", name, f"power: {name}")


def _offer_action(label: Label, span: tuple[int, int], code: str) -> None:
    name = "moderate slow" if code == "ms" else ACTION_OF[_SPELT_CODES.get(code, code)]
    label.offer(span, "action", name, f"action: {name}")
