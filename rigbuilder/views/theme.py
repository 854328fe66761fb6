"""The visual language: what a theme is made of.

A theme is a frozen value: colours by role, type in points, spacing in logical
pixels.  Views ask for roles ("ink", "fault", "first choice"), never for
colours; the only files with colour literals are ``theme_*.py`` beside this one.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Literal

from PySide6.QtGui import QColor, QFont

FontRole = Literal["small", "caption", "body", "strong", "heading", "title", "figure"]

SEVERITIES = ("fault", "risk", "note", "right")
GRADES = ("first choice", "works", "poor", "never")


@dataclass(frozen=True, slots=True)
class Tone:
    """One meaning in three colours.

    ``ink`` is for words and signs on page or card, ``wash`` a calm fill, and
    ``on`` whatever stands on a surface: signs on ``wash`` for grades, numbers
    on solid ``ink`` for severities.
    """

    ink: str
    wash: str
    on: str


@dataclass(frozen=True, slots=True)
class Surfaces:
    """Grounds, inks and edges of the window."""

    page: str  # behind everything
    card: str  # sheets that lie on the page
    field: str  # where a person writes
    sunken: str  # read-only and disabled fields, rails
    hover: str
    ink: str  # body text
    soft: str  # labels and remarks
    faint: str  # what is switched off
    placeholder: str
    edge: str  # outline of a control
    rule: str  # decorative hairline
    accent: str  # the pen: chosen things, links, first actions
    on_accent: str
    accent_wash: str
    focus: str
    selection: str
    on_selection: str
    visited: str
    tip: str
    on_tip: str


@dataclass(frozen=True, slots=True)
class Scene:
    """Colours of the drawn rig."""

    sky: str
    water_top: str
    water_deep: str
    surface: str  # the water line
    bottom: str
    bottom_edge: str
    clarity: str  # veil where nothing can be seen
    weed: str
    pad: str
    wood: str
    rock: str
    dock: str
    angler: str
    rod: str
    grip: str
    reel: str
    spool: str
    backing: str
    knot: str
    lure: str
    lure_accent: str
    measure: str  # dimension lines and their figures
    chosen: str  # ring around the part that is selected
    lens: str  # rim of the enlarging lens


@dataclass(frozen=True, slots=True)
class Stroke:
    """How a line is drawn: colour, dash pattern in pen widths (empty is solid), marker."""

    colour: str
    dash: tuple[float, ...] = ()
    marker: str = ""


@dataclass(frozen=True, slots=True)
class TypeScale:
    """Sizes in points."""

    small: float = 8.0
    caption: float = 9.0
    body: float = 10.0
    strong: float = 10.0
    heading: float = 12.0
    title: float = 16.0
    figure: float = 20.0


@dataclass(frozen=True, slots=True)
class Spacing:
    """Distances in logical pixels."""

    hair: float = 2.0
    tight: float = 4.0
    small: float = 8.0
    medium: float = 12.0
    large: float = 16.0
    wide: float = 24.0
    target: float = 28.0  # least height of a control
    least_target: float = 24.0  # least side of anything that can be pressed
    radius: float = 4.0
    card_radius: float = 6.0
    focus: float = 2.0
    sign: float = 14.0


# A book face for headings where the system has one; body text is the system's own.
BOOK_FACES = ("Charter", "Georgia", "Noto Serif", "DejaVu Serif")


@dataclass(frozen=True, slots=True)
class Theme:
    """Everything a painter or a style sheet needs to know."""

    name: str
    dark: bool
    surfaces: Surfaces
    scene: Scene
    severities: Mapping[str, Tone]
    grades: Mapping[str, Tone]
    strokes: Mapping[str, Stroke]
    type: TypeScale = TypeScale()
    spacing: Spacing = Spacing()
    faces: tuple[str, ...] = BOOK_FACES
    zoom: float = 1.0

    def severity(self, name: str) -> Tone:
        """Return the tone of ``fault``, ``risk``, ``note`` or ``right``."""
        return self.severities[str(name)]

    def grade(self, name: str) -> Tone:
        """Return the tone of ``first choice``, ``works``, ``poor`` or ``never``."""
        return self.grades[str(name)]

    def stroke(self, role: str) -> Stroke:
        """Return the stroke of a line type or of a chart role such as ``present`` or ``usual``."""
        return self.strokes[str(role)]

    def colour(self, role: str) -> QColor:
        """Return the colour of a surface, scene, severity, grade or stroke role.

        Raises:
            KeyError: if no role has that name.
        """
        for tones in (self.severities, self.grades):
            if role in tones:
                return QColor(tones[role].ink)
        if role in self.strokes:
            return QColor(self.strokes[role].colour)
        for group in (self.surfaces, self.scene):
            if role in group.__dataclass_fields__:
                return QColor(getattr(group, role))
        raise KeyError(f"The theme has no role called {role!r}.")

    def font(self, role: FontRole = "body") -> QFont:
        """Return the font of a role at the theme's zoom, in points."""
        font = QFont()
        font.setPointSizeF(self.points(role))
        if role in ("heading", "title", "figure"):
            font.setFamilies([*self.faces, *font.families()])
        if role in ("strong", "heading"):
            font.setWeight(QFont.Weight.DemiBold)
        return font

    def points(self, role: FontRole) -> float:
        """Return the size of a type role at the theme's zoom [pt]."""
        size: float = getattr(self.type, role)
        return size * self.zoom

    def px(self, distance: float) -> int:
        """Return a distance of the spacing scale at the theme's zoom, in whole logical pixels."""
        return max(1, round(distance * self.zoom))

    def zoomed(self, zoom: float) -> "Theme":
        """Return the same theme at another zoom, kept between 100 and 200 %."""
        return replace(self, zoom=min(2.0, max(1.0, zoom)))


def luminance(colour: str) -> float:
    """Return the relative luminance of an sRGB colour, 0 for black to 1 for white.

    Reference: Web Content Accessibility Guidelines 2.2, definition of relative luminance.
    """
    shade = QColor(colour)
    red, green, blue = (_linear(channel) for channel in (shade.redF(), shade.greenF(), shade.blueF()))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Return the contrast ratio of two colours, 1 to 21, unrounded.

    Reference: Web Content Accessibility Guidelines 2.2, definition of contrast ratio.
    """
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else ((channel + 0.055) / 1.055) ** 2.4
