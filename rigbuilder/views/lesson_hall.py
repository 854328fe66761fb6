"""The window of lessons: which there are, who takes one, and what else can be done with it."""

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QComboBox,
    QFrame,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from rigbuilder.viewmodels.lesson_hall import LessonHall, ListedLesson
from rigbuilder.viewmodels.lesson_shown import right_words
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.flow_layout import FlowLayout
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.controls.toast import Toast
from rigbuilder.views.theme_look import Look

_VERBS = (
    ("show", "Show to the room", "The rig on the whole screen; one key reveals step by step"),
    ("paper", "Hand-out…", "A PDF for the juniors, with or without answers, also in large type"),
    ("edit", "Change…", "Change the lesson; a shipped one is changed as a copy"),
    ("new", "New lesson…", "Make a lesson from cards or by spoiling right rigs"),
    ("open", "Open a file…", "A lesson from another place"),
)
_KEPT = "Progress is kept on this machine only, under a first name or nickname. Nothing is sent anywhere."


class LessonsWindow(QWidget):
    """Lists the lessons; ``wanted`` names a verb for the lesson chosen."""

    wanted = Signal(str)

    def __init__(self, hall: LessonHall, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self.hall, self._look = hall, look
        self.setObjectName("lessons-window")
        self.setWindowTitle("Lessons — Rigbuilder")
        self.list = QListWidget(self)
        self.list.setAccessibleName("Lessons")
        self.title = text_label("", "title", wrap=True, parent=self)
        self.about = text_label("", wrap=True, parent=self)
        self.name = QComboBox(self)
        self.name.setEditable(True)
        self.name.setAccessibleName("First name or nickname")
        self.name.setObjectName("junior")
        self.begin = ActionButton("Take this lesson", weight="first", parent=self)
        self.begin.setObjectName("take-lesson")
        self.verbs = {name: ActionButton(text, tip=tip, parent=self) for name, text, tip in _VERBS}
        self.standing = text_label("", wrap=True, parent=self)
        self.export = ActionButton("Export progress…", parent=self)
        self.delete = ActionButton("Delete progress…", parent=self)
        self.class_ = ActionButton("The whole class…", tip="Every rule beside every junior", parent=self)
        self.toast = Toast(self)
        self._rows: list[ListedLesson] = []
        self._guests: list[ListedLesson] = []  # opened from other places, shown while the window lives
        self._lay_out()
        self._wire()
        self.fill()
        self.resize(QSize(look.theme.px(1040), look.theme.px(640)))

    def fill(self) -> None:
        """List what there is now, lessons and names."""
        at = max(0, self.list.currentRow())
        own = self.hall.lessons()
        places = {row.path for row in own}
        self._rows = own + [row for row in self._guests if row.path not in places]
        self.list.blockSignals(True)
        self.list.clear()
        for row in self._rows:
            self.list.addItem(row.path.name if row.lesson is None else row.lesson.name)
        self.list.setCurrentRow(min(at, len(self._rows) - 1))
        self.list.blockSignals(False)
        self.fill_names()
        self._show()

    def choose(self, listed: ListedLesson) -> None:
        """Choose a lesson, also one from elsewhere, and ask for the name."""
        path = listed.path.resolve()
        known = [place for place, row in enumerate(self._rows) if row.path.resolve() == path]
        if not known:
            self._guests = [
                *(row for row in self._guests if row.path != path),
                ListedLesson(path, listed.lesson),
            ]
            self.fill()
            known = [len(self._rows) - 1]
        self.list.setCurrentRow(known[0])
        self._to_name()

    def fill_names(self) -> None:
        """List the juniors whose progress is kept."""
        typed = self.name.currentText()
        self.name.blockSignals(True)
        self.name.clear()
        self.name.addItems([junior.name for junior in self.hall.juniors() if not junior.trouble])
        if typed:
            self.name.setEditText(typed)
        self.name.blockSignals(False)
        self.show_standing()

    @property
    def chosen(self) -> ListedLesson | None:
        """The lesson chosen."""
        at = self.list.currentRow()
        return self._rows[at] if 0 <= at < len(self._rows) else None

    @property
    def junior(self) -> str:
        """The name typed."""
        return " ".join(self.name.currentText().split())

    def show_standing(self, *_: object) -> None:
        """Show what the junior has understood and what not yet, rule by rule."""
        known = self.junior in {junior.name for junior in self.hall.juniors()}
        rows = self.hall.standings(self.junior) if known else ()
        later = [f"· {row.headline} ({row.words})" for row in rows if not row.understood]
        good = [f"✓ {row.headline} ({row.words})" for row in rows if row.understood]
        blocks = (["Not yet, and coming back:", *later] if later else []) + (
            ["Understood:", *good] if good else []
        )
        progress = self.hall.progress(self.junior) if known else None
        right = "" if progress is None else right_words(progress)
        self.standing.setText("\n".join([*blocks, right] if right else blocks))
        lesson = None if self.chosen is None else self.chosen.lesson
        goes_on = known and lesson is not None and self.hall.is_under_way(self.junior, lesson)
        self.begin.setText("Go on with this lesson" if goes_on else "Take this lesson")
        for button in (self.export, self.delete):
            button.setEnabled(known)
        self.class_.setEnabled(self.name.count() > 0)
        self.begin.setEnabled(
            bool(self.junior) and self.chosen is not None and self.chosen.lesson is not None
        )

    def _show(self, *_: object) -> None:
        row = self.chosen
        lesson = None if row is None else row.lesson
        self.title.setText("" if row is None else (row.path.name if lesson is None else lesson.name))
        if lesson is None:
            self.about.setText("" if row is None else row.trouble)
        else:
            count = f"{len(lesson.rigs)} rig{'s' if len(lesson.rigs) != 1 else ''}"
            self.about.setText(f"{lesson.introduction}\n\n{count}, {self._kind(row)}.")
        for name in ("show", "paper", "edit"):
            self.verbs[name].setEnabled(lesson is not None)
        self.show_standing()

    def _kind(self, row: ListedLesson | None) -> str:
        if row is not None and row.shipped:
            return "ships with Rigbuilder"
        return "your own" if row is None or row.path.parent == self.hall.folder else f"from “{row.path}”"

    def _to_name(self, *_: object) -> None:
        self.name.setFocus(Qt.FocusReason.OtherFocusReason)
        line = self.name.lineEdit()
        if line is not None:
            line.selectAll()

    def _wire(self) -> None:
        self.list.currentRowChanged.connect(self._show)
        self.list.itemActivated.connect(self._to_name)
        self.name.editTextChanged.connect(self.show_standing)
        self.begin.clicked.connect(lambda: self.wanted.emit("take"))
        line = self.name.lineEdit()
        if line is not None:
            line.setPlaceholderText("First name or nickname")
            line.returnPressed.connect(self.begin.click)
        for name, button in self.verbs.items():
            button.clicked.connect(lambda _=False, name=name: self.wanted.emit(name))
        self.export.clicked.connect(lambda: self.wanted.emit("export"))
        self.delete.clicked.connect(lambda: self.wanted.emit("delete"))
        self.class_.clicked.connect(lambda: self.wanted.emit("class"))
        self.hall.said.connect(self.toast.show_message)
        QShortcut(QKeySequence(Qt.Key.Key_Escape), self, self.close)

    def _lay_out(self) -> None:
        theme = self._look.theme
        verbs = QWidget(self)
        flow = FlowLayout(verbs, gap=6)
        for button in self.verbs.values():
            flow.addWidget(button)
        take = QHBoxLayout()
        take.addWidget(text_label("Who takes it?", "strong", buddy=self.name, parent=self))
        take.addWidget(self.name, 1)
        take.addWidget(self.begin)
        kept = QHBoxLayout()
        kept.addWidget(self.export)
        kept.addWidget(self.delete)
        kept.addWidget(self.class_)
        kept.addStretch(1)
        right = QVBoxLayout()
        right.setSpacing(theme.px(10))
        right.addWidget(self.title)
        right.addWidget(self.about)
        right.addLayout(take)
        right.addWidget(text_label(_KEPT, "caption", wrap=True, parent=self))
        right.addLayout(kept)
        right.addWidget(_scrolled(self.standing), 1)
        right.addWidget(verbs)
        row = QHBoxLayout(self)
        gap = theme.px(14)
        row.setContentsMargins(gap, gap, gap, gap)
        row.setSpacing(gap)
        row.addWidget(self.list, 2)
        row.addLayout(right, 3)


def _scrolled(standing: QLabel) -> QScrollArea:
    """Return the standing of a junior in an area of its own: after eight lessons it is long."""
    sheet = QWidget()
    sheet.setProperty("plain", True)
    column = QVBoxLayout(sheet)
    column.setContentsMargins(0, 0, 0, 0)
    column.addWidget(standing)
    column.addStretch(1)
    area = QScrollArea()
    area.setAccessibleName("What is understood, and what not yet")
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setWidgetResizable(True)
    area.setWidget(sheet)
    return area
