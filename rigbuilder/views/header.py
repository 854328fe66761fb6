"""The head of the window: the card's name, whether it is saved, the verdict, the units."""

from PySide6.QtCore import QSize, QTimer, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QAction, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QToolButton, QWidget

from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.desk import Desk
from rigbuilder.viewmodels.literal import literal
from rigbuilder.viewmodels.verdict import verdict
from rigbuilder.views.controls.segment_row import SegmentRow
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.form_rows import UndoPasser
from rigbuilder.views.theme_look import Look
from rigbuilder.views.verdict_button import VerdictButton

_SETTLED_MS = 700
_WORDS_FROM = 780  # least width in logical pixels for the words about saving


class Header(QWidget):
    """One line over everything; ``verdict_pressed`` brings the field to mend, empty for the reasons."""

    verdict_pressed = Signal(str)
    units_chosen = Signal(object)

    def __init__(self, bench: Bench, desk: Desk, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench, self._desk, self._look = bench, desk, look
        self.name = QLineEdit(self)
        self.name.setObjectName("card-name")
        self.name.setAccessibleName("Name of the card")
        self.name.setPlaceholderText("Name this rig")
        self.name.setAccessibleDescription("It is saved with the card")
        self.name.setMaxLength(200)
        self._passer = UndoPasser(self)
        self.name.installEventFilter(self._passer)
        self.saved = text_label("", "label", parent=self)
        self.saved.setObjectName("saved-state")
        self.verdict = VerdictButton(look, self)
        self.units = SegmentRow("Units", [(str(each), str(each)) for each in UnitSystem], parent=self)
        self.units.setObjectName("units")
        self._buttons: list[QToolButton] = []
        self._spoken, self._quiet = "", QTimer(self)
        self._quiet.setSingleShot(True)
        self._quiet.setInterval(_SETTLED_MS)
        self.row = QHBoxLayout(self)
        self.row.addWidget(self.name, 3)
        for widget in (self.saved, self.verdict):
            self.row.addWidget(widget)
        self.row.addStretch(1)
        self.row.addWidget(self.units)
        self._wire()
        self._dress()
        self.refresh()

    def add_action(self, action: QAction) -> None:
        """Add a button for an action, left of the units."""
        button = QToolButton(self)
        button.setProperty("quiet", True)
        button.setDefaultAction(action)
        button.setAccessibleName(action.text().replace("&", ""))
        action.changed.connect(lambda: button.setAccessibleName(action.text().replace("&", "")))
        self.row.insertWidget(self.row.count() - 1, button)
        self._buttons.append(button)

    def refresh(self) -> None:
        """Show name, state, verdict and units as they are."""
        name = self._bench.text("name") or ""
        if name != self.name.text():
            self.name.setText(name)
            if not self.name.hasFocus():
                self.name.setCursorPosition(0)  # a long name shows its beginning
        self.name.setToolTip(literal(name or "The name of the card; it is saved with it"))
        self.saved.setText(self._desk.place.words(dirty=self._desk.is_dirty))
        self.saved.setToolTip(literal("" if self._desk.path is None else str(self._desk.path)))
        found = verdict(self._bench)
        self.verdict.set_verdict(found.kind, found.text)
        self.units.set_value(str(self._bench.speaker.system))
        self._quiet.start()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 (Qt's name)
        """Leave out in words what the title bar shows anyway, where there is no room for it."""
        super().resizeEvent(event)
        self.saved.setVisible(self.width() >= self._look.theme.px(_WORDS_FROM))

    def _wire(self) -> None:
        self.name.textEdited.connect(lambda text: self._bench.edit("name", text))
        self.name.editingFinished.connect(self._named)
        self.verdict.clicked.connect(lambda: self.verdict_pressed.emit(verdict(self._bench).field))
        self.units.chosen.connect(lambda name: self.units_chosen.emit(UnitSystem(name)))
        self._quiet.timeout.connect(self._announce)
        self._bench.report_changed.connect(lambda _: self.refresh())
        self._bench.units_changed.connect(lambda _: self.refresh())
        self._bench.undo_stack.indexChanged.connect(lambda _: self.refresh())
        self._desk.state_changed.connect(self.refresh)
        self._look.changed.connect(lambda _: self._dress())

    def _named(self) -> None:
        self._bench.settle()
        if not self.name.hasFocus():
            self.name.setCursorPosition(0)

    def _announce(self) -> None:
        """Say the verdict once to those who listen, when an edit has settled."""
        words = self.verdict.accessibleName()
        if words != self._spoken:
            if self._spoken:
                QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self.verdict, words))
            self._spoken = words

    def _dress(self) -> None:
        theme = self._look.theme
        self.name.setFont(theme.font("heading"))
        for button in self._buttons:
            button.setIconSize(QSize(theme.px(16), theme.px(16)))
        self.name.setMinimumWidth(min(theme.px(180), 200))
        self.name.setMaximumWidth(theme.px(420))
        self.units.setMinimumWidth(theme.px(120))
        self.row.setContentsMargins(theme.px(12), theme.px(6), theme.px(12), theme.px(6))
        self.row.setSpacing(theme.px(10))
