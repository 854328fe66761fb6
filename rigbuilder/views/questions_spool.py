"""The spool in the window: its section to scale, read by ear as well."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from rigbuilder.viewmodels.answers import Shown
from rigbuilder.viewmodels.spoolview import SpoolShown
from rigbuilder.views.drawing.spool import paint_spool
from rigbuilder.views.paint.export import Paint
from rigbuilder.views.paint.heading import paint_head
from rigbuilder.views.paint.pencil import Pencil
from rigbuilder.views.theme_look import Look
from rigbuilder.views.theme_palettes import LIGHT


class SpoolView(QWidget):
    """Paints the section of the spool, and how much of other lines it would hold."""

    def __init__(self, look: Look, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._section: SpoolShown | None = None
        self._answer: Shown | None = None
        self.setAccessibleName("Spool in section")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        look.changed.connect(self._refresh)

    @property
    def section(self) -> SpoolShown | None:
        """The spool that is shown."""
        return self._section

    def set_section(self, section: SpoolShown | None, answer: Shown | None = None) -> None:
        """Show another spool."""
        self._section, self._answer = section, answer
        self.setAccessibleDescription("" if section is None else section.spoken)
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return a comfortable size."""
        theme = self._look.theme
        return QSize(theme.px(520), theme.px(240))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return the least size at which the words still have room."""
        theme = self._look.theme
        return QSize(theme.px(380), theme.px(170))

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Paint the section and the frame of the keyboard."""
        theme = self._look.theme
        painter = QPainter(self)
        painter.fillRect(self.rect(), theme.colour("card"))
        pad = theme.px(10)
        if self._section is not None:
            room = QRectF(self.rect()).adjusted(pad, pad, -pad, -pad)
            paint_spool(painter, room, self._section, theme, self._answer.rows if self._answer else ())
        if self.hasFocus():
            pen = painter.pen()
            pen.setColor(theme.colour("focus"))
            pen.setWidth(2 * theme.px(theme.spacing.focus))
            painter.setPen(pen)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(self.rect())
        painter.end()

    def _refresh(self, *_: object) -> None:
        self.update()


def spool_picture(section: SpoolShown, answer: Shown) -> Paint:
    """Return a painting of the section for a file, its question and sentence over it."""

    def paint(painter: QPainter, rect: QRectF) -> None:
        painter.fillRect(rect, LIGHT.colour("card"))
        pencil = Pencil(painter, LIGHT)
        edge = 12 * pencil.u
        room = paint_head(pencil, rect.adjusted(edge, edge, -edge, -edge), answer.question, answer.sentence)
        paint_spool(painter, room, section, LIGHT, answer.rows)

    return paint
