"""Care of the lines: what is due, the log of the card, how each line wants to be treated."""

from collections.abc import Callable
from datetime import date

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QListWidget, QVBoxLayout, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.careview import EVENTS, CareModel, CareShown
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.choice_field import ChoiceField
from rigbuilder.views.controls.quantity_field import QuantityField
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.plan_parts import RemarkList, ScrollPane, TextList
from rigbuilder.views.theme_look import Look

_WAITING = "Say lure, rod, line type and test first."


class CarePanel(QWidget):
    """What the lines of the rig on the bench want next."""

    def __init__(
        self,
        bench: Bench,
        look: Look,
        parent: QWidget | None = None,
        *,
        today: Callable[[], date] = date.today,
    ) -> None:
        super().__init__(parent)
        self.model = CareModel(bench, today, self)
        self.setAccessibleName("Care of the lines")
        self.headline = text_label("", "heading", wrap=True, parent=self)
        self.due = RemarkList(look, "What is due", self)
        self.what = ChoiceField("What was done", parent=self)
        self.what.set_options([(event, event) for event in EVENTS])
        self.on = QuantityField("On the day", placeholder=self.model.day, parent=self)
        self.add = ActionButton("Note it", weight="first", tip="Write it into the card's log", parent=self)
        self.log = QListWidget(self)
        self.log.setAccessibleName("Log of the card")
        self.log.setMaximumHeight(look.theme.px(150))
        self.remove = ActionButton("Take the chosen entry out", parent=self)
        self.advice = TextList("How to treat them", self)
        self.sources = TextList("How we know", self)
        self._lay_out(look)
        self.add.clicked.connect(self._note)
        self.remove.clicked.connect(lambda: self.model.remove(self.log.currentRow()))
        self.model.changed.connect(self._changed)

    def shown(self) -> CareShown | None:
        """Return what is shown, brought up to date."""
        self._render()
        return self.model.shown()

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802 (Qt's name)
        """Look again at what is due."""
        super().showEvent(event)
        self._render()

    def _lay_out(self, look: Look) -> None:
        pane = ScrollPane(look, "Care", self)
        entry = QHBoxLayout()
        entry.addWidget(self.what, 2)
        entry.addWidget(self.on, 1)
        entry.addWidget(self.add)
        below = QHBoxLayout()
        below.addWidget(self.remove)
        below.addStretch(1)
        pane.column.addWidget(self.headline)
        pane.column.addWidget(self.due)
        pane.column.addWidget(text_label("Log", "strong", parent=self))
        pane.column.addLayout(entry)
        pane.column.addWidget(self.log)
        pane.column.addLayout(below)
        pane.column.addWidget(text_label("How to treat and store them", "strong", parent=self))
        pane.column.addWidget(self.advice)
        pane.column.addWidget(self.sources)
        pane.column.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(pane)

    def _changed(self) -> None:
        if self.isVisible():
            self._render()

    def _render(self) -> None:
        shown = self.model.shown()
        for widget in (self.what, self.on, self.add, self.log, self.remove):
            widget.setEnabled(shown is not None)
        if shown is None:
            self.headline.setText(_WAITING)
            return
        self.headline.setText(f"What is due, as of {self.model.day}")
        self.due.set_remarks(shown.due)
        self.advice.set_texts(shown.advice)
        self.sources.set_texts(shown.sources)
        kept = self.log.currentRow()
        self.log.clear()
        self.log.addItems(list(shown.log))
        self.log.setCurrentRow(min(kept, self.log.count() - 1))
        self.remove.setEnabled(bool(shown.log))

    def _note(self) -> None:
        problem = self.model.note(self.what.value(), self.on.text())
        self.on.set_problem(problem)
        if not problem:
            self.on.set_text("")
