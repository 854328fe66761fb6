"""The wheel scrolls the page and never changes a field under the pointer."""

from PySide6.QtCore import QCoreApplication, QEvent, QObject, Qt
from PySide6.QtWidgets import QAbstractScrollArea, QWidget


class WheelGuard(QObject):
    """Event filter that hands wheel events on to whatever scrolls around the guarded widget."""

    def guard(self, widget: QWidget) -> None:
        """Guard one widget; it then takes focus by click or Tab only."""
        widget.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        widget.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 (Qt's name)
        """Hand a wheel event to the scroll area around the guarded widget, if there is one."""
        if event.type() == QEvent.Type.Wheel and isinstance(watched, QWidget):
            area = _scroll_area(watched)
            if area is not None:
                QCoreApplication.sendEvent(area.viewport(), event)
            else:
                event.ignore()
            return True
        return super().eventFilter(watched, event)


def _scroll_area(widget: QWidget) -> QAbstractScrollArea | None:
    around = widget.parentWidget()
    while around is not None and not isinstance(around, QAbstractScrollArea):
        around = around.parentWidget()
    return around
