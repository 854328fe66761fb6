"""The main window: it puts form, panels, menus and desk together and hands on what one says to another."""

from pathlib import Path

from PySide6.QtCore import QByteArray, QEvent, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QMainWindow, QVBoxLayout, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.choices import technique_ids
from rigbuilder.viewmodels.desk import Desk
from rigbuilder.viewmodels.form import FormModel
from rigbuilder.viewmodels.preferences import Folds, Preferences
from rigbuilder.views.actions import Actions
from rigbuilder.views.assumed import AssumedPanel
from rigbuilder.views.commands import Commands, Reach
from rigbuilder.views.controls.ask import Ask, WindowAsk
from rigbuilder.views.controls.toast import Toast
from rigbuilder.views.desk_talk import DeskTalk
from rigbuilder.views.dropped import card_dropped, is_lesson, is_set
from rigbuilder.views.form import FormPanel
from rigbuilder.views.header import Header
from rigbuilder.views.menus import RecentMenu, fill_menus
from rigbuilder.views.new_dialog import pick_technique
from rigbuilder.views.panels import make_panels
from rigbuilder.views.theme_look import Look
from rigbuilder.views.workspace import Workspace

_LOOK_AFTER_MS = 150
_SMALL_SCREEN = 1440  # logical pixels across, up to which the window starts with all of it


class MainWindow(QMainWindow):
    """One card in one window."""

    set_dropped = Signal(object)  # the path of a set of cards
    lesson_dropped = Signal(object)  # the path of a lesson

    def __init__(
        self,
        bench: Bench,
        desk: Desk,
        preferences: Preferences,
        look: Look,
        *,
        ask: Ask | None = None,
        folders: list[tuple[str, str]] | None = None,
    ) -> None:
        super().__init__()
        self.setObjectName("main-window")
        self.bench, self.desk, self.preferences, self.look = bench, desk, preferences, look
        self.ask: Ask = ask or WindowAsk(self)
        self.model = FormModel(bench, self)
        self.form = FormPanel(self.model, look, Folds(preferences))
        self.panels = make_panels(bench, look)
        self.assumed = AssumedPanel(self.model)
        self.header = Header(bench, desk, look)
        self.workspace = Workspace(self.form, self.panels, self.assumed, look)
        self.toast = Toast(self)
        self.talk = DeskTalk(desk, self.ask, self._pick, self.form.commit, self)
        self.actions_ = Actions(bench.undo_stack, look, self)
        self._lay_out()
        self._recent = RecentMenu(preferences, self.talk.open)
        fill_menus(self.menuBar(), self.actions_, self._recent)
        self.header.add_action(self.actions_.undo)
        self.header.add_action(self.actions_.redo)
        self.setAcceptDrops(True)
        self.commands = Commands(self._reach(folders or []))
        self._wire()
        self._recall()
        self._retitle()

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 (Qt's name)
        """Look at the file again when the person comes back to the window."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.ActivationChange and self.isActiveWindow():
            QTimer.singleShot(_LOOK_AFTER_MS, self.talk.look)

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 (Qt's name)
        """Close when nothing is lost by it."""
        if not self.talk.may_leave():
            event.ignore()
            return
        self.desk.leave()
        self.preferences.remember("geometry", bytes(self.saveGeometry().toBase64().data()).decode())
        self.preferences.remember("columns", self.workspace.state())
        self.preferences.flush()
        event.accept()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:  # noqa: N802 (Qt's name)
        """Take whatever looks like files; which ones, the drop says."""
        if event.mimeData().hasUrls():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:  # noqa: N802 (Qt's name)
        """Open the card that was dropped, or say why not."""
        found = card_dropped(event.mimeData().urls())
        if isinstance(found, Path):
            event.acceptProposedAction()
            if is_set(found):
                self.set_dropped.emit(found)
            elif is_lesson(found):
                self.lesson_dropped.emit(found)
            else:
                self.talk.open(found)
        else:
            self.say(found)

    def say(self, text: str) -> None:
        """Say something in passing."""
        self.toast.show_message(text)

    def go_to(self, path: str) -> None:
        """Put the focus in the field of a path on the card."""
        if path == "name":
            self.header.name.setFocus()
            self.header.name.selectAll()
        elif not self.form.focus_field(path):
            self.say(f"“{path}” has no field here; open the card in a text editor to change it.")

    def _lay_out(self) -> None:
        centre = QWidget()
        column = QVBoxLayout(centre)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.header)
        column.addWidget(self.workspace, 1)
        self.setCentralWidget(centre)

    def _reach(self, folders: list[tuple[str, str]]) -> Reach:
        return Reach(
            bench=self.bench,
            model=self.model,
            preferences=self.preferences,
            look=self.look,
            ask=self.ask,
            talk=self.talk,
            actions=self.actions_,
            form=self.form,
            panels=self.panels,
            assumed=self.assumed,
            workspace=self.workspace,
            window=self,
            go_to=self.go_to,
            say=self.say,
            folders=folders,
        )

    def _pick(self) -> str | None:
        return pick_technique(technique_ids(self.bench.reference), self)

    def _wire(self) -> None:
        self.desk.state_changed.connect(self._retitle)
        self.desk.said.connect(self.say)
        self.bench.undo_stack.cleanChanged.connect(lambda _: self._retitle())
        self.bench.document_changed.connect(lambda _: self._retitle())
        self.header.units_chosen.connect(self.commands.speak)
        self.header.verdict_pressed.connect(self._to_first_reason)
        self.assumed.field_wanted.connect(self.go_to)
        reasons, drawing = self.panels.reasons, self.panels.drawing
        reasons.field_wanted.connect(self.go_to)
        reasons.part_chosen.connect(drawing.choose_part)
        drawing.part_chosen.connect(reasons.choose_part)
        drawing.part_chosen.connect(self.form.show_part)
        self.panels.questions.bar.plan_wanted.connect(lambda name: self.actions_[name].trigger())

    def _recall(self) -> None:
        room = self.screen().availableGeometry().size()
        self.resize(room.boundedTo(QSize(1680, 1000)))
        if room.width() <= _SMALL_SCREEN:
            self.setWindowState(Qt.WindowState.WindowMaximized)
        self.restoreGeometry(QByteArray.fromBase64(self.preferences.recall("geometry").encode()))
        self.workspace.restore(self.preferences.recall("columns"))
        self.commands.speak(self.preferences.units)
        self.header.verdict.setFocus()

    def _to_first_reason(self, field: str) -> None:
        if field:
            self.go_to(field)
        else:
            self.workspace.show_panel(self.panels.reasons)

    def _retitle(self) -> None:
        name = " ".join((self.bench.text("name") or "Rig without a name").split())
        self.setWindowTitle(f"{name.replace('[*]', '')}[*] — Rigbuilder")
        self.setWindowModified(self.desk.is_dirty)
