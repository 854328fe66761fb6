"""The slides of the show: the whole rig, one reason at a time, one question at a time, what is right."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from rigbuilder.model.fields import Part
from rigbuilder.review.engine import Report
from rigbuilder.review.speak import Speaker
from rigbuilder.viewmodels.answers import QUESTIONS, SPOOL, Shown, answer_shown
from rigbuilder.viewmodels.prospects import verdict
from rigbuilder.viewmodels.reasons import Reason, capital, reasons
from rigbuilder.viewmodels.scene import RigScene, scene_of
from rigbuilder.viewmodels.spoolview import SpoolShown, spool_shown


@dataclass(frozen=True, slots=True)
class Slide:
    """One slide; what it has is drawn, the rest is left away."""

    title: str
    lines: tuple[str, ...]
    severity: str = ""
    number: int | None = None
    part: Part | None = None
    scene: RigScene | None = None
    answer: Shown | None = None
    spool: SpoolShown | None = None

    @property
    def spoken(self) -> str:
        """Return the slide as read aloud."""
        return " ".join((f"{self.title}.", *self.lines))


SlidesOf = Callable[[Report, Speaker], tuple[Slide, ...]]
"""Makes slides of a reviewed rig."""


def slides(report: Report, speaker: Speaker) -> tuple[Slide, ...]:
    """Return the slides of a reviewed rig, the whole rig first."""
    scene = scene_of(report, speaker)
    said = verdict(report)
    shown = [Slide(scene.title, (capital(said.text),), severity=said.severity, scene=scene)]
    shown += [_reason(reason, scene) for reason in reasons(report, speaker)]
    for question in QUESTIONS:
        answer = answer_shown(question, report, speaker)
        spool = spool_shown(report, speaker) if question == SPOOL else None
        shown.append(Slide(question, (answer.sentence,), answer=answer, spool=spool))
    right = tuple(capital(words) for _, words in report.right(speaker))
    if right:
        shown.append(Slide("What is right", right, severity="right"))
    return tuple(shown)


def _reason(reason: Reason, scene: RigScene) -> Slide:
    only = replace(scene, pins=tuple(pin for pin in scene.pins if pin.number == reason.number))
    figures = tuple(f"{capital(figure.name)}: {figure.text}" for figure in reason.figures)
    return Slide(
        reason.headline, (reason.why, *figures), severity=reason.severity, number=reason.number,
        part=reason.part, scene=only,
    )  # fmt: skip
