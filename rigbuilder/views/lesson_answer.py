"""What a junior says: which part, which mechanism, or that nothing is wrong; and the hints."""

from collections.abc import Collection

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QPushButton, QVBoxLayout, QWidget

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.lesson import LessonRun
from rigbuilder.viewmodels.lesson_shown import PARTS, MarkShown, has_more_hints, hints_shown, marks_shown
from rigbuilder.views.controls.buttons import ActionButton, LinkButton
from rigbuilder.views.controls.card import Card
from rigbuilder.views.controls.flow_layout import FlowLayout
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.lesson_wrapped import WrappedTick
from rigbuilder.views.theme_look import Look

_TICK = "Tick what holds on this rig; it may be more than one."


class PartButtons(QWidget):
    """One button for each part of the rig, pressed in while the part is marked."""

    toggled = Signal(object, bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Parts of the rig")
        flow = FlowLayout(self, gap=6)
        self.buttons: dict[Part, QPushButton] = {}
        for part, words in PARTS:
            button = ActionButton(words, tip=f"Mark the {words.lower()} as wrong", parent=self)
            button.setObjectName(f"mark:{part}")
            button.setCheckable(True)
            button.clicked.connect(lambda on, part=part: self.toggled.emit(part, on))
            flow.addWidget(button)
            self.buttons[part] = button

    def set_marked(self, parts: set[Part]) -> None:
        """Press in the buttons of the marked parts."""
        for part, button in self.buttons.items():
            button.setChecked(part in parts)


class MarkCard(Card):
    """A marked part with the mechanisms to choose among; more than one may be ticked."""

    picked = Signal(object, str, bool)
    dropped = Signal(object)

    def __init__(self, mark: MarkShown, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, parent=parent)
        self.mark = mark
        self.setAccessibleName(f"What is wrong with the {mark.words}?")
        self.column.addWidget(
            text_label(f"What is wrong with the {mark.words}?", "strong", wrap=True, parent=self)
        )
        self.column.addWidget(text_label(_TICK, "caption", wrap=True, parent=self))
        self.boxes: dict[str, QCheckBox] = {}
        for choice in mark.choices:
            row = WrappedTick(choice.why, look, self)
            row.box.setObjectName(f"why:{choice.rule}")
            row.box.setChecked(choice.rule in mark.picked)
            row.box.toggled.connect(lambda on, rule=choice.rule: self._pick(rule, on))
            self.boxes[choice.rule] = row.box
            self.column.addWidget(row)
        back = LinkButton("Take this mark back", parent=self)
        back.clicked.connect(lambda: self.dropped.emit(self.mark.part))
        self.column.addWidget(back)

    def set_picked(self, rules: Collection[str]) -> None:
        """Tick what is picked, and nothing else."""
        for rule, box in self.boxes.items():
            box.setChecked(rule in rules)

    def _pick(self, rule: str, on: bool) -> None:
        self.picked.emit(self.mark.part, rule, on)


class AnswerPanel(QWidget):
    """The question, the parts, the mechanisms, the hints, and the button that shows the reasons."""

    def __init__(self, run: LessonRun, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._run, self._look = run, look
        self.setAccessibleName("Your answer")
        self.question = text_label("", "heading", wrap=True, parent=self)
        self.parts = PartButtons(self)
        self.nothing = ActionButton("Nothing is wrong with this rig", parent=self)
        self.nothing.setObjectName("nothing-wrong")
        self.nothing.setCheckable(True)
        self.hint = ActionButton(
            "A hint", weight="quiet", tip="Which part, which figure, which question", parent=self
        )
        self.hint.setObjectName("hint")
        self.hints = text_label("", wrap=True, parent=self)
        self.show_button = ActionButton("Show the reasons", weight="first", parent=self)
        self.show_button.setObjectName("show-reasons")
        self.need = text_label("", "caption", wrap=True, parent=self)
        self._marks = QVBoxLayout()
        self.cards: dict[Part, MarkCard] = {}
        self._lay_out()
        self._wire()
        self.refresh()

    def toggle(self, part: Part, on: bool) -> None:
        """Mark a part, or take the mark back."""
        said = self._run.sitting.said
        self._run.say(said.marked(part) if on else said.unmarked(part))

    def refresh(self) -> None:
        """Show the answer as it stands."""
        run = self._run
        if run.rig is None:
            return
        said = run.sitting.said
        self.question.setText(run.rig.question or "Is anything wrong with this rig? If so, what, and why?")
        self.parts.set_marked(set(said.parts))
        self.nothing.setChecked(said.nothing_wrong)
        self._show_marks(marks_shown(run))
        hints = hints_shown(run)
        self.hints.setText("\n".join(f"{number}. {hint}" for number, hint in enumerate(hints, start=1)))
        self.hints.setVisible(bool(hints))
        self.hint.setText("Another hint" if hints else "A hint")
        self.hint.setEnabled(has_more_hints(run))
        self.show_button.setEnabled(said.is_something)
        waiting = [mark for mark in said.marks if not mark.rule]
        if said.marks and waiting:
            self.need.setText("Tick for each marked part what is wrong with it.")
        elif not said.is_something:
            self.need.setText("Mark a part, here or in the drawing, or say that nothing is wrong.")
        else:
            self.need.setText("You may also change the card on the left as you think right.")

    def _show_marks(self, marks: tuple[MarkShown, ...]) -> None:
        kept = {
            card.mark.part: card for card in self.cards.values() if any(_same(card.mark, m) for m in marks)
        }
        for part, card in self.cards.items():
            if part not in kept:
                self._marks.removeWidget(card)
                card.hide()
                card.deleteLater()
        self.cards = {mark.part: kept.get(mark.part) or self._card(mark) for mark in marks}
        for mark in marks:
            self.cards[mark.part].set_picked(mark.picked)

    def _card(self, mark: MarkShown) -> MarkCard:
        card = MarkCard(mark, self._look, self)
        card.picked.connect(self._pick)
        card.dropped.connect(lambda part: self.toggle(part, False))
        self._marks.addWidget(card)
        return card

    def _pick(self, part: Part, rule: str, on: bool) -> None:
        said = self._run.sitting.said
        self._run.say(said.because(part, rule) if on else said.not_because(part, rule))

    def _say_nothing(self, on: bool) -> None:
        said = self._run.sitting.said
        self._run.say(said.nothing() if on else type(said)(said.marks, False, said.mended, said.hints))

    def _lay_out(self) -> None:
        theme = self._look.theme
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, theme.px(4), 0)
        column.setSpacing(theme.px(8))
        column.addWidget(self.question)
        column.addWidget(text_label("Which part is wrong?", "strong", parent=self))
        column.addWidget(self.parts)
        column.addWidget(self.nothing, 0, Qt.AlignmentFlag.AlignLeft)
        column.addLayout(self._marks)
        column.addWidget(self.hints)
        column.addWidget(self.need)
        column.addWidget(self.show_button, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.hint, 0, Qt.AlignmentFlag.AlignLeft)
        column.addStretch(1)

    def _wire(self) -> None:
        self.parts.toggled.connect(self.toggle)
        self.nothing.clicked.connect(self._say_nothing)
        self.hint.clicked.connect(self._run.take_hint)
        self.show_button.clicked.connect(self._run.show_reasons)
        self._run.answer_changed.connect(self.refresh)
        self._run.rig_changed.connect(self.refresh)


def _same(one: MarkShown, other: MarkShown) -> bool:
    return one.part is other.part and one.choices == other.choices
