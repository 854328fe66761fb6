"""In short: the few figures that go to the water, each of which answers how it is known."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.short import ShortRow, how_we_know, short_rows
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.short_known import KnownSheet
from rigbuilder.views.short_row import RowButton
from rigbuilder.views.theme_look import Look

_EMPTY = "The figures come as soon as the card can be read."


class ShortPanel(QWidget):
    """Rows of name and value; pressing one shows formula, inputs and sources."""

    def __init__(self, bench: Bench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench, self._look = bench, look
        self._rows: dict[str, RowButton] = {}
        self._sheet: KnownSheet | None = None
        self.setAccessibleName("In short")
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, look.theme.px(4), 0, look.theme.px(4))
        self._column.setSpacing(0)
        self.empty = text_label(_EMPTY, "caption", wrap=True, parent=self)
        self._column.addWidget(self.empty)
        self._column.addStretch(1)
        bench.report_changed.connect(self._render)
        bench.units_changed.connect(self._render)
        self._render()

    def rows(self) -> tuple[RowButton, ...]:
        """Return the rows as they stand one below the other."""
        return tuple(self._rows.values())

    def sheet(self) -> KnownSheet | None:
        """Return the sheet that says how a value is known, if it was ever opened."""
        return self._sheet

    def _render(self, *_: object) -> None:
        wanted = short_rows(self._bench)
        self.empty.setVisible(not wanted)
        for key in set(self._rows) - {row.key for row in wanted}:
            gone = self._rows.pop(key)
            self._column.removeWidget(gone)
            gone.hide()
            gone.deleteLater()
        rows: dict[str, RowButton] = {}
        for index, row in enumerate(wanted):
            button = self._rows.get(row.key) or self._new_row(row)
            button.set_row(row)
            if self._column.indexOf(button) != index + 1:
                self._column.removeWidget(button)
                self._column.insertWidget(index + 1, button)
            rows[row.key] = button
        self._rows = rows

    def _new_row(self, row: ShortRow) -> RowButton:
        button = RowButton(self._look, row, self)
        button.clicked.connect(lambda: self._explain(button))
        button.show()
        return button

    def _explain(self, button: RowButton) -> None:
        if self._sheet is None:
            self._sheet = KnownSheet(self._look, self.window())
        self._sheet.show_known(button.row, how_we_know(self._bench, button.row), button)
