"""Labels: always plain text, so that whatever stands on a card is shown literally."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget

from rigbuilder.views.theme import FontRole


def text_label(
    text: str = "",
    role: FontRole | str = "body",
    *,
    wrap: bool = False,
    buddy: QWidget | None = None,
    parent: QWidget | None = None,
) -> QLabel:
    """Return a plain-text label in a type role of the theme (or ``label``, ``problem``)."""
    label = QLabel(parent)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setProperty("role", str(role))
    label.setWordWrap(wrap)
    label.setText(text)
    if buddy is not None:
        label.setBuddy(buddy)
    return label


def restyle(widget: QWidget, name: str, value: object) -> None:
    """Set a property that the style sheet reads and repaint the widget accordingly."""
    if widget.property(name) == value:
        return
    widget.setProperty(name, value)
    widget.style().unpolish(widget)
    widget.style().polish(widget)
