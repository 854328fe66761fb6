"""A chart in the window: painted once, read by pointer and keyboard, copied as a table."""

from bisect import bisect_left

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QAction,
    QGuiApplication,
    QKeyEvent,
    QKeySequence,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPixmap,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from rigbuilder.views.paint.bars import paint_bars
from rigbuilder.views.paint.chart import paint_chart
from rigbuilder.views.paint.cursor import paint_cursor, read_at, samples
from rigbuilder.views.paint.plot import Plot
from rigbuilder.views.paint.spec import BarSpec, ChartSpec
from rigbuilder.views.paint.table import as_csv, describe
from rigbuilder.views.theme_look import Look


class ChartView(QWidget):
    """Shows one figure.

    The pointer, or Left and Right, move a cursor along the computed values;
    Home and End go to the ends, Esc takes it away, Ctrl+C copies the table.
    """

    read = Signal(str)  # what stands under the cursor, empty when it leaves

    def __init__(self, look: Look, name: str = "Chart", *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._spec: ChartSpec | BarSpec | None = None
        self._cache: QPixmap | None = None
        self._plot: Plot | None = None
        self._at: float | None = None
        self.setAccessibleName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.ActionsContextMenu)
        copy = QAction("Copy as table", self)
        copy.setShortcut(QKeySequence.StandardKey.Copy)
        copy.setShortcutContext(Qt.ShortcutContext.WidgetShortcut)
        copy.triggered.connect(self.copy_table)
        self.addAction(copy)
        look.changed.connect(self._forget)

    def set_spec(self, spec: ChartSpec | BarSpec | None) -> None:
        """Show another figure; an equal one is not painted again."""
        if spec == self._spec:
            return
        self._spec = spec
        self.setAccessibleDescription("" if spec is None else describe(spec))
        self._forget()

    def spec(self) -> ChartSpec | BarSpec | None:
        """Return the figure shown."""
        return self._spec

    def reading(self) -> str:
        """Return what stands under the cursor, empty without one."""
        if self._at is None or not isinstance(self._spec, ChartSpec):
            return ""
        return read_at(self._spec, self._at)

    def copy_table(self) -> None:
        """Put the figure's table on the clipboard, as comma-separated values."""
        if self._spec is not None:
            QGuiApplication.clipboard().setText(as_csv(self._spec))

    def sizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return a comfortable size."""
        theme = self._look.theme
        return QSize(theme.px(520), theme.px(260))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 (Qt's name)
        """Return the least size at which the words still have room."""
        theme = self._look.theme
        return QSize(theme.px(300), theme.px(170))

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 (Qt's name)
        """Show the cached figure, then cursor and focus frame."""
        painter = QPainter(self)
        ratio = self.devicePixelRatioF()
        size = self.size() * ratio
        if self._cache is None or self._cache.size() != size:
            self._cache = self._painted(size, ratio)
        painter.drawPixmap(0, 0, self._cache)
        theme = self._look.theme
        if self._at is not None and self._plot is not None and isinstance(self._spec, ChartSpec):
            paint_cursor(painter, self._plot, self._spec, self._at, theme)
        if self.hasFocus():
            width = theme.px(theme.spacing.focus)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(theme.colour("focus"))
            outer = QRectF(self.rect())
            for edge in (
                QRectF(0, 0, outer.width(), width),
                QRectF(0, outer.height() - width, outer.width(), width),
                QRectF(0, 0, width, outer.height()),
                QRectF(outer.width() - width, 0, width, outer.height()),
            ):
                painter.drawRect(edge)
        painter.end()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 (Qt's name)
        """Move the cursor along the computed values."""
        xs = samples(self._spec) if isinstance(self._spec, ChartSpec) else ()
        key = event.key()
        if key == Qt.Key.Key_Escape and self._at is not None:
            self._move_to(None)
        elif xs and key in (Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Home, Qt.Key.Key_End):
            self._move_to(_next(xs, self._at, Qt.Key(key)))
        else:
            super().keyPressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802 (Qt's name)
        """Put the cursor at the computed value nearest to the pointer."""
        if isinstance(self._spec, ChartSpec) and self._plot is not None:
            self._move_to(_nearest(samples(self._spec), self._plot, event.position()))

    def leaveEvent(self, event: QEvent) -> None:  # noqa: N802 (Qt's name)
        """Take the pointer's cursor away."""
        if not self.hasFocus():
            self._move_to(None)
        super().leaveEvent(event)

    def _painted(self, size: QSize, ratio: float) -> QPixmap:
        theme = self._look.theme
        pixmap = QPixmap(size)
        pixmap.setDevicePixelRatio(ratio)
        pixmap.fill(theme.colour("card"))
        painter = QPainter(pixmap)
        pad = theme.px(10)
        rect = QRectF(self.rect()).adjusted(pad, pad, -pad, -pad)
        if isinstance(self._spec, ChartSpec):
            self._plot = paint_chart(painter, rect, self._spec, theme)
        elif isinstance(self._spec, BarSpec):
            self._plot = paint_bars(painter, rect, self._spec, theme)
        painter.end()
        return pixmap

    def _move_to(self, at: float | None) -> None:
        if at != self._at:
            self._at = at
            self.read.emit(self.reading())
            self.update()

    def _forget(self, *_: object) -> None:
        self._cache = None
        self._plot = None
        self._at = None
        self.update()


def _next(xs: tuple[float, ...], at: float | None, key: Qt.Key) -> float:
    if key == Qt.Key.Key_Home or (at is None and key == Qt.Key.Key_Right):
        return xs[0]
    if key == Qt.Key.Key_End or at is None:
        return xs[-1]
    step = 1 if key == Qt.Key.Key_Right else -1
    return xs[min(len(xs) - 1, max(0, bisect_left(xs, at) + step))]


def _nearest(xs: tuple[float, ...], plot: Plot, place: QPointF) -> float | None:
    if not xs or not plot.area.adjusted(-12, -12, 12, 12).contains(place):
        return None
    return min(xs, key=lambda x: abs(plot.x.at(x) - place.x()))
