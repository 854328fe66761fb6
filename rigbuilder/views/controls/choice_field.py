"""A choice among many names: by list, by typing, never by a stray wheel."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QObject, QPointF, QSignalBlocker, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette, QPen, QPolygonF
from PySide6.QtWidgets import QComboBox, QCompleter, QLineEdit, QWidget

from rigbuilder.viewmodels.literal import literal
from rigbuilder.views.controls.texts import restyle
from rigbuilder.views.controls.wheel_guard import WheelGuard


class ChoiceField(QComboBox):
    """A combo box over (value, text) pairs.

    With ``searchable`` any part of a name can be typed to find it; text that
    names nothing is put back when the field is left.
    """

    chosen = Signal(str)  # the value a person chose

    def __init__(self, name: str, *, searchable: bool = False, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(8)
        self.setMaxVisibleItems(16)
        self._guard = WheelGuard(self)
        self._guard.guard(self)
        self.activated.connect(self._tell)
        if searchable:
            self._make_searchable()

    def set_options(self, options: Sequence[tuple[str, str]]) -> None:
        """Offer these (value, text) pairs, keeping the present value where it is among them."""
        kept = self.value()
        with QSignalBlocker(self):
            self.clear()
            for value, text in options:
                self.addItem(text, value)
        self.set_value(kept)

    def value(self) -> str:
        """Return the value chosen, empty if none is."""
        data = self.currentData()
        return "" if data is None else str(data)

    def set_value(self, value: str) -> None:
        """Choose ``value`` without telling anyone; an unknown one leaves nothing chosen."""
        with QSignalBlocker(self):
            self.setCurrentIndex(self.findData(value))
            if self.isEditable():
                self.setEditText(self.currentText() if self.currentIndex() >= 0 else "")

    def set_problem(self, problem: str) -> None:
        """Mark the field; the words go into its tip and its accessible description."""
        restyle(self, "problem", bool(problem))
        self.setToolTip(literal(problem))
        self.setAccessibleDescription(problem)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Add the chevron, in the colour of the text."""
        super().paintEvent(event)
        group = QPalette.ColorGroup.Normal if self.isEnabled() else QPalette.ColorGroup.Disabled
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        arm = self.fontMetrics().height() / 5
        pen = QPen(self.palette().color(group, QPalette.ColorRole.ButtonText), max(1.4, arm / 2.2))
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        middle = QPointF(self.width() - 3.6 * arm, self.height() / 2)
        painter.drawPolyline(
            QPolygonF(
                [
                    middle + QPointF(-arm, -arm / 2),
                    middle + QPointF(0, arm / 2),
                    middle + QPointF(arm, -arm / 2),
                ]
            )
        )
        painter.end()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 (Qt's name)
        """Settle what was typed when the inner editor is left."""
        if event.type() == QEvent.Type.FocusOut and watched is self.lineEdit():
            self._settle()
        return super().eventFilter(watched, event)

    def _make_searchable(self) -> None:
        editor = QLineEdit(self)
        self.setLineEdit(editor)  # makes the box editable
        self.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        completer = QCompleter(self.model(), self)
        completer.setFilterMode(Qt.MatchFlag.MatchContains)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        completer.setCompletionMode(QCompleter.CompletionMode.PopupCompletion)
        self.setCompleter(completer)
        editor.setAccessibleName(self.accessibleName())
        editor.installEventFilter(self)
        editor.returnPressed.connect(self._settle)

    def _settle(self) -> None:
        typed = self.currentText().strip().casefold()
        names = [self.itemText(index) for index in range(self.count())]
        found = [index for index, name in enumerate(names) if name.casefold() == typed]
        before = self.currentIndex()
        if found and found[0] != before:
            self.setCurrentIndex(found[0])
            self._tell(found[0])
        else:
            self.setEditText(self.itemText(before) if before >= 0 else "")

    def _tell(self, index: int) -> None:
        data = self.itemData(index)
        if data is not None:
            self.chosen.emit(str(data))
