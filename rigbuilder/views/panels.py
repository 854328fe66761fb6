"""The panels around the form, made in one place."""

from dataclasses import dataclass

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.views.linechart import LineChartPanel
from rigbuilder.views.questions import QuestionsPanel
from rigbuilder.views.reasons import ReasonsPanel
from rigbuilder.views.rigdrawing import DrawingPanel
from rigbuilder.views.short import ShortPanel
from rigbuilder.views.theme_look import Look


@dataclass(frozen=True, slots=True)
class Panels:
    """The panels that show what the bench knows."""

    drawing: DrawingPanel
    chart: LineChartPanel
    questions: QuestionsPanel
    reasons: ReasonsPanel
    short: ShortPanel


def make_panels(bench: Bench, look: Look) -> Panels:
    """Return the panels of the window."""
    return Panels(
        DrawingPanel(bench, look),
        LineChartPanel(bench, look),
        QuestionsPanel(bench, look),
        ReasonsPanel(bench, look),
        ShortPanel(bench, look),
    )
