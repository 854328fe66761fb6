"""Where form, panels and reasons stand: three columns that adapt to the size of the window."""

from PySide6.QtCore import QByteArray, QEvent, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QSplitter, QTabWidget, QVBoxLayout, QWidget

from rigbuilder.views.assumed import AssumedPanel
from rigbuilder.views.form import FormPanel
from rigbuilder.views.panels import Panels
from rigbuilder.views.theme_look import Look

_STACKED_FROM = 900  # least height, in logical pixels, that gives chart and questions a place each


class Workspace(QWidget):
    """Form on the left, the rig and its figures in the middle, reasons on the right.

    In a low window chart and questions share one place behind tabs.
    """

    def __init__(
        self,
        form: FormPanel,
        panels: Panels,
        assumed: AssumedPanel,
        look: Look,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.form, self.panels, self.assumed, self._look = form, panels, assumed, look
        self.columns = QSplitter(Qt.Orientation.Horizontal, self)
        self.middle = QSplitter(Qt.Orientation.Vertical)
        self.right = QSplitter(Qt.Orientation.Vertical)
        self.shared = QTabWidget()
        self.shared.setAccessibleName("Chart and questions")
        self.below = QTabWidget()
        self.below.setAccessibleName("In short, assumed")
        for tabs in (self.shared, self.below):
            tabs.setDocumentMode(True)
        self.middle.addWidget(panels.drawing)
        self.middle.addWidget(panels.chart)
        self.middle.addWidget(panels.questions)
        self.middle.addWidget(self.shared)
        self.right.addWidget(panels.reasons)
        self.right.addWidget(self.below)
        self.below.addTab(panels.short, "In short")
        self.below.addTab(assumed, "Assumed")
        gap = look.theme.px(8)
        for column in (form, _framed(self.middle, gap), _framed(self.right, gap)):
            self.columns.addWidget(column)
        for splitter in (self.columns, self.middle, self.right):
            splitter.setChildrenCollapsible(False)
            splitter.setHandleWidth(6)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.columns)
        self._stacked: bool | None = None
        self._sized_for = 0
        self._fit()

    def state(self) -> str:
        """Return how the columns are divided, as text."""
        return bytes(self.columns.saveState().toBase64().data()).decode()

    def restore(self, state: str) -> None:
        """Divide the columns as ``state`` has it."""
        if state:
            self.columns.restoreState(QByteArray.fromBase64(state.encode()))

    def show_panel(self, panel: QWidget) -> None:
        """Bring a panel to the front where it shares its place, and put the focus in it."""
        for tabs in (self.shared, self.below):
            index = tabs.indexOf(panel)
            if index >= 0:
                tabs.setCurrentIndex(index)
        target: QWidget | None = panel
        if panel.focusPolicy() == Qt.FocusPolicy.NoFocus:
            target = next((each for each in panel.findChildren(QWidget) if _takes_focus(each)), None)
        if target is not None:
            target.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 (Qt's name)
        """Adapt to the height."""
        super().resizeEvent(event)
        self._fit()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 (Qt's name)
        """Adapt to the size of the type."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange and hasattr(self, "_stacked"):
            self._fit()

    def _fit(self) -> None:
        theme = self._look.theme
        self.form.setMinimumWidth(theme.px(296))
        self.middle.setMinimumWidth(theme.px(380))
        self.right.setMinimumWidth(theme.px(270))
        stacked = self.height() >= theme.px(_STACKED_FROM)
        if stacked != self._stacked:
            self._stacked = stacked
            self._arrange(stacked)
        if self._sized_for != self.width():
            self._sized_for = self.width()
            self._share_out()

    def _share_out(self) -> None:
        """Give the columns their usual shares of a new width."""
        theme, width = self._look.theme, self.width()
        left = min(theme.px(400), max(theme.px(296), round(width * 0.235)))
        right = min(theme.px(480), max(theme.px(270), round(width * 0.255)))
        self.columns.setSizes([left, max(theme.px(380), width - left - right), right])

    def _arrange(self, stacked: bool) -> None:
        chart, questions = self.panels.chart, self.panels.questions
        if stacked:
            self.middle.insertWidget(1, chart)
            self.middle.insertWidget(2, questions)
            self.shared.hide()
            chart.show()
            questions.show()
            self.middle.setSizes([45, 27, 28, 0])
        else:
            self.shared.addTab(chart, "Which line suits?")
            self.shared.addTab(questions, "Questions")
            self.shared.show()
            self.middle.setSizes([50, 50])


def _framed(splitter: QSplitter, gap: int) -> QWidget:
    """Return a column with air around it."""
    column = QWidget()
    layout = QVBoxLayout(column)
    layout.setContentsMargins(gap, gap // 2, gap, gap)
    layout.addWidget(splitter)
    return column


def _takes_focus(widget: QWidget) -> bool:
    return (
        widget.isEnabled() and not widget.isHidden() and bool(widget.focusPolicy() & Qt.FocusPolicy.TabFocus)
    )
