"""A lesson on the room's screen: the rig first, and one key reveals step by step."""

from PySide6.QtWidgets import QWidget

from rigbuilder.viewmodels.lesson_hall import LessonHall, ListedLesson
from rigbuilder.viewmodels.lesson_slides import lesson_slides
from rigbuilder.views.show import ShowWindow
from rigbuilder.views.theme_look import Look


def show_lesson(hall: LessonHall, listed: ListedLesson, look: Look, parent: QWidget) -> ShowWindow | None:
    """Return a window that shows a lesson once it begins, ``None`` for one that cannot be read."""
    lesson = listed.lesson
    if lesson is None:
        return None
    bench = hall.new_bench(parent)
    told = lesson_slides(lesson, bench)
    bench.replace(lesson.rigs[0].card)
    window = ShowWindow(bench, look, parent, slides_of=lambda _, __: told)
    window.setWindowTitle(lesson.name)
    return window
