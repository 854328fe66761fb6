"""Knots and joints: what each is for, what it bears, how it is tied."""

from collections.abc import Mapping

from rigbuilder.reference.ranges import LBF_N, Range, RangeField, SpanField
from rigbuilder.reference.rows import Frozen, Row
from rigbuilder.reference.words import GuidePassage, JointPlace, LineType


class KnotLimit(Frozen):
    """The strongest line of one type in which a knot still seats and holds."""

    type: LineType
    max_lb: float
    why: str

    @property
    def max_n(self) -> float:
        """The limit in newtons."""
        return self.max_lb * LBF_N


class Knot(Row):
    """One knot. ``efficiency`` is the share of the line's straight break that is left, by line type."""

    name: str
    title: str
    aliases: tuple[str, ...] = ()
    places: tuple[JointPlace, ...]
    suits: tuple[LineType, ...]
    avoid: tuple[LineType, ...] = ()
    limits: tuple[KnotLimit, ...] = ()
    avoid_note: str = ""
    for_large_trebles: bool = True
    for_plain_hooks: bool = False
    ratio: SpanField | None = None
    turns: str = ""
    efficiency: Mapping[LineType, RangeField]
    guides: GuidePassage
    note: str = ""
    steps: tuple[str, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """Every name under which a card may call the knot."""
        return (self.name, *self.aliases)

    def serves(self, place: JointPlace) -> bool:
        """Whether the knot is made for this place."""
        return place in self.places

    def efficiency_in(self, line: LineType) -> Range | None:
        """Return the share of strength left in this line type; ``None`` where nothing is known."""
        return self.efficiency.get(line)

    def max_lb(self, line: LineType) -> float | None:
        """Return the strongest label test of this line type that the knot suits, if it has a limit."""
        return next((limit.max_lb for limit in self.limits if limit.type is line), None)
