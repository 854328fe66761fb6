"""What the menu of lessons does: the window of lessons, and everything that is opened from it."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction, QKeySequence

from rigbuilder.viewmodels.lesson_class import class_in
from rigbuilder.viewmodels.lesson_editing import LessonDraft
from rigbuilder.viewmodels.lesson_hall import LessonHall, ListedLesson
from rigbuilder.views.controls.ask import CANCEL, Answer, Ask
from rigbuilder.views.lesson_class import ClassPanel
from rigbuilder.views.lesson_editor import LessonEditor
from rigbuilder.views.lesson_hall import LessonsWindow
from rigbuilder.views.lesson_handout import write_handout
from rigbuilder.views.lesson_show import show_lesson
from rigbuilder.views.lesson_whatif import WhatIfPanel
from rigbuilder.views.lesson_whatif_window import WhatIfWindow
from rigbuilder.views.lesson_window import LessonWindow
from rigbuilder.views.show import ShowWindow
from rigbuilder.views.side_window import SideWindow
from rigbuilder.views.window import MainWindow

_PATTERN = "Lessons (*.riglesson)"
_PAPERS = (
    Answer("juniors", "For the juniors"),
    Answer("juniors-large", "For the juniors, large type"),
    Answer("answers", "With answers"),
    Answer("answers-large", "With answers, large type"),
    CANCEL,
)


class LessonsMenu(QObject):
    """Adds the menu "Lessons" to the bench; every window is made when it is first wanted."""

    def __init__(self, main: MainWindow, hall: LessonHall, ask: Ask | None = None) -> None:
        super().__init__(main)
        self._main, self.hall = main, hall
        self._ask: Ask = ask or main.ask
        self._window: LessonsWindow | None = None
        self.lesson: LessonWindow | None = None
        self.show_window: ShowWindow | None = None
        self.what_if: WhatIfWindow | None = None
        self.editor: LessonEditor | None = None
        self.class_: SideWindow | None = None
        self._verbs: dict[str, Callable[[], object]] = {
            "take": self.take,
            "show": self.show_to_room,
            "paper": self.hand_out,
            "edit": lambda: self.edit(self.window.chosen),
            "new": lambda: self.edit(None),
            "open": self.open_asked,
            "export": self.export_progress,
            "delete": self.delete_progress,
            "class": self.show_class,
        }
        self._add_menu()
        main.lesson_dropped.connect(self.open_file)

    @property
    def window(self) -> LessonsWindow:
        """The window of lessons."""
        if self._window is None:
            self._window = LessonsWindow(self.hall, self._main.look, self._main)
            self._window.wanted.connect(lambda verb: self._verbs[verb]())
        return self._window

    def open_lessons(self) -> None:
        """Show the window of lessons as things are now."""
        self.window.fill()
        self.window.show()
        self.window.activateWindow()

    def open_what_if(self) -> None:
        """Show what-if for the card on the bench."""
        if self.what_if is None:
            self.what_if = WhatIfWindow(WhatIfPanel(self._main.bench, self._main.look), self._main)
        self.what_if.show()
        self.what_if.activateWindow()

    def take(self, listed: ListedLesson | None = None) -> None:
        """Begin or go on with the lesson chosen, for the junior named."""
        listed = listed or self.window.chosen
        if listed is None or listed.lesson is None or not self.window.junior:
            return
        if self.lesson is not None:
            self.lesson.close()
            self.lesson.deleteLater()
        run = self.hall.start(listed.lesson, listed.path, self.window.junior, self)
        if run is None:
            return
        self.lesson = LessonWindow(run, self._main.look, self._main)
        run.setParent(self.lesson)
        run.rig_changed.connect(self.window.fill_names)
        self.lesson.show()
        if run.resumed:
            self.lesson.toast.show_message("Here the lesson was left; it goes on from this place.")

    def show_to_room(self) -> None:
        """Show the lesson chosen on the whole screen."""
        listed = self.window.chosen
        if listed is not None:
            self.show_window = show_lesson(self.hall, listed, self._main.look, self._main)
            if self.show_window is not None:
                self.show_window.begin()

    def hand_out(self) -> None:
        """Write the hand-out of the lesson chosen."""
        listed = self.window.chosen
        if listed is None or listed.lesson is None:
            return
        kind = self._ask.choose("Hand-out", f"Which hand-out of “{listed.lesson.name}”?", _PAPERS)
        if kind == CANCEL.value:
            return
        start = Path.home() / f"{listed.path.stem}-{kind}.pdf"
        path = self._ask.save_path("Hand-out", start, "PDF (*.pdf)")
        if path is None:
            return
        paper = self.hall.paper(listed.lesson, answers=kind.startswith("answers"))
        try:
            write_handout(path, paper, large=kind.endswith("large"))
        except OSError as error:
            self.window.toast.show_message(
                f"The hand-out could not be written: {error.strerror}. Choose another place."
            )
        else:
            self.window.toast.show_message(f"The hand-out is in “{path.name}”.")

    def edit(self, listed: ListedLesson | None) -> None:
        """Open the editor on a lesson, or on a new one; a shipped lesson is changed as a copy."""
        shipped = listed is None or listed.shipped
        target = None if listed is None or shipped else listed.path
        draft = self.hall.draft(None if listed is None else listed.lesson, self)
        if listed is not None and shipped:
            draft.copied()
        self.editor = LessonEditor(
            draft,
            self._main.look,
            card=lambda: self._main.bench.document,
            save=lambda made: self._saved(made, target),
            ask=self._ask,
            parent=self.window,
        )
        self.editor.open()

    def open_asked(self) -> None:
        """Take a lesson from a file that is asked for."""
        path = self._ask.open_path("Open a lesson", self.hall.folder, _PATTERN)
        if path is not None:
            self.open_file(path)

    def open_file(self, path: Path) -> None:
        """Show a lesson from anywhere in the window of lessons: who takes it is asked there."""
        self.open_lessons()
        lesson = self.hall.load(path)
        if lesson is not None:
            self.window.choose(ListedLesson(path, lesson))

    def export_progress(self) -> None:
        """Write what is kept about the junior to a file."""
        name = self.window.junior
        path = self._ask.save_path(
            "Export progress", Path.home() / f"{name}.rigprogress", "Progress (*.rigprogress)"
        )
        if path is not None and self.hall.export_progress(name, path):
            self.window.toast.show_message(f"What is kept about {name} is in “{path.name}”.")

    def delete_progress(self) -> None:
        """Delete what is kept about the junior, for good, when that is confirmed."""
        name = self.window.junior
        answers = (Answer("delete", "Delete for good", harmful=True), CANCEL)
        said = self._ask.choose(
            "Delete progress", f"Delete all that is kept about {name}? It cannot be brought back.", answers
        )
        if said == "delete" and self.hall.delete_progress(name):
            self.window.name.setEditText("")
            self.window.fill_names()

    def show_class(self) -> None:
        """Show how every rule stands with every junior."""
        if self.class_ is None:
            panel = ClassPanel(self._main.look, self._ask)
            self.class_ = SideWindow("The class — Rigbuilder", panel, self._main, self._main.look)
            self.class_.setObjectName("class-window")
        self.class_.findChildren(ClassPanel)[0].show_class(class_in(self.hall))
        self.class_.bring_up()

    def _saved(self, draft: LessonDraft, target: Path | None) -> bool:
        lesson = draft.lesson()
        path = None if lesson is None else self.hall.save(lesson, target)
        if path is not None:
            self.window.fill()
        return path is not None

    def _add_menu(self) -> None:
        bar = self._main.menuBar()
        menu = bar.addMenu("&Lessons")
        last = bar.actions()[-2] if len(bar.actions()) > 1 else None  # before "Help"
        if last is not None:
            bar.insertMenu(last, menu)
        for name, text, key, deed in (
            ("lessons", "&Lessons…", "Ctrl+Shift+T", self.open_lessons),
            ("what-if", "&What if…", "Ctrl+Shift+W", self.open_what_if),
        ):
            action = QAction(text, self)
            action.setObjectName(f"action:{name}")
            action.setShortcut(QKeySequence(key))
            action.triggered.connect(lambda _=False, deed=deed: deed())
            menu.addAction(action)
