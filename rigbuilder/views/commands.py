"""What each action of the window does."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QMainWindow

from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.form import FormModel
from rigbuilder.viewmodels.preferences import Preferences
from rigbuilder.views.about import KeysDialog, tell_about, tell_field
from rigbuilder.views.actions import Actions
from rigbuilder.views.assumed import AssumedPanel
from rigbuilder.views.controls.ask import Ask
from rigbuilder.views.desk_talk import DeskTalk
from rigbuilder.views.form import FormPanel
from rigbuilder.views.panels import Panels
from rigbuilder.views.sheet.paper import Paper
from rigbuilder.views.theme_look import Look, Mode
from rigbuilder.views.workspace import Workspace


@dataclass(frozen=True, slots=True)
class Reach:
    """What the commands act on."""

    bench: Bench
    model: FormModel
    preferences: Preferences
    look: Look
    ask: Ask
    talk: DeskTalk
    actions: Actions
    form: FormPanel
    panels: Panels
    assumed: AssumedPanel
    workspace: Workspace
    window: QMainWindow
    go_to: Callable[[str], None]
    say: Callable[[str], None]
    folders: list[tuple[str, str]]


class Commands(QObject):
    """Connects the actions with what they do."""

    def __init__(self, reach: Reach) -> None:
        super().__init__(reach.window)
        self._reach = reach
        self._wire()
        reach.bench.units_changed.connect(lambda _: self._check_choices())
        self._check_choices()

    def _wire(self) -> None:
        show = self._reach.workspace.show_panel
        paper = Paper(self._reach.bench, self._reach.look, self._reach.window, self._reach.say)
        verbs: dict[str, Callable[[], object]] = {
            "new": self._reach.talk.new,
            "open": self._reach.talk.open_asked,
            "save": self._reach.talk.save,
            "save-as": self._reach.talk.save_as,
            "print": self._settled(paper.print_rig),
            "save-sheet": self._settled(paper.save_sheet),
            "save-drawing": self._settled(paper.save_drawing),
            "show": self._settled(paper.show_rig),
            "quit": self._reach.window.close,
            "set": lambda: self._on_field(assumed=True),
            "unsay": lambda: self._on_field(assumed=False),
            "set-all": self._reach.assumed.set_all,
            "rename": lambda: self._reach.go_to("name"),
            "imperial": lambda: self.speak(UnitSystem.IMPERIAL),
            "metric": lambda: self.speak(UnitSystem.METRIC),
            "system": lambda: self._dress(Mode.SYSTEM),
            "light": lambda: self._dress(Mode.LIGHT),
            "dark": lambda: self._dress(Mode.DARK),
            "zoom-in": lambda: self._zoom(self._reach.look.zoom_in),
            "zoom-out": lambda: self._zoom(self._reach.look.zoom_out),
            "zoom-normal": lambda: self._zoom(lambda: self._reach.look.set_zoom(1.0)),
            "go-form": lambda: self._reach.form.focus_field("lure.technique"),
            "go-drawing": lambda: show(self._reach.panels.drawing),
            "go-chart": lambda: show(self._reach.panels.chart),
            "go-questions": lambda: show(self._reach.panels.questions),
            "go-reasons": lambda: show(self._reach.panels.reasons),
            "go-assumed": lambda: show(self._reach.assumed),
            "help": self._help,
            "shortcuts": lambda: KeysDialog(self._reach.window.menuBar(), self._reach.window).exec(),
            "about": lambda: tell_about(self._reach.ask, self._reach.folders),
        }
        for name, verb in verbs.items():
            self._reach.actions[name].triggered.connect(lambda _=False, verb=verb: verb())

    def _settled(self, verb: Callable[[], None]) -> Callable[[], None]:
        """Return a verb that first puts on the card what is still held back in a field."""

        def do() -> None:
            self._reach.form.commit()
            verb()

        return do

    def speak(self, system: UnitSystem) -> None:
        """Read figures in a unit system, and take bare numbers in its units."""
        self._reach.bench.speak(system)
        self._reach.preferences.units = system

    def _dress(self, mode: Mode) -> None:
        self._reach.look.set_mode(mode)
        self._reach.preferences.theme = str(mode)
        self._check_choices()

    def _zoom(self, change: Callable[[], None]) -> None:
        change()
        self._reach.preferences.remember("zoom", f"{self._reach.look.zoom:g}")

    def _check_choices(self) -> None:
        metric = self._reach.bench.speaker.system is UnitSystem.METRIC
        self._reach.actions["metric" if metric else "imperial"].setChecked(True)
        self._reach.actions[str(self._reach.look.mode)].setChecked(True)

    def _on_field(self, *, assumed: bool) -> None:
        row = self._reach.form.focused_row()
        if row is not None and row.model.state(row.path).settable == assumed:
            row.press()

    def _help(self) -> None:
        row = self._reach.form.focused_row()
        if row is None:
            self._reach.actions["shortcuts"].trigger()
        else:
            tell_field(self._reach.ask, self._reach.model, row.path)
