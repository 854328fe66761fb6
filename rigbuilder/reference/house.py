"""The coach's house: ranges, severities and choices that stand above the shipped practice.

The store reads and writes the file; here its content gets a meaning::

    [severity]
    braid-on-bare-arbor = "note"            # right (off), note, risk or fault

    [disagreements]
    surface-line = ["braid"]                # one or several positions

    [techniques."flipping jig".lines.fluorocarbon]
    rank = "first choice"
    test_lb = [15, 22]

    [techniques."flipping jig".drag]
    percent = [30, 45]

    [spinning_limits."2500"]
    fluorocarbon_max_lb = 6
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from pydantic import Field, ValidationError

from rigbuilder.reference.load import Reference, UnknownName
from rigbuilder.reference.ranges import SpanField
from rigbuilder.reference.rows import Frozen
from rigbuilder.reference.techniques import LinePractice, Technique
from rigbuilder.reference.words import LineType, Rank, RetrieveLoad

HOUSE_REASON = "A house range of the coach."
_RESTLESS = ("surface-line", "fluorocarbon-when-moving")
SeverityWord = Literal["right", "note", "risk", "fault"]


class HouseLine(Frozen):
    """What the coach says about one line type of a technique."""

    rank: Rank | None = None
    test_lb: SpanField | None = None
    reason: str | None = None


class HouseLeader(Frozen):
    """What the coach says about a technique's leader."""

    test_lb: SpanField | None = None
    length_m: SpanField | None = None


class HouseDrag(Frozen):
    """What the coach says about a technique's drag."""

    percent: SpanField | None = None
    drag_lb: SpanField | None = None


class HouseTechnique(Frozen):
    """What the coach says about one technique."""

    lines: dict[LineType, HouseLine] = Field(default_factory=dict)
    leader: HouseLeader = HouseLeader()
    drag: HouseDrag = HouseDrag()


class HouseSpinning(Frozen):
    """What the coach says about one row of the spinning limits."""

    nylon_max_lb: float | None = Field(default=None, gt=0)
    fluorocarbon_max_lb: float | None = Field(default=None, gt=0)
    braid_lb: SpanField | None = None


class HouseFile(Frozen):
    """The content of the house file."""

    note: str = ""
    severity: dict[str, SeverityWord] = Field(default_factory=dict)
    disagreements: dict[str, tuple[str, ...]] = Field(default_factory=dict)
    techniques: dict[str, HouseTechnique] = Field(default_factory=dict)
    spinning_limits: dict[str, HouseSpinning] = Field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class HouseProblem:
    """One entry that cannot be used: where it stands, what was found, what is expected."""

    where: str
    found: str
    expected: str

    def __str__(self) -> str:
        return f"{self.where}: found {self.found}; {self.expected}"


class UnusableHouse(ValueError):  # noqa: N818 - named for what happened
    """The house file holds entries that mean nothing here; ``problems`` names each."""

    def __init__(self, problems: tuple[HouseProblem, ...]) -> None:
        self.problems = problems
        super().__init__("; ".join(str(problem) for problem in problems))


@dataclass(frozen=True, slots=True)
class House:
    """The coach's overrides; empty for the shipped practice."""

    file: HouseFile = field(default_factory=HouseFile)

    @classmethod
    def shipped(cls) -> "House":
        """Return the house that overrides nothing."""
        return cls()

    @classmethod
    def read(cls, entries: Mapping[str, Any], reference: Reference) -> "House":
        """Return the house that a file's entries describe.

        Raises:
            UnusableHouse: naming every entry that has a wrong shape or an unknown name.
        """
        try:
            file = HouseFile.model_validate(_listed(entries))
        except ValidationError as error:
            raise UnusableHouse(tuple(_problem(entry) for entry in error.errors())) from None
        problems = (*_unknown_techniques(file, reference), *_unknown_choices(file, reference))
        problems += _unknown_sizes(file, reference)
        if problems:
            raise UnusableHouse(problems)
        return cls(file)

    @property
    def is_shipped(self) -> bool:
        """Whether nothing is overridden."""
        return self.file == HouseFile(note=self.file.note)

    def severity(self, rule: str) -> SeverityWord | None:
        """Return the severity that the coach gave a rule (``right`` switches it off), if any."""
        return self.file.severity.get(rule)

    def choice(self, disagreement: str, reference: Reference) -> tuple[str, ...]:
        """Return the positions taken in a disagreement: the coach's, else the shipped ones."""
        return self.file.disagreements.get(disagreement) or reference.disagreements[disagreement].house

    def entries(self) -> dict[str, Any]:
        """Return what the house file should hold, ready for the store; empty parts are left out."""
        found = self.file.model_dump(mode="json", exclude_none=True, exclude_defaults=True)
        return _without_empty(_spans_as_lists(found))

    def overrides(self, reference: Reference, technique: Technique) -> tuple[str, ...]:
        """Return which parts of a technique the house overrides, as ``lines.fluorocarbon`` or ``drag``."""
        ruled = self._for(reference, technique.id)
        if ruled is None:
            return ()
        lines = tuple(f"lines.{kind}" for kind in ruled.lines)
        leader = ("leader",) if ruled.leader != HouseLeader() else ()
        return lines + leader + (("drag",) if ruled.drag != HouseDrag() else ())

    def apply(self, reference: Reference) -> Reference:
        """Return the reference as the house sees it."""
        if self.is_shipped:
            return reference
        techniques = {key: self._seen(reference, row) for key, row in reference.techniques.items()}
        limits = tuple(
            row.model_copy(update=_given(self.file.spinning_limits.get(row.label)))
            for row in reference.spinning_limits
        )
        return reference.model_copy(update={"techniques": techniques, "spinning_limits": limits})

    def _for(self, reference: Reference, technique_id: str) -> HouseTechnique | None:
        ruled = {reference.technique(name).id: row for name, row in self.file.techniques.items()}
        return ruled.get(technique_id)

    def _seen(self, reference: Reference, technique: Technique) -> Technique:
        seen = technique
        if _RESTLESS[1] in self.choice(_RESTLESS[0], reference) and _never_rests(technique):
            seen = _with_fluorocarbon(technique)
        ruled = self._for(reference, technique.id)
        if ruled is None:
            return seen
        lines = {kind: _ruled_line(row, ruled.lines.get(kind)) for kind, row in seen.lines.items()}
        leader = seen.leader.model_copy(update=_given(ruled.leader))
        drag = seen.drag.model_copy(update=_given(ruled.drag))
        return seen.model_copy(update={"lines": lines, "leader": leader, "drag": drag})


