"""The program's own drawn icons, coloured by the theme.

Run ``python -m rigbuilder.views.icons FOLDER`` to write the application icon
as PNG in the sizes that desktops ask for.
"""

import os
import sys
from functools import lru_cache
from pathlib import Path

from PySide6.QtCore import QByteArray, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QGuiApplication, QIcon, QImage, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer

from rigbuilder import resources
from rigbuilder.views.theme import Theme

APP_ICON = "rigbuilder"
APP_SIZES = (16, 24, 32, 48, 64, 128, 256, 512)
_SIZES = (16, 20)
_RATIOS = (1.0, 2.0)


def icon_names() -> tuple[str, ...]:
    """Return the names of all tool icons."""
    files = resources.path("icons").glob("*.svg")
    return tuple(sorted(file.stem for file in files if file.stem != APP_ICON))


def icon(name: str, theme: Theme) -> QIcon:
    """Return a tool icon in the theme's ink, with a paler one for what is switched off.

    Raises:
        FileNotFoundError: if there is no such icon.
    """
    surfaces = theme.surfaces
    colours = {
        QIcon.Mode.Normal: surfaces.ink,
        QIcon.Mode.Disabled: surfaces.faint,
        QIcon.Mode.Selected: surfaces.on_selection,
    }
    made = QIcon()
    for size in _SIZES:
        for drawn in _drawn(name, theme.px(size)):
            for mode, colour in colours.items():
                made.addPixmap(_inked(drawn, colour), mode)
    return made


def app_icon() -> QIcon:
    """Return the application's icon."""
    made = QIcon()
    for size in APP_SIZES[:-1]:
        made.addPixmap(QPixmap.fromImage(app_image(size)))
    return made


def app_image(side: int) -> QImage:
    """Return the application's icon as an image of ``side`` pixels."""
    return _rendered(resources.path("icons", f"{APP_ICON}.svg").read_bytes(), side, 1.0)


def write_app_icons(folder: Path) -> list[Path]:
    """Write the application icon in all sizes and return the files."""
    folder.mkdir(parents=True, exist_ok=True)
    files = []
    for side in APP_SIZES:
        file = folder / f"rigbuilder-{side}.png"
        if not app_image(side).save(str(file)):
            raise OSError(f"{file} could not be written. Is the folder writable and the disk not full?")
        files.append(file)
    return files


@lru_cache(maxsize=256)
def _drawn(name: str, side: int) -> tuple[QImage, ...]:
    """Return one icon as shapes without a colour of their own, for plain and for fine screens."""
    text = resources.path("icons", f"{name}.svg").read_text(encoding="utf-8")
    svg = text.replace("currentColor", "black").encode()
    return tuple(_rendered(svg, side, ratio) for ratio in _RATIOS)


def _inked(drawn: QImage, colour: str) -> QPixmap:
    image = drawn.copy()
    painter = QPainter(image)
    painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_SourceIn)
    painter.fillRect(QRectF(0, 0, image.width(), image.height()), QColor(colour))
    painter.end()
    return QPixmap.fromImage(image)


def _rendered(svg: bytes, side: int, ratio: float) -> QImage:
    image = QImage(QSize(side, side) * ratio, QImage.Format.Format_ARGB32_Premultiplied)
    image.setDevicePixelRatio(ratio)
    image.fill(Qt.GlobalColor.transparent)
    renderer = QSvgRenderer(QByteArray(svg))
    painter = QPainter(image)
    renderer.render(painter, QRectF(0, 0, side, side))
    painter.end()
    return image


def main(arguments: list[str]) -> int:
    """Write the application icons into the folder named first; return an exit code."""
    if len(arguments) != 1:
        print("Name one folder: python -m rigbuilder.views.icons FOLDER", file=sys.stderr)
        return 2
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    application = QGuiApplication.instance() or QGuiApplication([])
    for file in write_app_icons(Path(arguments[0])):
        print(file)
    application.processEvents()
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
