"""Lures as simple silhouettes of our own, nose to the left, in a box one unit long."""

from collections.abc import Callable, Mapping

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QTransform

from rigbuilder.views.drawing import lures_hard as hard
from rigbuilder.views.drawing import lures_soft as soft
from rigbuilder.views.drawing.lure_parts import Silhouette
from rigbuilder.views.paint.pencil import Pencil

Maker = Callable[[], Silhouette]


def paint_lure(pencil: Pencil, centre: QPointF, length: float, kind: str, turn_deg: float = 0.0) -> QPointF:
    """Paint a lure and return where its eye is; nose to the left, turned nose-down by ``turn_deg``."""
    shape = _MAKERS.get(kind, soft.worm)()
    place = QTransform.fromTranslate(centre.x(), centre.y()).scale(length, length).rotate(-turn_deg)
    painter, theme = pencil.painter, pencil.theme
    pen = pencil.pen(theme.colour("lure"), 1.0)
    pen.setWidthF(max(0.022 * length, 0.8 * pencil.u))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.strokePath(place.map(shape.wire), pen)
    painter.fillPath(place.map(shape.body), theme.colour("lure"))
    painter.fillPath(place.map(shape.accent), theme.colour("lure_accent"))
    return place.map(shape.eye)


def silhouette_names() -> tuple[str, ...]:
    """Return the classes of lures that have a silhouette of their own."""
    return tuple(_MAKERS)


_MAKERS: Mapping[str, Maker] = {
    "walking bait": hard.walker,
    "popper": hard.popper,
    "prop bait": hard.propped,
    "rotating tail": hard.propped,
    "buzzbait": soft.buzzbait,
    "hollow frog": hard.frog,
    "wake bait": lambda: hard.bait(0.03, 0.19),
    "shallow crankbait": lambda: hard.bait(0.08, 0.22),
    "medium crankbait": lambda: hard.bait(0.16, 0.21),
    "deep crankbait": lambda: hard.bait(0.27, 0.20),
    "trolled crankbait": lambda: hard.bait(0.24, 0.14),
    "floating minnow": lambda: hard.bait(0.06, 0.11),
    "suspending minnow": lambda: hard.bait(0.08, 0.11),
    "sinking minnow": lambda: hard.bait(0.06, 0.12),
    "lipless crankbait": hard.lipless,
    "spinnerbait": soft.spinnerbait,
    "bladed jig": soft.bladed,
    "swim jig": soft.jig,
    "flipping jig": soft.jig,
    "football jig": soft.jig,
    "finesse jig": soft.jig,
    "hair jig": soft.jig,
    "small jig": soft.jig,
    "soft swimbait": soft.swimbait,
    "weedless swimbait": soft.swimbait,
    "glide bait": hard.lipless,
    "big swimbait": soft.swimbait,
    "big jerkbait": hard.walker,
    "umbrella rig": soft.umbrella,
    "inline spinner": soft.spinner,
    "bladed spinner": soft.spinner,
    "casting spoon": soft.spoon,
    "weedless spoon": soft.spoon,
    "pike spoon": soft.spoon,
    "jigging spoon": soft.spoon,
    "blade bait": hard.lipless,
    "punching rig": soft.weighted,
    "texas rig": soft.weighted,
    "carolina rig": soft.bottom_rig,
    "tube": soft.headed,
    "shaky head": soft.headed,
    "ned rig": soft.headed,
    "jig head": soft.headed,
    "drop shot": soft.drop_shot,
    "split shot rig": soft.bottom_rig,
    "weightless worm": soft.worm,
    "nail-weighted worm": soft.worm,
    "soft jerkbait": soft.swimbait,
    "float": soft.float_rig,
    "bottom rig": soft.bottom_rig,
}