def _given(part: Frozen | None) -> dict[str, Any]:
    if part is None:
        return {}
    found = {name: getattr(part, name) for name in type(part).model_fields}
    return {name: value for name, value in found.items() if value is not None}


def _ruled_line(line: LinePractice, ruled: HouseLine | None) -> LinePractice:
    if ruled is None:
        return line
    return line.model_copy(update={"reason": HOUSE_REASON, "derived_default": False, **_given(ruled)})


def _never_rests(technique: Technique) -> bool:
    steady = technique.retrieve_load == (RetrieveLoad.STEADY,)
    return technique.is_surface and steady and technique.lines[LineType.FLUOROCARBON].rank is Rank.NEVER


def _with_fluorocarbon(technique: Technique) -> Technique:
    nylon = technique.lines[LineType.NYLON]
    line = LinePractice(
        rank=Rank.WORKS,
        test_lb=nylon.test_lb,
        reason="The house lets it pass on a lure that never rests.",
    )
    return technique.model_copy(update={"lines": {**technique.lines, LineType.FLUOROCARBON: line}})


def _listed(entries: Mapping[str, Any]) -> dict[str, Any]:
    """Let a single position stand without brackets."""
    choices = entries.get("disagreements")
    if not isinstance(choices, Mapping):
        return dict(entries)
    listed = {key: [value] if isinstance(value, str) else value for key, value in choices.items()}
    return {**entries, "disagreements": listed}


def _problem(entry: Any) -> HouseProblem:
    where = ".".join(str(part) for part in entry["loc"])
    if entry["type"] == "extra_forbidden":
        return HouseProblem(where, "a name that means nothing here", "expected a name of the house file")
    message = str(entry["msg"]).removeprefix("Value error, ")
    return HouseProblem(where, repr(entry["input"]), message[:1].lower() + message[1:])


def _unknown_techniques(file: HouseFile, reference: Reference) -> tuple[HouseProblem, ...]:
    found = []
    for name in file.techniques:
        try:
            reference.technique(name)
        except UnknownName as error:
            found.append(HouseProblem(f"techniques.{name}", f"“{name}”", str(error)))
    return tuple(found)


def _unknown_choices(file: HouseFile, reference: Reference) -> tuple[HouseProblem, ...]:
    found = []
    for key, chosen in file.disagreements.items():
        row = reference.disagreements.get(key)
        known = list(reference.disagreements) if row is None else [side.id for side in row.positions]
        wrong = [key] if row is None else [name for name in chosen if name not in known]
        if wrong or not chosen:
            expected = f"expected {', '.join(known)}"
            found.append(HouseProblem(f"disagreements.{key}", ", ".join(wrong) or "nothing", expected))
    return tuple(found)


def _unknown_sizes(file: HouseFile, reference: Reference) -> tuple[HouseProblem, ...]:
    known = [row.label for row in reference.spinning_limits]
    return tuple(
        HouseProblem(f"spinning_limits.{size}", f"“{size}”", f"expected {', '.join(known)}")
        for size in file.spinning_limits
        if size not in known
    )


def _spans_as_lists(value: Any) -> Any:
    if isinstance(value, dict):
        if set(value) == {"low", "high"}:
            return [value["low"], value["high"]]
        return {key: _spans_as_lists(inner) for key, inner in value.items()}
    return value


def _without_empty(value: dict[str, Any]) -> dict[str, Any]:
    cleaned = {
        key: _without_empty(inner) if isinstance(inner, dict) else inner for key, inner in value.items()
    }
    return {key: inner for key, inner in cleaned.items() if inner not in ({}, [], "")}
