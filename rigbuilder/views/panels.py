"""The panels around the form, made in one place."""

from dataclasses import dataclass

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.views.linechart import LineChartPanel
from rigbuilder.views.reasons import ReasonsPanel
from rigbuilder.views.short import ShortPanel
from rigbuilder.views.theme_look import Look


class _Drawing(QWidget):
    part_chosen = Signal(object)

    def choose_part(self, part: object) -> None: ...


@dataclass(frozen=True, slots=True)
class Panels:
    """The panels that show what the bench knows."""

    drawing: _Drawing
    chart: LineChartPanel
    questions: QWidget
    reasons: ReasonsPanel
    short: ShortPanel


def make_panels(bench: Bench, look: Look) -> Panels:
    """Return the panels of the window."""
    return Panels(
        _Drawing(), LineChartPanel(bench, look), QWidget(), ReasonsPanel(bench, look), ShortPanel(bench, look)
    )
