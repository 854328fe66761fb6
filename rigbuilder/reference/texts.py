"""What practice says in words: mistakes, disagreements, glossary, cautions."""

from rigbuilder.reference.rows import Frozen, Row


class Mistake(Row):
    """A common mistake: what is done, why it fails, how it shows, what to change."""

    number: int
    id: str
    title: str
    severity: int
    part: str
    what: str
    why: str
    see: str
    change: str


class Position(Frozen):
    """One side of a disagreement."""

    id: str
    says: str


class Disagreement(Row):
    """Where anglers differ: the positions, and which the house takes (one or several)."""

    id: str
    topic: str
    positions: tuple[Position, ...]
    house: tuple[str, ...]
    house_says: str

    def position(self, position_id: str) -> Position:
        """Return a position by its id.

        Raises:
            KeyError: if there is no such position.
        """
        for position in self.positions:
            if position.id == position_id:
                return position
        raise KeyError(f"{self.id}/{position_id}")


class Term(Row):
    """A word of the trade in plain words."""

    term: str
    meaning: str


class Caution(Row):
    """A usual caution; it defers to local rules and licensed practice."""

    id: str
    topic: str
    says: str
    parts: tuple[str, ...]


class NamedRule(Row):
    """A rule of practice in one or two sentences."""

    id: str
    name: str = ""
    says: str
