"""What the panes of plans are made of: remarks with their sign, plain tables, steps, a pane that scrolls."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHBoxLayout,
    QHeaderView,
    QScrollArea,
    QSizePolicy,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from rigbuilder.plans.fillsteps import Step
from rigbuilder.plans.known import Remark
from rigbuilder.plans.sheet import Sheet
from rigbuilder.views.controls.badge import SeverityBadge
from rigbuilder.views.controls.flow_layout import FlowLayout
from rigbuilder.views.controls.foldable import Foldable
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.theme_look import Look

_LAST_CHARACTERS = 28  # least width of a table's last column before it wraps, in characters


class Lines(QWidget):
    """A column that is filled anew with widgets made from data; equal data changes nothing."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self._shown: tuple[object, ...] | None = None
        self._made: tuple[tuple[str, QWidget], ...] = ()
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(4)

    def texts(self) -> tuple[str, ...]:
        """Return the words shown, line by line."""
        return tuple(words for words, _ in self._made)

    def fill(self, shown: Sequence[object], made: Sequence[tuple[str, QWidget]]) -> None:
        """Show these widgets; each comes with its words."""
        for _, widget in self._made:
            self._column.removeWidget(widget)
            widget.hide()
            widget.deleteLater()
        for _, widget in made:
            self._column.addWidget(widget)
        self._shown, self._made = tuple(shown), tuple(made)
        self.setVisible(bool(made))
        self.setAccessibleDescription(" ".join(self.texts()))

    def shows(self, shown: Sequence[object]) -> bool:
        """Tell whether these data are shown already."""
        return self._shown == tuple(shown)


class RemarkList(Lines):
    """Remarks one below the other, each with the sign of its severity."""

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self._look = look

    def set_remarks(self, remarks: Sequence[Remark]) -> None:
        """Show these remarks."""
        if not self.shows(remarks):
            self.fill(remarks, [(remark.text, self._row(remark)) for remark in remarks])

    def _row(self, remark: Remark) -> QWidget:
        row = QWidget(self)
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        badge = SeverityBadge(self._look, remark.severity, remark.severity, parent=row)
        line.addWidget(badge, 0, Qt.AlignmentFlag.AlignTop)
        line.addWidget(text_label(remark.text, wrap=True, parent=row), 1)
        return row


class StepList(Lines):
    """Numbered steps."""

    def set_steps(self, steps: Sequence[Step]) -> None:
        """Show these steps."""
        if self.shows(steps):
            return
        words = [f"{number}. {step.title}: {step.text}" for number, step in enumerate(steps, start=1)]
        self.fill(steps, [(text, text_label(text, wrap=True, parent=self)) for text in words])


class TextList(Lines):
    """Sentences in small type: what was taken for granted, how things are known."""

    def set_texts(self, texts: Sequence[str]) -> None:
        """Show these sentences."""
        if not self.shows(texts):
            self.fill(texts, [(text, text_label(text, "caption", wrap=True, parent=self)) for text in texts])


class SheetTable(QTableWidget):
    """A plain table as high as its rows; its last column takes the room that is left."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._sheet: Sheet | None = None
        self.setAccessibleName(name)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.setWordWrap(True)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.verticalHeader().hide()
        head = self.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setSectionsClickable(False)
        head.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)

    def set_sheet(self, sheet: Sheet) -> None:
        """Show a table; an equal one changes nothing."""
        if sheet == self._sheet:
            return
        self._sheet = sheet
        self.setAccessibleDescription(sheet.note)
        self.setColumnCount(len(sheet.head))
        self.setHorizontalHeaderLabels([title.capitalize() for title in sheet.head])
        self.setRowCount(len(sheet.rows))
        for number, row in enumerate(sheet.rows):
            for column, cell in enumerate(row):
                self.setItem(number, column, QTableWidgetItem(cell))
        self._fit()

    def cell(self, row: int, column: int) -> str:
        """Return the text of one cell."""
        item = self.item(row, column)
        return "" if item is None else item.text()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 (Qt's name)
        """Wrap the last column anew and take the height that this needs."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        self._share_out()
        rows = sum(self.rowHeight(row) for row in range(self.rowCount()))
        bar = self.horizontalScrollBar()
        wide = self.horizontalHeader().length() > self.viewport().width()
        self.setFixedHeight(rows + self.horizontalHeader().sizeHint().height() + 2 * self.frameWidth()
                            + (bar.sizeHint().height() if wide else 0))  # fmt: skip

    def _share_out(self) -> None:
        """Give the last column what is left, or what it needs up to a readable width; wrap what is longer."""
        last = self.columnCount() - 1
        if last < 0:
            return
        head, character = self.horizontalHeader(), self.fontMetrics().averageCharWidth()
        head.setSectionResizeMode(last, QHeaderView.ResizeMode.Fixed)
        left = self.viewport().width() - sum(head.sectionSize(column) for column in range(last))
        needed = self.sizeHintForColumn(last) + 2 * character
        width = max(left, min(needed, _LAST_CHARACTERS * character))
        # The height of a row is found for a little less, since the style keeps some room at the edges.
        head.resizeSection(last, width - 2 * character)
        self.resizeRowsToContents()
        head.resizeSection(last, width)


class ButtonRow(QWidget):
    """Buttons side by side, on further lines where the pane is narrow."""

    def __init__(self, *buttons: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        flow = FlowLayout(self, gap=8)
        for button in buttons:
            flow.addWidget(button)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)


class ScrollPane(QScrollArea):
    """A pane that scrolls downwards only."""

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        inner = QWidget()
        inner.setProperty("plain", True)
        self.column = QVBoxLayout(inner)
        theme = look.theme
        self.column.setContentsMargins(theme.px(8), theme.px(4), theme.px(12), theme.px(8))
        self.column.setSpacing(theme.px(8))
        self.setWidget(inner)
        self._look = look

    def fold(self, title: str, open_at_first: bool, *inside: QWidget) -> None:
        """Put widgets under a heading that folds them away."""
        section = Foldable(self._look, title, open_at_first=open_at_first, parent=self.widget())
        for widget in inside:
            section.column.addWidget(widget)
        self.column.addWidget(section)
