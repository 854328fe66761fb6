"""Writes pictures of the demo cards: the whole window, light and dark, at three sizes, and the sheets.

Use: ``python -m tests.benchmarks.gallery FOLDER [CARD ...]`` (offscreen unless told otherwise).
"""

import os
import sys
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEventLoop, QTimer
from PySide6.QtWidgets import QApplication

from rigbuilder import resources
from rigbuilder.app import build
from rigbuilder.store.paths import find_places
from rigbuilder.views.sheet.write import SIZES, drawing_svg, write_sheet
from rigbuilder.views.theme_look import Mode
from rigbuilder.views.window import MainWindow

SCENES = ((1366, 768, 1.0), (1920, 1080, 1.0), (1920, 1080, 2.0))
_SETTLE_MS = 400  # typing rests, answers come, motion ends


def settle(milliseconds: int) -> None:
    """Let the window work for a while."""
    loop = QEventLoop()
    QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()


def picture(window: MainWindow, path: Path, folder: Path) -> None:
    """Write all pictures of one card."""
    window.talk.open(path)
    for mode in (Mode.LIGHT, Mode.DARK):
        window.look.set_mode(mode)
        for width, height, zoom in SCENES:
            window.look.set_zoom(zoom)
            window.resize(width, height)
            settle(_SETTLE_MS)
            window.grab().save(str(folder / f"{path.stem}-{mode}-{width}x{height}-{zoom:.0%}.png"))
    report = window.bench.report
    if report is not None:
        for name, size in SIZES.items():
            sheet = folder / f"{path.stem}-{name.replace(' ', '-')}.pdf"
            write_sheet(sheet, window.bench.document, report, size, window.bench.speaker)
    scene = window.panels.drawing.scene()
    if scene is not None:
        (folder / f"{path.stem}.svg").write_bytes(drawing_svg(scene))


def main(arguments: list[str]) -> int:
    """Write the gallery into the folder named; return the exit code."""
    if not arguments:
        print(__doc__)
        return 2
    folder = Path(arguments[0])
    folder.mkdir(parents=True, exist_ok=True)
    cards = [Path(name) for name in arguments[1:]] or sorted(resources.path("demo").glob("*.rigcard"))
    with tempfile.TemporaryDirectory() as home:
        for name in ("HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME"):
            os.environ[name] = home
        application = QApplication(sys.argv[:1])
        window = build(application, find_places(), [])
        window.show()
        settle(_SETTLE_MS)
        for card in cards:
            picture(window, card.resolve(), folder)
            print(card.stem)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
