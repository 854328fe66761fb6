"""Contrast, colour vision and completeness of every theme."""

import re
from itertools import combinations
from math import atan2, cos, degrees, exp, hypot, radians, sin, sqrt
from pathlib import Path

import pytest
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QApplication

from rigbuilder.views import theme as theme_module
from rigbuilder.views.paint.signs import sign_path
from rigbuilder.views.theme import GRADES, SEVERITIES, Theme, contrast
from rigbuilder.views.theme_look import Look, Mode, apply
from rigbuilder.views.theme_palettes import DARK, LIGHT, PRINT, THEMES
from rigbuilder.views.theme_sheet import palette, style_sheet

Lab = tuple[float, float, float]

# Machado, Oliveira, Fernandes: A physiologically-based model for simulation of color vision
# deficiency, IEEE Transactions on Visualization and Computer Graphics 15(6), 2009, severity 1.0.
VISION = {
    "full": ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),
    "protanopia": (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    ),
    "deuteranopia": (
        (0.367322, 0.860646, -0.227968),
        (0.280085, 0.672501, 0.047413),
        (-0.011820, 0.042940, 0.968881),
    ),
    "tritanopia": (
        (1.255528, -0.076749, -0.178779),
        (-0.078411, 0.930809, 0.147602),
        (0.004733, 0.691367, 0.303900),
    ),
}
D65_FROM_SRGB = (  # IEC 61966-2-1
    (0.4124564, 0.3575761, 0.1804375),
    (0.2126729, 0.7151522, 0.0721750),
    (0.0193339, 0.1191920, 0.9503041),
)
WHITE = (0.95047, 1.0, 1.08883)


def by_row(matrix: tuple[tuple[float, float, float], ...], vector: list[float]) -> list[float]:
    return [sum(a * b for a, b in zip(row, vector, strict=True)) for row in matrix]


def seen(colour: str, vision: str) -> Lab:
    """Return CIE L*a*b* of a colour as seen with one kind of vision."""
    shade = QColor(colour)
    linear = [
        c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4
        for c in (shade.redF(), shade.greenF(), shade.blueF())
    ]
    changed = [min(1.0, max(0.0, value)) for value in by_row(VISION[vision], linear)]
    x, y, z = (
        t ** (1 / 3) if t > (6 / 29) ** 3 else t / (3 * (6 / 29) ** 2) + 4 / 29
        for t in (value / white for value, white in zip(by_row(D65_FROM_SRGB, changed), WHITE, strict=True))
    )
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def delta_e(one: Lab, other: Lab) -> float:
    """Return the CIEDE2000 colour difference."""
    (l1, a1, b1), (l2, a2, b2) = one, other
    mean_c = (hypot(a1, b1) + hypot(a2, b2)) / 2
    stretch = 1.5 - 0.5 * sqrt(mean_c**7 / (mean_c**7 + 25**7))
    a1, a2 = a1 * stretch, a2 * stretch
    c1, c2 = hypot(a1, b1), hypot(a2, b2)
    h1, h2 = degrees(atan2(b1, a1)) % 360, degrees(atan2(b2, a2)) % 360
    turn = 0.0 if c1 * c2 == 0 else (h2 - h1 + 180) % 360 - 180
    dl, dc, dh = l2 - l1, c2 - c1, 2 * sqrt(c1 * c2) * sin(radians(turn / 2))
    lm, cm = (l1 + l2) / 2, (c1 + c2) / 2
    hm = h1 + h2 if c1 * c2 == 0 else (h1 + turn / 2) % 360
    t = (
        1
        - 0.17 * cos(radians(hm - 30))
        + 0.24 * cos(radians(2 * hm))
        + 0.32 * cos(radians(3 * hm + 6))
        - 0.20 * cos(radians(4 * hm - 63))
    )
    sl = 1 + 0.015 * (lm - 50) ** 2 / sqrt(20 + (lm - 50) ** 2)
    sc, sh = 1 + 0.045 * cm, 1 + 0.015 * cm * t
    rt = -sin(radians(60 * exp(-(((hm - 275) / 25) ** 2)))) * 2 * sqrt(cm**7 / (cm**7 + 25**7))
    return sqrt((dl / sl) ** 2 + (dc / sc) ** 2 + (dh / sh) ** 2 + rt * dc / sc * dh / sh)


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [  # pairs 1, 7, 17, 24 of Sharma, Wu, Dalal: The CIEDE2000 color-difference formula, 2005, table 1
        ((50.0, 2.6772, -79.7751), (50.0, 0.0, -82.7485), 2.0425),
        ((50.0, 0.0, 0.0), (50.0, -1.0, 2.0), 2.3669),
        ((50.0, 2.5, 0.0), (73.0, 25.0, -18.0), 27.1492),
        ((50.0, 2.5, 0.0), (50.0, 3.2592, 0.3350), 1.0000),
    ],
)
def test_the_measure_of_difference_itself(one: Lab, other: Lab, expected: float) -> None:
    assert delta_e(one, other) == pytest.approx(expected, abs=2e-4)


