"""Which line suits: every type and test under the same review, looked at before it is put on."""

from collections.abc import Callable

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.linechart import Square, chart_of
from rigbuilder.viewmodels.takes import put_on
from rigbuilder.views.controls.badge import SeverityBadge
from rigbuilder.views.controls.card import Card
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.linechart_grid import LineGrid
from rigbuilder.views.preview_toast import tell_taken
from rigbuilder.views.theme import GRADES
from rigbuilder.views.theme_look import Look

QUIET_MS = 30  # the chart is made soon after a change, not with every key
FADE_MS = 250  # a chart that is older than this shows softly that it is
LOOK_MS = 40  # a pointer that passes over many cells looks at the last of them only
_EMPTY = "The chart is drawn as soon as the card can be read."
_HINT = "A line's grade is set by its worst reason. Point at a cell to see it; press to put the line on."


class LineChartPanel(Card):
    """Heading with the key of the signs, the chart, and a line of words on what is looked at."""

    def __init__(self, bench: Bench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, parent=parent)
        self._bench, self._look = bench, look
        self._looked: Square | None = None
        self.setAccessibleName("Which line suits this rig?")
        self.setAccessibleDescription(_HINT)
        self.grid = LineGrid(look, self)
        self.badge = SeverityBadge(look, "works", "", parent=self)
        self.words = text_label("", wrap=True, parent=self)
        self._view = QScrollArea(self)
        self._lay_out()
        self._making = self._timer(QUIET_MS, self.make_now)
        self._fading = self._timer(FADE_MS, self.grid.set_stale)
        self._looking = self._timer(LOOK_MS, self._look_ahead)
        bench.report_changed.connect(self._changed)
        bench.units_changed.connect(self._changed)
        self.grid.looked.connect(self._look_at)
        self.grid.taken.connect(self._put_on)
        self._changed()

    def make_now(self) -> None:
        """Draw the chart at once instead of when typing rests."""
        self._making.stop()
        self._fading.stop()
        self.grid.set_chart(chart_of(self._bench))
        self._fit_view()
        self._look_at(self.grid.looked_at())

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 (Qt's name)
        """Keep room for the scroll bar where the chart is wider than its place."""
        super().resizeEvent(event)
        self._fit_view()

    def _fit_view(self) -> None:
        need = self.grid.sizeHint()
        margins = self.column.contentsMargins()
        room = self.width() - margins.left() - margins.right()
        bar = self._view.horizontalScrollBar().sizeHint().height() if room < need.width() else 0
        self._view.setFixedHeight(need.height() + bar)

    def _timer(self, interval_ms: int, then: Callable[[], None]) -> QTimer:
        timer = QTimer(self)
        timer.setSingleShot(True)
        timer.setInterval(interval_ms)
        timer.timeout.connect(then)
        return timer

    def _lay_out(self) -> None:
        theme = self._look.theme
        head = QHBoxLayout()
        head.setSpacing(theme.px(8))
        head.addWidget(text_label("Which line suits this rig?", "heading", parent=self))
        head.addStretch(1)
        for grade in GRADES:
            head.addWidget(SeverityBadge(self._look, grade, grade, parent=self))
        self._view.setWidget(self.grid)
        self._view.setWidgetResizable(True)
        self._view.setFrameShape(QFrame.Shape.NoFrame)
        self._view.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._view.viewport().setAutoFillBackground(False)
        self.grid.setAutoFillBackground(False)
        self._view.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        foot = QHBoxLayout()
        foot.setSpacing(theme.px(6))
        top = Qt.AlignmentFlag.AlignTop
        foot.addWidget(self.badge, 0, top)
        foot.addWidget(self.words, 1, top)
        self.words.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.words.setContentsMargins(0, theme.px(3), 0, 0)
        self.words.setMinimumHeight(theme.px(3) + 2 * self.words.fontMetrics().lineSpacing())
        self.column.addLayout(head)
        self.column.addWidget(self._view)
        self.column.addLayout(foot)

    def _changed(self, *_: object) -> None:
        self._looking.stop()
        for timer in (self._making, self._fading):
            if not timer.isActive():
                timer.start()

    def _look_at(self, square: Square | None) -> None:
        self._looked = square
        self._tell(square)
        self._looking.start()

    def _look_ahead(self) -> None:
        """Look at the line of the chart of now; while that is in the making, a little later."""
        if self._making.isActive():
            self._looking.start()
            return
        square = self.grid.same(self._looked)
        self._bench.look_at(None if square is None or square.present else square.cell.report)

    def _tell(self, square: Square | None) -> None:
        """Say the grade of a cell and the reason that sets it; at rest, of the present line."""
        chart = self.grid.chart()
        shown = square or (None if chart is None else chart.present())
        self.badge.setVisible(shown is not None)
        if shown is None:
            self.words.setText(_EMPTY)
            return
        self.badge.set_kind(shown.grade, shown.name)
        self.words.setText(f"{shown.says}.")

    def _put_on(self, square: Square) -> None:
        if self._making.isActive():
            self.make_now()
        now = self.grid.same(square)
        if now is not None and not now.present:
            tell_taken(self, f"On the reel now: {now.name}", put_on(self._bench, now.cell))
