"""The form: every field of the card, section by section, in reading order."""

from collections.abc import MutableMapping

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QFrame, QScrollArea, QVBoxLayout, QWidget

from rigbuilder.viewmodels.form import FormModel
from rigbuilder.views.form_keeping import KeepingSection
from rigbuilder.views.form_notes import NotesSection
from rigbuilder.views.form_plan import SECTION_OF, SECTIONS
from rigbuilder.views.form_rows import FieldRow
from rigbuilder.views.form_section import FormSection
from rigbuilder.views.theme_look import Look

_GROUP_FIELD = {"rod": "rod.label", "reel": "reel.label", "lure": "lure.technique", "main": "main.type"}


class FormPanel(QScrollArea):
    """The whole form in a scroll area that follows the focus."""

    def __init__(
        self,
        model: FormModel,
        look: Look,
        memory: MutableMapping[str, bool],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setObjectName("form")
        self.setAccessibleName("The card")
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._model = model
        sheet = QWidget()
        sheet.setProperty("plain", True)
        self.column = QVBoxLayout(sheet)
        theme = look.theme
        self.column.setContentsMargins(theme.px(10), theme.px(8), theme.px(6), theme.px(16))
        self.column.setSpacing(theme.px(4))
        self.sections = {section.key: FormSection(model, look, section, memory) for section in SECTIONS}
        for section in self.sections.values():
            self.column.addWidget(section)
        self.keeping = KeepingSection(model, look, memory)
        self.notes = NotesSection(model, look, memory)
        self.column.addWidget(self.keeping)
        self.column.addWidget(self.notes)
        self.column.addStretch(1)
        self.setWidget(sheet)
        model.changed.connect(self.refresh)
        self.refresh()

    def refresh(self) -> None:
        """Show how every field stands now."""
        for section in self.sections.values():
            section.refresh()
        self.keeping.refresh()
        self.notes.refresh()

    def focus_field(self, path: str) -> bool:
        """Open what hides a field and put the focus there; return False for a path without a field."""
        kept = self.keeping.target(path)
        if kept is not None:
            self.keeping.set_open(True)
            return self._go(kept, kept)
        path = _GROUP_FIELD.get(path, path)
        for section in self.sections.values():
            if section.section.group == path and section.group is not None:
                section.set_open(True)
                return self._go(section.group, section.group.field)
        if path.partition(".")[0] == "notes":
            self.notes.set_open(True)
            return self._go(self.notes, self.notes.edit)
        found = SECTION_OF.get(path)
        if found is None:
            return False
        row = self.sections[found.key].reveal(path)
        return self._go(row, row.target)

    def show_part(self, part: object) -> None:
        """Scroll to the section that holds a part of the rig, opened."""
        for section in self.sections.values():
            if part in section.section.parts:
                section.set_open(True)
                self.column.activate()
                self.ensureWidgetVisible(section, 0, 24)

    def focused_row(self) -> FieldRow | None:
        """Return the row that the keyboard is in."""
        widget = QApplication.focusWidget()
        while widget is not None and not isinstance(widget, FieldRow):
            widget = widget.parentWidget()
        return widget if isinstance(widget, FieldRow) and self.isAncestorOf(widget) else None

    def commit(self) -> None:
        """Put on the card whatever is still held back in a field."""
        for section in self.sections.values():
            for row in section.rows.values():
                row.commit()
        self.keeping.commit()
        self._model.bench.settle()

    def _go(self, whole: QWidget, target: QWidget) -> bool:
        self.column.activate()
        target.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.ensureWidgetVisible(whole, 0, 24)
        return True
