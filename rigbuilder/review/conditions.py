"""How water, cover, fish and cast move the answer along the trade's ladders.

Every state of an adjuster that holds on the day adds its steps. The sum moves
the aim inside the technique's range; steps towards heavier widen the range
upwards, steps towards lighter downwards; cover that a fish can reach, and a
heavy lure, lift the lower end too, except where the technique's own range is
already made for cover. All of it is common practice.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from rigbuilder.model.rig import Rig
from rigbuilder.reference.adjusters import AdjusterState
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import Span
from rigbuilder.reference.techniques import Technique
from rigbuilder.reference.words import (
    Cover,
    FishTeeth,
    LineType,
    Presentation,
    Pressure,
    Wind,
)

# Bounds of the trade's words for clarity and depth, metres (8, 3 and 1 ft; 5, 15 and 30 ft), common practice.
_CLARITY_M = ((2.44, "gin-clear"), (0.91, "clear"), (0.3, "stained"), (0.0, "muddy"))
_DEPTH_M = ((9.14, "over-30-ft"), (4.57, "15-30-ft"), (1.52, "5-15-ft"), (0.0, "under-5-ft"))
_COVER = {
    Cover.OPEN: "open",
    Cover.SPARSE_GRASS: "scattered-grass",
    Cover.THICK_GRASS: "thick-grass",
    Cover.MATTED_GRASS: "thick-grass",
    Cover.LILY_PADS: "thick-grass",
    Cover.WOOD: "wood",
    Cover.DOCKS: "wood",
    Cover.ROCK: "rock",
}
_COLD_C = 9.0  # common practice: 45-50 °F, where fluorocarbon stiffens
_SHORT_M, _FAR_M, _VERY_FAR_M = 13.7, 27.4, 41.1  # 15, 30 and 45 yd
_HARD = ("cover", "lure-weight", "teeth")


@dataclass(frozen=True, slots=True)
class Move:
    """One condition that moves the answer: where it comes from, and by how many steps of each ladder."""

    adjuster: str
    state: AdjusterState


@dataclass(frozen=True, slots=True)
class Bounds:
    """The tests [lb] that suit one line type today: lowest, aim, highest, and the unmoved range."""

    low_lb: float
    aim_lb: float
    high_lb: float
    base: Span
    ladder: tuple[float, ...]

    def steps_below(self, test_lb: float) -> int:
        """Return how many rungs of the ladder a test lies below the lowest that suits."""
        return sum(1 for rung in self.ladder if test_lb + 0.05 < rung <= self.low_lb + 0.05)

    def steps_above(self, test_lb: float) -> int:
        """Return how many rungs of the ladder a test lies above the highest that suits."""
        return sum(1 for rung in self.ladder if self.high_lb - 0.05 <= rung < test_lb - 0.05)

    def steps_from_aim(self, test_lb: float) -> int:
        """Return the signed distance from the aim in rungs; negative is lighter."""
        return _rung(self.ladder, test_lb) - _rung(self.ladder, self.aim_lb)


@dataclass(frozen=True)
class Aim:
    """What the conditions of one rig do to every line type's range."""

    technique: Technique
    reference: Reference
    moves: tuple[Move, ...]

    @cached_property
    def _bounds(self) -> dict[LineType, Bounds]:
        return {
            kind: self._bounds_for(kind, line.test_lb)
            for kind, line in self.technique.lines.items()
            if line.test_lb is not None
        }

    def for_type(self, kind: LineType) -> Bounds | None:
        """Return the tests that suit a line type, ``None`` where practice names none."""
        return self._bounds.get(kind)

    def steps(self, what: str) -> float:
        """Return the sum of the middles of the steps for ``test``, ``leader_test`` or ``leader_length``."""
        return sum(_middle(getattr(move.state, what)) for move in self.moves)

    def movers(self, *, up: bool) -> tuple[Move, ...]:
        """Return the conditions that move the test up, or down."""
        return tuple(
            m for m in self.moves if (_middle(m.state.test) > 0) is up and _middle(m.state.test) != 0
        )

    def _bounds_for(self, kind: LineType, base: Span) -> Bounds:
        ladder = tuple(map(float, self.reference.ladders.for_line(kind)))
        up = sum(_middle(move.state.test) for move in self.movers(up=True))
        down = sum(_middle(move.state.test) for move in self.movers(up=False))
        made_for_cover = Presentation.HEAVY_COVER in self.technique.presentations
        lift = 0.0 if made_for_cover else sum(
            _middle(m.state.test) for m in self.movers(up=True) if m.adjuster in _HARD
        )  # fmt: skip
        low = _moved(ladder, base.low, min(1, math.floor(lift)) if lift > 0 else math.ceil(down))
        high = _moved(ladder, base.high, math.ceil(up))
        own = self.technique.base
        start = own.main_lb if own.main is kind else base.middle
        aim = _moved(ladder, start, round(up + down))
        return Bounds(min(low, base.high), min(max(aim, low), high), high, base, ladder)


