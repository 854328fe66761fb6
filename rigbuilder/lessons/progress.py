"""What one junior has understood so far, and what comes back: kept under a name of their own choice.

Nothing is counted but rigs: no time, no score. A rule that was missed goes onto the ladder and
comes back in another rig a few rigs later; each time it is understood the distance grows, and after
the last rung it leaves the ladder.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any, Self

from pydantic import BaseModel, ConfigDict, Field, StrictBool, StrictInt, StrictStr

from rigbuilder.lessons.answer import Mark, Result, Said
from rigbuilder.model.fields import Part

RUNGS = (2, 5, 10)
"""How many rigs later a missed rule comes back, rung by rung: wider each time (common practice)."""

FORMAT = "rigbuilder.progress"
VERSION = 1


class _Kept(BaseModel):
    model_config = ConfigDict(frozen=True, extra="allow")

    def with_(self, **changes: Any) -> Self:
        """Return a new value with the changes made, checked like any other."""
        return type(self).model_validate({**self.model_dump(mode="json"), **changes})


class Answered(_Kept):
    """One rig answered: which rules were understood, which not yet, which parts were marked without cause."""

    lesson: StrictStr
    rig: StrictInt
    understood: tuple[StrictStr, ...] = ()
    not_yet: tuple[StrictStr, ...] = ()
    without_cause: tuple[Part, ...] = ()
    right: StrictBool = False
    hints: StrictInt = 0

    @property
    def place(self) -> tuple[str, int]:
        """Return which rig of which lesson it was."""
        return self.lesson, self.rig


class SaidMark(_Kept):
    """A mark as the file holds it."""

    part: Part
    rule: StrictStr = ""


class Sitting(_Kept):
    """A lesson under way, exact to the last click: which rig is up, what is said of it, whether it is shown.

    ``again`` is the place of a rig that came back in between, instead of rig ``at``.
    """

    lesson: StrictStr
    path: StrictStr = ""
    at: StrictInt = Field(default=0, ge=0)
    again: tuple[StrictStr, StrictInt] | None = None
    marks: tuple[SaidMark, ...] = ()
    nothing_wrong: StrictBool = False
    mended: dict[str, Any] | None = None
    hints: StrictInt = 0
    shown: StrictBool = False

    @property
    def said(self) -> Said:
        """Return the answer so far."""
        marks = tuple(Mark(mark.part, mark.rule) for mark in self.marks)
        return Said(marks, self.nothing_wrong, self.mended, self.hints)

    def saying(self, said: Said) -> "Sitting":
        """Return the sitting with another answer."""
        return self.with_(
            marks=[{"part": str(mark.part), "rule": mark.rule} for mark in said.marks],
            nothing_wrong=said.nothing_wrong,
            mended=said.mended,
            hints=said.hints,
        )


class Progress(_Kept):
    """Everything that is kept about one junior."""

    name: StrictStr = Field(min_length=1, max_length=60)
    answers: tuple[Answered, ...] = ()
    sitting: Sitting | None = None

    def as_document(self) -> dict[str, Any]:
        """Return the progress as plain JSON values."""
        return {"format": FORMAT, "version": VERSION, **self.model_dump(mode="json")}

    def answered(self, lesson: str, rig: int, result: Result, hints: int) -> "Progress":
        """Return the progress with one more rig answered."""
        entry = Answered(
            lesson=lesson,
            rig=rig,
            understood=result.understood,
            not_yet=result.not_yet,
            without_cause=tuple(dict.fromkeys(mark.part for mark in result.without_cause)),
            right=result.right,
            hints=hints,
        )
        told = [*(answer.model_dump(mode="json") for answer in self.answers), entry.model_dump(mode="json")]
        return self.with_(answers=told)


@dataclass(frozen=True, slots=True)
class Rung:
    """A rule on the ladder: where it was missed, on which rung it stands, at which answer it is due."""

    rule: str
    missed_at: tuple[str, int]
    rung: int
    due: int


def ladder(answers: Sequence[Answered]) -> tuple[Rung, ...]:
    """Return the rules that come back, the one that is due first at the head."""
    rungs: dict[str, Rung] = {}
    for number, answer in enumerate(answers, start=1):
        for rule in answer.not_yet:
            rungs[rule] = Rung(rule, answer.place, 0, number + RUNGS[0])
        for rule in answer.understood:
            known = rungs.pop(rule, None)
            if known is not None and known.rung + 1 < len(RUNGS):
                step = known.rung + 1
                rungs[rule] = Rung(rule, known.missed_at, step, number + RUNGS[step])
    return tuple(sorted(rungs.values(), key=lambda rung: (rung.due, rung.rule)))


def due(answers: Sequence[Answered]) -> tuple[Rung, ...]:
    """Return the rules whose turn it is before the next rig."""
    return tuple(rung for rung in ladder(answers) if rung.due <= len(answers))


def comes_back(
    answers: Sequence[Answered], pool: Iterable[tuple[tuple[str, int], Sequence[str]]]
) -> tuple[str, int] | None:
    """Return the place of the rig in which a missed rule comes back now, ``None`` if nothing is due.

    ``pool`` gives for each rig there is its place and the rules meant in it. It is another rig than
    the one missed; of several the one seen least, then longest ago, then first in the pool.
    """
    rigs = [(place, tuple(meant)) for place, meant in pool]
    last = {answer.place: number for number, answer in enumerate(answers)}
    count: dict[tuple[str, int], int] = {}
    for answer in answers:
        count[answer.place] = count.get(answer.place, 0) + 1
    for rung in due(answers):
        fitting = [place for place, meant in rigs if rung.rule in meant and place != rung.missed_at]
        if fitting:
            return min(fitting, key=lambda place: (count.get(place, 0), last.get(place, -1)))
    return None


@dataclass(frozen=True, slots=True)
class Standing:
    """How one rule stands with a junior: understood last time or not yet, and how often each."""

    rule: str
    understood: int
    not_yet: int
    is_understood: bool


def standings(answers: Sequence[Answered]) -> tuple[Standing, ...]:
    """Return how each rule that came up stands; what is not understood yet first."""
    counts: dict[str, list[int]] = {}
    latest: dict[str, bool] = {}
    for answer in answers:
        for place, rules in ((0, answer.understood), (1, answer.not_yet)):
            for rule in rules:
                counts.setdefault(rule, [0, 0])[place] += 1
                latest[rule] = place == 0
    rows = [Standing(rule, good, bad, latest[rule]) for rule, (good, bad) in counts.items()]
    return tuple(sorted(rows, key=lambda row: (row.is_understood, row.rule)))


@dataclass(frozen=True, slots=True)
class RightRigs:
    """How many right rigs came up, how many were called right, and where marks had no cause."""

    seen_as_right: int
    total: int
    without_cause: tuple[Part, ...]


def right_rigs(answers: Sequence[Answered]) -> RightRigs:
    """Return how a junior does with rigs that are right, and with marks that have no cause."""
    right = [answer for answer in answers if not (answer.understood or answer.not_yet)]
    marks = {part for answer in answers for part in answer.without_cause}
    return RightRigs(
        sum(answer.right for answer in right), len(right), tuple(part for part in Part if part in marks)
    )
