"""A lesson on paper, as plain values: rig by rig the labels, the question, and, if wanted, the answers."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from rigbuilder.lessons.check import RigCheck, check_lesson
from rigbuilder.lessons.document import Lesson
from rigbuilder.model.document import Document
from rigbuilder.review.core import Finding
from rigbuilder.review.explain import distinct, number_words, source_words
from rigbuilder.review.speak import Speaker
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.lesson_scene import lesson_scene
from rigbuilder.viewmodels.pins import part_words
from rigbuilder.viewmodels.reasons import capital
from rigbuilder.viewmodels.scene import RigScene

_GROUPS = (
    ("lure", "Lure"),
    ("rod", "Rod"),
    ("reel", "Reel"),
    ("main", "Main line"),
    ("backing", "Backing"),
    ("leader", "Leader"),
    ("knots", "Knots"),
    ("hardware", "Hardware"),
    ("drag", "Drag"),
    ("water", "Water"),
    ("fish", "Fish"),
)
_WORDS = {
    "knot": "joined by {}",
    "condition": "{}",
    "temperature": "{}",
    "clarity": "clear to {}",
    "depth": "{} deep",
    "pressure": "{} fishing pressure",
    "wind": "wind {}",
    "arbor": "on the arbor: {}",
    "line": "line {}",
    "teeth": "teeth: {}",
    "swivel": "swivel {}",
    "snap": "snap {}",
    "drag": "drag {}",
    "hook": "hook {}",
    "length": "{}",
}
_LEFT_OUT = {"convention", "size", "air", "price", "measured", "buoyancy"}


@dataclass(frozen=True, slots=True)
class Answer:
    """One reason on paper: head, mechanism, figures, how it is known."""

    severity: str
    head: str
    why: str
    figures: str
    basis: str


@dataclass(frozen=True, slots=True)
class RigPaper:
    """One rig on paper."""

    title: str
    scene: RigScene
    labels: tuple[tuple[str, str], ...]
    question: str
    answers: tuple[Answer, ...]
    right: str
    remark: str


@dataclass(frozen=True, slots=True)
class LessonPaper:
    """The lesson on paper; the answers are empty on the sheet for the juniors."""

    title: str
    introduction: str
    closing: str
    rigs: tuple[RigPaper, ...]
    with_answers: bool


def lesson_paper(lesson: Lesson, bench: Bench, *, answers: bool) -> LessonPaper:
    """Return a lesson as it stands on paper, in the units and under the house of a bench."""
    checks = check_lesson(lesson, bench.reference, bench.house)
    return LessonPaper(
        title=lesson.name,
        introduction=lesson.introduction,
        closing=lesson.closing if answers else "",
        rigs=tuple(_rig(check, bench.speaker, answers=answers) for check in checks),
        with_answers=answers,
    )


def labels_of(card: Document) -> tuple[tuple[str, str], ...]:
    """Return what stands on the labels of a card, one line for each part that says something."""
    found = []
    for group, title in _GROUPS:
        told = card.get(group)
        words = ", ".join(_said(told)) if isinstance(told, Mapping) else ("" if told is None else str(told))
        if group in ("backing", "leader") and told is None and group in card:
            words = "none"
        if words:
            found.append((title, words))
    cast = card.get("cast")
    if isinstance(cast, str):
        found.append(
            ("Cast", cast + (f", from the {card['from']}" if isinstance(card.get("from"), str) else ""))
        )
    return tuple(found)


def _said(told: Mapping[str, Any]) -> list[str]:
    words = []
    for key, value in told.items():
        if key in _LEFT_OUT or value is None or isinstance(value, Mapping | list):
            continue
        words.append(_WORDS.get(key, "{}").format(value))
    return words


def _rig(check: RigCheck, speaker: Speaker, *, answers: bool) -> RigPaper:
    found = check.report.findings if answers else ()
    return RigPaper(
        title=f"Rig {check.number}: {check.rig.name}",
        scene=lesson_scene(check.report, speaker, with_reasons=answers),
        labels=labels_of(check.rig.card),
        question=check.rig.question or "Is anything wrong with this rig? If so, what, and why?",
        answers=tuple(_answer(finding, speaker) for finding in found),
        right="Nothing is wrong with this rig." if answers and not check.report.findings else "",
        remark=check.rig.remark if answers else "",
    )


def _answer(finding: Finding, speaker: Speaker) -> Answer:
    figures = "; ".join(number_words(number, speaker) for number in finding.hit.numbers())
    basis = "; ".join(source_words(source) for source in distinct(finding.sources))
    return Answer(
        severity=finding.severity.word,
        head=f"{capital(part_words(finding.part))}: {finding.headline(speaker)}",
        why=finding.why(speaker),
        figures=capital(figures),
        basis=f"How we know: {basis}.",
    )
