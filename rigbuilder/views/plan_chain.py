"""Where will it break? The links as bars, what goes with each, the drag, and every joint with its knots."""

from PySide6.QtCore import QTimer
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.chainview import ChainModel, ChainShown
from rigbuilder.viewmodels.pullshelf import PullShelf
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.paint.spec import Axis, Bar, BarSpec, Limit
from rigbuilder.views.paint.view import ChartView
from rigbuilder.views.plan_joints import JointList
from rigbuilder.views.plan_parts import RemarkList, ScrollPane, SheetTable, TextList
from rigbuilder.views.plan_pulls import PullDialog
from rigbuilder.views.theme_look import Look

_WAITING = "Say lure, rod, line type and test first; then the weakest link can be found."
_SETTLE_MS = 40  # the chain is worked out when the typing rests for as long


class ChainPanel(QWidget):
    """The chain of the rig on the bench; ``shelf`` holds the person's own pull tests."""

    def __init__(
        self, bench: Bench, look: Look, parent: QWidget | None = None, *, shelf: PullShelf | None = None
    ) -> None:
        super().__init__(parent)
        self._look, self._shelf = look, shelf
        self.model = ChainModel(bench, self)
        self.setAccessibleName("Where will it break?")
        self.headline = text_label("Where will it break?", "heading", wrap=True, parent=self)
        self.verdict = RemarkList(look, "The fuse", self)
        self.chart = ChartView(look, "What each link bears", parent=self)
        self.lost = SheetTable("What goes with each link", self)
        self.drag = SheetTable("What drag?", self)
        self.drag_remarks = RemarkList(look, "About the drag", self)
        self.joints = JointList(look, self)
        self.care = TextList("Care of these lines", self)
        self.sources = TextList("How we know", self)
        self.pulls = ActionButton("Own pull tests…", tip="Enter what a scale read", parent=self)
        self.pulls.setVisible(shelf is not None)
        self._lay_out()
        self.joints.tied.connect(self.model.tie)
        self.pulls.clicked.connect(lambda: self.pull_dialog().exec())
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._render)
        self.model.changed.connect(self._later)

    def shown(self) -> ChainShown | None:
        """Return what is shown, brought up to date."""
        self._render()
        return self.model.shown()

    def pull_dialog(self) -> PullDialog:
        """Return the dialog for own pull tests, started with the line and knot at the lure.

        Raises:
            LookupError: if the panel was made without a shelf to keep them on.
        """
        if self._shelf is None:
            raise LookupError("there is no place to keep pull tests")
        bench = self.model.bench
        reference = bench.reference
        dialog = PullDialog(
            self._shelf,
            tuple(str(kind) for kind in reference.line_types),
            tuple(reference.knots),
            bench.speaker.system,
            self,
        )
        end = "leader" if bench.text("leader.type") else "main"
        kind, test = bench.text(f"{end}.type") or "", bench.text(f"{end}.test") or ""
        dialog.start_with(kind, test, bench.text("knots.lure") or "")
        return dialog

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802 (Qt's name)
        """Work the chain out when it is first seen."""
        super().showEvent(event)
        self._render()

    def _lay_out(self) -> None:
        pane = ScrollPane(self._look, "The chain", self)
        self.chart.setFixedHeight(self._look.theme.px(300))
        row = QHBoxLayout()
        row.addWidget(self.pulls)
        row.addStretch(1)
        for widget in (self.headline, self.verdict, self.chart, self.lost):
            pane.column.addWidget(widget)
        pane.fold("What drag?", True, self.drag, self.drag_remarks)
        pane.fold("Joints and knots", True, self.joints)
        pane.column.addLayout(row)
        pane.fold("Care of these lines", False, self.care)
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
        for widget in (self.lost, self.drag, self.joints):
            widget.setEnabled(shown is not None)
        if shown is None:
            self.headline.setText(_WAITING)
            self.chart.set_spec(None)
            return
        self.headline.setText("Where will it break?")
        self.verdict.set_remarks((shown.verdict,))
        self.chart.set_spec(bars(shown))
        self.lost.set_sheet(shown.lost)
        self.drag.set_sheet(shown.drag)
        self.drag_remarks.set_remarks(shown.drag_remarks)
        self.joints.set_joints(shown.joints)
        self.care.set_texts(shown.care)
        self.sources.set_texts(shown.sources)


def bars(shown: ChainShown) -> BarSpec:
    """Return the links as bars, from the hook upwards, with the drag over the rod as a limit."""
    rows = tuple(
        Bar(link.label, link.low, link.typical, link.high, text=link.text, strong=link.is_fuse)
        for link in shown.links
    )
    limits = tuple(Limit(value, label) for label, value in shown.limits[:1])
    return BarSpec("", Axis("pull", shown.unit), rows, limits)
