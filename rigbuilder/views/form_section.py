"""One section of the form: what is asked for first, and the rest behind a link."""

from collections.abc import MutableMapping

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from rigbuilder.viewmodels.form import FormModel, badge
from rigbuilder.viewmodels.literal import literal
from rigbuilder.views.controls.buttons import LinkButton
from rigbuilder.views.controls.foldable import Foldable
from rigbuilder.views.form_group_row import GroupRow, PinBox
from rigbuilder.views.form_label_row import LabelRow
from rigbuilder.views.form_plan import Kind, Row, Section
from rigbuilder.views.form_rows import ChoiceRow, FieldRow, SegmentsRow, TextRow
from rigbuilder.views.theme_look import Look


def make_row(model: FormModel, row: Row, section: str) -> FieldRow:
    """Return the widget for one field."""
    match row.kind:
        case Kind.LABEL:
            return LabelRow(model, row, section)
        case Kind.SEGMENTS:
            return SegmentsRow(model, row, section)
        case Kind.CHOICE | Kind.SEARCH:
            return ChoiceRow(model, row, section, searchable=row.kind is Kind.SEARCH)
        case Kind.TEXT:
            return TextRow(model, row, section)


class FormSection(Foldable):
    """Basic rows, then a link that shows the further ones; both states are remembered."""

    def __init__(
        self, model: FormModel, look: Look, section: Section, memory: MutableMapping[str, bool]
    ) -> None:
        super().__init__(
            look, section.title, key=section.key, memory=memory, open_at_first=section.open_at_first
        )
        self._model, self.section, self._memory = model, section, memory
        # Tab follows the order in which controls come in: link, group, rows.
        self.more = LinkButton("", parent=self)
        self.more.setObjectName(f"more:{section.key}")
        self.more.clicked.connect(lambda: self.show_further(not self._further_shown()))
        self.rows = {row.path: make_row(model, row, section.title) for row in section.rows}
        self.pins = [PinBox(model, part) for part in section.pins]
        self.group = GroupRow(model, section.group, section.title) if section.group else None
        self.column.setSpacing(look.theme.px(6))
        self.column.setContentsMargins(look.theme.px(4), 0, 0, look.theme.px(8))
        if self.group is not None:
            self.column.addWidget(self.group)
        self.fields = QWidget(self.body)
        fields = QVBoxLayout(self.fields)
        fields.setContentsMargins(0, 0, 0, 0)
        fields.setSpacing(look.theme.px(6))
        for row in section.basic:
            fields.addWidget(self.rows[row.path])
        self.further = QWidget(self.fields)
        rest = QVBoxLayout(self.further)
        rest.setContentsMargins(0, 0, 0, 0)
        rest.setSpacing(look.theme.px(6))
        for row in section.further:
            rest.addWidget(self.rows[row.path])
        for pin in self.pins:
            rest.addWidget(pin)
        self._put_link()
        fields.addWidget(self.further)
        self.column.addWidget(self.fields)
        self.show_further(memory.get(f"{section.key}.more", False))

    def show_further(self, shown: bool) -> None:
        """Show or hide the further rows."""
        self._memory[f"{self.section.key}.more"] = shown
        self.further.setVisible(shown)
        count = len(self.section.further)
        words = ", ".join(row.title.lower() for row in self.section.further)
        self.more.setText("fewer" if shown else f"{count} more")
        self.more.setToolTip(literal(f"{'Hide' if shown else 'Show'} {words}"))
        self.more.setAccessibleName(f"{self.section.title}: {self.more.text()} fields")
        self.more.setAccessibleDescription(self.more.toolTip())

    def reveal(self, path: str) -> FieldRow:
        """Open what hides a field, and return its row."""
        self.set_open(True)
        if self.group is not None and not self._model.has_group(self.section.group):
            self._model.set_group(self.section.group, "own")
        if any(row.path == path for row in self.section.further):
            self.show_further(True)
        return self.rows[path]

    def refresh(self) -> None:
        """Bring badge and visible rows up to date."""
        self.set_badge(*badge(self._model.bench, self.section.parts, quiet=self._model.keeps_quiet))
        if self.group is not None:
            self.group.refresh()
            self.fields.setVisible(self._model.has_group(self.section.group))
        self._show_link()
        for pin in self.pins:
            pin.refresh()
        for row in self.rows.values():
            if row.isVisible():
                row.refresh()

    def _put_link(self) -> None:
        """Stand the link at the end of the head, where it costs no line of its own."""
        layout = self.layout()
        head = None if layout is None else layout.itemAt(0)
        row = None if head is None else head.layout()
        assert isinstance(row, QHBoxLayout)  # noqa: S101 - as the base class lays it out
        row.addWidget(self.more)
        self.folded.connect(lambda _: self._show_link())

    def _show_link(self) -> None:
        self.more.setVisible(self.is_open() and not self.fields.isHidden())

    def _further_shown(self) -> bool:
        return not self.further.isHidden()
