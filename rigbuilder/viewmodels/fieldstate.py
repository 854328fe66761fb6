"""How one field of the form stands: what the card says, what stands in for it, what is wrong."""

from dataclasses import dataclass

from rigbuilder.model.document import get
from rigbuilder.model.labels.label import say
from rigbuilder.model.labels.understood import Part as LabelPart
from rigbuilder.model.labels.understood import Understanding
from rigbuilder.model.problems import Problem
from rigbuilder.model.reading import Reading
from rigbuilder.units.quantity import Quantity
from rigbuilder.viewmodels.fieldtext import NONE_WORD

_BESIDE = {"rod": "rod.label", "lure": "lure.technique", "main": "main.type", "reel": "reel.label"}
ASSUMED, ON_LABEL = "assumed", "on the label"


@dataclass(frozen=True, slots=True)
class FieldState:
    """One field as the form shows it.

    ``text`` is what the card says, ``none`` where it says that there is none.
    While it says nothing, ``instead`` stands in for it; ``origin`` tells where
    that comes from (assumed, or read on the label) and ``why`` gives the reason.
    """

    text: str = ""
    said: bool = False
    instead: str = ""
    origin: str = ""
    why: str = ""
    problem: str = ""

    @property
    def placeholder(self) -> str:
        """Return what stands in, with its origin, as the empty field shows it."""
        return f"{self.origin}: {self.instead}" if self.instead else ""

    @property
    def settable(self) -> bool:
        """Tell whether something assumed can be put on the card as it is."""
        return self.origin == ASSUMED


@dataclass(frozen=True, slots=True)
class LabelWords:
    """What was made of a label: (words, meaning) understood, (words, why) doubtful, words not understood."""

    understood: tuple[tuple[str, str], ...] = ()
    doubtful: tuple[tuple[str, str], ...] = ()
    not_understood: tuple[str, ...] = ()


def field_state(reading: Reading, path: str) -> FieldState:
    """Return how the field at ``path`` stands."""
    problem = next((words(each) for each in reading.problems if place_of(each) == path), "")
    found = get(reading.document, path, "")
    if found is None:
        return FieldState(NONE_WORD, True, problem=problem)
    if found != "":
        text = ", ".join(map(str, found)) if isinstance(found, list) else str(found)
        return FieldState(text, True, problem=problem)
    on_label = _on_label(reading, path)
    if on_label:
        return FieldState(
            instead=on_label, origin=ON_LABEL, why="Read from the label above.", problem=problem
        )
    entry = next((entry for entry in reading.assumed if entry.field == path), None)
    if entry is None:
        return FieldState(problem=problem)
    instead = NONE_WORD if entry.value is None else entry.value
    return FieldState(instead=instead, origin=ASSUMED, why=f"Assumed: {entry.why}.", problem=problem)


def label_words(reading: Reading, path: str) -> LabelWords:
    """Return what was made of the label at ``path``."""
    understanding = reading.labels.get(path)
    if understanding is None:
        return LabelWords()
    return LabelWords(
        tuple(dict.fromkeys((_brief(understanding, part), part.meaning) for part in understanding.parts)),
        tuple((doubt.text, doubt.why) for doubt in understanding.doubtful),
        understanding.not_understood,
    )


def place_of(problem: Problem) -> str:
    """Return the field of the form beside which a problem is shown."""
    return _BESIDE.get(problem.field, problem.field)


def words(problem: Problem) -> str:
    """Return a problem as one or two sentences: what was found, what is expected, what to do."""
    if problem.found == "nothing":
        said = f"Needed here: {problem.expected}."
    elif problem.hint.startswith("It "):
        return f"{problem.found} {problem.hint[3:]} Expected: {problem.expected}."
    else:
        said = f"{problem.found} does not fit here. Expected: {problem.expected}."
    return f"{said} {problem.hint}".strip()


_BRIEF = {
    "line": "line {}",
    "lure": "lures {}",
    "drag": "drag {}",
    "retrieve": "{} per turn",
    "size": "size {}",
    "line_for": "for {}",
    "pieces": "{} pieces",
}


def _brief(understanding: Understanding, part: LabelPart) -> str:
    """Return a part of a label in as few words as will do; its meaning says the rest."""
    value = understanding.values.get(part.key)
    if value is None or isinstance(value, tuple):
        return part.meaning
    if part.key == "ratio" and not isinstance(value, Quantity | str):
        return f"{value:g}:1"
    return _BRIEF.get(part.key, "{}").format(say(value))


def _on_label(reading: Reading, path: str) -> str:
    kind, _, key = path.partition(".")
    understanding: Understanding | None = reading.labels.get(f"{kind}.label")
    value = None if understanding is None else understanding.values.get(key)
    if isinstance(value, tuple):
        return "see above"
    if value is None or key == "label":
        return ""
    return f"{value:g}:1" if key == "ratio" and not isinstance(value, Quantity | str) else say(value)