def test_contrast_of_known_pairs() -> None:
    # WCAG 2.2: black on white is 21:1; #767676 is the lightest grey that passes 4.5:1 on white.
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21.0)
    assert contrast("#767676", "#FFFFFF") >= 4.5 > contrast("#777777", "#FFFFFF")
    assert contrast("#123456", "#123456") == pytest.approx(1.0)


def grounds(theme: Theme) -> list[str]:
    s = theme.surfaces
    return [s.page, s.card, s.field, s.sunken, s.hover, s.accent_wash]


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
@pytest.mark.parametrize(
    ("role", "least"),
    [
        ("ink", 7.0),
        ("soft", 4.5),
        ("accent", 4.5),
        ("visited", 4.5),
        ("faint", 3.0),
        ("focus", 3.0),
        ("edge", 3.0),
    ],
)
def test_inks_on_all_grounds(theme: Theme, role: str, least: float) -> None:
    for ground in grounds(theme):
        assert contrast(getattr(theme.surfaces, role), ground) >= least, ground


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_text_pairs_that_belong_together(theme: Theme) -> None:
    s = theme.surfaces
    pairs = [(s.placeholder, s.field), (s.placeholder, s.card), (s.on_selection, s.selection)]
    pairs += [(s.on_accent, s.accent), (s.on_tip, s.tip), (s.card, s.ink)]
    pairs += [
        (tone.ink, ground) for tone in theme.severities.values() for ground in (s.page, s.card, s.field)
    ]
    pairs += [(tone.ink, tone.wash) for tone in theme.severities.values()]
    pairs += [(tone.on, tone.ink) for tone in theme.severities.values()]
    pairs += [(tone.ink, ground) for tone in theme.grades.values() for ground in (s.page, s.card)]
    pairs += [(tone.on, tone.wash) for tone in theme.grades.values()]
    pairs += [(stroke.colour, s.card) for stroke in theme.strokes.values()]
    for text, ground in pairs:
        assert contrast(text, ground) >= 4.5, (text, ground)
    for tone in theme.severities.values():
        assert contrast(s.ink, tone.wash) >= 7.0


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_everything_drawn_stands_off_air_and_water(theme: Theme) -> None:
    scene = theme.scene
    fills = {"sky", "water_top", "water_deep", "bottom", "clarity", "spool", "lure_accent"}
    drawn = [getattr(scene, role) for role in scene.__dataclass_fields__ if role not in fills]
    drawn += [stroke.colour for stroke in theme.strokes.values()]
    for colour in drawn:
        for ground in (scene.sky, scene.water_top, scene.water_deep):
            assert contrast(colour, ground) >= 3.0, (colour, ground)
    for tone in theme.severities.values():
        assert contrast(tone.ink, scene.water_deep) >= 3.0
    for role in ("ink", "soft"):
        assert contrast(getattr(theme.surfaces, role), scene.water_deep) >= 4.5


GROUPS = {
    "severity inks": lambda theme: {name: tone.ink for name, tone in theme.severities.items()},
    "grade inks": lambda theme: {name: tone.ink for name, tone in theme.grades.items()},
    "grade fills": lambda theme: {name: tone.wash for name, tone in theme.grades.items()},
    "chart roles": lambda theme: {
        name: theme.stroke(name).colour
        for name in ("present", "usual", "candidate", "other a", "other b", "other c")
    },
}


@pytest.mark.parametrize("vision", VISION)
@pytest.mark.parametrize("group", GROUPS)
@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_meanings_differ_for_every_eye(theme: Theme, group: str, vision: str) -> None:
    colours = GROUPS[group](theme)
    for (one, a), (other, b) in combinations(colours.items(), 2):
        assert delta_e(seen(a, vision), seen(b, vision)) >= 10, (one, other)


def test_signs_differ_without_colour() -> None:
    areas = {}
    for name in (*SEVERITIES, *GRADES):
        path = sign_path(name)
        box = path.boundingRect()
        assert box.left() >= -0.01
        assert box.right() <= 1.01
        areas[name] = path
    for one, other in combinations((*SEVERITIES, *GRADES), 2):
        assert sign_path(one) != sign_path(other)
    raster = {name: _raster(name) for name in areas}
    for group in (SEVERITIES, GRADES):
        for one, other in combinations(group, 2):
            differing = sum(a != b for a, b in zip(raster[one], raster[other], strict=True))
            assert differing >= 20, (one, other, differing)  # of the 144 pixels at 12 px


