"""One rod for two jobs: two techniques side by side, and the lines that do for both."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QFrame, QGridLayout, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.choices import option_of, techniques
from rigbuilder.viewmodels.middle import Way, ways
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.choice_field import ChoiceField
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.theme_look import Look

_ABOUT = (
    "Each job asks for its own line. Half-way between them there may be one that does for both; "
    "here is what it costs at either end. All of it is common practice."
)
_NONE = "No one line does for both: practice uses different types. Take two rods."


class MiddleDialog(QDialog):
    """Two choosers above the compromises, best first; each can be put on the rig."""

    def __init__(self, bench: Bench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("One rod for two jobs")
        self._bench, self._look = bench, look
        options = techniques(bench.reference)
        present = option_of("lure.technique", bench.text("lure.technique") or "", bench.reference)
        self.one, self.other = (
            ChoiceField(name, searchable=True, parent=self) for name in ("The one job", "The other job")
        )
        for field in (self.one, self.other):
            field.set_options(options)
            field.set_value(present or options[0][0])
            field.chosen.connect(lambda _: self._render())
        self.found: tuple[Way, ...] = ()
        self._sheet = QWidget()
        self._sheet.setProperty("plain", True)
        self._cards = QVBoxLayout(self._sheet)
        self._lay_out()
        self._render()
        self.other.setFocus()

    def take(self, way: Way) -> None:
        """Put a line on the rig, as one step, and close."""
        self._bench.apply(way.changes, f"put on {way.line.partition(';')[0].lower()} for two jobs")
        self.accept()

    def _lay_out(self) -> None:
        px = self._look.theme.px
        grid = QGridLayout()
        for row, (label, field) in enumerate((("The one job", self.one), ("The other job", self.other))):
            grid.addWidget(text_label(label, "label", buddy=field, parent=self), row, 0)
            grid.addWidget(field, row, 1)
        grid.setColumnStretch(1, 1)
        area = QScrollArea(self)
        area.setAccessibleName("Lines that do for both")
        area.setWidgetResizable(True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setWidget(self._sheet)
        close = ActionButton("Close", weight="first", parent=self)
        close.setDefault(True)
        close.clicked.connect(self.reject)
        column = QVBoxLayout(self)
        column.setSpacing(px(8))
        column.addWidget(text_label(_ABOUT, wrap=True, parent=self))
        column.addLayout(grid)
        column.addWidget(area, 1)
        column.addWidget(close, 0, Qt.AlignmentFlag.AlignRight)
        room = self.screen().availableGeometry()
        self.resize(min(px(640), room.width() - 40), min(px(560), room.height() - 80))

    def _render(self) -> None:
        while (item := self._cards.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self.found = ways(self._bench, self.one.value(), self.other.value())
        if not self.found:
            self._cards.addWidget(text_label(_NONE, "strong", wrap=True))
        for way in self.found:
            self._cards.addWidget(self._card(way))
        self._cards.addStretch(1)

    def _card(self, way: Way) -> QWidget:
        card = QFrame()
        card.setProperty("sheet", "card")
        column = QVBoxLayout(card)
        head = QHBoxLayout()
        head.addWidget(text_label(way.line, "heading", wrap=True), 1)
        take = ActionButton("Put it on", weight="remedy", tip="Put this line on the rig; it can be undone")
        take.setAccessibleName(f"Put it on: {way.line}")
        take.clicked.connect(lambda: self.take(way))
        head.addWidget(take, 0, Qt.AlignmentFlag.AlignTop)
        column.addLayout(head)
        for job in way.jobs:
            column.addWidget(text_label(job.name, "strong", wrap=True))
            column.addWidget(text_label(job.cost, wrap=True))
            if job.against:
                column.addWidget(text_label(job.against, "caption", wrap=True))
        return card
