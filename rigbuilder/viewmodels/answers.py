"""The answers in the units that a person reads: plain numbers and words, ready for a chart."""

from dataclasses import dataclass

from rigbuilder.reference.ranges import Range
from rigbuilder.review.engine import Report
from rigbuilder.review.explain import distinct, source_words
from rigbuilder.review.questions.answer import Answer, Limit, Question, Row, Scale
from rigbuilder.review.questions.ask import ask
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import in_system
from rigbuilder.viewmodels.reasons import capital

QUESTIONS: tuple[str, ...] = tuple(str(question) for question in Question)
SPOOL, BREAKS = str(Question.SPOOL), str(Question.BREAKS)
SHORT = {
    str(Question.BREAKS): "Breaking",
    str(Question.HOOK): "Hook-set",
    str(Question.DEPTH): "Depth",
    str(Question.SPOOL): "Spool",
    str(Question.CAST): "Cast",
    str(Question.SIGHT): "Sight",
    str(Question.FEEL): "Feel",
}
"""One word for each question where there is little room."""

Point = tuple[float, float]
Band = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class ShownScale:
    """One axis in the chosen unit."""

    label: str
    unit: str
    log: bool
    downwards: bool
    low: float | None


@dataclass(frozen=True, slots=True)
class ShownCurve:
    """One line: points, and low and high as a band."""

    label: str
    role: str
    points: tuple[Point, ...]
    band: tuple[Band, ...]
    strong: bool


@dataclass(frozen=True, slots=True)
class ShownRow:
    """One row: low, typical, high, and the words at its end."""

    label: str
    role: str
    low: float
    typical: float
    high: float
    text: str
    strong: bool


@dataclass(frozen=True, slots=True)
class ShownLimit:
    """A value on an axis with its words."""

    value: float
    label: str
    axis: str
    severity: str


@dataclass(frozen=True, slots=True)
class ShownSpot:
    """A marked point with its words."""

    x: float
    y: float
    label: str


@dataclass(frozen=True, slots=True)
class Shown:
    """One answer as it is shown: the sentence first, then the figures, then how they are known."""

    question: str
    sentence: str
    y: ShownScale
    x: ShownScale | None
    curves: tuple[ShownCurve, ...]
    rows: tuple[ShownRow, ...]
    limits: tuple[ShownLimit, ...]
    spots: tuple[ShownSpot, ...]
    working: tuple[str, ...]
    sources: tuple[str, ...]


def answer_shown(question: str, report: Report, speaker: Speaker, preview: Report | None = None) -> Shown:
    """Return the answer to a question about a reviewed rig, in the units of the speaker."""
    found = ask(Question(question), report.case, None if preview is None else preview.case)
    return shown(found, speaker)


def shown(answer: Answer, speaker: Speaker) -> Shown:
    """Return an answer in the units of the speaker."""
    return Shown(
        question=str(answer.question),
        sentence=answer.sentence(speaker),
        y=_scale(answer.y, speaker),
        x=None if answer.x is None else _scale(answer.x, speaker),
        curves=_curves(answer, speaker),
        rows=tuple(_row(row, answer.y, speaker) for row in answer.rows),
        limits=tuple(_limit(limit, answer, speaker) for limit in answer.limits),
        spots=tuple(
            ShownSpot(
                _in(spot.x, answer.x or answer.y, speaker),
                _in(spot.y, answer.y, speaker),
                spot.label(speaker),
            )
            for spot in answer.spots
        ),
        working=answer.working,
        sources=tuple(capital(source_words(source)) for source in distinct(answer.sources)),
    )  # fmt: skip


def _row(row: Row, scale: Scale, speaker: Speaker) -> ShownRow:
    low, typical, high = (_in(value, scale, speaker) for value in row.value)
    words = _spread(row.value, scale, speaker)
    return ShownRow(row.label(speaker), row.role, low, typical, high, words, row.strong)


def _curves(answer: Answer, speaker: Speaker) -> tuple[ShownCurve, ...]:
    if answer.x is None:
        return ()
    found = []
    for curve in answer.curves:
        places = [
            (_in(x, answer.x, speaker), *(_in(value, answer.y, speaker) for value in values))
            for x, *values in curve.points
        ]
        if places:
            points = tuple((x, typical) for x, _, typical, _ in places)
            band = tuple((x, low, high) for x, low, _, high in places)
            found.append(ShownCurve(curve.label(speaker), curve.role, points, band, curve.strong))
    return tuple(found)


def _scale(scale: Scale, speaker: Speaker) -> ShownScale:
    unit = scale.unit
    if scale.dimension is not None:
        unit = in_system(1.0, scale.dimension, speaker.system, kind=scale.kind)[1]
    low = None if scale.low is None else _in(scale.low, scale, speaker)
    return ShownScale(scale.label, unit, scale.log, scale.downwards, low)


def _spread(value: Range, scale: Scale, speaker: Speaker) -> str:
    """Return a figure with its range, rounded as people say it."""
    if scale.dimension is not None:
        return speaker.spread(value, scale.dimension, scale.kind)
    low, typical, high = (f"{number:.2g}" if number < 100 else f"{number:.0f}" for number in value)
    return f"{typical} {scale.unit}" if low == high else f"{typical} {scale.unit} ({low}–{high})"


def _in(value: float, scale: Scale, speaker: Speaker) -> float:
    if scale.dimension is None:
        return value
    return in_system(value, scale.dimension, speaker.system, kind=scale.kind)[0]


def _limit(limit: Limit, answer: Answer, speaker: Speaker) -> ShownLimit:
    scale = answer.x if limit.axis == "x" and answer.x is not None else answer.y
    return ShownLimit(_in(limit.value, scale, speaker), limit.label(speaker), limit.axis, limit.severity)
