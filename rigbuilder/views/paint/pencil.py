"""A painter with the theme in hand: fonts, strokes and lengths that fit any device.

All lengths are given in logical pixels at 96 dots an inch; ``u`` turns them
into units of the device, so one drawing code serves screen, SVG, PDF and paper.
"""

import re

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen

from rigbuilder.views.theme import FontRole, Stroke, Theme

_BASE_DPI = 96.0
_WORD = re.compile(r"(?:\d+ )?\S*\d (?:lb|oz|in|ft|yd|mm|cm|m|kg|g)\b\S*|\S+")  # or a number with its unit
LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
CENTRE = Qt.AlignmentFlag.AlignCenter
TOP_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop


class Pencil:
    """Paints on one device in one theme."""

    def __init__(self, painter: QPainter, theme: Theme) -> None:
        self.painter = painter
        self.theme = theme
        self.u = painter.device().logicalDpiY() / _BASE_DPI * theme.zoom
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setRenderHint(QPainter.RenderHint.TextAntialiasing)

    def metrics(self, role: FontRole) -> QFontMetricsF:
        """Return the measures of a type role on this device."""
        return QFontMetricsF(self.font(role), self.painter.device())

    def font(self, role: FontRole) -> QFont:
        """Return the font of a type role; unhinted, so that all devices agree."""
        font = self.theme.font(role)
        font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
        font.setFeature(QFont.Tag("liga"), 0)  # words in a PDF stay words for those who search or copy
        return font

    def text_width(self, text: str, role: FontRole) -> float:
        """Return the width of one line of text in device units."""
        return self.metrics(role).horizontalAdvance(text)

    def line_height(self, role: FontRole) -> float:
        """Return the height of one line of text in device units."""
        return self.metrics(role).height()

    def write(
        self,
        rect: QRectF,
        text: str,
        role: FontRole = "caption",
        colour: QColor | str = "",
        align: Qt.AlignmentFlag = LEFT,
    ) -> None:
        """Write text, wrapping where it must; plain ink unless a colour is given."""
        self.painter.setFont(self.font(role))
        self.painter.setPen(QColor(colour) if colour else self.theme.colour("ink"))
        self.painter.drawText(rect, int(align | Qt.TextFlag.TextWordWrap), text)

    def wrapped(self, text: str, role: FontRole, width: float) -> list[str]:
        """Return the text broken into lines no wider than ``width`` where words allow.

        A number and its unit stay together.
        """
        measure = self.metrics(role)
        lines: list[str] = []
        for word in _WORD.findall(text):
            longer = f"{lines[-1]} {word}" if lines else word
            if lines and measure.horizontalAdvance(longer) <= width:
                lines[-1] = longer
            else:
                lines.append(word)
        return lines

    def halo(
        self, at: QPointF, text: str, role: FontRole, colour: QColor | str, ground: QColor | str
    ) -> None:
        """Write one line at a base point on a thin ground of its own, so that lines under it stay apart."""
        measure = self.metrics(role)
        box = measure.boundingRect(text).translated(at).adjusted(-2 * self.u, -self.u, 2 * self.u, self.u)
        veil = QColor(ground)
        veil.setAlphaF(0.86)
        self.painter.fillRect(box, veil)
        self.painter.setFont(self.font(role))
        self.painter.setPen(QColor(colour))
        self.painter.drawText(at, text)

    def pen(
        self, colour: QColor | str, width: float = 1.0, dash: tuple[float, ...] = (), *, flat: bool = False
    ) -> QPen:
        """Return a pen; ``width`` in logical pixels, ``dash`` in pen widths."""
        pen = QPen(QColor(colour), width * self.u)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap if dash or flat else Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        if dash:
            pen.setDashPattern(list(dash))
        return pen

    def stroke_pen(self, stroke: Stroke, width: float) -> QPen:
        """Return the pen of a stroke of the theme."""
        return self.pen(stroke.colour, width, stroke.dash)
