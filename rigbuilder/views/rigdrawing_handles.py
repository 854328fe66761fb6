"""All handles over the drawing: made when a part first appears, moved with it, walked by the arrows."""

from collections.abc import Mapping

from PySide6.QtCore import QObject, QRectF, Qt, Signal
from PySide6.QtGui import QPainterPath
from PySide6.QtWidgets import QWidget

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.scene import RigScene
from rigbuilder.views.rigdrawing_handle import PartHandle
from rigbuilder.views.theme_look import Look


class Handles(QObject):
    """One handle for each part on the sheet."""

    picked = Signal(object)  # a Part

    def __init__(self, look: Look, sheet: QWidget) -> None:
        super().__init__(sheet)
        self._look, self._sheet = look, sheet
        self._known: dict[Part, PartHandle] = {}

    def place(self, parts: Mapping[Part, QPainterPath], scene: RigScene | None) -> None:
        """Put the handles over the parts; a part that is not drawn has none."""
        for part, handle in self._known.items():
            handle.setVisible(part in parts and scene is not None)
        if scene is None:
            return
        before: PartHandle | None = None
        for part in (part for part in Part if part in parts and part in scene.spoken):
            handle = self._known.get(part) or self._make(part)
            handle.say(scene.labels[part], scene.spoken[part])
            handle.cover(parts[part].boundingRect(), QRectF(self._sheet.rect()))
            handle.show()
            if before is not None:
                QWidget.setTabOrder(before, handle)
            before = handle

    def choose(self, part: Part | None) -> None:
        """Ring one part."""
        for known, handle in self._known.items():
            handle.setChecked(known is part)

    def focus(self, part: Part) -> None:
        """Give a part the keyboard."""
        if part in self._known:
            self._known[part].setFocus(Qt.FocusReason.MouseFocusReason)

    def _make(self, part: Part) -> PartHandle:
        handle = PartHandle(self._look, part, self._sheet)
        handle.picked.connect(self.picked)
        handle.stepped.connect(self._step)
        self._known[part] = handle
        return handle

    def _step(self, part: Part, by: int) -> None:
        order = [known for known in Part if known in self._known and not self._known[known].isHidden()]
        after = order[(order.index(part) + by) % len(order)]
        self._known[after].setFocus(Qt.FocusReason.TabFocusReason)
