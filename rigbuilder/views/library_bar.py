"""The head of the library: the search, how cards stand together and in which order, how far the review is."""

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtGui import QFontMetrics, QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QProgressBar, QToolButton, QVBoxLayout, QWidget

from rigbuilder.viewmodels.library_lines import Grouping
from rigbuilder.viewmodels.library_table import SORTING
from rigbuilder.viewmodels.library_words import TITLES, Column
from rigbuilder.viewmodels.literal import literal
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.choice_field import ChoiceField
from rigbuilder.views.controls.segment_row import SegmentRow
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.icons import icon
from rigbuilder.views.theme_look import Look

SEARCH_HELP = (
    "Type any words that stand on the card, in any order.\n"
    'line:braid or line:"16 lb" looks only at the lines\n'
    "technique:frog only at the technique\n"
    "tag:larkmere only at the tags\n"
    "verdict:fault (risk, note, right, unfinished, broken) only at the verdict\n"
    '-word leaves those cards out; "two words" keeps them together'
)
_GROUPS = (("none", "One list"), ("technique", "Technique"), ("tag", "Tag"), ("verdict", "Verdict"))


class LibraryBar(QWidget):
    """Says what is wanted: ``wanted`` after typing or choosing, ``down`` when the list should take over."""

    wanted = Signal()
    down = Signal()
    help_wanted = Signal()
    stop_wanted = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.search = QLineEdit(self)
        self.search.setObjectName("library-search")
        self.search.setAccessibleName("Search the cards")
        self.search.setPlaceholderText("Search: frog, line:braid, tag:larkmere, verdict:fault")
        self.search.setToolTip(SEARCH_HELP)
        self.search.setClearButtonEnabled(True)
        self.search.installEventFilter(self)
        self.help = QToolButton(self)
        self.help.setProperty("quiet", True)
        self.help.setAccessibleName("How to search")
        self.help.setToolTip(SEARCH_HELP)
        self.group = SegmentRow("Group by", _GROUPS, parent=self)
        self.group.set_value("none")
        self.order = ChoiceField("Sort by", parent=self)
        self.order.set_options([(str(int(column)), TITLES[column]) for column in SORTING])
        self.order.set_value(str(int(Column.CHANGED)))
        self.descending = QToolButton(self)
        self.descending.setCheckable(True)
        self.descending.setChecked(True)
        self.progress = QProgressBar(self)
        self.progress.setAccessibleName("Cards reviewed")
        self.progress.setTextVisible(False)
        self.counted = text_label("", "label", parent=self)
        self.counted.setObjectName("library-count")
        self.stop = ActionButton("Stop reviewing", weight="quiet", parent=self)
        self._quiet = QTimer(self)
        self._quiet.setSingleShot(True)
        self._quiet.setInterval(0)  # once the letters that wait are all in the field
        self._lay_out()
        self._wire()
        self._dress()
        self.show_progress(0, 0)

    @property
    def grouping(self) -> Grouping:
        """How cards stand together."""
        return Grouping(self.group.value() or "none")

    @property
    def column(self) -> Column:
        """The column by which cards are in order."""
        return Column(int(self.order.value() or Column.CHANGED))

    @property
    def depends_on_verdicts(self) -> bool:
        """Whether other verdicts would show other cards, or show them in another order."""
        return (
            self.grouping is Grouping.VERDICT
            or self.column is Column.VERDICT
            or "verdict:" in self.search.text().casefold()
        )

    def order_by(self, column: Column) -> None:
        """Put the cards in order by a column; the same one again turns the order round."""
        turned = column is self.column and not self.descending.isChecked()
        self.order.set_value(str(int(column)))
        self.descending.setChecked(turned or (column is Column.CHANGED and column is not self.column))
        self._tell()

    def show_progress(self, left: int, total: int) -> None:
        """Show how far the review of the cards is."""
        self.progress.setVisible(left > 0)
        self.stop.setVisible(left > 0)
        self.stop.setText("Stop reviewing")
        if left:
            self.progress.setRange(0, total)
            self.progress.setValue(total - left)
            self.progress.setToolTip(literal(f"{left:,} cards are not yet reviewed"))

    def show_paused(self, left: int) -> None:
        """Show that the review was stopped, and how it goes on."""
        self.progress.hide()
        self.stop.setText(f"Review {left:,} more")
        self.stop.setVisible(left > 0)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 (Qt's name)
        """Let Down lead from the search to the cards, and Esc empty it first."""
        if watched is self.search and isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            if event.key() in (Qt.Key.Key_Down, Qt.Key.Key_Return, Qt.Key.Key_Enter):
                self._quiet.stop()
                self.wanted.emit()
                self.down.emit()
                return True
            if event.key() == Qt.Key.Key_Escape and self.search.text():
                self.search.clear()
                return True
        return super().eventFilter(watched, event)

    def _lay_out(self) -> None:
        first, second = QHBoxLayout(), QHBoxLayout()
        first.addWidget(self.search, 1)
        first.addWidget(self.help)
        second.addWidget(text_label("Group", "label"))
        second.addWidget(self.group)
        second.addSpacing(self._look.theme.px(12))
        second.addWidget(text_label("Sort", "label"))
        second.addWidget(self.order)
        second.addWidget(self.descending)
        second.addStretch(1)
        for widget in (self.counted, self.progress, self.stop):
            second.addWidget(widget)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(first)
        column.addLayout(second)

    def _wire(self) -> None:
        self.search.textChanged.connect(lambda _: self._quiet.start())
        self._quiet.timeout.connect(self.wanted)
        self.group.chosen.connect(lambda _: self._tell())
        self.order.chosen.connect(lambda _: self._tell())
        self.descending.toggled.connect(lambda _: self._dress())
        self.descending.clicked.connect(lambda _: self._tell())
        self.help.clicked.connect(lambda _: self.help_wanted.emit())
        self.stop.clicked.connect(lambda _: self.stop_wanted.emit())
        self._look.changed.connect(lambda _: self._dress())

    def _tell(self) -> None:
        self._dress()
        self.wanted.emit()

    def _dress(self) -> None:
        self.help.setIcon(icon("help", self._look.theme))
        down = self.descending.isChecked()
        newest = self.column is Column.CHANGED
        words = ("Newest first" if newest else "Z to A") if down else ("Oldest first" if newest else "A to Z")
        if self.column is Column.VERDICT:
            words = "Best first" if down else "Worst first"
        self.descending.setText(words)
        self.descending.setAccessibleName(f"Order: {words}")
        strong = QFontMetrics(self._look.theme.font("strong"))
        for value, text in _GROUPS:
            self.group.button(value).setMinimumWidth(strong.horizontalAdvance(text) + self._look.theme.px(20))
        self.progress.setFixedWidth(self._look.theme.px(140))
