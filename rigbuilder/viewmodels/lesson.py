"""A lesson under way for one junior: which rig is up, what is said of it, and what comes next.

Every step is written to the junior's file at once, so a lesson can be left, or killed, at any moment.
"""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QObject, QTimer, Signal

from rigbuilder.lessons.answer import Result, Said
from rigbuilder.lessons.course import Course, outcome
from rigbuilder.lessons.document import Lesson, LessonRig
from rigbuilder.lessons.hints import hints
from rigbuilder.lessons.progress import Progress, Sitting
from rigbuilder.model.document import Document
from rigbuilder.review.engine import Report
from rigbuilder.review.many import review_documents
from rigbuilder.store.errors import StoreError
from rigbuilder.store.progress import ProgressStore
from rigbuilder.viewmodels.bench import Bench

_TYPING_RESTS_MS = 300


class LessonRun(QObject):
    """One junior in one lesson; ``bench`` holds the rig that is up, as the junior has changed it."""

    rig_changed = Signal()  # another rig is up, or the lesson is over
    answer_changed = Signal()  # marks, mechanisms, hints, or whether the reasons are shown
    said = Signal(str)

    def __init__(
        self,
        lesson: Lesson,
        path: Path,
        progress: Progress,
        store: ProgressStore,
        bench: Bench,
        *,
        others: Sequence[Lesson] = (),
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self.lesson, self.bench = lesson, bench
        self._store, self._progress = store, progress
        self.course = Course(lesson, tuple(each for each in others if each.id != lesson.id))
        self._given: Report | None = None
        self._typing = QTimer(self)
        self._typing.setSingleShot(True)
        self._typing.setInterval(_TYPING_RESTS_MS)
        self._typing.timeout.connect(self.keep_typing)
        left = self.course.resume(progress)
        self.resumed = left is not None
        self._sitting = left or self.course.begin(str(path))
        self._keep(self._sitting)
        self._put_up()
        bench.document_changed.connect(lambda _: self._typing.start())

    @property
    def progress(self) -> Progress:
        """Return the junior's progress as it is kept."""
        return self._progress

    @property
    def sitting(self) -> Sitting:
        """Return where the lesson stands."""
        return self._sitting

    @property
    def rig(self) -> LessonRig | None:
        """Return the rig that is up, ``None`` when the lesson is over."""
        return self.course.rig(self._sitting)

    @property
    def given(self) -> Report | None:
        """Return the review of the rig as it was given."""
        return self._given

    def result(self) -> Result | None:
        """Return what was said beside what is, once the reasons are shown."""
        if not self._sitting.shown or self._given is None or self.rig is None:
            return None
        return outcome(self.rig, self._given, self._sitting.said)

    def say(self, said: Said) -> None:
        """Take another answer, as long as the reasons are not shown."""
        if not self._sitting.shown and self.rig is not None:
            self._keep(self._sitting.saying(said))
            self.answer_changed.emit()

    def take_hint(self) -> None:
        """Take the next hint."""
        if self._given is None or self.rig is None or self._sitting.shown:
            return
        most = len(hints(self._given, self.bench.speaker, own=self.rig.hint))
        if self._sitting.hints < most:
            self._keep(self._sitting.with_(hints=self._sitting.hints + 1))
            self.answer_changed.emit()

    def show_reasons(self) -> None:
        """Show the reasons beside what was said, and keep what was understood."""
        if self._sitting.shown or self.rig is None or not self._sitting.said.is_something:
            return
        self.keep_typing()
        self._sitting = self._sitting.with_(shown=True)
        result = self.result()
        if result is not None:
            lesson, at = self.course.place(self._sitting)
            self._progress = self._progress.answered(lesson, at, result, self._sitting.hints)
        self._keep(self._sitting)
        self._put_on_bench(self.rig.card)
        self.answer_changed.emit()

    def next(self) -> None:
        """Put up what comes next: a rig with a rule that was missed, or the lesson's next one."""
        if self.rig is None or not self._sitting.shown:
            return
        self._keep(self.course.after(self._sitting, self._progress.answers))
        self._put_up()

    def start_over(self) -> None:
        """Begin the lesson again; what was understood stays kept."""
        self._keep(self.course.begin(self._sitting.path))
        self._put_up()

    def keep_typing(self) -> None:
        """Keep the card as the junior has changed it; nothing is kept of a card that is as it was given."""
        self._typing.stop()
        rig = self.rig
        if rig is None or self._sitting.shown:
            return
        mended: Document | None = None if self.bench.document == rig.card else self.bench.document
        if mended != self._sitting.mended:
            self._keep(self._sitting.with_(mended=mended))

    def _put_up(self) -> None:
        rig, sitting = self.rig, self._sitting
        if rig is None:
            self._given = None
        else:
            _, self._given = review_documents([rig.card], self.bench.reference, self.bench.house)[0]
            self._put_on_bench(rig.card if sitting.shown or sitting.mended is None else sitting.mended)
        self.rig_changed.emit()

    def _put_on_bench(self, card: Document) -> None:
        if self.bench.document != card:
            self.bench.replace(card)
        self._typing.stop()

    def _keep(self, sitting: Sitting) -> None:
        self._sitting = sitting
        self._progress = self._progress.with_(sitting=sitting.model_dump(mode="json"))
        try:
            self._store.save(self._progress)
        except StoreError as trouble:
            self.said.emit(f"Your place in the lesson could not be kept. {trouble}")
