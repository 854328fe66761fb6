"""The panels around the form, made in one place."""

from dataclasses import dataclass

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.theme_look import Look


class PlainReasons(QWidget):
    field_wanted = Signal(str)
    part_chosen = Signal(object)

    def __init__(self, bench: Bench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        column = QVBoxLayout(self)
        self.words = text_label("", wrap=True)
        column.addWidget(self.words)
        column.addStretch(1)
        bench.report_changed.connect(lambda _: self.refresh())
        self.refresh()

    def choose_part(self, part: object) -> None: ...

    def refresh(self) -> None:
        report = self._bench.report
        found = () if report is None else report.findings
        self.words.setText("\n\n".join(each.headline(self._bench.speaker) for each in found))


@dataclass(frozen=True, slots=True)
class Panels:
    """The panels that show what the bench knows."""

    drawing: PlainReasons
    chart: QWidget
    questions: QWidget
    reasons: PlainReasons
    short: QWidget


def make_panels(bench: Bench, look: Look) -> Panels:
    """Return the panels of the window."""
    return Panels(PlainReasons(bench, look), QWidget(), QWidget(), PlainReasons(bench, look), QWidget())
