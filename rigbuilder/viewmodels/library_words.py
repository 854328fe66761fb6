"""What the library says of a card, column by column, to the eye and to the ear."""

from enum import IntEnum

from rigbuilder.store.rows import Row
from rigbuilder.viewmodels.library import CardLibrary
from rigbuilder.viewmodels.library_lines import VERDICTS, changed_words
from rigbuilder.viewmodels.library_sketch import Sketch, Sketcher


class Column(IntEnum):
    """The columns."""

    DRAWING = 0
    NAME = 1
    TECHNIQUE = 2
    LINE = 3
    VERDICT = 4
    TAGS = 5
    CHANGED = 6


TITLES = ("", "Name", "Technique", "Line", "Verdict", "Tags", "Changed")


class CardWords:
    """Puts a card into words."""

    def __init__(self, library: CardLibrary, sketcher: Sketcher) -> None:
        self._library, self._sketcher = library, sketcher

    def verdict(self, row: Row) -> str:
        """Return the key of a card's verdict."""
        return self._library.verdict(row)

    def sketch(self, row: Row) -> Sketch:
        """Return the small drawing's content for a card."""
        return self._sketcher.sketch(row)

    def remark(self, row: Row) -> str:
        """Return what is out of the ordinary with a card's file."""
        if row.trouble:
            return row.trouble
        if row.file_name in self._library.conflicts:
            return f"conflict copy of {self._library.conflicts[row.file_name]}"
        return "same origin as another card" if row.file_name in self._library.twins else ""

    def text(self, row: Row, column: Column) -> str:
        """Return what stands in a cell."""
        match column:
            case Column.NAME:
                return " ".join(row.name.split())
            case Column.TECHNIQUE:
                return row.technique
            case Column.LINE:
                return row.line
            case Column.VERDICT:
                return VERDICTS[self._library.verdict(row)]
            case Column.TAGS:
                return ", ".join(row.tags)
            case Column.CHANGED:
                return changed_words(row)
            case _:
                return ""

    def spoken(self, row: Row, column: Column) -> str:
        """Return what a cell says when it is read aloud; the name says the whole card."""
        if column is Column.DRAWING:
            return f"Drawing: {self.sketch(row).spoken}"
        remark = self.remark(row)
        if column is Column.NAME:
            said = [
                self.text(row, each) for each in (Column.NAME, Column.TECHNIQUE, Column.LINE, Column.VERDICT)
            ]
            return ", ".join(filter(None, [*said, remark]))
        return f"{TITLES[column]}: {self.text(row, column) or 'none'}"
