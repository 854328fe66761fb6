"""The sheet: one page, all its words, nothing near the edge, light in ink, the same bytes each time."""

import shutil
import subprocess
from pathlib import Path

import pytest
from PySide6.QtGui import QImage
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtWidgets import QApplication

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.sheet import SURE, sheet_content
from rigbuilder.views.sheet.printer import print_sheet
from rigbuilder.views.sheet.write import SIZES, drawing_png, drawing_svg, sheet_pdf, write_sheet
from rigbuilder.views.theme_palettes import DARK
from tests.unit.views.rigs import WRONG_FROG, bench_of
from tests.unit.views.scenes import usual_scene

RIGS = {"frog": WRONG_FROG, "drop-shot": {}, "deep-diver": {}}
_EDGE_MM = 5.0
_DPI = 60

needs_poppler = pytest.mark.skipif(
    shutil.which("pdftotext") is None or shutil.which("pdftoppm") is None, reason="needs poppler's tools"
)


@pytest.fixture(params=sorted(RIGS))
def bench(request: pytest.FixtureRequest, qapp: QApplication) -> Bench:
    """A rig to print."""
    return bench_of(request.param, RIGS[request.param])


def written(bench: Bench, size: str, folder: Path) -> Path:
    """Write the sheet and return its path."""
    assert bench.report is not None
    path = folder / "sheet.pdf"
    write_sheet(path, bench.document, bench.report, SIZES[size], bench.speaker)
    return path


def words(text: str) -> str:
    """Return a text without its line breaks and gaps."""
    return "".join(text.split())


@needs_poppler
@pytest.mark.parametrize("size", SIZES)
def test_every_sure_word_stands_on_the_one_page(bench: Bench, size: str, tmp_path: Path) -> None:
    path = written(bench, size, tmp_path)
    done = subprocess.run(
        ["pdftotext", "-layout", str(path), "-"], capture_output=True, text=True, check=True
    )
    assert done.stdout.count("\f") == 1
    raw = subprocess.run(
        ["pdftotext", "-raw", str(path), "-"], capture_output=True, text=True, check=True
    ).stdout
    printed = words(raw)
    assert bench.report is not None
    content = sheet_content(bench.document, bench.report, bench.speaker)
    assert words(content.title) in printed
    for block in content.blocks:
        assert words(block.title) in printed
        for paragraph in block.paragraphs:
            if paragraph.spare == SURE:
                assert words(paragraph.text) in printed, paragraph.text
    for part in ("rod", "reel", "main"):
        label = next(label for known, label in content.scene.labels.items() if known == part)
        assert words(label) in printed


@needs_poppler
@pytest.mark.parametrize("size", SIZES)
def test_there_is_no_ink_near_the_edge_and_little_in_all(bench: Bench, size: str, tmp_path: Path) -> None:
    path = written(bench, size, tmp_path)
    subprocess.run(
        ["pdftoppm", "-r", str(_DPI), "-gray", "-png", "-singlefile", str(path), str(tmp_path / "page")],
        check=True,
    )
    image = QImage(str(tmp_path / "page.png")).convertToFormat(QImage.Format.Format_Grayscale8)
    width, height = image.width(), image.height()
    rows = [bytes(image.constScanLine(y))[:width] for y in range(height)]
    edge = round(_EDGE_MM / 25.4 * _DPI)
    near = [*rows[:edge], *rows[-edge:], *(row[:edge] for row in rows), *(row[-edge:] for row in rows)]
    assert min(min(row) for row in near) == 255
    assert sum(map(sum, rows)) / (width * height * 255) > 0.9


def test_no_block_is_empty_whatever_is_spared(bench: Bench) -> None:
    assert bench.report is not None
    for block in sheet_content(bench.document, bench.report, bench.speaker).blocks:
        assert any(paragraph.spare == SURE for paragraph in block.paragraphs), block.title


def test_the_same_card_gives_the_same_bytes(bench: Bench) -> None:
    assert bench.report is not None
    content = sheet_content(bench.document, bench.report, bench.speaker)
    assert sheet_pdf(content, SIZES["A5"]) == sheet_pdf(content, SIZES["A5"])


def test_the_printer_takes_the_sheet(qapp: QApplication, tmp_path: Path) -> None:
    bench = bench_of("frog")
    assert bench.report is not None
    printer = QPrinter()
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "out.pdf"))
    assert print_sheet(printer, sheet_content(bench.document, bench.report, bench.speaker), SIZES["A4"])
    assert (tmp_path / "out.pdf").stat().st_size > 5000


def test_the_drawing_is_exported_with_its_words(qapp: QApplication) -> None:
    scene = usual_scene("deep-diver")
    text = drawing_svg(scene).decode()
    for label in (scene.main.words, scene.words["cast"]):
        assert label in text
    image = QImage.fromData(drawing_png(scene, DARK))
    assert (image.width(), image.height()) == (2000, 960)


@needs_poppler
def test_a_small_sheet_says_that_it_is_shortened(qapp: QApplication, tmp_path: Path) -> None:
    bench = bench_of("frog", WRONG_FROG)

    def said(size: str) -> str:
        text = ["pdftotext", str(written(bench, size, tmp_path)), "-"]
        return words(subprocess.run(text, capture_output=True, text=True, check=True).stdout)

    for size in SIZES:
        assert "Localrulescomefirst." in said(size)
    assert "Shortenedtofit" in said("A5")
    assert "Shortenedtofit" not in said("A4")
