"""The rows of the form: one field each, which shows how it stands and tells what a person did."""

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence, QShowEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from rigbuilder.model.fields import BY_PATH
from rigbuilder.viewmodels.fieldtext import is_bare, offered_unit
from rigbuilder.viewmodels.form import FormModel
from rigbuilder.viewmodels.literal import literal
from rigbuilder.views.controls.choice_field import ChoiceField
from rigbuilder.views.controls.patience import PAUSE_MS
from rigbuilder.views.controls.quantity_field import QuantityField
from rigbuilder.views.controls.segment_row import SegmentRow
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.form_act import ActButton
from rigbuilder.views.form_help import expects, help_for
from rigbuilder.views.form_plan import Row

_CAPTION_CHARACTERS = 12


class UndoPasser(QObject):
    """Lets undo and redo pass by a text field, so that they take back edits of the card."""

    about_to_undo = Signal()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 (Qt's name)
        """Refuse the field's own undo; the window's action gets the keys."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            keys = QKeySequence.StandardKey
            if event.matches(keys.Undo) or event.matches(keys.Redo):
                self.about_to_undo.emit()
                event.ignore()
                return True
        return super().eventFilter(watched, event)


class Caption(QLabel):
    """The name of a field, left of it; all of them are equally wide, whatever the size of the type."""

    def __init__(self, text: str, parent: QWidget, buddy: QWidget | None = None) -> None:
        super().__init__(text, parent)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setProperty("role", "label")
        self.setWordWrap(True)
        if buddy is not None:
            self.setBuddy(buddy)
        self._fit()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 (Qt's name)
        """Keep the width right when the type changes."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange):
            self._fit()

    def _fit(self) -> None:
        self.ensurePolished()
        self.setFixedWidth(self.fontMetrics().averageCharWidth() * _CAPTION_CHARACTERS)


class FieldRow(QWidget):
    """Label, control and the small button that puts the assumed value on the card or takes a said one off."""

    def __init__(self, model: FormModel, row: Row, section: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.model, self.row, self.path = model, row, row.path
        self.setObjectName(f"row:{row.path}")
        self.name = f"{section}, {row.title}"
        self.caption = (
            text_label(row.title, "label", wrap=True, parent=self) if row.wide else Caption(row.title, self)
        )
        self.act = ActButton(self)
        self.act.clicked.connect(self.press)

    def place(self, control: QWidget, target: QWidget) -> None:
        """Lay the row out; ``target`` is what the keyboard reaches."""
        self.control, self.target = control, target
        target.setObjectName(f"field:{self.path}")
        self.caption.setBuddy(target)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(4)
        grid.setVerticalSpacing(1)
        grid.setColumnStretch(1, 1)
        top = Qt.AlignmentFlag.AlignTop
        if self.row.wide:
            grid.addWidget(self.caption, 0, 0, 1, 2, Qt.AlignmentFlag.AlignBottom)
            grid.addWidget(self.act, 0, 2, Qt.AlignmentFlag.AlignBottom)
            grid.addWidget(control, 1, 0, 1, 3)
        else:
            self.caption.setMinimumHeight(self.act.sizeHint().height())
            grid.addWidget(self.caption, 0, 0, top)
            grid.addWidget(control, 0, 1)
            grid.addWidget(self.act, 0, 2, top)
            grid.setRowMinimumHeight(0, self.act.sizeHint().height())

    def refresh_act(self) -> None:
        """Show what the small button would do."""
        state = self.model.state(self.path)
        clears = state.said and not BY_PATH[self.path].required
        self.act.setVisible(clears or state.settable)
        self.act.clears = clears
        tip = "Say nothing here" if clears else f"Put “{state.instead}” on the card"
        self.act.setToolTip(literal(tip))
        self.act.setAccessibleName(f"{self.name}: {tip}")
        instead = f"{state.placeholder}. {state.why}" if state.instead else ""
        self.about = " ".join(part for part in (instead, help_for(self.path), expects(self.path)) if part)

    def press(self) -> None:
        """Put what is assumed on the card, or take off what the card says."""
        state = self.model.state(self.path)
        if state.settable:
            self.model.set_assumed([self.path])
        elif state.said and not BY_PATH[self.path].required:
            self.model.write(self.path, "")
            self.model.bench.settle()

    def refresh(self, *_: object) -> None:
        """Show how the field stands."""
        self.refresh_act()

    def commit(self) -> None:
        """Put on the card what is typed and still held back."""

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802 (Qt's name)
        """Catch up with what changed while the row was out of sight."""
        super().showEvent(event)
        self.refresh()


class TextRow(FieldRow):
    """A field for text. What does not make sense yet waits until the person pauses or leaves."""

    def __init__(self, model: FormModel, row: Row, section: str, parent: QWidget | None = None) -> None:
        super().__init__(model, row, section, parent)
        self.field = QuantityField(self.name, parent=self)
        self._holding = False
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(PAUSE_MS)
        self._pause.timeout.connect(self.commit)
        self._passer = UndoPasser(self)
        self._passer.about_to_undo.connect(self.commit)
        self.field.edit.installEventFilter(self._passer)
        self.field.edited.connect(self._typed)
        self.field.left.connect(self._left)
        self.place(self.field, self.field.edit)

    def commit(self) -> None:
        """Put on the card what is typed and still held back."""
        if self._holding:
            self._hold(False)
            self.model.write(self.path, self.field.text())

    def refresh(self, *_: object) -> None:
        """Show text, unit, what stands in, and the problem if there is one."""
        super().refresh()
        state = self.model.state(self.path)
        typing = self.field.edit.hasFocus() and self.model.stands(self.path, self.field.text())
        if not typing and not self._holding:
            self.field.set_text(state.text)
        self.field.edit.setPlaceholderText(state.placeholder or BY_PATH[self.path].example)
        self._show_unit(bool(state.instead))
        self.field.set_help(self.about)
        self.field.set_problem(state.problem)

    def _typed(self, text: str) -> None:
        self._show_unit(False)
        if self.model.reads(self.path, text) or self.field.problem():
            self._hold(False)
            self.model.write(self.path, text)
        else:
            self._hold(True)

    def _hold(self, on: bool) -> None:
        self._holding = on
        if on:
            self._pause.start()
        else:
            self._pause.stop()

    def _left(self) -> None:
        self.commit()
        self.model.bench.settle()
        self.refresh()

    def _show_unit(self, stands_in: bool) -> None:
        text, system = self.field.text(), self.model.system
        bare = is_bare(self.path, text, system) and not (stands_in and not text) and text != "none"
        self.field.set_unit(offered_unit(self.path, system) if bare else "")


class ChoiceRow(FieldRow):
    """A field with a list to choose from; techniques and knots are found by typing."""

    def __init__(
        self, model: FormModel, row: Row, section: str, *, searchable: bool, parent: QWidget | None = None
    ) -> None:
        super().__init__(model, row, section, parent)
        whole = QWidget(self)
        column = QVBoxLayout(whole)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        self.field = ChoiceField(self.name, searchable=searchable, parent=whole)
        self.field.set_options(model.options(self.path))
        self.field.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.problem = text_label("", "problem", wrap=True, parent=whole)
        self.problem.hide()
        column.addWidget(self.field)
        column.addWidget(self.problem)
        self.field.chosen.connect(self._chosen)
        editor = self.field.lineEdit()
        if editor is not None:
            self._passer = UndoPasser(self)
            editor.installEventFilter(self._passer)
        self.place(whole, self.field)

    def refresh(self, *_: object) -> None:
        """Show the option chosen, what stands in, and the problem if there is one."""
        super().refresh()
        state = self.model.state(self.path)
        editor = self.field.lineEdit()
        value = self.model.option(self.path, state.text) if state.said else ""
        if value != self.field.value() or not (editor is not None and editor.hasFocus()):
            self.field.set_value(value)
        hint = state.placeholder or ("none" if state.text == "none" else "choose")
        if editor is None:
            self.field.setPlaceholderText(hint)
        else:
            editor.setPlaceholderText(hint)
        self.field.set_problem(state.problem)
        self.problem.setText(state.problem)
        self.problem.setVisible(bool(state.problem))
        if not state.problem:
            self.field.setToolTip(literal(self.about))
            self.field.setAccessibleDescription(self.about)

    def _chosen(self, value: str) -> None:
        self.model.write(self.path, value)
        self.model.bench.settle()


class SegmentsRow(FieldRow):
    """A field with a few options, all in sight; a remark below tells what is assumed."""

    def __init__(self, model: FormModel, row: Row, section: str, parent: QWidget | None = None) -> None:
        super().__init__(model, row, section, parent)
        whole = QWidget(self)
        column = QVBoxLayout(whole)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(1)
        short = dict(row.short)
        options = [(value, short.get(value, text)) for value, text in model.options(self.path)]
        self.field = SegmentRow(self.name, options, parent=whole)
        self.remark: QLabel = text_label("", "caption", parent=whole)
        column.addWidget(self.field)
        column.addWidget(self.remark)
        self.field.chosen.connect(self._chosen)
        self.place(whole, self.field)

    def refresh(self, *_: object) -> None:
        """Check the option chosen, or say what stands in."""
        super().refresh()
        state = self.model.state(self.path)
        self.field.set_value(self.model.option(self.path, state.text) if state.said else "")
        remark = state.problem or state.placeholder
        self.remark.setText(remark)
        self.remark.setVisible(bool(remark))
        self.field.setToolTip(literal(self.about))
        self.field.setAccessibleDescription(f"{state.problem} {self.about}".strip())

    def _chosen(self, value: str) -> None:
        self.model.write(self.path, value)
        self.model.bench.settle()
