"""Moving among the cells of the line chart by keyboard."""

from collections.abc import Sequence

from PySide6.QtCore import Qt

from rigbuilder.viewmodels.linechart import LineChart, Square

_PAGE = 5  # columns that Page Up and Page Down pass over


def moved(chart: LineChart, now: Square, key: int) -> Square | None:
    """Return the cell that a key leads to, ``None`` if the key does not move.

    Left and Right pass over tests that a type is not sold in; Up and Down go to
    the nearest test; at an edge the place is kept.
    """
    row = chart.rows[now.row].squares
    place = next((index for index, square in enumerate(row) if square.column == now.column), 0)
    along: dict[int, int] = {
        Qt.Key.Key_Left: place - 1,
        Qt.Key.Key_Right: place + 1,
        Qt.Key.Key_PageUp: place - _PAGE,
        Qt.Key.Key_PageDown: place + _PAGE,
        Qt.Key.Key_Home: 0,
        Qt.Key.Key_End: len(row) - 1,
    }
    if key in along:
        return row[min(max(along[key], 0), len(row) - 1)]
    steps: dict[int, int] = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}
    step = steps.get(key)
    if step is None:
        return None
    target = min(max(now.row + step, 0), len(chart.rows) - 1)
    return now if target == now.row else _nearest(chart.rows[target].squares, now.column)


def _nearest(squares: Sequence[Square], column: int) -> Square:
    return min(squares, key=lambda square: abs(square.column - column))
