"""The first and the last page of a lesson."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from rigbuilder.viewmodels.lesson import LessonRun
from rigbuilder.viewmodels.lesson_shown import standings_shown
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.theme_look import Look

_HOW = (
    "Look at each rig. Mark what is wrong, on the drawing or below the question, and choose why it is wrong. "
    "Some rigs are right as they are. You may change the card as you think right. There is no hurry."
)


class OpeningPage(QWidget):
    """The coach's introduction, and how a lesson goes."""

    begun = Signal()

    def __init__(self, run: LessonRun, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Introduction")
        self.button = ActionButton("Begin", weight="first", parent=self)
        self.button.setObjectName("begin-lesson")
        self.button.clicked.connect(self.begun)
        column = QVBoxLayout(self)
        column.setSpacing(look.theme.px(10))
        column.addWidget(text_label(run.lesson.introduction, wrap=True, parent=self))
        column.addWidget(text_label(_HOW, wrap=True, parent=self))
        column.addWidget(self.button, 0, Qt.AlignmentFlag.AlignLeft)
        column.addStretch(1)


class DonePage(QWidget):
    """The coach's closing words, and what is understood so far."""

    def __init__(self, run: LessonRun, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._run = run
        self.setAccessibleName("The lesson is done")
        self.closing = text_label(run.lesson.closing, wrap=True, parent=self)
        self.standing = text_label("", wrap=True, parent=self)
        self.again = ActionButton("Take the lesson again", parent=self)
        self.again.setObjectName("again")
        self.again.clicked.connect(run.start_over)
        column = QVBoxLayout(self)
        column.setSpacing(look.theme.px(10))
        column.addWidget(text_label("The lesson is done", "heading", parent=self))
        for widget in (self.closing, self.standing):
            column.addWidget(widget)
        column.addWidget(self.again, 0, Qt.AlignmentFlag.AlignLeft)
        column.addStretch(1)
        run.rig_changed.connect(self.refresh)
        self.refresh()

    def refresh(self) -> None:
        """Show what is understood so far."""
        rows = standings_shown(self._run)
        understood = [f"✓ {row.headline}" for row in rows if row.understood]
        later = [f"· {row.headline}" for row in rows if not row.understood]
        blocks = []
        if understood:
            blocks.append("\n".join(["Understood:", *understood]))
        if later:
            blocks.append("\n".join(["These come back in another rig:", *later]))
        self.standing.setText("\n\n".join(blocks))
