"""A link that unfolds one paragraph below it."""

from PySide6.QtWidgets import QLabel, QWidget

from rigbuilder.views.controls.buttons import LinkButton


class Disclosure(LinkButton):
    """Shows and hides ``body``; what is folded away is read out all the same when it is unfolded."""

    def __init__(self, title: str, body: QLabel, parent: QWidget | None = None) -> None:
        super().__init__("", parent=parent)
        self._title, self._body = title, body
        self.setCheckable(True)
        self.setAccessibleName(title)
        self.toggled.connect(self._show)
        self._show(False)

    def _show(self, shown: bool) -> None:
        self._body.setVisible(shown)
        self.setText(f"{'▾' if shown else '▸'} {self._title}")
        self.setAccessibleDescription(self._body.text() if shown else "folded")
