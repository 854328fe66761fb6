"""The form's side of the bench: how each field stands, and what a person does to it."""

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import QObject, Signal

from rigbuilder.model.document import get, is_said
from rigbuilder.model.fields import BY_PATH, Part
from rigbuilder.model.lists import PINNABLE
from rigbuilder.reference.load import UnknownName
from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels import choices, fieldtext
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.fieldstate import FieldState, LabelWords, field_state, label_words, place_of

GROUPS = ("leader", "backing")
USUAL, NONE, OWN = "usual", "none", "own"


class FormModel(QObject):
    """Fields by their paths on the card. ``changed`` tells that every field should look again."""

    changed = Signal()

    def __init__(self, bench: Bench, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.keeps_quiet = False  # in a lesson nothing is told of reasons before they are shown
        bench.report_changed.connect(lambda _: self.changed.emit())
        bench.units_changed.connect(lambda _: self.changed.emit())

    @property
    def system(self) -> UnitSystem:
        """Return the unit system in which bare numbers are taken."""
        return self.bench.speaker.system

    def state(self, path: str) -> FieldState:
        """Return how a field stands."""
        return field_state(self.bench.reading, path)

    def label(self, path: str) -> LabelWords:
        """Return what was made of a label."""
        return label_words(self.bench.reading, path)

    def options(self, path: str) -> choices.Options:
        """Return what a chooser offers."""
        return choices.options(path, self.bench.reference)

    def option(self, path: str, text: str) -> str:
        """Return the offered value that a text means."""
        return choices.option_of(path, text, self.bench.reference)

    def stands(self, path: str, typed: str) -> bool:
        """Tell whether what is typed in a field is what the card says already."""
        return (fieldtext.card_text(path, typed, self.system) or "") == (self.bench.text(path) or "")

    def reads(self, path: str, typed: str) -> bool:
        """Tell whether what is typed makes sense, so that it can go on the card at once."""
        return fieldtext.reads(path, fieldtext.card_text(path, typed, self.system), self.bench.reference)

    def write(self, path: str, typed: str) -> None:
        """Put what was typed or chosen on the card; an empty text says nothing any more."""
        text = fieldtext.card_text(path, typed, self.system)
        if text == "":
            self.bench.clear(path)
        elif not self.stands(path, typed) or text is None:
            self.bench.edit(path, text, along=_along(self.bench, path))

    def set_assumed(self, paths: Sequence[str]) -> None:
        """Put what is assumed for these fields on the card, as one step."""
        wanted = {group if group in GROUPS else path for path in paths for group in [path.partition(".")[0]]}
        chosen = {
            entry.field: entry.value
            for entry in self.bench.reading.assumed
            if entry.field != "backing.length"
            and (entry.field in paths or entry.field in wanted or entry.field.partition(".")[0] in wanted)
        }
        if chosen:
            self.bench.apply(chosen, "set what was assumed")

    def group(self, group: str) -> str:
        """Return whether leader or backing is left to practice, ruled out, or given on the card."""
        if not is_said(self.bench.document, group):
            return USUAL
        return NONE if get(self.bench.document, group) is None else OWN

    def has_group(self, group: str) -> bool:
        """Tell whether there is a leader or backing, said or assumed."""
        if self.group(group) != USUAL:
            return self.group(group) == OWN
        return any(entry.field == f"{group}.type" for entry in self.bench.reading.assumed)

    def set_group(self, group: str, how: str) -> None:
        """Leave leader or backing to practice, rule it out, or give it on the card."""
        if how == USUAL:
            self.bench.clear(group)
        elif how == NONE:
            self.bench.edit(group, None)
        elif self.group(group) != OWN:
            changes = _along(self.bench, f"{group}.type") or _fresh(self.bench, group)
            self.bench.apply(changes, f"give the {group}")
        self.bench.settle()

    def pinned(self, part: str) -> bool:
        """Tell whether a part is kept as it is when lines are compared."""
        found = get(self.bench.document, "pinned")
        return isinstance(found, list) and part in found

    def pin(self, part: str, on: bool) -> None:
        """Keep a part as it is when lines are compared, or let practice choose it for each line."""
        kept = [name for name in PINNABLE if (on if name == part else self.pinned(name))]
        if kept:
            self.bench.edit("pinned", kept)
        else:
            self.bench.clear("pinned")
        self.bench.settle()


def _along(bench: Bench, path: str) -> dict[str, Any]:
    """Return what is assumed of a leader or backing, which a field of it brings onto the card."""
    group = path.partition(".")[0]
    if group not in GROUPS or get(bench.document, group) is not None:
        return {}
    return {
        entry.field: entry.value
        for entry in bench.reading.assumed
        if entry.field.startswith(f"{group}.") and entry.field != "backing.length"
    }


def _fresh(bench: Bench, group: str) -> dict[str, Any]:
    """Return what a leader or backing starts from where practice uses none."""
    if group == "backing":
        return {"backing.type": "nylon"}
    try:
        technique = bench.reference.technique(bench.text("lure.technique") or "")
    except UnknownName:
        materials: tuple[str, ...] = ()
    else:
        materials = tuple(map(str, technique.leader.materials))
    kind = materials[0] if materials else "nylon"
    return {"leader.type": kind, "leader.test": bench.text("main.test") or "12 lb"}


def badge(bench: Bench, parts: frozenset[Part], *, quiet: bool = False) -> tuple[str, int]:
    """Return the worst severity in some parts of the rig, and how many reasons and problems there are.

    With ``quiet`` reasons are left out.
    """
    found = (
        []
        if bench.report is None or quiet
        else [each for each in bench.report.findings if each.part in parts]
    )
    fields = (BY_PATH.get(place_of(problem)) for problem in bench.reading.problems)
    wrong = sum(1 for field in fields if field is not None and field.part in parts)
    worst = max((each.severity for each in found), default=None)
    severity = "fault" if wrong else ("right" if worst is None else worst.word)
    return severity, len(found) + wrong
