"""What if: one field of the rig is moved, the drawing follows, and reasons come and go at their limits."""

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.lesson_whatif import QUESTIONS, WhatIfShown, fields_of, what_if
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.choice_field import ChoiceField
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.lesson_scale import Scale
from rigbuilder.views.theme_look import Look

_SETTLE_MS = 60
_MOST_LIMITS = 4


class WhatIfPanel(QWidget):
    """Moves a field without changing the card; the bench looks at the rig that would be."""

    def __init__(self, bench: Bench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench, self._look = bench, look
        self._shown: WhatIfShown | None = None
        self.setAccessibleName("What if")
        self.question = ChoiceField("Question", parent=self)
        self.question.set_options([(text, text) for text in QUESTIONS])
        self.field = ChoiceField("What is moved", parent=self)
        self.scale = Scale(look, self)
        self.words = text_label("", wrap=True, parent=self)
        self.limits = text_label("", "caption", wrap=True, parent=self)
        self.back = ActionButton("Back to the rig", weight="quiet", parent=self)
        self._lay_out()
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_SETTLE_MS)
        self._timer.timeout.connect(self._load)
        self.question.chosen.connect(self._ask)
        self.field.chosen.connect(lambda _: self._load())
        self.scale.moved.connect(self._move)
        self.back.clicked.connect(self._back)
        bench.report_changed.connect(lambda _: self._timer.start())
        bench.units_changed.connect(lambda _: self._timer.start())
        self.question.set_value(QUESTIONS[0])
        self._ask(QUESTIONS[0])

    def ask(self, question: str) -> None:
        """Turn to the fields of a question."""
        self.question.set_value(question)
        self._ask(question)

    def move_to(self, field: str) -> None:
        """Turn to a field that the question has."""
        self.field.set_value(field)
        self._load()

    @property
    def shown(self) -> WhatIfShown | None:
        """What is shown now."""
        return self._shown

    def _ask(self, question: str) -> None:
        fields = fields_of(self._bench, question)
        self.field.set_options(fields)
        if fields:
            self.field.set_value(fields[0][0])
        self._load()

    def _load(self) -> None:
        self._timer.stop()
        self._shown = what_if(self._bench, self.field.value()) if self.field.value() else None
        self._bench.look_at(None)
        self._render(max(0, self._shown.present) if self._shown else 0)

    def _move(self, at: int) -> None:
        if self._shown is not None:
            step = self._shown.steps[at]
            self._bench.look_at(None if step.present else step.report)
            self._render(at)

    def _back(self) -> None:
        self._bench.look_at(None)
        self._render(max(0, self._shown.present) if self._shown else 0)

    def _render(self, at: int) -> None:
        shown = self._shown
        self.scale.set_shown(shown, at)
        if shown is None:
            self.words.setText("There is nothing to move until the card can be read.")
            self.limits.setText("")
            return
        step = shown.steps[at]
        here = "as it is" if step.present else "what if"
        self.words.setText(f"{shown.words} {step.value} ({here}). {step.words}")
        said = [limit.words for limit in shown.limits[:_MOST_LIMITS]]
        none = "No limit of a rule is crossed by this field alone." if shown.ordered else ""
        self.limits.setText("\n".join(said) or none)

    def _lay_out(self) -> None:
        theme = self._look.theme
        row = QHBoxLayout()
        row.addWidget(self.question, 1)
        row.addWidget(self.field, 1)
        row.addWidget(self.back)
        column = QVBoxLayout(self)
        column.setContentsMargins(theme.px(6), theme.px(6), theme.px(6), theme.px(6))
        column.setSpacing(theme.px(4))
        column.addLayout(row)
        for widget in (self.scale, self.words, self.limits):
            column.addWidget(widget)
        column.addStretch(1)
