"""Under each figure: how we know, and the ways to take it along."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QSize, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QWidget

from rigbuilder.viewmodels.answers import BREAKS, SPOOL, Shown
from rigbuilder.views.controls.buttons import LinkButton
from rigbuilder.views.paint.export import Paint, to_png, to_svg
from rigbuilder.views.paint.table import as_csv
from rigbuilder.views.questions_note import HowNote
from rigbuilder.views.questions_spec import figure_of
from rigbuilder.views.theme_look import Look

_SAVED = QSize(900, 520)

_PLANS = {
    BREAKS: ("Joints and drag…", "chain"),
    SPOOL: ("Fill the reel…", "fill"),
}

Figure = Callable[[], Shown | None]
Picture = Callable[[Shown], Paint | None]


class AnswerBar(QWidget):
    """Links: how we know (a note over the window), copy as table, save as picture, and the plan behind it."""

    plan_wanted = Signal(str)  # the name of the window's action that opens the plan

    def __init__(self, look: Look, figure: Figure, picture: Picture, parent: QWidget) -> None:
        super().__init__(parent)
        self._look, self._figure, self._picture = look, figure, picture
        self._working: tuple[str, ...] = ()
        self._sources: tuple[str, ...] = ()
        self.how = LinkButton("How we know", tip="The working and the sources behind this answer")
        self.copy = LinkButton("Copy as table", tip="Put the figures on the clipboard, separated by commas")
        self.save = LinkButton("Save picture…", tip="Save this chart as SVG or PNG")
        self.plan = LinkButton("", tip="Open the whole plan in a window of its own")
        self._plan_name = ""
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        for button in (self.how, self.copy, self.save, self.plan):
            row.addWidget(button)
        row.addStretch(1)
        self.plan.hide()
        self.plan.clicked.connect(lambda: self.plan_wanted.emit(self._plan_name))
        self.how.clicked.connect(self.explain)
        self.copy.clicked.connect(self.copy_table)
        self.save.clicked.connect(self._ask_where)

    def tell(self, working: tuple[str, ...], sources: tuple[str, ...]) -> None:
        """Take the working and the sources of the answer shown."""
        self._working, self._sources = working, sources
        self.how.setAccessibleDescription(" ".join((*working, *sources)))
        for button in (self.how, self.copy, self.save):
            button.setEnabled(bool(working or sources))

    def offer_plan(self, question: str) -> None:
        """Offer the plan that a question has, if it has one."""
        words, self._plan_name = _PLANS.get(question, ("", ""))
        self.plan.setText(words)
        self.plan.setVisible(bool(words))

    def explain(self) -> HowNote:
        """Show working and sources in a note over the window, beside the link."""
        self._figure()
        note = HowNote(self._look, self._working, self._sources, self.how)
        note.open()
        return note

    def copy_table(self) -> None:
        """Put the figure's table on the clipboard."""
        found = self._figure()
        spec = None if found is None else figure_of(found, titled=True)
        if spec is not None:
            QGuiApplication.clipboard().setText(as_csv(spec))

    def save_as(self, path: Path) -> None:
        """Write the figure as SVG, or as PNG if the name ends so.

        Raises:
            OSError: if the file cannot be written.
        """
        found = self._figure()
        paint = None if found is None else self._picture(found)
        if found is None or paint is None:
            return
        if path.suffix.casefold() == ".png":
            path.write_bytes(to_png(paint, _SAVED))
        else:
            path.write_bytes(to_svg(paint, _SAVED, title=found.question, description=found.sentence))

    def _ask_where(self) -> None:
        name, _ = QFileDialog.getSaveFileName(self, "Save picture", "chart.svg", "Pictures (*.svg *.png)")
        if name:
            try:
                self.save_as(Path(name))
            except OSError as trouble:
                self.save.setText(f"Not saved: {trouble.strerror}")
                return
            self.save.setText("Save picture…")
