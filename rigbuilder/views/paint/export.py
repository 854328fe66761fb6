"""Writes a painted figure as SVG, PNG or PDF; the same painting code as on screen."""

import re
from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMarginsF, QRectF, QSize, QSizeF, QUuid
from PySide6.QtGui import QImage, QImageWriter, QPageLayout, QPageSize, QPainter, QPdfWriter
from PySide6.QtSvg import QSvgGenerator

from rigbuilder.views.paint.bars import paint_bars
from rigbuilder.views.paint.chart import paint_chart
from rigbuilder.views.paint.plot import Plot
from rigbuilder.views.paint.spec import BarSpec, ChartSpec
from rigbuilder.views.theme import Theme

Paint = Callable[[QPainter, QRectF], object]

_DPI = 96
_PDF_DPI = 600
_DATE = "19700101000000"  # a fixed date: the same figure gives the same bytes


@dataclass(frozen=True, slots=True)
class Sheet:
    """A page size and its margins in millimetres."""

    name: str
    width_mm: float
    height_mm: float
    margin_mm: float = 12.0


A4 = Sheet("A4", 210.0, 297.0)
A5 = Sheet("A5", 148.0, 210.0)
LETTER = Sheet("Letter", 215.9, 279.4)
HALF_LETTER = Sheet("Half letter", 139.7, 215.9)


def figure_painter(spec: ChartSpec | BarSpec, theme: Theme, margin: float = 12.0) -> Paint:
    """Return a function that paints ``spec`` on the theme's card, with a margin in logical pixels."""

    def paint(painter: QPainter, rect: QRectF) -> Plot:
        edge = margin * painter.device().logicalDpiY() / _DPI * theme.zoom
        painter.fillRect(rect, theme.colour("card"))
        inner = rect.adjusted(edge, edge, -edge, -edge)
        if isinstance(spec, BarSpec):
            return paint_bars(painter, inner, spec, theme)
        return paint_chart(painter, inner, spec, theme)

    return paint


def to_svg(paint: Paint, size: QSize, *, title: str = "", description: str = "") -> bytes:
    """Return an SVG of ``size`` logical pixels with text kept as text."""
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    generator = QSvgGenerator()
    generator.setOutputDevice(buffer)
    generator.setResolution(_DPI)
    generator.setSize(size)
    generator.setViewBox(QRectF(0, 0, size.width(), size.height()))
    generator.setTitle(title)
    generator.setDescription(description)
    painter = QPainter(generator)
    paint(painter, QRectF(0, 0, size.width(), size.height()))
    painter.end()
    buffer.close()
    return bytes(data.data())


def to_image(paint: Paint, size: QSize, *, scale: float = 2.0) -> QImage:
    """Return an image of ``size`` logical pixels at ``scale`` device pixels each."""
    image = QImage(size * scale, QImage.Format.Format_ARGB32_Premultiplied)
    image.setDevicePixelRatio(scale)
    image.fill(0)
    painter = QPainter(image)
    paint(painter, QRectF(0, 0, size.width(), size.height()))
    painter.end()
    return image


def to_png(paint: Paint, size: QSize, *, scale: float = 2.0) -> bytes:
    """Return a PNG of ``size`` logical pixels at ``scale`` device pixels each."""
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    QImageWriter(buffer, QByteArray(b"png")).write(to_image(paint, size, scale=scale))
    buffer.close()
    return bytes(data.data())


def to_pdf(pages: list[Paint], sheet: Sheet = A4, *, title: str = "", landscape: bool = False) -> bytes:
    """Return a PDF with one page for each painting; equal input gives equal bytes."""
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(_PDF_DPI)
    writer.setTitle(title)
    writer.setCreator("Rigbuilder")
    writer.setDocumentId(QUuid.createUuidV5(QUuid(), f"{title}/{sheet.name}/{len(pages)}".encode()))
    writer.setPageLayout(page_layout(sheet, landscape=landscape))
    painter = QPainter(writer)
    for number, paint in enumerate(pages):
        if number:
            writer.newPage()
        paint(painter, QRectF(painter.viewport()))
    painter.end()
    buffer.close()
    return _undated(bytes(data.data()))


def page_layout(sheet: Sheet, *, landscape: bool = False) -> QPageLayout:
    """Return Qt's page layout of a sheet, for PDF and printer alike."""
    size = QPageSize(QSizeF(sheet.width_mm, sheet.height_mm), QPageSize.Unit.Millimeter, sheet.name)
    turn = QPageLayout.Orientation.Landscape if landscape else QPageLayout.Orientation.Portrait
    margin = sheet.margin_mm
    return QPageLayout(size, turn, QMarginsF(margin, margin, margin, margin), QPageLayout.Unit.Millimeter)


def _undated(pdf: bytes) -> bytes:
    """Put a fixed date of the same length in place of every date, so that offsets hold."""
    digits = _DATE.encode()
    pdf = re.sub(rb"\(D:\d{14}", b"(D:" + digits, pdf)
    stamp = b"1970-01-01T00:00:00"
    return re.sub(rb"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d", stamp, pdf)
