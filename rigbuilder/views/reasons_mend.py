"""“Make it right”: everything that would change, shown before any of it is taken."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from rigbuilder.viewmodels.prospects import Prospect
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.card import Card
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.preview import ProspectView
from rigbuilder.views.theme_look import Look

_NOTHING = "No change on the card alone clears what was found. Each reason says what else can be done."


class MendCard(Card):
    """The proposal with its two answers."""

    taken = Signal()
    dropped = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, parent=parent)
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
        self.apply.clicked.connect(self.taken)
        self.leave.clicked.connect(self.dropped)
        self.hide()

    def offer(self, prospect: Prospect | None) -> None:
        """Show a proposal, or say that no change on the card helps."""
        self.prospect = prospect
        self.title.setText(_NOTHING if prospect is None else "Make it right")
        self.view.setVisible(prospect is not None)
        self.apply.setVisible(prospect is not None)
        self.leave.setText("Close" if prospect is None else "Leave it")
        if prospect is not None:
            self.view.show_prospect(prospect)
        self.show()
        (self.leave if prospect is None else self.apply).setFocus()
