"""A lesson for the room's screen: the rig, then hint by hint and reason by reason, one key a step."""

from dataclasses import replace

from rigbuilder.lessons.check import RigCheck, check_lesson
from rigbuilder.lessons.document import Lesson
from rigbuilder.lessons.hints import hints
from rigbuilder.review.speak import Speaker
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.lesson_paper import labels_of
from rigbuilder.viewmodels.lesson_scene import lesson_scene
from rigbuilder.viewmodels.reasons import capital, reasons
from rigbuilder.viewmodels.slides import Slide


def lesson_slides(lesson: Lesson, bench: Bench) -> tuple[Slide, ...]:
    """Return the slides of a lesson, in the units and under the house of a bench."""
    found = [Slide(lesson.name, (lesson.introduction,))]
    for check in check_lesson(lesson, bench.reference, bench.house):
        found += _rig(check, bench.speaker)
    if lesson.closing:
        found.append(Slide("What stays", (lesson.closing,)))
    return tuple(found)


def _rig(check: RigCheck, speaker: Speaker) -> list[Slide]:
    bare = lesson_scene(check.report, speaker, with_reasons=False)
    title = f"{check.number}. {check.rig.name}"
    labels = "; ".join(f"{part}: {words}" for part, words in labels_of(check.rig.card) if part != "Fish")
    question = check.rig.question
    steps = [Slide(title, (question, labels), scene=bare)]
    for number, hint in enumerate(hints(check.report, speaker, own=check.rig.hint), start=1):
        steps.append(Slide(f"{title}: hint {number}", (hint,), scene=bare))
    steps += [_reason_slide(check, place, speaker) for place in range(len(check.report.findings))]
    if not check.report.findings:
        steps.append(
            Slide("Nothing is wrong with this rig", (check.rig.remark,), severity="right", scene=bare)
        )
    elif check.rig.remark:
        last = steps[-1]
        steps[-1] = replace(last, lines=(*last.lines, check.rig.remark))
    return steps


def _reason_slide(check: RigCheck, place: int, speaker: Speaker) -> Slide:
    whole = lesson_scene(check.report, speaker, with_reasons=True)
    reason = reasons(check.report, speaker)[place]
    only = replace(whole, pins=tuple(pin for pin in whole.pins if pin.number == reason.number))
    figures = tuple(f"{capital(figure.name)}: {figure.text}" for figure in reason.figures)
    return Slide(
        reason.headline,
        (reason.why, *figures),
        severity=reason.severity,
        number=reason.number,
        part=reason.part,
        scene=only,
    )
