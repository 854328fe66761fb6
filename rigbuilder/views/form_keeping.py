"""The section of the form for what is kept beside the rig: tags, prices, the log."""

from collections.abc import Callable, MutableMapping
from datetime import date

from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from rigbuilder.viewmodels import keeping
from rigbuilder.viewmodels.form import FormModel
from rigbuilder.views.controls.buttons import ActionButton, LinkButton
from rigbuilder.views.controls.choice_field import ChoiceField
from rigbuilder.views.controls.foldable import Foldable
from rigbuilder.views.controls.quantity_field import QuantityField
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.form_rows import Caption, UndoPasser
from rigbuilder.views.theme_look import Look


class KeepingSection(Foldable):
    """Tags, what the lines cost, and what was done to them."""

    def __init__(self, model: FormModel, look: Look, memory: MutableMapping[str, bool]) -> None:
        super().__init__(look, "Tags, price and log", key="keeping", memory=memory, open_at_first=False)
        self._bench = model.bench
        self._passer = UndoPasser(self)
        gap = look.theme.px(6)
        self.column.setSpacing(gap)
        self.column.setContentsMargins(look.theme.px(4), 0, 0, look.theme.px(8))
        self._grid = QGridLayout()
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setVerticalSpacing(gap)
        self._grid.setColumnStretch(1, 1)
        self.tags = self._field(
            "tags", "Tags", "larkmere, loan", "Words to find the card by, separated by commas."
        )
        self.prices = {group: self._price(group, name) for group, name in keeping.PRICED}
        self.log = LogList(model, look, self.body)
        self.column.addLayout(self._grid)
        self.column.addWidget(self.log)
        self.tags.edited.connect(lambda text: keeping.write_tags(self._bench, text))
        self.refresh()

    def refresh(self) -> None:
        """Show what the card says."""
        if not self.tags.edit.hasFocus():
            self.tags.set_text(keeping.tags_text(self._bench))
        self.tags.set_problem(keeping.trouble(self._bench, "tags"))
        for group, field in self.prices.items():
            if not field.edit.hasFocus():
                field.set_text(keeping.price_text(self._bench, group))
            field.set_problem(keeping.trouble(self._bench, f"{group}.price"))
        self.log.refresh()

    def target(self, path: str) -> QWidget | None:
        """Return what the keyboard reaches for a path on the card, ``None`` if it is not here."""
        group, _, rest = path.partition(".")
        if group == "tags":
            return self.tags.edit
        if group == "log":
            return self.log.what
        return self.prices[group].edit if rest.startswith("price") and group in self.prices else None

    def commit(self) -> None:
        """Put on the card what is typed and still held back."""
        for group, field in self.prices.items():
            if field.edit.hasFocus():
                keeping.write_price(self._bench, group, field.text())

    def _price(self, group: str, name: str) -> QuantityField:
        field = self._field(
            f"{group}.price",
            f"Price of {name}",
            keeping.PRICE_EXAMPLE,
            "What a spool of it costs, and how much it holds.",
        )
        field.left.connect(lambda: self._priced(group))
        return field

    def _priced(self, group: str) -> None:
        keeping.write_price(self._bench, group, self.prices[group].text())
        self._bench.settle()
        self.refresh()

    def _field(self, name: str, title: str, example: str, about: str) -> QuantityField:
        field = QuantityField(title, placeholder=example, parent=self.body)
        field.edit.setObjectName(f"field:{name}")
        field.edit.installEventFilter(self._passer)
        field.set_help(about)
        field.left.connect(self._bench.settle)
        label = Caption(title, self.body, field.edit)
        row = self._grid.rowCount()
        self._grid.addWidget(label, row, 0)
        self._grid.addWidget(field, row, 1)
        return field


class LogList(QWidget):
    """What was done to the line, day by day, each with a way to take it out; below, one more."""

    def __init__(self, model: FormModel, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._bench = model.bench
        self._shown: tuple[keeping.Entry, ...] | None = None
        self._rows = QVBoxLayout()
        self._rows.setSpacing(2)
        self.what = ChoiceField("What was done", parent=self)
        self.what.set_options([(event, event) for event in keeping.EVENTS])
        self.what.setCurrentIndex(0)
        self.on = QuantityField("On which day", placeholder="2026-05-02", parent=self)
        self.on.set_text(date.today().isoformat())
        self.note = QLineEdit(self)
        self.note.setAccessibleName("Remark on it")
        self.note.setPlaceholderText("remark, if any")
        self.note.setMaxLength(200)
        self.add = ActionButton("Add to the log", tip="Note it with its day", parent=self)
        self.add.clicked.connect(self.put_in)
        first = QHBoxLayout()
        first.addWidget(self.what, 1)
        first.addWidget(self.on, 1)
        second = QHBoxLayout()
        second.addWidget(self.note, 1)
        second.addWidget(self.add)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.theme.px(6))
        column.addWidget(text_label("Log of the line", "strong", parent=self))
        column.addLayout(self._rows)
        column.addLayout(first)
        column.addLayout(second)

    def put_in(self) -> None:
        """Note what was chosen; a day that is none is said beside its field."""
        trouble = keeping.add_entry(self._bench, self.on.text(), self.what.value(), self.note.text())
        self.on.set_problem(trouble)
        if not trouble:
            self.note.clear()

    def refresh(self) -> None:
        """List the entries of the card."""
        entries = keeping.log_entries(self._bench)
        if entries == self._shown:
            return
        self._shown = entries
        while (item := self._rows.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for place, entry in enumerate(entries):
            self._rows.addWidget(self._row(entry, place))

    def _row(self, entry: keeping.Entry, place: int) -> QWidget:
        row = QWidget(self)
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(
            text_label(entry.text, "problem" if entry.problem else "body", wrap=True, parent=row), 1
        )
        out = LinkButton("Take out", tip=entry.problem or "Take it out of the log", parent=row)
        out.setAccessibleName(f"Take out: {entry.text}")
        out.clicked.connect(self._taking(place))
        line.addWidget(out)
        return row

    def _taking(self, place: int) -> Callable[[], None]:
        return lambda: keeping.remove_entry(self._bench, place)
