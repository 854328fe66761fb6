"""The sheet on a printer. Loaded when something is printed: the first window does not need it."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QWidget

from rigbuilder.viewmodels.sheet import SheetContent
from rigbuilder.views.paint.export import A4, Sheet, page_layout
from rigbuilder.views.sheet.page import paint_page
from rigbuilder.views.sheet.write import SIZES

_NEAR_MM = 4.0  # paper that differs by less is taken as the same size


def ask_for_printer(name: str, window: QWidget) -> QPrinter | None:
    """Ask which printer takes a document of this name; None if none shall."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setDocName(name)
    accepted = QPrintDialog(printer, window).exec() == QPrintDialog.DialogCode.Accepted
    return printer if accepted else None


def paper_of(printer: QPrinter) -> Sheet:
    """Return the sheet that fits the printer's paper; A4 where it is of another size."""
    size = printer.pageLayout().pageSize().size(printer.pageLayout().pageSize().Unit.Millimeter)
    for sheet in SIZES.values():
        if max(abs(size.width() - sheet.width_mm), abs(size.height() - sheet.height_mm)) < _NEAR_MM:
            return sheet
    return A4


def print_sheet(printer: QPrinter, content: SheetContent, size: Sheet) -> bool:
    """Print the sheet; return whether the printer took it."""
    printer.setPageLayout(page_layout(size))
    painter = QPainter()
    if not painter.begin(printer):
        return False
    paint_page(painter, QRectF(painter.viewport()), content)
    return painter.end()
