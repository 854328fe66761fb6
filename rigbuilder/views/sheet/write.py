"""The sheet as a PDF file; the drawing alone as SVG or PNG."""

from pathlib import Path

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter

from rigbuilder.model.document import Document
from rigbuilder.viewmodels.scene import RigScene
from rigbuilder.viewmodels.sheet import Report, SheetContent, Speaker, sheet_content
from rigbuilder.views.drawing.rig import paint_rig
from rigbuilder.views.paint.export import (
    A4,
    A5,
    HALF_LETTER,
    LETTER,
    Paint,
    Sheet,
    to_pdf,
    to_png,
    to_svg,
)
from rigbuilder.views.sheet.page import paint_page
from rigbuilder.views.theme import Theme
from rigbuilder.views.theme_palettes import LIGHT

SIZES = {sheet.name: sheet for sheet in (A5, A4, HALF_LETTER, LETTER)}
PICTURE = QSize(1000, 480)


def sheet_pdf(content: SheetContent, size: Sheet) -> bytes:
    """Return the sheet as a PDF of one page; equal content gives equal bytes."""

    def paint(painter: QPainter, rect: QRectF) -> None:
        paint_page(painter, rect, content)

    return to_pdf([paint], size, title=content.title)


def write_sheet(path: Path, document: Document, report: Report, size: Sheet, speaker: Speaker) -> None:
    """Write the sheet of a card as a PDF.

    Raises:
        OSError: if the file cannot be written.
    """
    path.write_bytes(sheet_pdf(sheet_content(document, report, speaker), size))


def drawing_svg(scene: RigScene, theme: Theme = LIGHT, size: QSize = PICTURE) -> bytes:
    """Return the drawn rig as an SVG with its words as text."""
    return to_svg(
        _painter(scene, theme), size, title=scene.title, description=" ".join(scene.spoken.values())
    )


def drawing_png(scene: RigScene, theme: Theme = LIGHT, size: QSize = PICTURE) -> bytes:
    """Return the drawn rig as a PNG, two device pixels for each logical one."""
    return to_png(_painter(scene, theme), size)


def _painter(scene: RigScene, theme: Theme) -> Paint:
    return lambda painter, rect: paint_rig(painter, rect, scene, theme)
