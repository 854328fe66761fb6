"""What the menu "Bench" does: the plans beside the rig, the middle way, the house rules, the words."""

from collections.abc import Callable

from PySide6.QtCore import QObject, QSize
from PySide6.QtWidgets import QDialog, QWidget

from rigbuilder.viewmodels.choices import option_of
from rigbuilder.viewmodels.practice import Practice
from rigbuilder.views.glossary import GlossaryDialog
from rigbuilder.views.house_dialog import HouseDialog
from rigbuilder.views.middle_dialog import MiddleDialog
from rigbuilder.views.plan_chain import ChainPanel
from rigbuilder.views.plan_fill import FillPanel
from rigbuilder.views.side_window import SideWindow
from rigbuilder.views.window import MainWindow

_PLAN = QSize(980, 720)


class BenchMenu(QObject):
    """Connects the actions; windows are made when they are first wanted."""

    def __init__(self, window: MainWindow, practice: Practice) -> None:
        super().__init__(window)
        self._window, self._practice = window, practice
        self._open: dict[str, SideWindow] = {}
        verbs: dict[str, Callable[[], object]] = {
            "fill": self.show_fill,
            "chain": self.show_chain,
            "middle": lambda: self.middle().exec(),
            "house": self.rule_house,
            "glossary": lambda: self.glossary().exec(),
        }
        for name, verb in verbs.items():
            window.actions_[name].triggered.connect(lambda _=False, verb=verb: verb())

    def show_fill(self) -> SideWindow:
        """Show how the reel is filled."""
        look = self._window.look
        return self._side(
            "fill",
            "Fill the reel — Rigbuilder",
            lambda: FillPanel(self._window.bench, look, ask=self._window.ask),
        )

    def show_chain(self) -> SideWindow:
        """Show what breaks first, joints, drag and care."""
        look, shelf = self._window.look, self._practice.shelf
        return self._side(
            "chain", "Joints and drag — Rigbuilder", lambda: ChainPanel(self._window.bench, look, shelf=shelf)
        )

    def middle(self) -> MiddleDialog:
        """Return the dialog for one rod with two jobs."""
        return MiddleDialog(self._window.bench, self._window.look, self._window)

    def house(self) -> HouseDialog:
        """Return the dialog of the house rules, at the technique on the bench."""
        bench = self._window.bench
        name = option_of("lure.technique", bench.text("lure.technique") or "", bench.reference)
        return HouseDialog(self._practice, name, self._window.look, self._window)

    def rule_house(self) -> None:
        """Let the coach decide, and say that it counts."""
        if self.house().exec() == QDialog.DialogCode.Accepted:
            shipped = self._practice.house.is_shipped
            self._window.say(
                "The shipped practice counts." if shipped else "The house rules count from now on."
            )

    def glossary(self) -> GlossaryDialog:
        """Return the words of the trade."""
        return GlossaryDialog(self._window.bench, self._window.look, self._window)

    def _side(self, name: str, title: str, make: Callable[[], QWidget]) -> SideWindow:
        if name not in self._open:
            side = SideWindow(title, make(), self._window, self._window.look, _PLAN)
            side.setObjectName(f"{name}-window")
            self._open[name] = side
        self._open[name].bring_up()
        return self._open[name]
