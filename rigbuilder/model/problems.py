"""What is wrong with a card, said so that a person can mend it."""

import difflib
from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Problem:
    """One field that cannot be read.

    ``field`` is the path on the card (``main.test``), ``found`` what stands
    there, ``expected`` what may stand there, with an example, and ``hint``
    what to do, where there is something better to say than "correct it".
    """

    field: str
    found: str
    expected: str
    hint: str = ""

    def __str__(self) -> str:
        sentence = f"{self.field}: found {self.found}; expected {self.expected}."
        return f"{sentence} {self.hint}" if self.hint else sentence


class CardUnreadable(ValueError):  # noqa: N818 - named for what happened
    """A card whose fields do not make a rig. ``str()`` names file and fields."""

    def __init__(self, problems: Iterable[Problem], *, file: str = "the card") -> None:
        self.problems = tuple(problems)
        self.file = file
        super().__init__("\n".join(f"{file}: {problem}" for problem in self.problems))


def nearest(word: str, known: Iterable[str], *, most: int = 3) -> str:
    """Return "Did you mean …?" with the known names nearest to ``word``, or an empty string."""
    folded = {name.casefold(): name for name in known}
    close = difflib.get_close_matches(word.casefold(), list(folded), n=most, cutoff=0.5)
    if not close:
        return ""
    names = [folded[key] for key in close]
    listed = names[0] if len(names) == 1 else ", ".join(names[:-1]) + " or " + names[-1]
    return f"Did you mean {listed}?"


def quoted(value: object, *, longest: int = 60) -> str:
    """Return a value as it may be shown inside a message: short, on one line, in quotes."""
    if value is None:
        return "nothing"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        flat = " ".join(value.split())
        if not flat:
            return "an empty text"
        return f"“{flat[: longest - 1]}…”" if len(flat) > longest else f"“{flat}”"
    if isinstance(value, dict):
        return "a group of fields"
    if isinstance(value, list):
        return "a list"
    text = str(value)
    return text if len(text) <= longest else text[: longest - 1] + "…"
