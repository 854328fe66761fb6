"""Which leader the day points at: whether one is wanted, of what, how strong and how long.

As with the main line, the technique's range is made for its usual conditions,
and what differs from those moves test and length by steps. Common practice.
"""

from collections.abc import Callable
from dataclasses import dataclass

from rigbuilder.reference.ranges import INCH_M, Span
from rigbuilder.reference.words import LeaderNeed, LineType
from rigbuilder.review.conditions import Aim, Move, moved

_ROUNDED = 0.03  # tables in metres round what ladders have in inches


@dataclass(frozen=True, slots=True)
class LeaderAim:
    """The leader that suits today: tests [lb] and lengths [in] as lowest, aim, highest; what moved them."""

    need: LeaderNeed
    materials: tuple[LineType, ...]
    test_lb: tuple[float, float, float] | None
    length_in: tuple[float, float, float] | None
    test_moves: tuple[Move, ...]
    length_moves: tuple[Move, ...]
    advice: tuple[str, ...]


def leader_aim(aim: Aim, main: LineType) -> LeaderAim:
    """Return the leader that the conditions of an aim point at, on a main line of this type."""
    technique, ladders = aim.technique, aim.reference.ladders
    leader, base = technique.leader, technique.base
    moves = aim.moves(main)
    lengths = None if leader.length_m is None else leader.length_m.scaled(1 / INCH_M)
    usual_in = base.leader_m / INCH_M if base.leader_m else None
    return LeaderAim(
        leader.need_on(main),
        _materials(aim, leader.materials),
        _three(leader.test_lb, base.leader_lb, moves, _of_test, ladders.leader_lb),
        _three(lengths, usual_in, moves, _of_length, ladders.leader_in),
        tuple(move for move in moves if move.leader_test),
        tuple(move for move in moves if move.leader_length),
        tuple(f"{move.state.name}: {move.state.leader_advice}" for move in moves if move.state.leader_advice),
    )


def _of_test(move: Move) -> float:
    return move.leader_test


def _of_length(move: Move) -> float:
    return move.leader_length


def _three(
    span: Span | None, usual: float | None, moves: tuple[Move, ...], steps_of: Callable[[Move], float],
    ladder: tuple[float, ...],
) -> tuple[float, float, float] | None:  # fmt: skip
    if span is None:
        return None
    steps = round(sum(steps_of(move) for move in moves))
    low = min(moved(ladder, span.low, min(0, steps)), span.low)
    high = max(moved(ladder, span.high, max(0, steps)), span.high)
    aim = moved(ladder, _on_rung(ladder, span.middle if usual is None else usual), steps)
    return low, min(max(aim, low), high), high


def _on_rung(ladder: tuple[float, ...], value: float) -> float:
    """Return the rung that a rounded value means, or the value where it means none."""
    nearest = min(ladder, key=lambda rung: abs(rung - value))
    return nearest if abs(nearest / value - 1.0) <= _ROUNDED else value


def _materials(aim: Aim, usual: tuple[LineType, ...]) -> tuple[LineType, ...]:
    """Return the usual materials, those that the day favours first."""
    leanings = aim.leanings()
    return tuple(sorted(usual, key=lambda kind: -len(leanings[kind])))
