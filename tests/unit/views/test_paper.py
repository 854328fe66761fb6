"""Show, print and save from the window: what cannot be done is said, what can is done."""

from pathlib import Path

import pytest
from PySide6.QtCore import QSizeF
from PySide6.QtGui import QPageSize
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtWidgets import QFileDialog, QWidget
from pytestqt.qtbot import QtBot

from rigbuilder.views.sheet.choice import PaperDialog
from rigbuilder.views.sheet.paper import Paper
from rigbuilder.views.sheet.printer import paper_of
from rigbuilder.views.sheet.write import SIZES
from rigbuilder.views.show import ShowWindow
from rigbuilder.views.theme_look import Look
from tests.unit.views.rigs import bench_of, bench_with


class Desk:
    """A window with the verbs, and what was said."""

    def __init__(self, look: Look, qtbot: QtBot, *, readable: bool = True) -> None:
        self.said: list[str] = []
        self.window = QWidget()
        qtbot.addWidget(self.window)
        bench = bench_of("frog") if readable else bench_with({})
        self.paper = Paper(bench, look, self.window, self.said.append)


def answer(monkeypatch: pytest.MonkeyPatch, name: str, chosen: str = "") -> None:
    """Let the file dialog answer."""
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (name, chosen))


def take_paper(monkeypatch: pytest.MonkeyPatch, size: str) -> None:
    """Let the choice of paper be made."""

    def choose(dialog: PaperDialog) -> int:
        dialog.sizes.button(size).click()
        dialog.go.click()
        return dialog.result()

    monkeypatch.setattr(PaperDialog, "exec", choose)


def test_the_page_is_shown_in_the_size_chosen(
    look: Look, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk = Desk(look, qtbot)
    shapes: list[float] = []

    def look_at(dialog: PaperDialog) -> int:
        for size in SIZES:
            dialog.sizes.button(size).click()
            page = dialog.page.pixmap()
            shapes.append(page.width() / page.height())
            assert size in dialog.page.accessibleDescription()
        dialog.cancel.click()
        return dialog.result()

    monkeypatch.setattr(PaperDialog, "exec", look_at)
    desk.paper.save_sheet()
    assert desk.said == []
    assert shapes == [pytest.approx(s.width_mm / s.height_mm, abs=0.01) for s in SIZES.values()]


def test_the_sheet_is_saved_in_the_size_that_was_chosen(
    look: Look, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk = Desk(look, qtbot)
    answer(monkeypatch, str(tmp_path / "frog"))
    take_paper(monkeypatch, "A5")
    desk.paper.save_sheet()
    assert desk.said == ["Saved frog.pdf."]
    box = (tmp_path / "frog.pdf").read_bytes().split(b"/MediaBox [", 1)[1].split(b"]", 1)[0].split()
    assert float(box[2]) / 72 * 25.4 == pytest.approx(148.0, abs=1.0)


@pytest.mark.parametrize(("name", "start"), [("frog", b"<?xml"), ("frog.png", b"\x89PNG")])
def test_the_drawing_is_saved_as_its_name_says(
    look: Look, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str, start: bytes
) -> None:
    desk = Desk(look, qtbot)
    answer(monkeypatch, str(tmp_path / name))
    desk.paper.save_drawing()
    (saved,) = tmp_path.iterdir()
    assert saved.read_bytes().startswith(start)


def test_a_place_that_cannot_be_written_is_named(
    look: Look, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk = Desk(look, qtbot)
    answer(monkeypatch, str(tmp_path / "missing" / "frog.pdf"))
    take_paper(monkeypatch, "A4")
    desk.paper.save_sheet()
    assert desk.said == ["frog.pdf was not saved: No such file or directory. Choose another place."]


def test_a_card_that_cannot_be_read_is_explained(look: Look, qtbot: QtBot) -> None:
    desk = Desk(look, qtbot, readable=False)
    for verb in (desk.paper.show_rig, desk.paper.print_rig, desk.paper.save_sheet, desk.paper.save_drawing):
        verb()
    assert len(desk.said) == 4
    assert all("fill in lure, rod and main line" in text for text in desk.said)


def test_the_show_opens_once(look: Look, qtbot: QtBot) -> None:
    desk = Desk(look, qtbot)
    desk.paper.show_rig()
    desk.paper.show_rig()
    (show,) = desk.window.findChildren(ShowWindow)
    assert show.isVisible()
    show.close()


def test_the_sheet_takes_the_size_of_the_printers_paper(qtbot: QtBot) -> None:
    printer = QPrinter()
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    for sheet in SIZES.values():
        size = QSizeF(sheet.width_mm, sheet.height_mm)
        printer.setPageSize(QPageSize(size, QPageSize.Unit.Millimeter))
        assert paper_of(printer) == sheet
    printer.setPageSize(QPageSize(QPageSize.PageSizeId.A3))
    assert paper_of(printer) == SIZES["A4"]
