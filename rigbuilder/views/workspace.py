"""Where form, panels and reasons stand: three columns that adapt to the size of the window."""

from PySide6.QtCore import QByteArray, QEvent, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QSplitter, QTabWidget, QVBoxLayout, QWidget

from rigbuilder.views.assumed import AssumedPanel
from rigbuilder.views.form import FormPanel
from rigbuilder.views.panels import Panels
from rigbuilder.views.theme_look import Look

_STACKED_FROM = 900  # least height, in logical pixels, that gives chart and questions a place each
_THREE_COLUMNS_FROM = 1180  # least width that gives the reasons a column of their own

# Least widths of the columns, in logical pixels; the first and the last grow with the type.
_FORM, _CENTRE, _SIDE, _SIDE_AT_MOST = 320, 320, 292, 330


class Workspace(QWidget):
    """Form on the left, the rig and its figures in the middle, reasons on the right.

    In a low window chart and questions share one place behind tabs, in a narrow one the reasons too.
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
        self.shared.setAccessibleName("Figures")
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
        self.below.addTab(_scrolled(panels.short, "In short"), "In short")
        self.below.addTab(assumed, "Assumed")
        self._lay_out(look.theme.px(8))
        self._arranged: tuple[bool, bool] | None = None
        self._sized_for = 0
        self._fit()

    def _lay_out(self, gap: int) -> None:
        self.centre = _scrolled(_framed(self.middle, gap), "The rig and its figures")
        self.side = _framed(self.right, gap)
        for column in (self.form, self.centre, self.side):
            self.columns.addWidget(column)
        for splitter in (self.columns, self.middle, self.right):
            splitter.setChildrenCollapsible(False)
            splitter.setHandleWidth(6)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.columns)
        self.middle.setStretchFactor(0, 1)
        self.right.setStretchFactor(0, 1)

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
            for index in range(tabs.count()):
                page = tabs.widget(index)
                if page is not None and (page is panel or page.isAncestorOf(panel)):
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
        if event.type() == QEvent.Type.FontChange and hasattr(self, "_arranged"):
            self._fit()

    def _fit(self) -> None:
        theme = self._look.theme
        # With large type the panels scroll, so that the window still fits a small screen.
        self.form.setMinimumWidth(theme.px(_FORM))
        self.centre.setMinimumWidth(_CENTRE)
        self.side.setMinimumWidth(min(theme.px(_SIDE), _SIDE_AT_MOST))
        narrow = self.width() < theme.px(_THREE_COLUMNS_FROM)
        stacked = not narrow and self.height() >= theme.px(_STACKED_FROM)
        if (narrow, stacked) != self._arranged:
            self._arranged = (narrow, stacked)
            self._place_side(narrow)
            self._place_figures(stacked)
            self._sized_for = 0
        if self._sized_for != self.width():
            self._sized_for = self.width()
            self._share_out(narrow)

    def _share_out(self, narrow: bool) -> None:
        """Give the columns their usual shares of a new width."""
        theme, width = self._look.theme, self.width()
        left = min(theme.px(400), max(theme.px(_FORM), round(width * 0.22)))
        right = 0 if narrow else min(theme.px(480), max(theme.px(_SIDE), round(width * 0.24)))
        self.columns.setSizes([left, max(_CENTRE, width - left - right), right])

    def _place_side(self, narrow: bool) -> None:
        """Stand the reasons on the right, or behind a tab where there is no room for a third column."""
        if narrow:
            self.right.setOrientation(Qt.Orientation.Horizontal)
            self.shared.insertTab(0, self.side, "Reasons")
            self.shared.setCurrentIndex(0)
        else:
            self.right.setOrientation(Qt.Orientation.Vertical)
            self.columns.insertWidget(2, self.side)
            self.side.show()

    def _place_figures(self, stacked: bool) -> None:
        """Stand chart and questions below each other, or behind tabs where the window is low."""
        chart, questions = self.panels.chart, self.panels.questions
        if stacked:
            self.middle.insertWidget(1, chart)
            self.middle.insertWidget(2, questions)
            chart.show()
            questions.show()
            self.middle.setSizes([round(share * self.height()) for share in (0.38, 0.29, 0.33, 0)])
        else:
            self.shared.addTab(chart, "Which line suits?")
            self.shared.addTab(questions, "Questions")
            self.middle.setSizes([self.height() // 2, self.height() // 2])
        self.shared.setVisible(not stacked)


def _framed(splitter: QSplitter, gap: int) -> QWidget:
    """Return a column with air around it."""
    column = QWidget()
    layout = QVBoxLayout(column)
    layout.setContentsMargins(gap, gap // 2, gap, gap)
    layout.addWidget(splitter)
    return column


def _scrolled(widget: QWidget, name: str) -> QScrollArea:
    """Return a place in which a widget scrolls when it does not fit."""
    area = QScrollArea()
    area.setAccessibleName(name)
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    widget.setProperty("plain", True)
    area.setWidget(widget)
    return area


def _takes_focus(widget: QWidget) -> bool:
    return (
        widget.isEnabled() and not widget.isHidden() and bool(widget.focusPolicy() & Qt.FocusPolicy.TabFocus)
    )
