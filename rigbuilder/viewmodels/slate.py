"""The slate: one document, what it means, and every change of it as one undoable edit."""

from collections.abc import Mapping
from typing import Any

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoStack

from rigbuilder.model.document import Document, drop, get, is_said, put, put_all
from rigbuilder.model.fields import BY_PATH
from rigbuilder.model.reading import Reading, read
from rigbuilder.reference.load import Reference
from rigbuilder.viewmodels.edits import Edit


class Slate(QObject):
    """The card as typed. Value in, value out: an edit makes a new document, everything follows from it."""

    document_changed = Signal(object)
    reading_changed = Signal(object)

    def __init__(self, document: Document, reference: Reference, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._reference = reference
        self._document = document
        self._reading = read(document, reference)
        self.undo_stack = stack = QUndoStack(self)
        # A stack empties itself as it is destroyed; nobody is to hear of that.
        self.destroyed.connect(lambda: stack.blockSignals(True))

    @property
    def document(self) -> Document:
        """Return the card as typed."""
        return self._document

    @property
    def reading(self) -> Reading:
        """Return what the card means, with its problems and assumptions."""
        return self._reading

    @property
    def reference(self) -> Reference:
        """Return the reference tables."""
        return self._reference

    def text(self, path: str) -> str | None:
        """Return what the card says at ``path``, ``None`` for nothing or "there is none"."""
        found = get(self._document, path)
        return found if isinstance(found, str) else None

    def says(self, path: str) -> bool:
        """Tell whether the card itself says something at ``path``."""
        return is_said(self._document, path)

    def edit(self, path: str, value: Any, *, along: Mapping[str, Any] | None = None) -> None:
        """Put a value on the card as one undoable step; typing on in one field stays one step.

        ``along`` are further changes without which the value would make no sense.
        """
        after = put(put_all(self._document, along or {}), path, value)
        self._push(f"change {field_words(path)}", after, field=path)

    def clear(self, path: str) -> None:
        """Say nothing at ``path`` any more; a group that says nothing goes as well."""
        self._push(f"clear {field_words(path)}", _cleared(self._document, path), field=path)

    def settle(self) -> None:
        """End the run of typing: the next edit of the same field is a step of its own."""
        stack = self.undo_stack
        if stack.count() and stack.index() == stack.count():
            last = stack.command(stack.index() - 1)
            if isinstance(last, Edit):
                last.field = ""

    def apply(self, changes: Mapping[str, Any], text: str) -> None:
        """Make several changes as one undoable step."""
        self._push(text, put_all(self._document, changes))

    def replace(self, document: Document) -> None:
        """Put another card on the slate; its history begins here."""
        self.undo_stack.clear()
        self.undo_stack.setClean()  # clearing an empty stack leaves it as dirty as it was
        self._show(document)

    def _push(self, text: str, after: Document, *, field: str = "") -> None:
        if after != self._document:
            self.undo_stack.push(Edit(text, self._document, after, self._show, field=field))

    def _show(self, document: Document) -> None:
        self._document = document
        self._reading = read(document, self._reference)
        self._follow()
        self.document_changed.emit(document)
        self.reading_changed.emit(self._reading)

    def _follow(self) -> None:
        """Bring up to date what is kept about the document, before anyone is told."""


_TITLES = {
    "pinned": "what is pinned",
    "silenced": "silenced reasons",
    "tags": "tags",
    "log": "log",
    "main.price": "price of the main line",
    "leader.price": "price of the leader",
    "backing.price": "price of the backing",
    "lure.buoyancy": "lure at rest",
    "lure.depth": "depth of the lure",
    "main.convention": "reading of the main line test",
    "leader.convention": "reading of the leader test",
    "backing.convention": "reading of the backing test",
    "reel.spool.arbor": "diameter of the bare spool",
    "reel.spool.rim": "diameter of the rim",
    "reel.spool.width": "width of the spool",
    "fill.backing": "backing wished for",
    "fill.main": "main line wished for",
    "fill.lip_gap": "lip gap wished for",
    "fill.season_refills": "refills a year",
    "fill.taped": "tape on the spool",
    "fish.weight": "weight of the fish",
    "fish.teeth": "toothed fish",
}
_GROUPS = {"main": "main line", "knots": "knot", "hardware": "hardware"}


def field_words(path: str) -> str:
    """Return a field's name as it stands in the middle of a sentence, e.g. ``main line test``."""
    for inside in (".price", "log"):
        if f"{inside}." in path:
            path = path[: path.index(f"{inside}.") + len(inside)]
    field = BY_PATH.get(path)
    if path in _TITLES or field is None:
        return _TITLES.get(path, _GROUPS.get(path, path))
    label = field.label[0].lower() + field.label[1:]
    group = path.partition(".")[0]
    if "." not in path or label.startswith(group):
        return label
    return f"{_GROUPS.get(group, group)} {label}"


def _cleared(document: Document, path: str) -> Document:
    after = drop(document, path)
    group = path.rpartition(".")[0]
    while group and get(after, group) == {}:
        after = drop(after, group)
        group = group.rpartition(".")[0]
    return after
