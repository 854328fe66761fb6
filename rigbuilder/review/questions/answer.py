"""What an answer is made of: a sentence, the figures behind it, and how they are known. SI throughout."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from rigbuilder.reference.ranges import Range
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import Source
from rigbuilder.units.dimensions import Dimension

Words = Callable[[Speaker], str]


class Question(StrEnum):
    """The questions that a coach asks, as people read them."""

    BREAKS = "Where will it break?"
    HOOK = "Will the hook go home?"
    DEPTH = "How deep, how still?"
    SPOOL = "What fills the spool?"
    CAST = "How far does it cast?"
    SIGHT = "Can the fish see it?"
    FEEL = "Will you feel it?"


@dataclass(frozen=True, slots=True)
class Scale:
    """One axis: what is counted and in which kind of unit; plain numbers in ``unit`` have no dimension."""

    label: str
    dimension: Dimension | None = None
    kind: str = ""
    unit: str = ""
    log: bool = False
    downwards: bool = False
    low: float | None = None


@dataclass(frozen=True, slots=True)
class Curve:
    """One line of the comparison over the x scale: (x, low, typical, high)."""

    label: Words
    role: str
    points: tuple[tuple[float, float, float, float], ...]
    strong: bool = False


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the comparison: a figure with its range."""

    label: Words
    role: str
    value: Range
    strong: bool = False


@dataclass(frozen=True, slots=True)
class Limit:
    """A value that matters on the x or y scale, with its words."""

    value: float
    label: Words
    axis: str = "y"
    severity: str = ""


@dataclass(frozen=True, slots=True)
class Spot:
    """One point of the present line that is worth a word."""

    x: float
    y: float
    label: Words


@dataclass(frozen=True, slots=True)
class Answer:
    """The answer to one question: curves over x and y, or rows over y; neither where nothing can be drawn."""

    question: Question
    sentence: Words
    y: Scale
    x: Scale | None = None
    curves: tuple[Curve, ...] = ()
    rows: tuple[Row, ...] = ()
    limits: tuple[Limit, ...] = ()
    spots: tuple[Spot, ...] = ()
    working: tuple[str, ...] = ()
    sources: tuple[Source, ...] = ()
    remark: Words | None = None


def curve_of(
    label: Words, role: str, xs: Sequence[float], values: Sequence[Range | None], *, strong: bool = False
) -> Curve:
    """Return a curve from one figure at many places; places without the figure are left out."""
    points = tuple(
        (x, value.low, value.typical, value.high)
        for x, value in zip(xs, values, strict=True)
        if value is not None
    )
    return Curve(label, role, points, strong)


def percent(share: Range) -> str:
    """Return a share with its range as a person says it."""
    low, typical, high = (f"{100 * value:.0f}" for value in share)
    return f"{typical} %" if low == high else f"{typical} % ({low}–{high})"
