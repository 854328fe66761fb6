"""Where metres lie on the sheet: distances to scale, heights and depths enlarged where they must be."""

from collections.abc import Iterable
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF

from rigbuilder.viewmodels.scene import RigScene

_SKY = 0.47  # share of the height above the water
_GROUND = 44.0  # logical pixels below the deepest water, where distances are written
_MOST_DEPTHS = 12.0  # depths are never drawn larger than so many times
_ANGLER_M = 2.02  # top of the angler over the water [m]
_STAND_M = {True: 0.16, False: 0.24}  # ground of the bank, deck of the boat over the water [m]
_HANDS_M = 0.98  # hands over the ground [m]
BUTT_M = 0.38  # rod behind the hands [m]


@dataclass(frozen=True, slots=True)
class Frame:
    """The map from metres to device units; x counts from the rod tip, z from the surface upwards."""

    rect: QRectF
    u: float
    tip_x: float
    surface_y: float
    along: float  # device units a metre of distance
    over: float  # of height over the water, and of the angler
    under: float  # of depth
    depth_m: float
    lure_m: float

    def at(self, x: float, z: float) -> QPointF:
        """Return where a point lies; on the angler's side of the tip widths take the scale of heights."""
        return QPointF(
            self.tip_x + x * (self.along if x > 0 else self.over),
            self.surface_y - z * (self.over if z > 0 else self.under),
        )

    def path_points(self, points: Iterable[tuple[float, float]]) -> list[QPointF]:
        """Return where the points of a shape lie."""
        return [self.at(x, z) for x, z in points]

    @property
    def bottom_y(self) -> float:
        """Where the bottom lies."""
        return self.surface_y + self.depth_m * self.under

    @property
    def lure_x(self) -> float:
        """Where the lure lies."""
        return self.tip_x + self.lure_m * self.along

    @property
    def scale_words(self) -> str:
        """What must be said about the scale."""
        heights, depths = self.over / self.along, self.under / self.along
        if heights < 1.2 and depths < 1.2:
            return "drawn to scale"
        said = [
            f"{name} {_times(by)}" for name, by in (("heights", heights), ("depths", depths)) if by >= 1.2
        ]
        return "distance to scale; " + ", ".join(said)


def _times(by: float) -> str:
    return f"drawn {by:.0f}×" if by >= 3.0 else f"drawn {by:.1f}×"


def stand_m(shore: bool) -> float:
    """Return how high the angler's feet stand over the water [m]."""
    return _STAND_M[shore]


def hands(scene: RigScene) -> tuple[float, float]:
    """Return where the angler's hands hold the rod, as distance from the tip and height [m]."""
    height = stand_m(scene.water.shore) + _HANDS_M
    reach = scene.rod.length_m - BUTT_M
    rise = scene.typical[0][1] - height
    return -max(0.3 * reach, (reach**2 - min(abs(rise), 0.9 * reach) ** 2) ** 0.5), height


def frame_for(rect: QRectF, scene: RigScene, u: float) -> Frame:
    """Return the map that shows the whole rig in ``rect`` as large as it can be."""
    surface = rect.top() + _SKY * rect.height()
    room_down = max(20.0 * u, rect.bottom() - _GROUND * u - surface)
    lure = max(scene.typical[-1][0], 0.5)
    back = -hands(scene)[0] + 0.75
    over = min((surface - rect.top() - 8.0 * u) / _ANGLER_M, 0.30 * rect.width() / back)
    tip = rect.left() + 6.0 * u + back * over
    along = min(
        (rect.right() - 0.085 * rect.width() - tip) / lure,
        1.25 * over,
        room_down / max(scene.water.depth_m, 0.2),
    )
    under = min(room_down / max(scene.water.depth_m, 0.1), _MOST_DEPTHS * along)
    if under < 1.2 * along:
        under = along
    return Frame(rect, u, tip, surface, along, over, under, max(scene.water.depth_m, 0.1), lure)
