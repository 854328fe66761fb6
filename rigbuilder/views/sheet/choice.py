"""The choice of paper for the sheet, with the page as it will be."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPixmap
from PySide6.QtWidgets import QDialog, QHBoxLayout, QVBoxLayout, QWidget

from rigbuilder.viewmodels.sheet import SheetContent
from rigbuilder.views.controls.buttons import ActionButton
from rigbuilder.views.controls.segment_row import SegmentRow
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.paint.export import Sheet, to_image
from rigbuilder.views.sheet.page import paint_page
from rigbuilder.views.sheet.write import SIZES
from rigbuilder.views.theme_look import Look
from rigbuilder.views.theme_palettes import PRINT

_DOTS_PER_MM = 96 / 25.4  # the page is set at 96 dots an inch and then shown smaller


class PaperDialog(QDialog):
    """Paper sizes side by side above a picture of the page."""

    def __init__(
        self, content: SheetContent, look: Look, *, title: str, verb: str, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self._content, self._look = content, look
        self.sizes = SegmentRow("Paper", [(name, name) for name in SIZES], parent=self)
        self.page = text_label("", parent=self)
        self.page.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.page.setAccessibleName("The page as it will be")
        self.go = ActionButton(verb, weight="first", parent=self)
        self.go.setDefault(True)
        self.cancel = ActionButton("Cancel", parent=self)
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        buttons.addWidget(self.cancel)
        buttons.addWidget(self.go)
        column = QVBoxLayout(self)
        column.setSpacing(look.theme.px(10))
        column.addWidget(self.sizes)
        column.addWidget(self.page, 1)
        column.addLayout(buttons)
        self.sizes.chosen.connect(lambda _: self._draw())
        self.go.clicked.connect(self.accept)
        self.cancel.clicked.connect(self.reject)
        self.choose("A4")

    @property
    def size_chosen(self) -> Sheet:
        """The paper chosen."""
        return SIZES[self.sizes.value()]

    def choose(self, name: str) -> None:
        """Choose a paper by its name; an unknown one leaves the choice as it is."""
        if name in SIZES:
            self.sizes.set_value(name)
            self._draw()

    def _draw(self) -> None:
        size, margin = self.size_chosen, self.size_chosen.margin_mm * _DOTS_PER_MM
        whole = QSize(round(size.width_mm * _DOTS_PER_MM), round(size.height_mm * _DOTS_PER_MM))

        def paint(painter: QPainter, rect: QRectF) -> None:
            painter.fillRect(rect, PRINT.colour("page"))
            paint_page(painter, rect.adjusted(margin, margin, -margin, -margin), self._content)

        room = self.screen().availableGeometry().height()
        high = min(self._look.theme.px(560), round(room * 0.66))
        image = to_image(paint, whole, scale=1.0)
        ratio = self.devicePixelRatioF()
        shown = QPixmap.fromImage(image).scaledToHeight(
            round(high * ratio), Qt.TransformationMode.SmoothTransformation
        )
        shown.setDevicePixelRatio(ratio)
        self.page.setPixmap(shown)
        self.page.setFixedHeight(high)
        self.page.setMinimumWidth(high)
        self.page.setAccessibleDescription(
            f"{self._content.title}, {self._content.verdict}, on one page of {size.name}"
        )
