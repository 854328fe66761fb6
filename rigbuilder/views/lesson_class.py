"""The class in a window: every rule beside every junior, to be kept as a table."""

from pathlib import Path

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QHeaderView,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from rigbuilder.viewmodels.lesson_class import ClassShown, class_csv
from rigbuilder.viewmodels.literal import literal
from rigbuilder.views.controls.ask import Ask
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.controls.toast import Toast
from rigbuilder.views.theme_look import Look

_RULE_SHARE = 0.36  # of the width, for the rules' words
_LEAST = 110  # logical pixels for a junior


class ClassTable(QTableWidget):
    """Rules down, juniors across; the words of a rule are set in lines."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.setAccessibleName("The class: rules and juniors")
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        self.setWordWrap(True)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.horizontalHeader().setSectionsClickable(False)
        self.horizontalHeader().setDefaultAlignment(
            Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        )

    def show_class(self, shown: ClassShown) -> None:
        """Show the table."""
        self.setColumnCount(1 + len(shown.juniors))
        self.setRowCount(len(shown.rows))
        self.setHorizontalHeaderLabels(["Rule", *shown.juniors])
        for at, row in enumerate(shown.rows):
            self._put(at, 0, row.words, row.words)
            for column, (cell, said) in enumerate(zip(row.cells, row.spoken, strict=True), start=1):
                self._put(at, column, cell, f"{shown.juniors[column - 1]}: {said}")
        self._share_out()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 (Qt's name)
        """Share the width out anew."""
        super().resizeEvent(event)
        self._share_out()

    def _put(self, row: int, column: int, text: str, spoken: str) -> None:
        item = QTableWidgetItem(text)
        item.setData(Qt.ItemDataRole.AccessibleTextRole, spoken)
        item.setToolTip(literal(spoken))
        self.setItem(row, column, item)

    def _share_out(self) -> None:
        juniors = self.columnCount() - 1
        if juniors < 1:
            return
        width = self.viewport().width()
        words = int(width * _RULE_SHARE)
        self.setColumnWidth(0, words)
        each = max(self._look.theme.px(_LEAST), (width - words) // juniors)
        for column in range(1, juniors + 1):
            self.setColumnWidth(column, each)
        self._set_heights(words)

    def _set_heights(self, width: int) -> None:
        """Give every rule the lines that its words need."""
        metrics, edge = self.fontMetrics(), self._look.theme.px(10)
        room = QRect(0, 0, width - 3 * edge, 10_000)
        for row in range(self.rowCount()):
            item = self.item(row, 0)
            words = "" if item is None else item.text()
            box = metrics.boundingRect(room, int(Qt.TextFlag.TextWordWrap), words)
            self.setRowHeight(row, box.height() + edge)


class ClassPanel(QWidget):
    """The table, what it says in one sentence, and the way to keep it."""

    def __init__(self, look: Look, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ask = ask
        self._shown = ClassShown((), (), "")
        self.summary = text_label("", wrap=True, parent=self)
        self.table = ClassTable(look, self)
        self.export = ActionButton("Save as a table…", tip="Comma-separated values (CSV)", parent=self)
        self.export.clicked.connect(self.save)
        self.toast = Toast(self)
        foot = QHBoxLayout()
        foot.addWidget(self.export)
        foot.addStretch(1)
        column = QVBoxLayout(self)
        gap = look.theme.px(14)
        column.setContentsMargins(gap, gap, gap, gap)
        column.setSpacing(look.theme.px(10))
        column.addWidget(self.summary)
        column.addWidget(self.table, 1)
        column.addLayout(foot)

    def show_class(self, shown: ClassShown) -> None:
        """Show the class as it is now."""
        self._shown = shown
        self.summary.setText(shown.summary)
        self.table.show_class(shown)
        self.table.setVisible(bool(shown.juniors))
        self.export.setEnabled(bool(shown.juniors))

    def save(self) -> None:
        """Write the table to a file that is asked for."""
        path = self._ask.save_path("Save the class", Path.home() / "class.csv", "Tables (*.csv)")
        if path is None:
            return
        try:
            path.write_text(class_csv(self._shown), encoding="utf-8-sig", newline="")
        except OSError as error:
            self.toast.show_message(
                f"The table could not be written: {error.strerror}. Choose another place."
            )
        else:
            self.toast.show_message(f"The class is in “{path.name}”.")
