"""What fills the spool? Pins, the spool cut open to scale, a table, and steps for the bench."""

from pathlib import Path

from PySide6.QtCore import QTimer
from PySide6.QtGui import QGuiApplication, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QBoxLayout, QVBoxLayout, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.fillview import FillModel, FillShown
from rigbuilder.views.controls.ask import Ask, WindowAsk
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.plan_parts import ButtonRow, RemarkList, ScrollPane, SheetTable, StepList, TextList
from rigbuilder.views.plan_pins import PinGrid
from rigbuilder.views.plan_refills import RefillsRow
from rigbuilder.views.questions_spool import SpoolView
from rigbuilder.views.theme_look import Look

_WAITING = "Say lure, rod, line type and test first; then the reel can be filled."
_WIDE = 820  # logical pixels from which the spool stands beside the pins


_SETTLE_MS = 40  # the plan is worked out when the typing rests for as long
_SPOOL_HIGH = 200  # logical pixels


class FillPanel(QWidget):
    """The plan for filling the reel of the rig on the bench."""

    def __init__(
        self, bench: Bench, look: Look, parent: QWidget | None = None, *, ask: Ask | None = None
    ) -> None:
        super().__init__(parent)
        self._look = look
        self._ask = ask or WindowAsk(self)
        self.model = FillModel(bench, self)
        self.setAccessibleName("What fills the spool?")
        self.headline = text_label("", "heading", wrap=True, parent=self)
        self.remarks = RemarkList(look, "What follows", self)
        self.pins = PinGrid(self.model, look, self)
        self.spool = SpoolView(look, parent=self)
        self.table = SheetTable("The fill in numbers", self)
        self.note = text_label("", "caption", wrap=True, parent=self)
        self.steps = StepList("How to fill it", self)
        self.reverse_worth = RemarkList(look, "Whether it pays", self)
        self.reverse = StepList("Turned end for end", self)
        self.refills = RefillsRow(self.model, look, self)
        self.cost = SheetTable("What it costs", self)
        self.cost_note = text_label("", "caption", wrap=True, parent=self)
        self.cost_remarks = RemarkList(look, "About the cost", self)
        self.taken = TextList("Taken for granted", self)
        self.sources = TextList("How we know", self)
        self.copy = ActionButton("Copy as table", tip="Fill and cost, separated by commas", parent=self)
        self.save = ActionButton("Save as CSV…", tip="Fill and cost for a spreadsheet", parent=self)
        self.keep = ActionButton(
            "Put these lengths on the card",
            weight="remedy",
            tip="Main line and backing, as one step",
            parent=self,
        )
        self._top = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._lay_out()
        self.copy.clicked.connect(lambda: QGuiApplication.clipboard().setText(self.model.csv()))
        self.save.clicked.connect(self._save)
        self.keep.clicked.connect(self.model.note_fill)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._render)
        self.model.changed.connect(self._later)

    def shown(self) -> FillShown | None:
        """Return what is shown, brought up to date."""
        self._render()
        return self.model.shown()

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802 (Qt's name)
        """Work the plan out when it is first seen."""
        super().showEvent(event)
        self._render()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 (Qt's name)
        """Put the spool beside the pins, or below them where it is narrow."""
        super().resizeEvent(event)
        wide = self.width() >= self._look.theme.px(_WIDE)
        direction = QBoxLayout.Direction
        self._top.setDirection(direction.LeftToRight if wide else direction.TopToBottom)

    def _lay_out(self) -> None:
        pane = ScrollPane(self._look, "Plan of the fill", self)
        left = QVBoxLayout()
        left.addWidget(self.pins)
        left.addWidget(self.remarks)
        left.addStretch(1)
        self.spool.setFixedHeight(self._look.theme.px(_SPOOL_HIGH))
        self.spool.setMinimumWidth(self._look.theme.px(300))
        self._top.addLayout(left, 1)
        self._top.addWidget(self.spool, 1)
        pane.column.addWidget(self.headline)
        pane.column.addLayout(self._top)
        pane.column.addWidget(self.table)
        pane.column.addWidget(self.note)
        pane.column.addWidget(ButtonRow(self.keep, self.copy, self.save, parent=pane.widget()))
        pane.fold("How to fill it", True, self.steps)
        pane.fold("What does it cost?", True, self.refills, self.cost, self.cost_note, self.cost_remarks)
        pane.fold("Worn line turned end for end", False, self.reverse_worth, self.reverse)
        pane.fold("Taken for granted", True, self.taken)
        pane.fold("How we know", False, self.sources)
        pane.column.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(pane)

    def _later(self) -> None:
        if self.isVisible():
            self._timer.start(_SETTLE_MS)

    def _render(self) -> None:
        shown = self.model.shown()
        for widget in (self.pins, self.refills, self.table, self.keep, self.copy, self.save):
            widget.setEnabled(shown is not None)
        if shown is None:
            self.headline.setText(_WAITING)
            self.spool.set_section(None)
            return
        self.headline.setText(shown.headline)
        self.remarks.set_remarks(shown.remarks)
        self.pins.show_pins(shown.pins)
        self.spool.set_section(shown.section)
        self.table.set_sheet(shown.table)
        self.note.setText(shown.table.note)
        self.note.setVisible(bool(shown.table.note))
        self.steps.set_steps(shown.steps)
        self.reverse.set_steps(shown.reverse)
        self.reverse_worth.set_remarks((shown.reverse_worth,))
        self.refills.refresh()
        self.cost.set_sheet(shown.cost)
        self.cost.setVisible(bool(shown.cost.rows))
        self.cost_note.setText(shown.cost.note)
        self.cost_note.setVisible(bool(shown.cost.note))
        self.cost_remarks.set_remarks(shown.cost_remarks)
        self.taken.set_texts(shown.taken)
        self.sources.set_texts(shown.sources)

    def _save(self) -> None:
        path = self._ask.save_path("Save fill and cost", Path("fill.csv"), "Tables (*.csv)")
        if path is None:
            return
        try:
            path.write_text(self.model.csv(), encoding="utf-8-sig", newline="")
        except OSError as trouble:
            self._ask.tell("Not saved", f"“{path.name}” could not be written: {trouble.strerror}.")
