"""The editor of a lesson: its texts, its rigs in order, and where new rigs come from."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtWidgets import (
    QDialog,
    QFormLayout,
    QHBoxLayout,
    QLineEdit,
    QListWidget,
    QPlainTextEdit,
    QVBoxLayout,
    QWidget,
)

from rigbuilder.viewmodels.lesson_editing import LessonDraft
from rigbuilder.views.controls.ask import Answer, Ask
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.lesson_spoiling import SeedField, SpoilingRow
from rigbuilder.views.theme_look import Look


class LessonEditor(QDialog):
    """Changes a draft; ``save`` is called when the person saves, and says whether it went well."""

    def __init__(
        self,
        draft: LessonDraft,
        look: Look,
        *,
        card: Callable[[], dict[str, object]],
        save: Callable[[LessonDraft], bool],
        ask: Ask,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.draft, self._look, self._card, self._save = draft, look, card, save
        self._ask = ask
        self.setObjectName("lesson-editor")
        self.setWindowTitle("Lesson")
        self.name = QLineEdit(draft.name, self)
        self.introduction = _text(draft.introduction, "Introduction", self)
        self.closing = _text(draft.closing, "Closing words", self)
        self.seed = SeedField(draft.seed, "Seed of the lesson", self)
        self.seed.setToolTip("The same number gives every junior of a class the same choices.")
        self.list = QListWidget(self)
        self.list.setAccessibleName("Rigs of the lesson, in order")
        self._make_rig_fields()
        self._make_buttons()
        self._lay_out()
        self._wire()
        self.fill(0)
        self._before = self._state()
        theme = look.theme
        self.resize(theme.px(980), theme.px(620))

    def _make_rig_fields(self) -> None:
        self.standing = text_label("", wrap=True, parent=self)
        self.question = QLineEdit(self)
        self.hint = QLineEdit(self)
        self.remark = _text("", "Closing remark", self)
        self.spoiling = SpoilingRow(self.draft.techniques(), self)
        self.said = text_label("", wrap=True, parent=self)

    def _make_buttons(self) -> None:
        self.up = ActionButton("Up", parent=self)
        self.down = ActionButton("Down", parent=self)
        self.out = ActionButton("Take out", parent=self)
        self.add = ActionButton("Add the card on the bench", parent=self)
        self.add_file = ActionButton("Add a card from a file…", parent=self)
        self.save_button = ActionButton("Save the lesson", weight="first", parent=self)
        self.cancel = ActionButton("Cancel", parent=self)

    def fill(self, at: int) -> None:
        """List the rigs as they stand, with one of them chosen."""
        lines = self.draft.lines()
        self.list.blockSignals(True)
        self.list.clear()
        for number, line in enumerate(lines, start=1):
            self.list.addItem(f"{number}. {line.name}" + ("" if line.as_meant else " (not as meant)"))
        self.list.setCurrentRow(min(at, len(lines) - 1))
        self.list.blockSignals(False)
        self._show_rig()

    def reject(self) -> None:
        """Leave without saving; asks first when something would be lost."""
        if self._state() != self._before:
            answers = (Answer("leave", "Leave without saving", harmful=True), Answer("stay", "Stay here"))
            if self._ask.choose("Lesson", "The changes to this lesson are not saved.", answers) != "leave":
                return
        super().reject()

    def _state(self) -> tuple[object, ...]:
        texts = (self.introduction.toPlainText(), self.closing.toPlainText())
        return (self.name.text(), *texts, self.seed.text(), self.draft.rigs)

    def _add_from_file(self) -> None:
        path = self._ask.open_path("Add a card", Path.home(), "Cards (*.rigcard)")
        if path is not None:
            self._added(self.draft.add_file(path))

    def _show_rig(self, *_: object) -> None:
        at = self.list.currentRow()
        there = 0 <= at < len(self.draft.rigs)
        for widget in (self.question, self.hint, self.remark, self.up, self.down, self.out):
            widget.setEnabled(there)
        rig = self.draft.rigs[at] if there else None
        self.question.setText("" if rig is None else rig.question)
        self.hint.setText("" if rig is None else rig.hint)
        self.remark.blockSignals(True)
        self.remark.setPlainText("" if rig is None else rig.remark)
        self.remark.blockSignals(False)
        self.standing.setText(
            self.draft.lines()[at].words if there else "Add a rig: a card, or a spoilt one."
        )

    def _word(self, **texts: str) -> None:
        at = self.list.currentRow()
        if 0 <= at < len(self.draft.rigs):
            self.draft.word(at, **texts)

    def _move(self, by: int) -> None:
        at = self.list.currentRow()
        if 0 <= at < len(self.draft.rigs):
            self.fill(self.draft.move(at, by))

    def _take_out(self) -> None:
        at = self.list.currentRow()
        if 0 <= at < len(self.draft.rigs):
            self.draft.remove(at)
            self.fill(max(0, at - 1))

    def _added(self, words: str) -> None:
        self.said.setText(words)
        self.fill(len(self.draft.rigs) - 1)

    def _done(self) -> None:
        draft = self.draft
        draft.name, draft.seed = self.name.text(), self.seed.value()
        draft.introduction, draft.closing = self.introduction.toPlainText(), self.closing.toPlainText()
        if draft.lesson() is None:
            self.said.setText("A lesson needs a name and at least one rig.")
        elif self._save(draft):
            self.accept()
        else:
            self.said.setText("The lesson was not saved; everything is still here.")

    def _wire(self) -> None:
        self.list.currentRowChanged.connect(self._show_rig)
        self.question.textEdited.connect(lambda text: self._word(question=text))
        self.hint.textEdited.connect(lambda text: self._word(hint=text))
        self.remark.textChanged.connect(lambda: self._word(remark=self.remark.toPlainText()))
        self.up.clicked.connect(lambda: self._move(-1))
        self.down.clicked.connect(lambda: self._move(1))
        self.out.clicked.connect(self._take_out)
        self.add.clicked.connect(lambda: self._added(self.draft.add_card(dict(self._card()))))
        self.add_file.clicked.connect(self._add_from_file)
        self.spoiling.wanted.connect(
            lambda technique, rule, seed: self._added(self.draft.add_spoilt(technique, rule, seed))
        )
        self.save_button.clicked.connect(self._done)
        self.cancel.clicked.connect(self.reject)

    def _lay_out(self) -> None:
        theme = self._look.theme
        texts = QFormLayout()
        texts.addRow("&Name", self.name)
        texts.addRow("&Introduction", self.introduction)
        texts.addRow("&Closing words", self.closing)
        texts.addRow("Seed", self.seed)
        order = QHBoxLayout()
        for button in (self.up, self.down, self.out):
            order.addWidget(button)
        left = QVBoxLayout()
        left.addLayout(texts)
        left.addWidget(text_label("Rigs", "strong", parent=self))
        left.addWidget(self.list, 1)
        left.addLayout(order)
        columns = QHBoxLayout()
        columns.setSpacing(theme.px(20))
        columns.addLayout(left, 1)
        columns.addLayout(_right(self), 1)
        foot = QHBoxLayout()
        foot.addStretch(1)
        foot.addWidget(self.save_button)
        foot.addWidget(self.cancel)
        outer = QVBoxLayout(self)
        outer.addLayout(columns, 1)
        outer.addLayout(foot)


def _right(editor: LessonEditor) -> QVBoxLayout:
    """Return the column about the rig chosen and where more come from."""
    rig = QFormLayout()
    rig.addRow("&Question", editor.question)
    rig.addRow("&Hint", editor.hint)
    rig.addRow("&Remark", editor.remark)
    right = QVBoxLayout()
    right.addWidget(text_label("The rig chosen", "strong", parent=editor))
    right.addWidget(editor.standing)
    right.addLayout(rig)
    right.addWidget(text_label("More rigs", "strong", parent=editor))
    cards = QHBoxLayout()
    cards.addWidget(editor.add)
    cards.addWidget(editor.add_file)
    cards.addStretch(1)
    right.addLayout(cards)
    right.addWidget(editor.spoiling)
    right.addWidget(editor.said)
    right.addStretch(1)
    return right


def _text(text: str, name: str, parent: QWidget) -> QPlainTextEdit:
    edit = QPlainTextEdit(text, parent)
    edit.setAccessibleName(name)
    edit.setTabChangesFocus(True)
    edit.setMaximumHeight(edit.fontMetrics().lineSpacing() * 6)
    return edit
