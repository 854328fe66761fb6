"""What differs, line by line: what is pointed out is marked by words and weight, not by colour alone."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableWidget, QTableWidgetItem, QWidget

from rigbuilder.plans.sheet import harmless
from rigbuilder.viewmodels.compare import Comparison, Row
from rigbuilder.viewmodels.literal import literal
from rigbuilder.views.theme_look import Look

_WHAT_SHARE = 0.26


class CompareTable(QTableWidget):
    """Three parts under headings: on the card, figures, reasons."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._comparison: Comparison | None = None
        self.setAccessibleName("What differs")
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.setWordWrap(True)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.horizontalHeader().setDefaultAlignment(
            Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        )
        self.horizontalHeader().setSectionsClickable(False)
        look.changed.connect(lambda _: self._refresh())

    def show_comparison(self, comparison: Comparison) -> None:
        """Show what differs."""
        self._comparison = comparison
        self._refresh()

    def as_text(self) -> str:
        """Return the table as lines of cells with tabs between them."""
        rows = [
            [item.text().replace("\n", " ") if (item := self.item(row, column)) else ""
             for column in range(self.columnCount())]
            for row in range(self.rowCount())
        ]  # fmt: skip
        titles = ["", *(side.name for side in self._comparison.sides)] if self._comparison else []
        return "\n".join(
            "\t".join(harmless(cell.replace("\t", " ")) for cell in row) for row in [titles, *rows]
        )

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 (Qt's name)
        """Share the width out anew."""
        super().resizeEvent(event)
        self._share_out()

    def _refresh(self) -> None:
        comparison = self._comparison
        if comparison is None:
            return
        self.clear()
        self.clearSpans()
        self.setRowCount(0)
        self.setColumnCount(1 + len(comparison.sides))
        self.setHorizontalHeaderLabels(
            ["", *(f"{place}  {side.name}" for place, side in enumerate(comparison.sides, start=1))]
        )
        parts: Sequence[tuple[str, Sequence[Row], str]] = (
            ("On the card", comparison.card, "The cards say the same."),
            ("Figures", comparison.figures, "No figure differs."),
            ("Reasons", comparison.reasons, "The review finds nothing on any of them."),
        )
        for title, rows, none in parts:
            self._add_heading(title)
            for row in rows:
                self._add(row)
            if not rows:
                self._add(Row(none, ("",) * len(comparison.sides), ("",) * len(comparison.sides)))
        self._share_out()
        self.setCurrentCell(0, 0)

    def _add_heading(self, title: str) -> None:
        row = self.rowCount()
        self.insertRow(row)
        item = QTableWidgetItem(title)
        item.setFont(self._look.theme.font("heading"))
        item.setBackground(self._look.theme.colour("page"))
        item.setFlags(Qt.ItemFlag.ItemIsEnabled)
        self.setItem(row, 0, item)
        self.setSpan(row, 0, 1, self.columnCount())

    def _add(self, told: Row) -> None:
        theme = self._look.theme
        place = self.rowCount()
        self.insertRow(place)
        what = QTableWidgetItem(told.what)
        what.setForeground(theme.colour("soft"))
        what.setData(Qt.ItemDataRole.AccessibleTextRole, told.spoken)
        self.setItem(place, 0, what)
        for column, (value, mark) in enumerate(zip(told.values, told.told, strict=True), start=1):
            shown = f"{value}   {mark}" if mark and mark != "differs" else value
            item = QTableWidgetItem(shown)
            if mark:
                item.setFont(theme.font("strong"))
                item.setBackground(theme.colour("accent_wash"))
                item.setToolTip(
                    literal(
                        f"{mark} from the first card" if mark != "differs" else "Not as on the first card"
                    )
                )
            self.setItem(place, column, item)

    def _share_out(self) -> None:
        if self.columnCount() < 2:
            return
        width = self.viewport().width()
        first = round(_WHAT_SHARE * width)
        self.setColumnWidth(0, first)
        each = (width - first) // (self.columnCount() - 1)
        for column in range(1, self.columnCount()):
            self.setColumnWidth(column, each)
