"""The open window's doorbell: a second start rings and brings its files, if it has any."""

import socket

from PySide6.QtCore import QObject, QSocketNotifier, Signal

from rigbuilder.store import handover


class Doorbell(QObject):
    """Listens while the window is open; ``rung`` carries the paths of the files to open."""

    rung = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._door: socket.socket | None = handover.listen()
        self._notifier: QSocketNotifier | None = None
        if self._door is not None:
            self._notifier = QSocketNotifier(self._door.fileno(), QSocketNotifier.Type.Read, self)
            self._notifier.activated.connect(self._answer)

    @property
    def is_listening(self) -> bool:
        """Whether later starts come to this window."""
        return self._door is not None

    def close(self) -> None:
        """Stop listening."""
        if self._notifier is not None:
            self._notifier.setEnabled(False)
            self._notifier = None
        if self._door is not None:
            handover.close(self._door)
            self._door = None

    def _answer(self, *_: object) -> None:
        files = None if self._door is None else handover.answer(self._door)
        if files is not None:
            self.rung.emit(files)
