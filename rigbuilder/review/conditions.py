"""How water, cover, fish and cast move the answer along the trade's ladders.

A technique's range is made for the conditions of its usual rig. A condition that
differs from those adds the difference of its steps. The sum moves the aim inside
the range, and widens the range by a rung on the side to which it points; hard
cover and a heavy lure lift the lower end too, and hard cover may push the aim past the
upper one. All of it is common practice.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from types import MappingProxyType

from rigbuilder.model.reading import read_rig
from rigbuilder.model.rig import Rig
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.adjusters import Adjuster, AdjusterState
from rigbuilder.reference.load import Reference, load
from rigbuilder.reference.ranges import Span
from rigbuilder.reference.techniques import Technique
from rigbuilder.reference.words import LineType, Presentation

_COVER = "cover"
_HARD = frozenset({_COVER, "lure-weight"})  # what lifts the lightest line that will do


@dataclass(frozen=True, slots=True)
class Move:
    """One condition of the day, and by how many steps it moves things beyond the usual rig's conditions.

    ``steps`` move the test of the main line, the others test and length of the leader.
    """

    adjuster: str
    state: AdjusterState
    steps: float
    leader_test: float = 0.0
    leader_length: float = 0.0


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

    def steps_below_base(self, test_lb: float) -> int:
        """Return the rungs below where the range begins: what the day lets pass starts no new range."""
        low = max(self.low_lb, self.base.low)
        return sum(1 for rung in self.ladder if test_lb + 0.05 < rung <= low + 0.05)

    def steps_above(self, test_lb: float) -> int:
        """Return how many rungs of the ladder a test lies above the highest that suits."""
        return sum(1 for rung in self.ladder if self.high_lb - 0.05 <= rung < test_lb - 0.05)

    def steps_from_aim(self, test_lb: float) -> int:
        """Return the signed distance from the aim in rungs; negative is lighter."""
        return _rung(self.ladder, test_lb) - _rung(self.ladder, self.aim_lb)


@dataclass(frozen=True, slots=True)
class Aim:
    """What the conditions of one rig do to every line type's range; worked out as it is asked for."""

    technique: Technique
    reference: Reference
    known: Mapping[str, float | str]

    _bounds: dict[LineType, Bounds | None] = field(default_factory=dict, compare=False)
    _moves: dict[LineType, tuple[Move, ...]] = field(default_factory=dict, compare=False)
    _leanings: dict[LineType, tuple[str, ...]] = field(default_factory=dict, compare=False)

    def for_type(self, kind: LineType) -> Bounds | None:
        """Return the tests that suit a line type, ``None`` where practice names none."""
        if kind not in self._bounds:
            line = self.technique.lines.get(kind)
            base = None if line is None else line.test_lb
            self._bounds[kind] = None if base is None else self._bounds_for(kind, base)
        return self._bounds[kind]

    def moves(self, kind: LineType) -> tuple[Move, ...]:
        """Return the conditions that hold, with this line type on the reel."""
        if kind not in self._moves:
            self._moves[kind] = self._moves_for(kind)
        return self._moves[kind]

    def leanings(self) -> Mapping[LineType, tuple[str, ...]]:
        """Return which line types today favours beyond the usual rig's conditions, and by which of them.

        A condition that favours a type and one that speaks against it cancel out.
        """
        if not self._leanings:
            self._leanings.update(self._lean())
        return self._leanings

    def _lean(self) -> dict[LineType, tuple[str, ...]]:
        usual = usual_conditions(self.technique.id)
        found: dict[LineType, list[str]] = {kind: [] for kind in LineType}
        against: dict[LineType, int] = dict.fromkeys(LineType, 0)
        for adjuster in self.reference.adjusters:
            state = self._state(adjuster, self.known)
            if state is None or state == self._state(adjuster, usual):
                continue
            for kind in state.favour:
                found[kind].append(state.name)
            for kind in state.avoid:
                against[kind] += 1
        return {kind: tuple(names[against[kind] :]) for kind, names in found.items()}

    def movers(self, kind: LineType, *, up: bool) -> tuple[Move, ...]:
        """Return the conditions that move the test of a line type up, or down."""
        return tuple(move for move in self.moves(kind) if (move.steps > 0 if up else move.steps < 0))

    def _moves_for(self, kind: LineType) -> tuple[Move, ...]:
        usual = {**usual_conditions(self.technique.id), "main.type": str(kind)}
        today = {**self.known, "main.type": str(kind)}
        found = ((a.id, self._state(a, today), self._state(a, usual)) for a in self.reference.adjusters)
        return tuple(_move(name, state, base) for name, state, base in found if state is not None)

    def _state(self, adjuster: Adjuster, known: Mapping[str, float | str]) -> AdjusterState | None:
        state = adjuster.state_for(known)
        loads = set(self.technique.retrieve_load)
        return None if state is None or (state.for_loads and not loads & set(state.for_loads)) else state

    def _weed_lb(self, kind: LineType) -> float:
        """Return the least braid [lb] that the weed of the day asks of techniques of heavy cover."""
        if not kind.is_braided or Presentation.HEAVY_COVER not in self.technique.presentations:
            return 0.0
        states = [move.state for move in self.moves(kind)]
        floors = [state.heavy_cover_floor_lb or 0.0 for state in states]
        aims = [state.heavy_cover_aim_lb.low for state in states if state.heavy_cover_aim_lb]
        return max([0.0, *floors, *aims])

    def _bounds_for(self, kind: LineType, base: Span) -> Bounds:
        ladder = tuple(map(float, self.reference.ladders.for_line(kind)))
        ups = self.movers(kind, up=True)
        up = sum(move.steps for move in ups)
        steps = _whole(up + sum(move.steps for move in self.movers(kind, up=False)))
        lift = sum(move.steps for move in ups if move.adjuster in _HARD)
        low = moved(ladder, base.low, 1 if lift >= 1.0 else max(-1, min(0, steps)))
        high = moved(ladder, base.high, min(math.ceil(up), 1 + math.ceil(lift)))
        own = self.technique.base
        start = own.main_lb if own.main is kind else _on_ladder(ladder, math.sqrt(base.low * base.high))
        # The day points inside the range; only hard cover may point past its end, by its own steps alone.
        cover = sum(move.steps for move in ups if move.adjuster == _COVER)
        pushed = min(high, moved(ladder, base.high, math.ceil(cover))) if cover >= 1.0 else start
        top = max(base.high, pushed)
        aim = min(max(moved(ladder, start, steps), base.low), top)
        low = min(low, base.high)
        return Bounds(low, min(max(aim, low, self._weed_lb(kind)), high), high, base, ladder)