def _middle(steps: Span | None) -> float:
    return 0.0 if steps is None else steps.middle


def _rung(ladder: Sequence[float], test_lb: float) -> int:
    return min(range(len(ladder)), key=lambda index: abs(ladder[index] - test_lb))


def _moved(ladder: Sequence[float], test_lb: float, steps: int) -> float:
    if steps == 0:
        return test_lb
    rungs = [rung for rung in ladder if (rung > test_lb if steps > 0 else rung < test_lb)]
    if not rungs:
        return test_lb
    return rungs[min(steps, len(rungs)) - 1] if steps > 0 else rungs[max(steps, -len(rungs))]


def aim_for(rig: Rig, technique: Technique, reference: Reference) -> Aim:
    """Return what the rig's conditions do to the tests that suit its technique."""
    states = {(a.id, s.id): s for a in reference.adjusters for s in a.states}
    moves = [Move(key[0], states[key]) for key in _holding(rig, technique) if key in states]
    return Aim(technique, reference, tuple(moves))


def _holding(rig: Rig, technique: Technique) -> Iterator[tuple[str, str]]:
    """Yield the (adjuster, state) pairs that hold for the rig's conditions."""
    water = rig.water
    if water.clarity_m is not None:
        yield "clarity", next(word for bound, word in _CLARITY_M if water.clarity_m > bound)
    if water.cover is not None:
        yield "cover", _COVER[water.cover]
    if water.pressure is Pressure.HIGH:
        yield "pressure", "heavily-fished"
    if water.depth_m is not None:
        yield "depth", next(word for bound, word in _DEPTH_M if water.depth_m > bound)
    if water.wind is Wind.STRONG:
        yield "wind", "strong"
    yield from _weather_and_fish(rig, technique)


def _weather_and_fish(rig: Rig, technique: Technique) -> Iterator[tuple[str, str]]:
    water, fish = rig.water, rig.fish
    if water.temperature_c is not None and water.temperature_c < _COLD_C:
        yield "temperature", "cold-water"
    if water.air_c is not None and water.air_c < 0:
        yield "temperature", "freezing-air"
    if fish.mass_kg is not None and fish.mass_kg >= 2 * technique.fish_kg.middle:
        yield "fish-size", "big"
    elif fish.mass_kg is not None and fish.mass_kg < technique.fish_kg.low:
        yield "fish-size", "small"
    if fish.teeth is FishTeeth.PRESENT:
        yield "teeth", "now-and-then"
    if rig.cast_m is not None:
        yield from _distance(rig.cast_m)
    yield "stand", "shore" if rig.from_shore else "boat"
    yield from _lure_weight(rig, technique)


def _distance(cast_m: float) -> Iterator[tuple[str, str]]:
    if cast_m < _SHORT_M:
        yield "distance", "under-15-yd"
    elif cast_m > _VERY_FAR_M:
        yield "distance", "over-45-yd"
    elif cast_m > _FAR_M:
        yield "distance", "30-45-yd"


def _lure_weight(rig: Rig, technique: Technique) -> Iterator[tuple[str, str]]:
    span = technique.lure_kg
    share = (rig.lure.total_kg - span.low) / (span.high - span.low) if span.high > span.low else 0.5
    if share > 0.6:
        yield "lure-weight", "heavy"
    elif share < 0.15:
        yield "lure-weight", "light"
