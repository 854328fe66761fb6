"""The drawn rig in the window: it follows the bench, and every part of it leads to its fields."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.scene import RigScene, scene_of
from rigbuilder.views.rigdrawing_canvas import Canvas
from rigbuilder.views.theme_look import Look

_WAITING = "The rig is drawn as soon as the card says enough: lure, rod, line type and test."


class DrawingPanel(QWidget):
    """Shows the rig on the bench, or the one that is being looked at before it is taken."""

    part_chosen = Signal(object)  # a Part that a person chose in the drawing

    def __init__(self, bench: Bench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.canvas = Canvas(look, self)
        self.canvas.part_chosen.connect(self.part_chosen)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.canvas)
        self.setAccessibleName("The rig, drawn")
        bench.report_changed.connect(self._render)
        bench.preview_changed.connect(self._render)
        bench.units_changed.connect(self._render)
        self._render()

    def choose_part(self, part: Part | None) -> None:
        """Ring a part in the drawing, without telling anyone; ``None`` takes the ring off."""
        self.canvas.choose(part)

    def scene(self) -> RigScene | None:
        """Return what is drawn now."""
        return self.canvas.scene

    def _render(self, *_: object) -> None:
        report, preview, speaker = self._bench.report, self._bench.preview, self._bench.speaker
        if report is None:
            self.canvas.wait(_WAITING)
            return
        now = scene_of(report, speaker)
        if preview is None:
            self.canvas.show_scene(now)
        else:
            looked = scene_of(preview, speaker)
            self.canvas.show_scene(looked.captioned(f"looking at: {looked.main.words}"), ghost=now)