def _move(name: str, state: AdjusterState, base: AdjusterState | None) -> Move:
    return Move(
        name,
        state,
        _middle(state.test) - (_middle(base.test) if base else 0.0),
        _middle(state.leader_test) - (_middle(base.leader_test) if base else 0.0),
        _middle(state.leader_length) - (_middle(base.leader_length) if base else 0.0),
    )


def _whole(steps: float) -> int:
    """Return whole rungs; half a step counts as one, whichever way it points."""
    return math.floor(steps + 0.5) if steps >= 0 else math.ceil(steps - 0.5)


def _on_ladder(ladder: Sequence[float], test_lb: float) -> float:
    """Return the rung nearest by ratio; of two as near the heavier."""
    return max(ladder, key=lambda rung: (-round(abs(math.log(rung / test_lb)), 9), rung))


def _middle(steps: Span | None) -> float:
    return 0.0 if steps is None else steps.middle


def _rung(ladder: Sequence[float], test_lb: float) -> int:
    return min(range(len(ladder)), key=lambda index: abs(ladder[index] - test_lb))


def steps_between(ladder: Sequence[float], value: float, wish: float) -> int:
    """Return the signed distance from a wish in rungs of a ladder; negative is below it."""
    return _rung(ladder, value) - _rung(ladder, wish)


def moved(ladder: Sequence[float], test_lb: float, steps: int) -> float:
    """Return the value so many rungs up or down a ladder; its ends are not left."""
    if steps == 0:
        return test_lb
    rungs = [rung for rung in ladder if (rung > test_lb if steps > 0 else rung < test_lb)]
    if not rungs:
        return test_lb
    return rungs[min(steps, len(rungs)) - 1] if steps > 0 else rungs[max(steps, -len(rungs))]


def aims_for(rigs: Sequence[Rig], techniques: Sequence[Technique], reference: Reference) -> list[Aim]:
    """Return what each rig's conditions do to the tests that suit; rigs under like conditions share it."""
    shared: dict[tuple[str, frozenset[tuple[str, float | str]]], Aim] = {}
    found = []
    for rig, technique in zip(rigs, techniques, strict=True):
        known = known_conditions(rig, technique)
        key = (technique.id, frozenset(known.items()))
        if key not in shared:
            shared[key] = Aim(technique, reference, known)
        found.append(shared[key])
    return found


@cache
def usual_conditions(technique: str) -> Mapping[str, float | str]:
    """Return the conditions of a technique's usual rig, for which its range is made."""
    reference = load()
    rig = read_rig(usual_document(technique), reference, file=f"the usual rig {technique}").rig
    assert rig is not None  # noqa: S101 - read_rig raises otherwise
    return MappingProxyType(known_conditions(rig, reference.techniques[technique]))


def known_conditions(rig: Rig, technique: Technique) -> dict[str, float | str]:
    """Return what is known of the day by the names that the adjuster table uses; SI and card words."""
    water, fish = rig.water, rig.fish
    found: dict[str, float | str | None] = {
        "water.clarity": water.clarity_m,
        "water.depth": water.depth_m,
        "water.temperature": water.temperature_c,
        "water.air": water.air_c,
        "water.cover": water.cover,
        "water.pressure": water.pressure,
        "water.wind": water.wind,
        "water.current": water.current_mps,
        "cast": rig.cast_m,
        "from": None if rig.from_shore is None else ("shore" if rig.from_shore else "boat"),
        "fish.teeth": fish.teeth,
        "fish.weight_ratio": None if fish.mass_kg is None else fish.mass_kg / technique.fish_kg.middle,
        "reel.kind": rig.reel.kind,
        "presentation": rig.presentation,
        "technique.toothed": "yes" if technique.toothed else "no",
        "technique.rest": technique.rest,
        "lure.weight_share": _weight_share(rig, technique),
    }
    return {key: value for key, value in found.items() if value is not None}


def _weight_share(rig: Rig, technique: Technique) -> float | None:
    """Return where the lure lies in the technique's usual weights: 0 at the lightest, 1 at the heaviest."""
    span = technique.lure_kg
    return (rig.lure.total_kg - span.low) / (span.high - span.low) if span.high > span.low else None
