"""The lessons there are and the juniors who take them: what the window of lessons works with."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from rigbuilder import resources
from rigbuilder.lessons.course import Course
from rigbuilder.lessons.document import Lesson, LessonUnreadable
from rigbuilder.lessons.progress import Progress, standings
from rigbuilder.store.errors import StoreError
from rigbuilder.store.lessons import SUFFIX, list_lessons, load_lesson, save_lesson
from rigbuilder.store.lessons import ListedLesson as ListedLesson
from rigbuilder.store.names import slug
from rigbuilder.store.progress import Junior, ProgressStore
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.lesson import LessonRun
from rigbuilder.viewmodels.lesson_editing import LessonDraft
from rigbuilder.viewmodels.lesson_paper import LessonPaper, lesson_paper
from rigbuilder.viewmodels.lesson_shown import RuleStanding, standing_shown


class LessonHall(QObject):
    """Lists and opens lessons; every verb that touches a file says in words what went wrong."""

    said = Signal(str)

    def __init__(self, source: Bench, folder: Path, progress: ProgressStore, parent: QObject | None = None):
        super().__init__(parent)
        self._source, self.folder, self.store = source, folder, progress

    def lessons(self) -> list[ListedLesson]:
        """Return the shipped lessons and the person's own."""
        return list_lessons(resources.path("lessons"), self.folder, self._source.reference)

    def load(self, path: Path) -> Lesson | None:
        """Return a lesson from anywhere; what is wrong with it is said."""
        try:
            return load_lesson(path, self._source.reference).lesson
        except (StoreError, LessonUnreadable) as trouble:
            self.said.emit(str(trouble))
            return None

    def paper(self, lesson: Lesson, *, answers: bool) -> LessonPaper:
        """Return a lesson as it stands on paper."""
        return lesson_paper(lesson, self._source, answers=answers)

    def draft(self, lesson: Lesson | None, parent: QObject) -> LessonDraft:
        """Return a draft of a lesson, or of a new one."""
        return LessonDraft(self._source, lesson, parent)

    def juniors(self) -> list[Junior]:
        """Return those whose progress is kept here."""
        return self.store.juniors()

    def progress(self, name: str) -> Progress | None:
        """Return a junior's progress; trouble is said."""
        try:
            return self.store.load(name)
        except StoreError as trouble:
            self.said.emit(str(trouble))
            return None

    def standings(self, name: str) -> tuple[RuleStanding, ...]:
        """Return what a junior has understood and what not yet, rule by rule."""
        progress = self.progress(name)
        return () if progress is None else tuple(map(standing_shown, standings(progress.answers)))

    def is_under_way(self, name: str, lesson: Lesson) -> bool:
        """Tell whether a junior is in the middle of a lesson."""
        progress = self.progress(name)
        return progress is not None and Course(lesson).is_under_way(progress)

    def start(self, lesson: Lesson, path: Path, name: str, parent: QObject) -> LessonRun | None:
        """Return a lesson under way for a junior, gone on with where it was left."""
        progress = self.progress(name)
        if progress is None:
            return None
        others = [row.lesson for row in self.lessons() if row.lesson is not None]
        run = LessonRun(
            lesson, path, progress, self.store, self.new_bench(parent), others=others, parent=parent
        )
        run.said.connect(self.said)
        return run

    def new_bench(self, parent: QObject) -> Bench:
        """Return a bench of its own under the same practice and units, with nothing on it."""
        bench = Bench({}, self._source.reference, self._source.house, parent)
        bench.speak(self._source.speaker.system)
        return bench

    def save(self, lesson: Lesson, path: Path | None) -> Path | None:
        """Write a lesson; one without a place gets a free name among the person's own."""
        try:
            expected = None
            if path is None:
                path = _free(self.folder, lesson.name)
            elif path.exists():
                expected = load_lesson(path, self._source.reference).fingerprint
            save_lesson(lesson, path, expected=expected)
        except (StoreError, LessonUnreadable) as trouble:
            self.said.emit(str(trouble))
            return None
        return path

    def delete_progress(self, name: str) -> bool:
        """Remove what is kept about a junior, for good."""
        return self._done(lambda: self.store.delete(name))

    def export_progress(self, name: str, target: Path) -> bool:
        """Write a junior's progress to another place; the person has chosen to write over what is there."""
        return self._done(lambda: self.store.export(name, target, over=True))

    def _done(self, deed: Callable[[], None]) -> bool:
        try:
            deed()
        except StoreError as trouble:
            self.said.emit(str(trouble))
            return False
        return True


def _free(folder: Path, name: str) -> Path:
    stem, number = slug(name), 1
    path = folder / f"{stem}{SUFFIX}"
    while path.exists():
        number += 1
        path = folder / f"{stem}-{number}{SUFFIX}"
    return path
