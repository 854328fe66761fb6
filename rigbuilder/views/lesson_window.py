"""A lesson in its window: the card, the drawn rig, the answer, and the reasons beside it."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QCloseEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QScrollArea,
    QSplitter,
    QStackedWidget,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from rigbuilder.model.fields import BY_PATH, Part
from rigbuilder.viewmodels.form import FormModel
from rigbuilder.viewmodels.lesson import LessonRun
from rigbuilder.viewmodels.lesson_shown import question_of, title_shown
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.controls.toast import Toast
from rigbuilder.views.form import FormPanel
from rigbuilder.views.lesson_answer import AnswerPanel
from rigbuilder.views.lesson_drawing import LessonDrawing
from rigbuilder.views.lesson_outcome import OutcomePanel
from rigbuilder.views.lesson_pages import DonePage, OpeningPage
from rigbuilder.views.lesson_whatif import WhatIfPanel
from rigbuilder.views.questions import QuestionsPanel
from rigbuilder.views.theme_look import Look

_SIZE = QSize(1680, 1000)

# Least widths of the columns, in logical pixels; the outer ones grow with the type, the last up to a limit.
_FORM, _CENTRE, _PAGES, _PAGES_AT_MOST = 290, 320, 330, 420
_KEYS_WORDS = (
    "Ctrl+M marks the part you are in, Ctrl+H gives a hint, Ctrl+Enter shows the reasons and goes on."
)


class LessonWindow(QWidget):
    """One junior in one lesson. Esc closes; the lesson goes on from the same place next time."""

    def __init__(self, run: LessonRun, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self.run, self.look = run, look
        self.setObjectName("lesson-window")
        self.setWindowTitle(f"{run.lesson.name} — {run.progress.name} — Rigbuilder")
        self._fields = FormModel(run.bench, self)
        self._fields.keeps_quiet = not run.sitting.shown
        self.form = FormPanel(self._fields, look, {})
        self.drawing = LessonDrawing(run.bench, look)
        self.questions = QuestionsPanel(run.bench, look)
        self.what_if = WhatIfPanel(run.bench, look)
        self.answer = AnswerPanel(run, look)
        self.outcome = OutcomePanel(run, look)
        self.opening = OpeningPage(run, look)
        self.done = DonePage(run, look)
        self.title = text_label("", "heading", parent=self)
        self.tabs = QTabWidget()
        self.pages = QStackedWidget()
        self.toast = Toast(self)
        self._begun = run.resumed
        self._lay_out()
        self._wire()
        self.refresh()
        room = self.screen().availableGeometry().size()
        self.resize(_SIZE.boundedTo(room - QSize(8, 40)))

    def refresh(self) -> None:
        """Show the page that the lesson is at."""
        run = self.run
        self.title.setText(title_shown(run))
        shown = run.sitting.shown and run.rig is not None
        page: QWidget
        if run.rig is None:
            page = self.done
        elif not self._begun:
            page = self.opening
        else:
            page = self.outcome if shown else self.answer
        self.pages.setCurrentWidget(self._areas[page])
        self.drawing.set_open(shown)
        if self._fields.keeps_quiet == shown:
            self._fields.keeps_quiet = not shown
            self.form.refresh()
            self._turn_to_question()
        self.drawing.ring(run.sitting.said.parts)
        self.tabs.setTabEnabled(1, shown)
        self.tabs.setTabToolTip(1, "" if shown else "Open once the reasons are shown")
        if not shown:
            self.tabs.setCurrentIndex(0)
        self.form.setEnabled(run.rig is not None)

    def begin(self) -> None:
        """Leave the introduction."""
        self._begun = True
        self.refresh()
        self.answer.parts.buttons[Part.LURE].setFocus(Qt.FocusReason.OtherFocusReason)

    def go_on(self) -> None:
        """Do what comes next: begin, show the reasons, put up the next rig."""
        self.form.commit()
        run = self.run
        if run.rig is None:
            return
        if not self._begun:
            self.begin()
        elif run.sitting.shown:
            run.next()
        elif run.sitting.said.is_something:
            run.show_reasons()
        else:
            self.toast.show_message("Mark a part first, or say that nothing is wrong.")

    def mark_here(self) -> None:
        """Mark the part that the field with the focus belongs to."""
        row = self.form.focused_row()
        if row is None:
            self.toast.show_message("Go to a field of the card first, then mark its part.")
        elif self._begun and not self.run.sitting.shown:
            self.answer.toggle(BY_PATH[row.path].part, True)

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 (Qt's name)
        """Keep what is half typed."""
        self.form.commit()
        self.run.keep_typing()
        event.accept()

    def _mark(self, part: Part) -> None:
        self.form.show_part(part)
        if self._begun and self.run.rig is not None and not self.run.sitting.shown:
            self.answer.toggle(part, True)

    def _wire(self) -> None:
        run = self.run
        run.answer_changed.connect(self.refresh)
        run.rig_changed.connect(self._new_rig)
        run.said.connect(self.toast.show_message)
        self.opening.begun.connect(self.begin)
        self.drawing.part_chosen.connect(self._mark)
        self.outcome.field_wanted.connect(self.form.focus_field)
        keys = (
            ("Ctrl+Return", self.go_on),
            ("Ctrl+Enter", self.go_on),
            ("Ctrl+M", self.mark_here),
            ("Ctrl+H", run.take_hint),
            ("Ctrl+Z", run.bench.undo_stack.undo),
            ("Ctrl+Shift+Z", run.bench.undo_stack.redo),
            ("Esc", self.close),
        )
        for key, deed in keys:
            QShortcut(QKeySequence(key), self, deed)

    def _turn_to_question(self) -> None:
        """Turn questions and what-if to the question under which the reason's figures are."""
        question = question_of(self.run)
        if question:
            self.questions.ask(question)
            self.what_if.ask(question)

    def _new_rig(self) -> None:
        self.refresh()
        bar = self._areas[self.answer].verticalScrollBar()
        bar.setValue(0)
        if self._begun and self.run.rig is not None:
            self.answer.parts.buttons[Part.LURE].setFocus(Qt.FocusReason.OtherFocusReason)

    def _lay_out(self) -> None:
        theme = self.look.theme
        gap = theme.px(8)
        self.tabs.setDocumentMode(True)
        self.tabs.addTab(self.questions, "Questions")
        self.tabs.addTab(self.what_if, "What if")
        middle = QSplitter(Qt.Orientation.Vertical)
        middle.addWidget(self.drawing)
        middle.addWidget(self.tabs)
        middle.setChildrenCollapsible(False)
        middle.setStretchFactor(0, 1)
        for page in (self.opening, self.answer, self.outcome, self.done):
            layout = page.layout()
            if layout is not None:
                layout.setContentsMargins(gap, 0, gap, gap)
        self._areas = {page: _scrolled(page) for page in (self.opening, self.answer, self.outcome, self.done)}
        for area in self._areas.values():
            self.pages.addWidget(area)
        columns = QSplitter(Qt.Orientation.Horizontal)
        # With large type the columns scroll, so that the window still fits a small screen.
        centre = _scrolled(middle, both=True)
        centre.setMinimumWidth(_CENTRE)
        for column in (self.form, centre, self.pages):
            columns.addWidget(column)
        columns.setChildrenCollapsible(False)
        self.form.setMinimumWidth(theme.px(_FORM))
        self.pages.setMinimumWidth(min(theme.px(_PAGES), _PAGES_AT_MOST))
        columns.setSizes([theme.px(320), theme.px(620), theme.px(400)])
        columns.setStretchFactor(1, 1)
        head = QHBoxLayout()
        head.setSpacing(gap)
        head.addWidget(text_label(self.run.lesson.name, "title", wrap=True, parent=self), 1)
        head.addWidget(self.title)
        head.addWidget(text_label(self.run.progress.name, "strong", parent=self))
        outer = QVBoxLayout(self)
        outer.setContentsMargins(gap, gap, gap, gap)
        outer.setSpacing(theme.px(6))
        outer.addLayout(head)
        outer.addWidget(columns, 1)
        outer.addWidget(text_label(_KEYS_WORDS, "caption", wrap=True, parent=self))


def _scrolled(widget: QWidget, *, both: bool = False) -> QScrollArea:
    area = QScrollArea()
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    if not both:
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setAccessibleName(widget.accessibleName())
    widget.setProperty("plain", True)
    area.setWidget(widget)
    return area
