"""The questions under the rig: one tab each, the answer in a sentence first, then the figure behind it."""

from PySide6.QtCore import QTimer
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QStackedWidget, QTabBar, QVBoxLayout, QWidget

from rigbuilder.viewmodels.answers import QUESTIONS, SHORT, SPOOL, Shown, answer_shown
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.spoolview import spool_shown
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.paint.export import Paint, figure_painter
from rigbuilder.views.paint.view import ChartView
from rigbuilder.views.questions_bar import AnswerBar
from rigbuilder.views.questions_spec import figure_of
from rigbuilder.views.questions_spool import SpoolView, spool_picture
from rigbuilder.views.theme_look import Look
from rigbuilder.views.theme_palettes import LIGHT

_SETTLE_MS = 40  # an answer is worked out when the typing rests for as long
_WAITING = "Answers come as soon as the card says enough: lure, rod, line type and test."


class QuestionsPanel(QWidget):
    """Answers the chosen question for the rig on the bench, beside a few other lines."""

    def __init__(self, bench: Bench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self._shown: Shown | None = None
        self.setAccessibleName("Questions")
        self.tabs = QTabBar(self)
        self.tabs.setAccessibleName("Questions about this rig")
        self.tabs.setDrawBase(False)
        self.tabs.setExpanding(False)
        for place, question in enumerate(QUESTIONS):
            self.tabs.addTab(SHORT[question])
            self.tabs.setTabToolTip(place, question)
            self.tabs.setAccessibleTabName(place, question)
        self.heading = text_label("", "heading")
        self.sentence = text_label("", wrap=True)
        self.chart = ChartView(look, "Chart", parent=self)
        self.spool = SpoolView(look, parent=self)
        self.bar = AnswerBar(look, self.answer, self._picture, self)
        self._stack = QStackedWidget(self)
        self._stack.addWidget(self.chart)
        self._stack.addWidget(self.spool)
        self._build(look)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_SETTLE_MS)
        self._timer.timeout.connect(self._render)
        self.tabs.currentChanged.connect(self._render)
        for changed in (bench.report_changed, bench.preview_changed, bench.units_changed):
            changed.connect(self._later)

    def ask(self, question: str) -> None:
        """Turn to a question."""
        self.tabs.setCurrentIndex(QUESTIONS.index(question))

    @property
    def question(self) -> str:
        """The question that is answered now."""
        return QUESTIONS[self.tabs.currentIndex()]

    def answer(self) -> Shown | None:
        """Return what is shown, worked out now if it was still waiting."""
        if self._timer.isActive() or self._shown is None:
            self._render()
        return self._shown

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802 (Qt's name)
        """Work the answer out when it is first seen."""
        super().showEvent(event)
        self._later()

    def _build(self, look: Look) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.theme.px(look.theme.spacing.tight))
        column.addWidget(self.tabs)
        column.addWidget(self.heading)
        column.addWidget(self.sentence)
        column.addWidget(self._stack, 1)
        column.addWidget(self.bar)

    def _later(self, *_: object) -> None:
        if self.isVisible():
            self._timer.start()
        else:
            self._shown = None

    def _render(self, *_: object) -> None:
        self._timer.stop()
        self.bar.offer_plan(self.question)
        report, preview, speaker = self._bench.report, self._bench.preview, self._bench.speaker
        if report is None:
            self._shown = None
            self.heading.setText(self.question)
            self.sentence.setText(_WAITING)
            self.chart.set_spec(None)
            self.spool.set_section(None)
            self.bar.tell((), ())
            return
        self._shown = found = answer_shown(self.question, report, speaker, preview)
        self.heading.setText(found.question)
        self.sentence.setText(found.sentence)
        self.chart.setAccessibleName(f"Chart: {found.question}")
        self.chart.set_spec(figure_of(found))
        if self.question == SPOOL:
            self.spool.set_section(spool_shown(preview or report, speaker), found)
        self._stack.setCurrentWidget(self.spool if self.question == SPOOL else self.chart)
        self.bar.tell(found.working, found.sources)

    def _picture(self, found: Shown) -> Paint | None:
        """Return the painting of an answer for a file, its question and sentence over it."""
        if found.question == SPOOL:
            section = self.spool.section
            return None if section is None else spool_picture(section, found)
        spec = figure_of(found, titled=True)
        return None if spec is None else figure_painter(spec, LIGHT)
