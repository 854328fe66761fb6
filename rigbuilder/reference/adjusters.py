"""Conditions of the day and how practice moves line, leader and test with them."""

from collections.abc import Mapping

from rigbuilder.reference.ranges import SpanField
from rigbuilder.reference.rows import Frozen, Row
from rigbuilder.reference.words import LineType, RetrieveLoad


class Ladders(Row):
    """The trade's ladders of tests [lb] and leader lengths [in]; a step is one place along a ladder."""

    nylon_lb: tuple[float, ...]
    braid_lb: tuple[float, ...]
    leader_lb: tuple[float, ...]
    leader_in: tuple[float, ...]

    def for_line(self, line: LineType) -> tuple[float, ...]:
        """Return the ladder of main-line tests [lb] for a line type."""
        return self.braid_lb if line.is_braided else self.nylon_lb


class Clause(Frozen):
    """One condition on a field: a number [SI] above and/or below a bound, or one of some words."""

    field: str
    above: float | None = None
    below: float | None = None
    one_of: tuple[str, ...] = ()

    def holds(self, values: Mapping[str, float | str]) -> bool:
        """Tell whether the field is known and fits (``above`` is inclusive, ``below`` is not)."""
        value = values.get(self.field)
        if value is None:
            return False
        if isinstance(value, str):
            return value in self.one_of
        over = self.above is None or value >= self.above
        return over and (self.below is None or value < self.below) and not self.one_of


class AdjusterState(Row):
    """One state of a condition; steps are ``None`` where practice moves nothing."""

    id: str
    name: str
    when: tuple[Clause, ...]
    for_loads: tuple[RetrieveLoad, ...] = ()
    test: SpanField | None = None
    leader_test: SpanField | None = None
    leader_length: SpanField | None = None
    lure_weight: SpanField | None = None
    favour: tuple[LineType, ...] = ()
    avoid: tuple[LineType, ...] = ()
    leader_advice: str = ""
    leader_max_m: float | None = None
    bite_leader_m: SpanField | None = None
    heavy_cover_floor_lb: float | None = None
    heavy_cover_aim_lb: SpanField | None = None
    braid_direct: str = ""
    advice: str
    why: str = ""

    def holds(self, values: Mapping[str, float | str]) -> bool:
        """Tell whether every clause holds; a field that is not known never does."""
        return all(clause.holds(values) for clause in self.when)


class Adjuster(Frozen):
    """One condition of the day with its states."""

    id: str
    name: str
    states: tuple[AdjusterState, ...]

    def state_for(self, values: Mapping[str, float | str]) -> AdjusterState | None:
        """Return the state with the most clauses among those that hold, ``None`` if none does."""
        holding = [state for state in self.states if state.holds(values)]
        return max(holding, key=lambda state: len(state.when), default=None)

    def state(self, state_id: str) -> AdjusterState:
        """Return a state by its id.

        Raises:
            KeyError: if the adjuster has no such state.
        """
        for state in self.states:
            if state.id == state_id:
                return state
        raise KeyError(f"{self.id}/{state_id}")
