"""The drawn icons and the application's icon."""

import re
from pathlib import Path

import pytest
from PySide6.QtCore import QSize
from PySide6.QtGui import QIcon, QImage
from PySide6.QtWidgets import QApplication

from rigbuilder import resources
from rigbuilder.views.icons import APP_SIZES, app_icon, icon, icon_names, main, write_app_icons
from rigbuilder.views.theme import Theme
from rigbuilder.views.theme_palettes import DARK, LIGHT

NEEDED = {
    *("new", "open", "save", "undo", "redo", "print", "units", "theme", "lure", "rod", "reel", "line"),
    *("leader", "knot", "drag", "water", "fish", "search", "bin", "duplicate", "compare", "show"),
    *("lesson", "what-if"),
}


def test_all_needed_icons_are_there() -> None:
    assert set(icon_names()) >= NEEDED


@pytest.mark.parametrize("name", icon_names())
def test_icons_are_drawn_in_one_hand(qapp: QApplication, name: str) -> None:
    text = resources.path("icons", f"{name}.svg").read_text(encoding="utf-8")
    assert 'viewBox="0 0 24 24"' in text
    assert 'stroke-width="1.6"' in text
    assert not re.search(r"#[0-9A-Fa-f]{3}", text), "the theme gives the colour"
    assert ink_share(icon(name, LIGHT).pixmap(QSize(24, 24)).toImage()) > 0.04


def ink_share(image: QImage) -> float:
    opaque = [
        image.pixelColor(x, y).alpha() > 60 for x in range(image.width()) for y in range(image.height())
    ]
    return sum(opaque) / len(opaque)


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)
def test_icons_take_the_colours_of_the_theme(qapp: QApplication, theme: Theme) -> None:
    made = icon("undo", theme)
    for mode, wanted in (
        (QIcon.Mode.Normal, theme.surfaces.ink),
        (QIcon.Mode.Disabled, theme.surfaces.faint),
    ):
        image = made.pixmap(QSize(40, 40), mode).toImage()
        full = [
            image.pixelColor(x, y).name()
            for x in range(image.width())
            for y in range(image.height())
            if image.pixelColor(x, y).alpha() == 255
        ]
        assert wanted.lower() in full


def test_unknown_icon_is_refused(qapp: QApplication) -> None:
    with pytest.raises(FileNotFoundError):
        icon("no-such-icon", LIGHT)


def test_application_icon_in_all_sizes(qapp: QApplication, tmp_path: Path) -> None:
    files = write_app_icons(tmp_path)
    sizes = [QImage(str(file)).width() for file in files]
    assert sizes == list(APP_SIZES)
    assert all(ink_share(QImage(str(file))) > 0.5 for file in files[:4])
    assert not app_icon().isNull()


def test_icon_command(qapp: QApplication, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main([str(tmp_path / "icons")]) == 0
    assert "rigbuilder-128.png" in capsys.readouterr().out
    assert main([]) == 2
    assert "Name one folder" in capsys.readouterr().err
