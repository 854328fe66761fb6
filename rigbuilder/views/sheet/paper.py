"""What a person does with a finished rig: show it at the club, print it, keep the sheet or the drawing."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QFileDialog, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.scene import scene_of
from rigbuilder.viewmodels.sheet import sheet_content
from rigbuilder.views.paint.export import A4, Sheet
from rigbuilder.views.sheet.choice import PaperDialog
from rigbuilder.views.sheet.write import drawing_png, drawing_svg, write_sheet
from rigbuilder.views.show import ShowWindow
from rigbuilder.views.theme_look import Look

_UNREADABLE = "The card does not say enough yet for a rig: fill in lure, rod and main line first."


class Paper(QObject):
    """Verbs for the window's menu; ``tell`` says a sentence to the person."""

    def __init__(self, bench: Bench, look: Look, window: QWidget, tell: Callable[[str], None]) -> None:
        super().__init__(window)
        self._bench, self._look, self._window, self._tell = bench, look, window, tell
        self._show: ShowWindow | None = None
        self._size: Sheet = A4

    def show_rig(self) -> None:
        """Open the show on the whole screen."""
        if self._is_readable():
            if self._show is None:
                self._show = ShowWindow(self._bench, self._look, self._window)
            self._show.begin()

    def print_rig(self) -> None:
        """Ask for a printer and print the sheet in the size of its paper."""
        report = self._bench.report
        if not self._is_readable() or report is None:
            return
        from rigbuilder.views.sheet import printer as printing  # Qt's printing: not for the first window

        printer = printing.ask_for_printer(self._bench.text("name") or "Rig", self._window)
        if printer is None:
            return
        content = sheet_content(self._bench.document, report, self._bench.speaker)
        if not printing.print_sheet(printer, content, printing.paper_of(printer)):
            self._tell("The printer did not take the sheet. See that it is on, or save the sheet as a PDF.")

    def save_sheet(self) -> None:
        """Ask for a size of paper, with the page in sight, and for a name; save the sheet as a PDF."""
        report = self._bench.report
        if not self._is_readable() or report is None:
            return
        dialog = PaperDialog(
            sheet_content(self._bench.document, report, self._bench.speaker), self._look,
            title="Save the sheet", verb="Save as PDF…", parent=self._window,
        )  # fmt: skip
        dialog.choose(self._size.name)
        accepted = dialog.exec() == PaperDialog.DialogCode.Accepted
        dialog.deleteLater()
        if not accepted:
            return
        self._size = dialog.size_chosen
        name, _ = QFileDialog.getSaveFileName(
            self._window, "Save the sheet", self._named("pdf"), "PDF (*.pdf)"
        )
        if name:
            self._try(name, "pdf", lambda path: self.write_sheet(path, self._size))

    def save_drawing(self) -> None:
        """Ask for a name and save the drawing as SVG or PNG."""
        if not self._is_readable():
            return
        name, _ = QFileDialog.getSaveFileName(
            self._window, "Save the drawing", self._named("svg"), "Pictures (*.svg *.png)"
        )
        if name:
            self._try(name, "svg", self.write_drawing)

    def write_sheet(self, path: Path, size: Sheet) -> None:
        """Write the sheet of the rig on the bench.

        Raises:
            OSError: if the file cannot be written.
        """
        report = self._bench.report
        if report is not None:
            write_sheet(path, self._bench.document, report, size, self._bench.speaker)

    def write_drawing(self, path: Path) -> None:
        """Write the drawing of the rig on the bench, as PNG if the name ends so, else as SVG.

        Raises:
            OSError: if the file cannot be written.
        """
        report = self._bench.report
        if report is not None:
            scene = scene_of(report, self._bench.speaker)
            path.write_bytes(drawing_png(scene) if path.suffix.casefold() == ".png" else drawing_svg(scene))

    def _is_readable(self) -> bool:
        if self._bench.report is None:
            self._tell(_UNREADABLE)
        return self._bench.report is not None

    def _named(self, suffix: str) -> str:
        words = "".join(letter if letter.isalnum() else "-" for letter in self._bench.text("name") or "rig")
        return f"{'-'.join(filter(None, words.split('-')))[:60] or 'rig'}.{suffix}"

    def _try(self, name: str, suffix: str, write: Callable[[Path], None]) -> None:
        path = Path(name) if Path(name).suffix else Path(f"{name}.{suffix}")
        try:
            write(path)
        except OSError as trouble:
            self._tell(f"{path.name} was not saved: {trouble.strerror}. Choose another place.")
        else:
            self._tell(f"Saved {path.name}.")
