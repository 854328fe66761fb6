"""What is on the sheet already, so that further words find a clear place."""

from collections.abc import Iterable, Sequence

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainterPath


class Clutter:
    """Rectangles that are taken and points of curves that should stay in sight."""

    def __init__(self, room: QRectF) -> None:
        self._room = room
        self._taken: list[QRectF] = []
        self._points: list[tuple[float, float]] = []

    @property
    def taken(self) -> tuple[QRectF, ...]:
        """The rectangles taken so far."""
        return tuple(self._taken)

    def add_curve(self, path: QPainterPath, samples: int = 40) -> None:
        """Keep words off a curve."""
        if not path.isEmpty():
            spots = (path.pointAtPercent(k / samples) for k in range(samples + 1))
            self._points.extend((spot.x(), spot.y()) for spot in spots)

    def take(self, rect: QRectF) -> None:
        """Mark a rectangle as taken."""
        self._taken.append(rect)

    def place(self, candidates: Sequence[QRectF]) -> QRectF:
        """Take and return the candidate that covers least; the first of equals."""
        best, least = candidates[0], float("inf")
        for rect in candidates:
            cost = self._cost(rect)
            if cost < least:
                best, least = rect, cost
            if cost <= 0.0:
                break
        self._taken.append(best)
        return best

    def _cost(self, rect: QRectF) -> float:
        covered = _area(rect.intersected(other) for other in self._taken)
        left, right, top, bottom = rect.left(), rect.right(), rect.top(), rect.bottom()
        crossed = sum([left < x < right and top < y < bottom for x, y in self._points])
        outside = rect.width() * rect.height() - _area([rect.intersected(self._room)])
        return covered * 10 + outside * 20 + crossed * rect.height() ** 2


def _area(rects: Iterable[QRectF]) -> float:
    return sum(max(0.0, rect.width()) * max(0.0, rect.height()) for rect in rects)
