"""How a figure or a statement is known."""

from dataclasses import dataclass
from enum import StrEnum


class Kind(StrEnum):
    """The four ways in which the program may know something."""

    COMPUTED = "computed"
    PUBLISHED = "published"
    PRACTICE = "common practice"
    MEMORY = "from memory"


@dataclass(frozen=True, slots=True)
class Source:
    """One basis of a figure or statement.

    ``text`` is the sentence shown to a person: the formula and its inputs for
    *computed*, the citation for *published*, a plain remark otherwise.
    ``where`` holds page, table or address of a published work.
    """

    kind: Kind
    text: str = ""
    where: str = ""

    def __str__(self) -> str:
        parts = [part for part in (self.text, self.where) if part]
        return f"{self.kind}: {', '.join(parts)}" if parts else str(self.kind)


COMMON_PRACTICE = Source(Kind.PRACTICE)
FROM_MEMORY = Source(Kind.MEMORY)
