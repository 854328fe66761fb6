"""The show for the club room: full screen, large type, one thing at a time, led by the keyboard."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.slides import Slide, SlidesOf, slides
from rigbuilder.views.show_paint import paint_slide
from rigbuilder.views.theme_look import Look
from rigbuilder.views.theme_palettes import SHOW

_ON = (Qt.Key.Key_Right, Qt.Key.Key_Down, Qt.Key.Key_Space, Qt.Key.Key_PageDown, Qt.Key.Key_Return)
_BACK = (Qt.Key.Key_Left, Qt.Key.Key_Up, Qt.Key.Key_Backspace, Qt.Key.Key_PageUp)
_DESIGNED_FOR = 900.0  # height of the screen in logical pixels for which the show's type is set


class ShowWindow(QWidget):
    """Shows the rig on the bench slide by slide: arrows or Space go on and back, Esc leaves."""

    def __init__(
        self, bench: Bench, look: Look, parent: QWidget | None = None, *, slides_of: SlidesOf = slides
    ) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self._bench, self._slides_of = bench, slides_of
        self._slides: tuple[Slide, ...] = ()
        self._at = 0
        self.setObjectName("show")
        self.setWindowTitle("Show")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        bench.report_changed.connect(self._render)
        bench.units_changed.connect(self._render)
        look.changed.connect(self._repaint)
        self._render()

    @property
    def slide(self) -> Slide | None:
        """The slide on the screen, ``None`` while the card cannot be read."""
        return self._slides[self._at] if self._slides else None

    @property
    def place(self) -> tuple[int, int]:
        """Which slide it is, counted from 1, and of how many."""
        return (self._at + 1, len(self._slides)) if self._slides else (0, 0)

    def begin(self) -> None:
        """Open on the whole screen at the first slide."""
        self._go(0)
        self.showFullScreen()
        self.activateWindow()
        self.setFocus()

    def next(self) -> None:
        """Go one slide on."""
        self._go(self._at + 1)

    def back(self) -> None:
        """Go one slide back."""
        self._go(self._at - 1)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 (Qt's name)
        """Lead the show by the keyboard."""
        key = event.key()
        if key == Qt.Key.Key_Escape:
            self.close()
        elif key in _ON:
            self.next()
        elif key in _BACK:
            self.back()
        elif key == Qt.Key.Key_Home:
            self._go(0)
        elif key == Qt.Key.Key_End:
            self._go(len(self._slides) - 1)
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 (Qt's name)
        """Go on with the left button, back with the right one."""
        if event.button() == Qt.MouseButton.LeftButton:
            self.next()
        elif event.button() == Qt.MouseButton.RightButton:
            self.back()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint the slide at a size that fills the screen."""
        theme = SHOW.zoomed(min(self.height() / _DESIGNED_FOR, self.width() / (1.5 * _DESIGNED_FOR)))
        painter = QPainter(self)
        painter.fillRect(self.rect(), theme.colour("page"))
        if self.slide is not None:
            paint_slide(painter, QRectF(self.rect()), self.slide, self.place, theme)
        painter.end()

    def _render(self, *_: object) -> None:
        report = self._bench.report
        self._slides = () if report is None else self._slides_of(report, self._bench.speaker)
        self._go(self._at)

    def _go(self, at: int) -> None:
        self._at = min(max(at, 0), max(len(self._slides) - 1, 0))
        slide = self.slide
        number, count = self.place
        self.setAccessibleName(f"Slide {number} of {count}" if slide else "The card cannot be read yet")
        self.setAccessibleDescription("" if slide is None else slide.spoken)
        self.update()

    def _repaint(self, *_: object) -> None:
        self.update()
