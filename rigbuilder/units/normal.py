"""Typed and copied text brought to plain characters, remembering where each came from."""

import unicodedata
from dataclasses import dataclass

_DASHES = "‐‑‒–—―−﹘﹣－⁃"
_WAVES = "～〜∼∿˜"
_QUOTES = {**dict.fromkeys("‘’‛′´`ʹʼ＇", "'"), **dict.fromkeys("“”„‟″ʺ＂〃", '"'), "‴": "'''"}
_SLASHES = "⁄∕／"
_PLAIN: dict[str, str] = {
    **dict.fromkeys(_DASHES, "-"),
    **dict.fromkeys(_WAVES, "~"),
    **_QUOTES,
    **dict.fromkeys(_SLASHES, "/"),
    **dict.fromkeys("、，", ","),
    **dict.fromkeys("：∶", ":"),
    **dict.fromkeys("•·‧∙●▪◦‣・；", ";"),
    **dict.fromkeys("｜¦│", "|"),
    **dict.fromkeys("\u200b\u200c\u200d\ufeff\u2060\u00ad\u200e\u200f", ""),
    "×": " x ",
    "µ": "u",
    "№": "No.",
    "º": "°",
    "♯": "#",
}


@dataclass(frozen=True, slots=True)
class Normal:
    """Plain text; ``origin[i]`` is the place in the source that character ``i`` came from."""

    text: str
    origin: tuple[int, ...]

    def span(self, start: int, end: int) -> tuple[int, int]:
        """The stretch of the source text that ``text[start:end]`` came from."""
        if start >= end:
            at = self.origin[start] if start < len(self.origin) else 0
            return at, at
        return self.origin[start], self.origin[end - 1] + 1


def _plain(char: str, before: str, after: str) -> str:
    if char == "·" and before.isdigit() and after.isdigit():
        return "."  # a raised decimal point
    if char in _PLAIN:
        return _PLAIN[char]
    if char.isspace():
        return " "
    whole = unicodedata.normalize("NFKC", char)
    if "\u2044" in whole:  # a vulgar fraction: keep it apart from a whole number before it
        fraction = whole.replace("\u2044", "/")
        return f" {fraction}" if before.isdigit() else fraction
    if unicodedata.category(char) == "No":  # superscripts and circled figures are no measures
        return char
    return "".join(str(unicodedata.digit(c)) if c.isdecimal() else c for c in whole)


def normalise(text: str) -> Normal:
    """``text`` with plain quotes, dashes, spaces, fractions and digits."""
    out: list[str] = []
    origin: list[int] = []
    for index, char in enumerate(text):
        plain = _plain(char, out[-1] if out else "", text[index + 1 : index + 2])
        out.extend(plain)
        origin.extend([index] * len(plain))
    return Normal("".join(out), tuple(origin))
