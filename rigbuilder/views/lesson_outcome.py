"""The reasons beside what was said: found, missed, and marked without cause."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from rigbuilder.viewmodels.lesson import LessonRun
from rigbuilder.viewmodels.lesson_shown import FOUND, ReasonShown, outcome_shown
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.reason_card import ReasonCard
from rigbuilder.views.theme_look import Look


class OutcomePanel(QWidget):
    """Shows the outcome, and leads on to the next rig."""

    field_wanted = Signal(str)

    def __init__(self, run: LessonRun, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._run, self._look = run, look
        self.setAccessibleName("The reasons beside what you said")
        self.opening = text_label("", "heading", wrap=True, parent=self)
        self.remark = text_label("", wrap=True, parent=self)
        self.next_button = ActionButton("On to the next rig", weight="first", parent=self)
        self.next_button.setObjectName("next-rig")
        self.next_button.clicked.connect(run.next)
        self._inner = QWidget(self)
        self._stack = QVBoxLayout(self._inner)
        self._stack.setContentsMargins(0, 0, 0, 0)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, look.theme.px(4), 0)
        column.setSpacing(look.theme.px(8))
        for widget in (self.opening, self._inner, self.remark):
            column.addWidget(widget)
        column.addWidget(self.next_button, 0, Qt.AlignmentFlag.AlignLeft)
        column.addStretch(1)
        run.answer_changed.connect(self.refresh)
        run.rig_changed.connect(self.refresh)
        run.bench.units_changed.connect(lambda _: self.refresh())
        self.refresh()

    def refresh(self) -> None:
        """Show the outcome as it is."""
        shown = outcome_shown(self._run)
        while self._stack.count():
            item = self._stack.takeAt(0)
            widget = None if item is None else item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        if shown is None:
            return
        self.opening.setText(shown.opening)
        for reason in shown.reasons:
            self._add_reason(reason)
        for words in (*shown.without_cause, shown.mended):
            if words:
                self._stack.addWidget(text_label(words, wrap=True, parent=self._inner))
        self.remark.setText(shown.remark)
        self.remark.setVisible(bool(shown.remark))

    def _add_reason(self, shown: ReasonShown) -> None:
        mark = "✓ " if shown.state == FOUND else "· "
        self._stack.addWidget(text_label(mark + shown.words, "strong", wrap=True, parent=self._inner))
        card = ReasonCard(self._look, shown.reason, self._inner)
        card.silence.hide()
        card.remedies.hide()
        card.field_wanted.connect(self.field_wanted)
        self._stack.addWidget(card)
