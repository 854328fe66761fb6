"""The pages of the house rules: severities, positions, ranges."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QFrame, QGridLayout, QLineEdit, QScrollArea, QVBoxLayout, QWidget

from rigbuilder.viewmodels.choices import techniques
from rigbuilder.viewmodels.houserules import (
    RANKS,
    SHIPPED,
    HouseSheet,
    RangeRow,
    Reference,
    questions,
    range_rows,
    rank_rows,
    rule_rows,
    span_of,
)
from rigbuilder.views.controls.choice_field import ChoiceField
from rigbuilder.views.controls.quantity_field import QuantityField
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.theme_look import Look


class Page(QWidget):
    """A page that scrolls; ``column`` takes its content."""

    changed = Signal()

    def __init__(self, name: str, look: Look) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.head = QVBoxLayout()
        self.sheet_widget = QWidget()
        self.sheet_widget.setProperty("plain", True)
        self.grid = QGridLayout(self.sheet_widget)
        self.grid.setColumnStretch(0, 1)
        self.grid.setHorizontalSpacing(look.theme.px(12))
        self.grid.setVerticalSpacing(look.theme.px(8))
        area = QScrollArea(self)
        area.setAccessibleName(name)
        area.setWidgetResizable(True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setWidget(self.sheet_widget)
        column = QVBoxLayout(self)
        column.addLayout(self.head)
        column.addWidget(area, 1)

    def refresh(self) -> None:
        """Show what the sheet says now."""


class SeverityPage(Page):
    """Every rule with the severity that it has in this house."""

    def __init__(self, sheet: HouseSheet, look: Look) -> None:
        super().__init__("How serious each rule is", look)
        self._sheet = sheet
        self.search = QLineEdit(self)
        self.search.setAccessibleName("Find a rule")
        self.search.setPlaceholderText("Find a rule")
        self.search.setClearButtonEnabled(True)
        self.search.textChanged.connect(self._find)
        self.head.addWidget(self.search)
        self.fields: dict[str, ChoiceField] = {}
        self._rows: list[tuple[str, tuple[QWidget, ...]]] = []
        for place, row in enumerate(rule_rows()):
            words = QWidget(self.sheet_widget)
            column = QVBoxLayout(words)
            column.setContentsMargins(0, 0, 0, 0)
            column.setSpacing(0)
            column.addWidget(text_label(row.title, "strong", wrap=True, parent=words))
            column.addWidget(text_label(row.what, "caption", wrap=True, parent=words))
            field = ChoiceField(f"{row.title}: how serious", parent=self.sheet_widget)
            field.set_options(row.options)
            field.setMinimumContentsLength(16)
            field.chosen.connect(lambda value, name=row.name: self._chosen(name, value))
            self.grid.addWidget(words, place, 0)
            self.grid.addWidget(field, place, 1)
            self.fields[row.name] = field
            self._rows.append((f"{row.title} {row.what}".casefold(), (words, field)))
        self.grid.setRowStretch(len(self._rows), 1)
        self.refresh()

    def refresh(self) -> None:
        """Show what the sheet says now."""
        for name, field in self.fields.items():
            field.set_value(self._sheet.severity(name))

    def _chosen(self, name: str, value: str) -> None:
        self._sheet.set_severity(name, value)
        self.changed.emit()

    def _find(self, text: str) -> None:
        wanted = text.casefold().split()
        for words, widgets in self._rows:
            found = all(word in words for word in wanted)
            for widget in widgets:
                widget.setVisible(found)


class DifferPage(Page):
    """The questions on which anglers differ, with the positions of the house ticked."""

    def __init__(self, sheet: HouseSheet, reference: Reference, look: Look) -> None:
        super().__init__("Where anglers differ", look)
        self._sheet = sheet
        self._questions = {question.id: question for question in questions(reference)}
        self.boxes: dict[str, dict[str, QCheckBox]] = {}
        row = 0
        for question in self._questions.values():
            self.grid.addWidget(text_label(question.topic, "strong", wrap=True), row, 0)
            boxes = self.boxes[question.id] = {}
            for side in question.sides:
                row += 1
                box = boxes[side.id] = QCheckBox(self.sheet_widget)
                box.setAccessibleName(f"{question.topic}: {side.says}")
                said = text_label(side.says, wrap=True, buddy=box)
                line = QGridLayout()
                line.setColumnStretch(1, 1)
                line.addWidget(box, 0, 0)
                line.addWidget(said, 0, 1)
                self.grid.addLayout(line, row, 0)
                box.clicked.connect(lambda _, key=question.id: self._clicked(key))
            row += 1
        self.grid.setRowStretch(row, 1)
        self.refresh()

    def refresh(self) -> None:
        """Show what the sheet says now."""
        for key, boxes in self.boxes.items():
            taken = self._sheet.sides(self._questions[key])
            for side, box in boxes.items():
                box.setChecked(side in taken)

    def _clicked(self, key: str) -> None:
        taken = [side for side, box in self.boxes[key].items() if box.isChecked()]
        self._sheet.set_sides(self._questions[key], taken)
        if not taken:
            self.refresh()
        self.changed.emit()


class RangesPage(Page):
    """Ranks and ranges of one technique; an empty field stands for what ships."""

    def __init__(self, sheet: HouseSheet, reference: Reference, technique: str, look: Look) -> None:
        super().__init__("Ranges of a technique", look)
        self._sheet, self._reference = sheet, reference
        self.technique = ChoiceField("Technique", searchable=True, parent=self)
        self.technique.set_options(techniques(reference))
        self.technique.set_value(technique)
        if not self.technique.value():
            self.technique.setCurrentIndex(0)
        self.head.addWidget(self.technique)
        self.ranks: dict[str, ChoiceField] = {}
        self.ranges: dict[tuple[str, ...], QuantityField] = {}
        self.technique.chosen.connect(lambda _: self.refresh())
        self.refresh()

    def refresh(self) -> None:
        """Show what the sheet says of the technique chosen."""
        while (item := self.grid.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self.ranks, self.ranges = {}, {}
        technique = self._reference.technique(self.technique.value())
        for kind, shipped in rank_rows(technique):
            field = ChoiceField(f"{kind}: rank", parent=self.sheet_widget)
            field.set_options([(SHIPPED, f"as shipped: {shipped}"), *((rank, rank) for rank in RANKS)])
            field.set_value(self._sheet.rank(technique, kind))
            field.setMinimumContentsLength(18)
            field.chosen.connect(lambda rank, kind=kind: self._ranked(kind, rank))
            self.ranks[kind] = field
            self._add(f"{kind.capitalize()}, how it suits", field)
        for row in range_rows(technique):
            edit = QuantityField(row.title, unit=row.unit, parent=self.sheet_widget)
            edit.edit.setPlaceholderText(f"as shipped: {row.shipped}" if row.shipped else "no range ships")
            edit.set_text(self._sheet.range(technique, row))
            edit.edited.connect(lambda text, row=row: self._moved(row, text))
            self.ranges[row.key] = edit
            self._add(row.title, edit)
        self.grid.setRowStretch(self.grid.rowCount(), 1)

    def problem(self) -> str:
        """Return what is wrong with the first range that cannot be read, empty if all can."""
        for field in self.ranges.values():
            try:
                span_of(field.text())
            except ValueError as wrong:
                return str(wrong)
        return ""

    def _add(self, title: str, field: QWidget) -> None:
        row = self.grid.rowCount()
        self.grid.addWidget(text_label(title, "label", wrap=True, buddy=field), row, 0)
        self.grid.addWidget(field, row, 1)

    def _ranked(self, kind: str, rank: str) -> None:
        self._sheet.set_rank(self._reference.technique(self.technique.value()), kind, rank)
        self.changed.emit()

    def _moved(self, row: RangeRow, text: str) -> None:
        field = self.ranges[row.key]
        try:
            self._sheet.set_range(self._reference.technique(self.technique.value()), row, text)
        except ValueError as wrong:
            field.set_problem(str(wrong))
        else:
            field.set_problem("")
            self.changed.emit()
