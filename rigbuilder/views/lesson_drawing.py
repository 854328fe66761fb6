"""The rig of a lesson, drawn: without a word about reasons until they are shown."""

from collections.abc import Iterable
from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from rigbuilder.model.fields import Part
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.lesson_scene import lesson_scene
from rigbuilder.views.rigdrawing_canvas import Canvas
from rigbuilder.views.theme_look import Look

_WAITING = "The rig is drawn again as soon as the card says enough: lure, rod, line type and test."


class LessonDrawing(QWidget):
    """Shows the rig on the bench; a press on a part marks it."""

    part_chosen = Signal(object)

    def __init__(self, bench: Bench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench, self._open = bench, False
        self.canvas = Canvas(look, self)
        self.canvas.part_chosen.connect(self.part_chosen)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.canvas)
        self.setAccessibleName("The rig, drawn. Press a part to mark it.")
        for changed in (bench.report_changed, bench.preview_changed, bench.units_changed):
            changed.connect(self.render_scene)
        self.render_scene()

    def set_open(self, open_: bool) -> None:
        """Show the numbered reasons on the parts, or hide them."""
        if open_ != self._open:
            self._open = open_
            self.render_scene()

    def ring(self, parts: Iterable[Part]) -> None:
        """Ring the part marked last."""
        marked = list(parts)
        self.canvas.choose(marked[-1] if marked else None)

    def render_scene(self, *_: object) -> None:
        """Draw the rig as it stands now, and beside it what is being looked at."""
        report, preview, speaker = self._bench.report, self._bench.preview, self._bench.speaker
        if report is None:
            self.canvas.wait(_WAITING)
            return
        now = lesson_scene(report, speaker, with_reasons=self._open)
        if preview is None:
            self.canvas.show_scene(now)
        else:
            looked = lesson_scene(preview, speaker, with_reasons=self._open)
            self.canvas.show_scene(replace(looked, caption="What if"), ghost=now)