def _raster(name: str) -> list[bool]:
    from_middle = [(k + 0.5) / 12 for k in range(12)]
    path = sign_path(name)
    point = path.boundingRect().center()
    marks = []
    for y in from_middle:
        for x in from_middle:
            point.setX(x)
            point.setY(y)
            marks.append(path.contains(point))
    return marks


def test_strokes_differ_without_colour() -> None:
    roles = ("present", "usual", "candidate", "other a", "other b", "other c")
    lines = tuple(name for name in LIGHT.strokes if name not in roles)
    for group in (roles, lines):
        looks = [(LIGHT.stroke(name).dash, LIGHT.stroke(name).marker) for name in group]
        assert len(set(looks)) == len(looks)


def test_all_themes_have_all_roles() -> None:
    for theme in THEMES:
        assert tuple(theme.severities) == SEVERITIES
        assert tuple(theme.grades) == GRADES
        assert theme.strokes.keys() == LIGHT.strokes.keys()
        for role in ("ink", "water_deep", "fault", "first choice", "braid"):
            assert theme.colour(role).isValid()
        with pytest.raises(KeyError, match="nonsense"):
            theme.colour("nonsense")


def test_no_colour_outside_the_theme_files() -> None:
    literal = re.compile(r"""["']#[0-9A-Fa-f]{3,8}["']|GlobalColor\.(?!transparent)|QColor\(\d""")
    views = Path(theme_module.__file__).parent
    for file in views.rglob("*.py"):
        if not file.name.startswith("theme"):
            found = literal.findall(file.read_text(encoding="utf-8"))
            assert not found, f"{file.name}: {found}"


def test_no_pixel_fonts() -> None:
    views = Path(theme_module.__file__).parent
    for file in views.rglob("*.py"):
        assert "setPixelSize" not in file.read_text(encoding="utf-8"), file.name


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)
@pytest.mark.parametrize("group", [QPalette.ColorGroup.Active, QPalette.ColorGroup.Inactive])
def test_palette_text_is_readable(theme: Theme, group: QPalette.ColorGroup) -> None:
    made = palette(theme)
    role = QPalette.ColorRole
    for text, ground in [
        (role.WindowText, role.Window),
        (role.Text, role.Base),
        (role.Text, role.AlternateBase),
        (role.ButtonText, role.Button),
        (role.HighlightedText, role.Highlight),
        (role.PlaceholderText, role.Base),
        (role.ToolTipText, role.ToolTipBase),
        (role.Link, role.Base),
        (role.LinkVisited, role.Base),
    ]:
        assert contrast(made.color(group, text).name(), made.color(group, ground).name()) >= 4.5
    off = QPalette.ColorGroup.Disabled
    assert contrast(made.color(off, role.Text).name(), made.color(off, role.Base).name()) >= 3.0


def test_zoom_scales_type_and_distance_and_keeps_its_bounds() -> None:
    double = LIGHT.zoomed(2.0)
    assert double.points("body") == 2 * LIGHT.points("body")
    assert double.px(28) == 56
    assert LIGHT.zoomed(9.0).zoom == 2.0
    assert LIGHT.zoomed(0.1).zoom == 1.0
    assert double.font("body").pointSizeF() == pytest.approx(20.0)


def test_style_sheet_is_filled_in_completely() -> None:
    for theme in THEMES:
        sheet = style_sheet(theme)
        assert "$" not in sheet
        assert sheet.count("{") == sheet.count("}")


def test_apply_dresses_the_application(qapp: QApplication) -> None:
    used = apply(qapp, DARK, 1.5)
    assert used.zoom == 1.5
    assert qapp.palette().color(QPalette.ColorRole.Window).name().upper() == DARK.surfaces.page
    assert qapp.font().pointSizeF() == pytest.approx(15.0)
    qapp.setStyleSheet("")
    assert qapp.style().name() == "fusion"


def test_look_switches_at_run_time(look: Look) -> None:
    seen_themes: list[Theme] = []
    look.changed.connect(seen_themes.append)
    look.set_mode(Mode.DARK)
    look.set_mode(Mode.DARK)
    look.zoom_in()
    assert [theme.name for theme in seen_themes] == ["dark", "dark"]
    assert look.theme.zoom == pytest.approx(1.1)
    look.zoom_out()
    look.zoom_out()
    assert look.zoom == 1.0
    look.set_show(True)
    assert look.theme.name == "show"
    assert look.theme.points("body") > LIGHT.points("body")
    look.set_show(False)
    look.set_mode(Mode.SYSTEM)
    assert look.theme.name in ("light", "dark")


def test_print_is_ink_on_white() -> None:
    assert PRINT.surfaces.card == PRINT.surfaces.page == "#FFFFFF"
    assert theme_module.luminance(PRINT.scene.water_deep) > 0.8
