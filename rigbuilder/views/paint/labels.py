"""Words at the ends of lines, moved apart so that none covers another."""

from collections.abc import Sequence


def spread(wanted: Sequence[float], heights: Sequence[float], low: float, high: float) -> list[float]:
    """Return centres as near to the ``wanted`` ones as room allows, without overlap.

    Labels keep their order.  If all heights together exceed ``high - low`` they
    are stacked from ``low`` on, still without overlap.

    Parameters
    ----------
    wanted: wished centres, in any order.
    heights: height of each label.
    low, high: the room they share.
    """
    order = sorted(range(len(wanted)), key=lambda i: wanted[i])
    groups: list[tuple[list[int], float]] = []  # indices, top of the group
    for index in order:
        groups.append(([index], _clamp(wanted[index] - heights[index] / 2, heights[index], low, high)))
        while len(groups) > 1 and _bottom(groups[-2], heights) > groups[-1][1]:
            members = groups[-2][0] + groups[-1][0]
            del groups[-2:]
            groups.append((members, _best_top(members, wanted, heights, low, high)))
    centres = [0.0] * len(wanted)
    for members, top in groups:
        for index in members:
            centres[index] = top + heights[index] / 2
            top += heights[index]
    return centres


def _bottom(group: tuple[list[int], float], heights: Sequence[float]) -> float:
    return group[1] + sum(heights[index] for index in group[0])


def _best_top(
    members: list[int], wanted: Sequence[float], heights: Sequence[float], low: float, high: float
) -> float:
    """Return the top of a touching group that moves its labels least in the mean."""
    offset, tops = 0.0, []
    for index in members:
        tops.append(wanted[index] - heights[index] / 2 - offset)
        offset += heights[index]
    return _clamp(sum(tops) / len(tops), offset, low, high)


def _clamp(top: float, height: float, low: float, high: float) -> float:
    return max(low, min(top, high - height))
