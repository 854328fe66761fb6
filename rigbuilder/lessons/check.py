"""Does a rig of a lesson have exactly the faults that it is meant to have?"""

from collections.abc import Sequence
from dataclasses import dataclass

from rigbuilder.lessons.document import Lesson, LessonRig
from rigbuilder.model.reading import Reading
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.review.core import Finding, Severity
from rigbuilder.review.engine import Report
from rigbuilder.review.many import review_documents


@dataclass(frozen=True, slots=True)
class RigCheck:
    """One rig against what it is meant to show.

    ``silent`` are meant rules that do not speak, ``unmeant`` faults and risks that nobody
    meant, ``beside`` mere notes that are there as well.
    """

    number: int
    rig: LessonRig
    reading: Reading
    report: Report
    fired: tuple[Finding, ...]
    silent: tuple[str, ...]
    unmeant: tuple[Finding, ...]
    beside: tuple[Finding, ...]

    @property
    def is_as_meant(self) -> bool:
        """Tell whether every meant rule speaks and no other fault or risk does."""
        return not self.silent and not self.unmeant


def check_lesson(lesson: Lesson, reference: Reference, house: House) -> tuple[RigCheck, ...]:
    """Return how each rig stands; the lesson must have been read by ``read_lesson``."""
    return check_rigs(lesson.rigs, reference, house)


def check_rigs(rigs: Sequence[LessonRig], reference: Reference, house: House) -> tuple[RigCheck, ...]:
    """Review the rigs in one pass and hold each against what it is meant to show."""
    reviewed = review_documents([rig.card for rig in rigs], reference, house)
    return tuple(
        _checked(number, rig, reading, report)
        for number, (rig, (reading, report)) in enumerate(zip(rigs, reviewed, strict=True), start=1)
        if report is not None
    )


def _checked(number: int, rig: LessonRig, reading: Reading, report: Report) -> RigCheck:
    meant = set(rig.meant)
    spoken = {finding.rule.name for finding in report.findings}
    others = [finding for finding in report.findings if finding.rule.name not in meant]
    return RigCheck(
        number=number,
        rig=rig,
        reading=reading,
        report=report,
        fired=tuple(finding for finding in report.findings if finding.rule.name in meant),
        silent=tuple(name for name in rig.meant if name not in spoken),
        unmeant=tuple(finding for finding in others if finding.severity >= Severity.RISK),
        beside=tuple(finding for finding in others if finding.severity < Severity.RISK),
    )
