"""The house rules: what a coach decides otherwise than the shipped practice, kept in one file."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLabel, QTabWidget, QVBoxLayout, QWidget

from rigbuilder.viewmodels.houserules import HouseSheet
from rigbuilder.viewmodels.practice import Practice
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.house_pages import DifferPage, RangesPage, SeverityPage
from rigbuilder.views.theme_look import Look

_ABOUT = (
    "What you decide here goes before the shipped practice, on every card. "
    "Each reason that it touches says so. The shipped practice can be put back with one click."
)


class HouseDialog(QDialog):
    """Three pages over one sheet; nothing is kept before "Save the rules"."""

    def __init__(self, practice: Practice, technique: str, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("House rules")
        self._practice = practice
        self.sheet = HouseSheet(practice.house, practice.shipped)
        self.tabs = QTabWidget(self)
        self.tabs.setDocumentMode(True)
        self.tabs.setAccessibleName("House rules")
        self.severities = SeverityPage(self.sheet, look)
        self.differ = DifferPage(self.sheet, practice.shipped, look)
        self.ranges = RangesPage(self.sheet, practice.shipped, technique, look)
        self.tabs.addTab(self.severities, "How serious")
        self.tabs.addTab(self.differ, "Where anglers differ")
        self.tabs.addTab(self.ranges, "Ranges of a technique")
        self.count: QLabel = text_label("", "label", parent=self)
        self.problem = text_label("", "problem", wrap=True, parent=self)
        self.problem.hide()
        self.back = ActionButton("Put the shipped practice back", parent=self)
        self.save = ActionButton("Save the rules", weight="first", parent=self)
        self.save.setDefault(True)
        self.cancel = ActionButton("Cancel", parent=self)
        self._lay_out(look)
        for page in (self.severities, self.differ, self.ranges):
            page.changed.connect(self._tell)
        self.back.clicked.connect(self.put_back)
        self.save.clicked.connect(self.keep)
        self.cancel.clicked.connect(self.reject)
        self._tell()

    def put_back(self) -> None:
        """Show the shipped practice again; it counts when the rules are saved."""
        self.sheet.clear()
        for page in (self.severities, self.differ, self.ranges):
            page.refresh()
        self._tell()

    def keep(self) -> None:
        """Save the rules and close; what is wrong with a range keeps the dialog open."""
        wrong = self.ranges.problem()
        if wrong:
            self.tabs.setCurrentWidget(self.ranges)
        trouble = wrong or self._practice.decide(self.sheet.entries)
        self.problem.setText(trouble)
        self.problem.setVisible(bool(trouble))
        if not trouble:
            self.accept()

    def _lay_out(self, look: Look) -> None:
        buttons = QHBoxLayout()
        buttons.addWidget(self.back)
        buttons.addStretch(1)
        buttons.addWidget(self.cancel)
        buttons.addWidget(self.save)
        column = QVBoxLayout(self)
        column.setSpacing(look.theme.px(8))
        column.addWidget(text_label(_ABOUT, wrap=True, parent=self))
        column.addWidget(self.tabs, 1)
        column.addWidget(self.count, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.problem)
        column.addLayout(buttons)
        room = self.screen().availableGeometry()
        self.resize(min(look.theme.px(760), room.width() - 40), min(look.theme.px(600), room.height() - 80))

    def _tell(self) -> None:
        count = self.sheet.changed_rules()
        self.count.setText(
            "As shipped." if not count else "1 decision of the house." if count == 1
            else f"{count} decisions of the house."
        )  # fmt: skip
        self.back.setEnabled(count > 0)
