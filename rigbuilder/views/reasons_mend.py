"""“Make it right”: everything that would change, shown before any of it is taken."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.prospects import Prospect, make_right_prospect
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.card import Card
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.preview import ProspectView
from rigbuilder.views.theme_look import Look

_NOTHING = "No change on the card alone clears what was found. Each reason says what else can be done."


class MendCard(Card):
    """The proposal with its two answers."""

    taken = Signal(object)  # the Prospect to take
    dropped = Signal()

    def __init__(self, bench: Bench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, parent=parent)
        self._bench = bench
        self.prospect: Prospect | None = None
        self.setAccessibleName("Make it right")
        self.setProperty("chosen", True)
        self.title = text_label("", "strong", wrap=True, parent=self)
        self.view = ProspectView(look, self)
        self.apply = ActionButton("Change these", weight="first", parent=self)
        self.leave = ActionButton("Leave it", parent=self)
        row = QHBoxLayout()
        row.addWidget(self.apply)
        row.addWidget(self.leave)
        row.addStretch(1)
        self.column.addWidget(self.title)
        self.column.addWidget(self.view)
        self.column.addLayout(row)
        self.apply.clicked.connect(lambda: self.taken.emit(self.prospect))
        self.leave.clicked.connect(self._drop)
        self.hide()

    def propose(self) -> None:
        """Show what would change, and look at it on the bench; or say that no change on the card helps."""
        prospect = self.prospect = make_right_prospect(self._bench)
        self.title.setText(_NOTHING if prospect is None else "Make it right")
        self.view.setVisible(prospect is not None)
        self.apply.setVisible(prospect is not None)
        self.leave.setText("Close" if prospect is None else "Leave it")
        if prospect is not None:
            self.view.show_prospect(prospect)
            self._bench.look_at(prospect.report)
        self.show()
        (self.leave if prospect is None else self.apply).setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 (Qt's name)
        """Esc leaves the card as it is."""
        if event.key() == Qt.Key.Key_Escape:
            self._drop()
        else:
            super().keyPressEvent(event)

    def _drop(self) -> None:
        self.hide()
        self._bench.look_at(None)
        self.dropped.emit()
