"""Which theme is on: light, dark or as the system has it, and at which zoom."""

from enum import StrEnum

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication

from rigbuilder.views.theme import Theme
from rigbuilder.views.theme_palettes import DARK, LIGHT, SHOW
from rigbuilder.views.theme_sheet import palette, style_sheet

ZOOM_STEPS = (1.0, 1.1, 1.25, 1.5, 1.75, 2.0)


class Mode(StrEnum):
    """Who decides between light and dark."""

    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"


def apply(app: QApplication, theme: Theme, zoom: float | None = None) -> Theme:
    """Dress the whole application in ``theme`` and return it as used, at its zoom."""
    used = theme if zoom is None else theme.zoomed(zoom)
    if not app.styleSheet():  # not dressed yet
        app.setStyle("Fusion")
    app.setPalette(palette(used))
    app.setFont(used.font("body"))
    app.setStyleSheet(style_sheet(used))
    return used


class Look(QObject):
    """Keeps the application's theme; views take ``theme`` from here and repaint on ``changed``."""

    changed = Signal(object)  # the Theme that is on now

    def __init__(
        self,
        app: QApplication,
        *,
        mode: Mode = Mode.SYSTEM,
        zoom: float = 1.0,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._app = app
        self._mode = mode
        self._zoom = zoom
        self._showing = False
        self._theme = apply(app, self._chosen(), zoom)
        QGuiApplication.styleHints().colorSchemeChanged.connect(self._follow)

    @property
    def theme(self) -> Theme:
        """The theme that is on, at its zoom."""
        return self._theme

    @property
    def mode(self) -> Mode:
        """Who decides between light and dark."""
        return self._mode

    @property
    def zoom(self) -> float:
        """The zoom of type and spacing, 1.0 to 2.0."""
        return self._theme.zoom

    def set_mode(self, mode: Mode) -> None:
        """Choose light, dark or the system's own."""
        self._mode = mode
        self._dress()

    def set_zoom(self, zoom: float) -> None:
        """Set the zoom; values outside 100 to 200 % are brought inside."""
        self._zoom = zoom
        self._dress()

    def set_show(self, showing: bool) -> None:
        """Put on the large, strong theme for a screen that a room looks at, or take it off again."""
        self._showing = showing
        self._dress()

    def zoom_in(self) -> None:
        """Go one step larger."""
        self.set_zoom(min((z for z in ZOOM_STEPS if z > self.zoom + 1e-6), default=ZOOM_STEPS[-1]))

    def zoom_out(self) -> None:
        """Go one step smaller."""
        self.set_zoom(max((z for z in ZOOM_STEPS if z < self.zoom - 1e-6), default=ZOOM_STEPS[0]))

    def _chosen(self) -> Theme:
        if self._showing:
            return SHOW
        if self._mode is Mode.SYSTEM:
            dark = QGuiApplication.styleHints().colorScheme() == Qt.ColorScheme.Dark
        else:
            dark = self._mode is Mode.DARK
        return DARK if dark else LIGHT

    def _follow(self) -> None:
        if self._mode is Mode.SYSTEM:
            self._dress()

    def _dress(self) -> None:
        wanted = self._chosen().zoomed(self._zoom)
        if wanted != self._theme:
            self._theme = apply(self._app, wanted)
            self.changed.emit(self._theme)
