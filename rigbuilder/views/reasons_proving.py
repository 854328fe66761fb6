"""Work that waits until the sheets are painted: proving remedies, and saying the settled verdict."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.prospects import options, verdict
from rigbuilder.viewmodels.reasons import Reason

QUIET_MS = 120  # remedies are proven when typing rests
SETTLED_MS = 700  # a verdict is announced when it has stood so long


class Prover(QObject):
    """Proves the remedies of one reason at a time, so that keys and paint come between."""

    proved = Signal(str, object)  # the rule, and its options

    def __init__(self, bench: Bench, parent: QObject) -> None:
        super().__init__(parent)
        self._bench = bench
        self._waiting: list[Reason] = []
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._next)

    def start(self, reasons: Sequence[Reason], *, at_once: bool = False) -> None:
        """Prove the remedies of these reasons, worst first, and forget those still waiting."""
        self._waiting = list(reasons)
        self._timer.start(0 if at_once else QUIET_MS)

    def _next(self) -> None:
        if not self._waiting:
            return
        reason = self._waiting.pop(0)
        self.proved.emit(reason.rule, options(self._bench, reason.finding))
        if self._waiting:
            self._timer.start(0)


class Announcer(QObject):
    """Tells assistive technology the verdict once it has settled and is another than before."""

    announced = Signal(str)

    def __init__(self, bench: Bench, widget: QWidget, say: Callable[[str], str]) -> None:
        super().__init__(widget)
        self._bench, self._widget, self._say = bench, widget, say
        self._last = verdict(bench.report).text
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(SETTLED_MS)
        self._timer.timeout.connect(self._settle)
        bench.report_changed.connect(lambda _: self._timer.start())

    def _settle(self) -> None:
        now = verdict(self._bench.report).text
        if now == self._last:
            return
        self._last = now
        words = self._say(now)
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self._widget, words))
        self.announced.emit(words)
