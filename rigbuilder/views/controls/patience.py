"""When to speak of a problem: not while someone writes for the first time."""

from PySide6.QtCore import QObject, QTimer, Signal

PAUSE_MS = 800


class Patience(QObject):
    """Holds a field's problem back until the field is left or the writer pauses.

    Once a problem is shown, every keystroke re-checks it, and it goes at once
    when it is mended; after that the writer is left in peace again.
    """

    shown = Signal(str)  # the problem to show now, empty to clear it

    def __init__(self, parent: QObject | None = None, *, pause_ms: int = PAUSE_MS) -> None:
        super().__init__(parent)
        self._problem = ""
        self._visible = ""
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(pause_ms)
        self._timer.timeout.connect(self._speak)

    def typed(self) -> None:
        """Tell that a key was pressed in the field."""
        self._timer.start()

    def left(self) -> None:
        """Tell that the field was left."""
        self._timer.stop()
        self._speak()

    def tell(self, problem: str) -> None:
        """Take the present problem of the field, empty when there is none."""
        self._problem = problem
        writing = self._timer.isActive()
        if not problem or self._visible or not writing:
            self._speak()

    def _speak(self) -> None:
        if self._visible != self._problem:
            self._visible = self._problem
            self.shown.emit(self._visible)
