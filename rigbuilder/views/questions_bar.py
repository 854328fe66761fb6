"""Under each figure: how we know, and the ways to take it along."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog, QFrame, QHBoxLayout, QVBoxLayout, QWidget

from rigbuilder.viewmodels.answers import Shown
from rigbuilder.views.controls.buttons import LinkButton
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.paint.export import figure_painter, to_png, to_svg
from rigbuilder.views.paint.table import as_csv, describe
from rigbuilder.views.questions_spec import figure_of
from rigbuilder.views.theme_look import Look
from rigbuilder.views.theme_palettes import LIGHT

_SAVED = QSize(900, 520)


class AnswerBar(QWidget):
    """Links: how we know (a note over the window), copy as table, save as picture."""

    def __init__(self, look: Look, figure: Callable[[], Shown | None], parent: QWidget) -> None:
        super().__init__(parent)
        self._look, self._figure = look, figure
        self._working: tuple[str, ...] = ()
        self._sources: tuple[str, ...] = ()
        self.how = LinkButton("How we know", tip="The working and the sources behind this answer")
        self.copy = LinkButton("Copy as table", tip="Put the figures on the clipboard, separated by commas")
        self.save = LinkButton("Save picture…", tip="Save this chart as SVG or PNG")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        for button in (self.how, self.copy, self.save):
            row.addWidget(button)
        row.addStretch(1)
        self.how.clicked.connect(self.explain)
        self.copy.clicked.connect(self.copy_table)
        self.save.clicked.connect(self._ask_where)

    def tell(self, working: tuple[str, ...], sources: tuple[str, ...]) -> None:
        """Take the working and the sources of the answer shown."""
        self._working, self._sources = working, sources
        self.how.setAccessibleDescription(" ".join((*working, *sources)))
        for button in (self.how, self.copy, self.save):
            button.setEnabled(bool(working or sources))

    def explain(self) -> QFrame:
        """Show working and sources in a note beside the link; Esc or a press elsewhere takes it away."""
        note = QFrame(self, Qt.WindowType.Popup)
        note.setProperty("sheet", "card")
        note.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        note.setAccessibleName("How we know")
        note.setFixedWidth(self._look.theme.px(440))
        column = QVBoxLayout(note)
        column.addWidget(text_label("How we know", "heading"))
        for text in self._working:
            column.addWidget(text_label(text, wrap=True))
        for text in self._sources:
            column.addWidget(text_label(text, "caption", wrap=True))
        note.adjustSize()
        note.move(self.how.mapToGlobal(self.how.rect().topLeft()) - note.rect().bottomLeft())
        note.show()
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
        spec = None if found is None else figure_of(found, titled=True)
        if spec is None:
            return
        paint = figure_painter(spec, LIGHT)
        if path.suffix.casefold() == ".png":
            path.write_bytes(to_png(paint, _SAVED))
        else:
            path.write_bytes(to_svg(paint, _SAVED, title=spec.title, description=describe(spec)))

    def _ask_where(self) -> None:
        name, _ = QFileDialog.getSaveFileName(self, "Save picture", "chart.svg", "Pictures (*.svg *.png)")
        if name:
            try:
                self.save_as(Path(name))
            except OSError as trouble:
                self.save.setText(f"Not saved: {trouble.strerror}")
                return
            self.save.setText("Save picture…")
