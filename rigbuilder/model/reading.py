"""From a card as typed to a rig: every field read, every problem kept, nothing guessed in silence."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from pydantic import ValidationError

from rigbuilder.model import building, lists
from rigbuilder.model.assume import Assumed, Assumptions
from rigbuilder.model.document import Document, get, is_said, put_all
from rigbuilder.model.fields import BY_PATH, FIELDS, GROUPS
from rigbuilder.model.labelled import capacities, label_values
from rigbuilder.model.labels.understand import understand
from rigbuilder.model.labels.understood import Understanding
from rigbuilder.model.problems import CardUnreadable, Problem, quoted
from rigbuilder.model.rig import Capacity, Rig
from rigbuilder.model.values import FieldError, expected_words, read_value
from rigbuilder.reference.load import Reference

_OPTIONAL_GROUPS = ("leader", "backing")


@dataclass(frozen=True, slots=True)
class Reading:
    """What a card means: a rig when it can be read, the problems when it cannot, and what was assumed."""

    document: Document
    rig: Rig | None
    problems: tuple[Problem, ...]
    assumed: tuple[Assumed, ...] = ()
    labels: Mapping[str, Understanding] = field(default_factory=dict)


def read(document: Document, reference: Reference) -> Reading:
    """Read a card; never raises for what a person may have typed."""
    reader = _Reader(document, reference)
    return reader.read()


def read_rig(document: Document, reference: Reference, *, file: str = "the card") -> Reading:
    """Read a card that must make a rig.

    Raises:
        CardUnreadable: naming the file, and for each field what was found and what is expected.
    """
    reading = read(document, reference)
    if reading.rig is None:
        raise CardUnreadable(reading.problems, file=file)
    return reading


def completed(reading: Reading) -> Document:
    """Return the card with everything that was assumed written onto it."""
    return put_all(
        reading.document,
        {entry.field: entry.value for entry in reading.assumed if entry.field != "backing.length"},
    )


class _Reader:
    """Reads one document; the state of a single call of ``read``."""

    def __init__(self, document: Document, reference: Reference) -> None:
        self._document = document
        self._reference = reference
        self._values: dict[str, Any] = {}
        self._problems: list[Problem] = []
        self._labels: dict[str, Understanding] = {}

    def read(self) -> Reading:
        self._check_groups()
        for spec in FIELDS:
            self._read_field(spec.path)
        self._read_labels()
        said = frozenset(self._values)
        self._check_required()
        extra = lists.read_lists(self._document, self._problems)
        assumed = Assumptions(self._document, self._values, self._reference).collect()
        rig = None if self._problems else self._build(assumed, extra, said)
        return Reading(self._document, rig, tuple(self._problems), tuple(assumed), self._labels)

    def _problem(self, path: str, found: object, expected: str, hint: str = "") -> None:
        self._problems.append(Problem(path, quoted(found), expected, hint))

    def _check_groups(self) -> None:
        for group in (*GROUPS, "main.measured", "leader.measured"):
            found = get(self._document, group)
            if found is not None and not isinstance(found, Mapping):
                self._problem(group, found, "a group of fields in braces")

    def _read_field(self, path: str) -> None:
        if not is_said(self._document, path):
            return
        text = get(self._document, path)
        spec = BY_PATH[path]
        if text is None:
            if not spec.required:
                self._values[path] = None
            return
        try:
            self._values[path] = read_value(spec, text, self._reference)
        except FieldError as error:
            self._problems.append(error.problem)

    def _read_labels(self) -> None:
        for kind in ("rod", "reel"):
            text = self._values.get(f"{kind}.label")
            if text:
                self._labels[f"{kind}.label"] = understanding = understand(kind, text)
                for path, value in label_values(understanding).items():
                    self._values.setdefault(path, value)
        self._read_capacities()

    def _read_capacities(self) -> None:
        texts = self._values.get("reel.capacity")
        if not texts or isinstance(texts[0], Capacity):
            return
        found: list[Capacity] = []
        for text in texts:
            entries = capacities(understand("reel", text))
            if not entries:
                self._problem("reel.capacity", text, expected_words(BY_PATH["reel.capacity"]))
            found.extend(entries)
        self._values["reel.capacity"] = tuple(found)

    def _check_required(self) -> None:
        wrong = {problem.field for problem in self._problems}
        for spec in FIELDS:
            missing = spec.required and self._values.get(spec.path) is None
            if missing and not wrong & {spec.path, spec.path.split(".")[0]}:
                self._problem(spec.path, None, expected_words(spec))
        silent = self._values.get("rod.label") is None and self._values.get("rod.line") is None
        if silent and not wrong & {"rod", "rod.label", "rod.line"}:
            self._problem("rod", None, "a rod label, or at least the rod's line range")
        self._check_groups_whole(wrong)

    def _check_groups_whole(self, wrong: set[str]) -> None:
        for group in _OPTIONAL_GROUPS:
            if isinstance(get(self._document, group), Mapping):
                for key in ("type", "test") if group == "leader" else ("type",):
                    path = f"{group}.{key}"
                    if self._values.get(path) is None and path not in wrong:
                        self._problem(
                            path, None, expected_words(BY_PATH[path]), f"Write null for no {group} at all."
                        )

    def _build(self, assumed: list[Assumed], extra: dict[str, Any], said: frozenset[str]) -> Rig | None:
        values = dict(self._values)
        for entry in assumed:
            spec = BY_PATH.get(entry.field)
            if spec is not None and entry.value is not None:
                values[entry.field] = read_value(spec, entry.value, self._reference)
        try:
            return building.build(values, extra, said)
        except ValidationError as error:
            for wrong in error.errors():
                self._problem(".".join(map(str, wrong["loc"])), wrong.get("input"), wrong["msg"])
            return None
