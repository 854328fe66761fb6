"""The course of a lesson: which rig a sitting is at, what comes next, and what an answer comes to."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from rigbuilder.lessons.answer import Change, Result, Said, judge
from rigbuilder.lessons.document import Lesson, LessonRig
from rigbuilder.lessons.progress import Answered, Progress, Sitting, comes_back
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.review.engine import Report
from rigbuilder.review.many import review_documents


@dataclass(frozen=True, slots=True)
class Course:
    """A lesson, and the other lessons whose rigs may come back in it."""

    lesson: Lesson
    others: tuple[Lesson, ...] = ()

    def rig(self, sitting: Sitting) -> LessonRig | None:
        """Return the rig that is up, ``None`` when the lesson is over."""
        if sitting.again is not None:
            return self._known(sitting.again)
        rigs = self.lesson.rigs
        return rigs[sitting.at] if sitting.at < len(rigs) else None

    def place(self, sitting: Sitting) -> tuple[str, int]:
        """Return which rig of which lesson is up."""
        return sitting.again or (self.lesson.id, sitting.at)

    def begin(self, path: str) -> Sitting:
        """Return the first step of the lesson."""
        return Sitting(lesson=self.lesson.id, path=path)

    def resume(self, progress: Progress) -> Sitting | None:
        """Return the sitting that was left in this lesson, ``None`` where there is none to go on with."""
        old = progress.sitting
        if old is None or not self.is_under_way(progress):
            return None
        return None if old.again is not None and self._known(old.again) is None else old

    def is_under_way(self, progress: Progress) -> bool:
        """Tell whether a sitting was left in the middle of this lesson, also in a rig of another one."""
        old = progress.sitting
        if old is None or old.lesson != self.lesson.id or old.at >= len(self.lesson.rigs):
            return False
        return old != self.begin(old.path)

    def after(self, sitting: Sitting, answers: Sequence[Answered]) -> Sitting:
        """Return the next step: a rig with a rule that was missed, or the lesson's next one.

        Never two rigs that come back in a row, so that the lesson goes on.
        """
        fresh = self.begin(sitting.path)
        if sitting.again is not None:
            return fresh.with_(at=sitting.at)
        at = sitting.at + 1
        return fresh.with_(at=at, again=comes_back(answers, self._pool(at)))

    def _pool(self, at: int) -> Iterable[tuple[tuple[str, int], tuple[str, ...]]]:
        for lesson in (self.lesson, *self.others):
            for number, rig in enumerate(lesson.rigs):
                if (lesson.id, number) != (self.lesson.id, at):
                    yield (lesson.id, number), rig.meant

    def _known(self, place: tuple[str, int]) -> LessonRig | None:
        for lesson in (self.lesson, *self.others):
            if lesson.id == place[0] and 0 <= place[1] < len(lesson.rigs):
                return lesson.rigs[place[1]]
        return None


def outcome(rig: LessonRig, given: Report, said: Said) -> Result:
    """Return what was said of a rig beside what the review says of it, and what a mending has done."""
    change = None
    if said.mended is not None:
        case = given.case
        change = Change(rig.card, said.mended, _review(said.mended, case.reference, case.house))
    return judge(said, given, rig.meant, change)


def _review(card: dict[str, object], reference: Reference, house: House) -> Report | None:
    return review_documents([card], reference, house)[0][1]
