"""The only place that wires store, bench and window together."""

import signal
import socket
import sys
import traceback
from collections.abc import Callable, Sequence
from pathlib import Path
from types import TracebackType

from PySide6.QtCore import QSocketNotifier, QTimer
from PySide6.QtWidgets import QApplication

from rigbuilder import resources
from rigbuilder.reference.load import load
from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore
from rigbuilder.store.drafts import Drafts
from rigbuilder.store.history import History
from rigbuilder.store.paths import Places, find_places
from rigbuilder.store.progress import ProgressStore
from rigbuilder.store.pulltests import NAME as PULL_TESTS
from rigbuilder.store.pulltests import PullTestFile
from rigbuilder.store.settings import SettingsFile
from rigbuilder.store.tidy import tidy
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.desk import Desk
from rigbuilder.viewmodels.draftkeeper import DraftKeeper
from rigbuilder.viewmodels.handover import Doorbell
from rigbuilder.viewmodels.lesson_hall import LessonHall
from rigbuilder.viewmodels.practice import Practice
from rigbuilder.viewmodels.preferences import Preferences
from rigbuilder.views.bench_menu import BenchMenu
from rigbuilder.views.dropped import is_lesson
from rigbuilder.views.icons import app_icon
from rigbuilder.views.lesson_menu import LessonsMenu
from rigbuilder.views.library_window import CardsMenu
from rigbuilder.views.theme_look import Look, Mode
from rigbuilder.views.window import MainWindow

FIRST_TECHNIQUE = "frog"
_ASK_AGAIN_MS = 300


def run(files: Sequence[Path]) -> int:
    """Open the window on the files named, or on the last card, or on a usual rig; return the exit code.

    Of several cards the first goes on the bench, the others lead the list of recent ones; a lesson
    among them is shown in the window of lessons.
    """
    application = QApplication(sys.argv[:1])
    application.setApplicationName("Rigbuilder")
    application.setApplicationDisplayName("Rigbuilder")
    application.setDesktopFileName("org.larkmere.Rigbuilder")
    application.setWindowIcon(app_icon())
    places = find_places()
    remarks = [str(trouble) for trouble in places.troubles]
    window = build(application, places, remarks)
    cards_menu = CardsMenu(window, places.cache / "verdicts.json")
    LessonsMenu(window, LessonHall(window.bench, places.lessons, ProgressStore(places.progress), window))
    release = end_politely(window)
    window.show()
    QTimer.singleShot(0, lambda: begin(window, files, remarks))
    doorbell = Doorbell(window)
    doorbell.rung.connect(lambda asked: answer(window, asked))
    code = application.exec()
    doorbell.close()
    cards_menu.close()
    release()
    window.preferences.flush()
    return code


def build(application: QApplication, places: Places, remarks: list[str]) -> MainWindow:
    """Return the window over the person's own files; what is worth a word is added to ``remarks``."""
    preferences = Preferences(SettingsFile(places.settings), application)
    remarks.extend(preferences.remarks)
    tidied = tidy(places, {card.parent for card in preferences.recent})
    if tidied.imported:
        remarks.append(f"An import that was cut short is finished; cards brought in: {tidied.imported}.")
    look = Look(
        application,
        mode=Mode(preferences.theme),
        zoom=_zoom(preferences.recall("zoom")),
        parent=application,
    )
    shipped = load()
    pulls = PullTestFile(places.data / PULL_TESTS, shipped)
    practice = Practice(shipped, places.house, pulls, application)
    remarks.extend(practice.remarks)
    store = CardStore(places.cards, history=History(places.history), bin_=Bin(places.bin))
    bench = Bench({}, practice.reference, practice.house, application)
    practice.lead(bench)
    keeper = DraftKeeper(Drafts(places.drafts), store, application)
    desk = Desk(bench, store, keeper, preferences, application)
    desk.new(FIRST_TECHNIQUE)
    folders = [
        ("Cards", str(places.cards)),
        ("Settings and house file", str(places.config)),
        ("Unsaved work", str(places.drafts)),
        ("Shipped data", str(resources.root())),
    ]
    window = MainWindow(bench, desk, preferences, look, folders=folders)
    BenchMenu(window, practice)
    return window


def begin(window: MainWindow, files: Sequence[Path], remarks: Sequence[str]) -> None:
    """Put the first card on the bench, and offer what an earlier run left unsaved."""
    if not open_cards(window, files):
        last = next((path for path in window.preferences.recent if path.exists()), None)
        if last is not None:
            window.talk.open(last)
    window.talk.offer_drafts()
    if remarks:
        window.say("\n".join(remarks))
    show_lessons(window, files)


def answer(window: MainWindow, files: Sequence[Path]) -> None:
    """Come to the front for a second start; open its files as soon as no question waits for its answer."""
    if window.isMinimized():
        window.showNormal()
    question = QApplication.activeModalWidget()
    if question is not None:
        question.activateWindow()
        if files:
            QTimer.singleShot(_ASK_AGAIN_MS, lambda: answer(window, files))
        return
    window.activateWindow()
    open_cards(window, files)
    show_lessons(window, files)


def open_cards(window: MainWindow, files: Sequence[Path]) -> bool:
    """Put the first card among the files on the bench; return whether there was one."""
    cards = [path for path in files if not is_lesson(path)]
    for path in reversed(cards[1:]):
        window.preferences.opened(path)
    if cards:
        window.talk.open(cards[0])
    return bool(cards)


def show_lessons(window: MainWindow, files: Sequence[Path]) -> None:
    """Have the lessons among the files shown."""
    for path in files:
        if is_lesson(path):
            window.lesson_dropped.emit(path)


def end_politely(window: MainWindow) -> Callable[[], None]:
    """Keep unsaved work when the system ends the program or a mistake is found; return the undoing."""
    reader, writer = socket.socketpair()
    reader.setblocking(False)
    writer.setblocking(False)
    notifier = QSocketNotifier(reader.fileno(), QSocketNotifier.Type.Read, window)
    before = signal.set_wakeup_fd(writer.fileno())
    handlers = {name: signal.signal(name, lambda *_: None) for name in (signal.SIGTERM, signal.SIGINT)}
    hook = sys.excepthook

    def end(*_: object) -> None:
        window.form.commit()
        window.desk.keeper.flush()
        window.preferences.flush()
        application = QApplication.instance()
        if application is not None:
            application.exit(0)

    def mistake(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        traceback.print_exception(kind, error, trace)
        window.desk.keeper.flush()
        window.say("Something went wrong inside Rigbuilder. Your work is kept; save it to be sure.")

    notifier.activated.connect(end)
    sys.excepthook = mistake

    def release() -> None:
        notifier.setEnabled(False)
        sys.excepthook = hook
        signal.set_wakeup_fd(before)
        for name, handler in handlers.items():
            signal.signal(name, handler)
        reader.close()
        writer.close()

    return release


def _zoom(text: str) -> float:
    try:
        return float(text)
    except ValueError:
        return 1.0
