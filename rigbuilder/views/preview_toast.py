"""One toast a window, shared by all panels."""

from collections.abc import Callable

from PySide6.QtWidgets import QWidget

from rigbuilder.views.controls.toast import Toast


def toast_of(widget: QWidget) -> Toast:
    """Return the toast of the window that ``widget`` is in, made when it is first needed."""
    window = widget.window()
    found = window.findChild(Toast)
    return found if found is not None else Toast(window)


def tell_taken(widget: QWidget, text: str, undo: Callable[[], None] | None) -> None:
    """Say what was done, with the way back; nothing where nothing changed."""
    if undo is not None:
        toast_of(widget).show_message(text, undo=undo)
