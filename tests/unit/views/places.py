"""Every window of the program, opened over one bench, for the checks that hold for all of them."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from rigbuilder.store.progress import ProgressStore
from rigbuilder.store.pulltests import PullTestFile
from rigbuilder.viewmodels.choices import technique_ids
from rigbuilder.viewmodels.lesson_hall import LessonHall
from rigbuilder.viewmodels.practice import Practice
from rigbuilder.views.about import KeysDialog
from rigbuilder.views.bench_menu import BenchMenu
from rigbuilder.views.lesson_menu import LessonsMenu
from rigbuilder.views.library_window import CardsMenu
from rigbuilder.views.new_dialog import NewDialog
from rigbuilder.views.theme_look import Look
from tests.unit.viewmodels.parts import reference
from tests.unit.views.parts import Window

NAMES = ("bench", "library", "fill", "chain", "middle", "house", "words", "keys", "new", "lessons")
DIALOGS = ("middle", "house", "words", "keys", "new")


class Places:
    """One of each window, made when it is asked for and kept."""

    def __init__(self, folder: Path, look: Look) -> None:
        self.window = Window(folder, look)
        main, bench = self.window.main, self.window.bench
        pulls = PullTestFile(folder / "pulls.json", reference())
        self.practice = Practice(reference(), folder / "house.toml", pulls, main)
        self.practice.lead(bench)
        self.menu = BenchMenu(main, self.practice)
        self.cards = CardsMenu(main)
        hall = LessonHall(bench, folder / "lessons", ProgressStore(folder / "progress"), main)
        self.lessons = LessonsMenu(main, hall)
        self._make: dict[str, Callable[[], QWidget]] = {
            "bench": lambda: main,
            "library": lambda: self.cards.library,
            "fill": self.menu.show_fill,
            "chain": self.menu.show_chain,
            "middle": self.menu.middle,
            "house": self.menu.house,
            "words": self.menu.glossary,
            "keys": lambda: KeysDialog(main.menuBar(), main),
            "new": lambda: NewDialog(technique_ids(reference()), main),
            "lessons": lambda: self.lessons.window,
        }
        self._made: dict[str, QWidget] = {}

    def open(self, name: str) -> QWidget:
        """Return a window, shown and in front."""
        for other, made in self._made.items():
            if other not in (name, "bench"):
                made.hide()
        if name not in self._made:
            self._made[name] = self._make[name]()
        place = self._made[name]
        place.show()
        place.activateWindow()
        QTest.qWaitForWindowActive(place)
        QApplication.processEvents()
        return place

    def close(self) -> None:
        """Close them all."""
        self.cards.close()
        self.window.close()
