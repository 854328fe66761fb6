"""The wheel scrolls the page and never changes a field under the pointer."""

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtWidgets import QWidget


class WheelGuard(QObject):
    """Event filter that hands wheel events on to whatever scrolls around the guarded widget."""

    def guard(self, widget: QWidget) -> None:
        """Guard one widget; it then takes focus by click or Tab only."""
        widget.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        widget.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 (Qt's name)
        """Stop a wheel event here, but leave it unaccepted so that it travels to the parents."""
        if event.type() == QEvent.Type.Wheel:
            event.ignore()
            return True
        return super().eventFilter(watched, event)
