"""A class at one glance: every rule beside every junior, understood, not yet, or not met."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from rigbuilder.lessons.progress import Progress, RightRigs, right_rigs, standings


class Stand(StrEnum):
    """How a rule stands with a junior; as with one junior, what was last said of it counts."""

    UNDERSTOOD = "understood"
    NOT_YET = "not yet"
    NOT_MET = "not met"


@dataclass(frozen=True, slots=True)
class RuleRow:
    """A rule, and how it stands with each junior, in the order of the juniors."""

    rule: str
    stands: tuple[Stand, ...]


@dataclass(frozen=True, slots=True)
class Classroom:
    """Rules by juniors, and how the juniors do with rigs that are right."""

    juniors: tuple[str, ...]
    rules: tuple[RuleRow, ...]
    right: tuple[RightRigs, ...]


def classroom(class_: Sequence[Progress], taught: Iterable[str] = ()) -> Classroom:
    """Return a class as a table; ``taught`` are rules to be listed though nobody has met them.

    What most have not understood yet comes first: with it the next evening may begin.
    """
    columns = [
        {
            row.rule: Stand.UNDERSTOOD if row.is_understood else Stand.NOT_YET
            for row in standings(progress.answers)
        }
        for progress in class_
    ]
    names = {rule for column in columns for rule in column} | set(taught)
    rows = [RuleRow(rule, tuple(column.get(rule, Stand.NOT_MET) for column in columns)) for rule in names]
    rows.sort(key=lambda row: (-row.stands.count(Stand.NOT_YET), row.stands.count(Stand.NOT_MET), row.rule))
    return Classroom(
        tuple(progress.name for progress in class_),
        tuple(rows),
        tuple(right_rigs(progress.answers) for progress in class_),
    )
