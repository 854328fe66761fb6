"""Undoable edits: one command holds the document before and after, whole."""

from collections.abc import Callable

from PySide6.QtGui import QUndoCommand

from rigbuilder.model.document import Document

_MERGING = 1


class Edit(QUndoCommand):
    """One change of the document. Edits of the same field in a row become one step."""

    def __init__(
        self,
        text: str,
        before: Document,
        after: Document,
        show: Callable[[Document], None],
        *,
        field: str = "",
    ) -> None:
        super().__init__(text)
        self._before = before
        self.after = after
        self._show = show
        self.field = field

    def id(self) -> int:
        """Return the merge class: only edits of a field may merge."""
        return _MERGING if self.field else -1

    def mergeWith(self, other: QUndoCommand) -> bool:  # noqa: N802 - Qt's name
        """Take over a later edit of the same field; back at the start the step vanishes."""
        if not isinstance(other, Edit) or not self.field or other.field != self.field:
            return False
        self.after = other.after
        self.setObsolete(self.after == self._before)
        return True

    def redo(self) -> None:
        """Show the document as it is after the edit."""
        self._show(self.after)

    def undo(self) -> None:
        """Show the document as it was before."""
        self._show(self._before)
