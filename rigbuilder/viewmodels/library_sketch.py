"""What the small drawing of a card shows, from its row alone: lines, lure, surface or not."""

from dataclasses import dataclass

from rigbuilder.reference.load import Reference, UnknownName
from rigbuilder.reference.words import LineType
from rigbuilder.store.rows import Row
from rigbuilder.store.search import LINE_WORDS

_LINES = {str(kind) for kind in LineType}
_PER_LINE = 4  # type, test, diameter and label of main line, leader and backing stand in a row's line words
_PARTS = 3


@dataclass(frozen=True, slots=True)
class Sketch:
    """A rig in four words; empty where the card does not say."""

    main: str = ""
    leader: str = ""
    lure: str = ""
    surface: bool = False

    @property
    def spoken(self) -> str:
        """Return the sketch as read aloud."""
        lines = f"{self.main or 'unknown line'}{f', {self.leader} leader' if self.leader else ''}"
        return f"{lines}, lure {'on' if self.surface else 'below'} the surface"


class Sketcher:
    """Makes sketches, each technique looked up once."""

    def __init__(self, reference: Reference) -> None:
        self._reference = reference
        self._known: dict[str, tuple[str, bool]] = {}

    def sketch(self, row: Row) -> Sketch:
        """Return the sketch of a card."""
        words = row.line_words.split("\n")
        whole = len(words) == _PER_LINE * _PARTS
        lure, surface = self._lure(row.technique)
        return Sketch(
            _kind(words[0]) if whole else "", _kind(words[_PER_LINE]) if whole else "", lure, surface
        )

    def _lure(self, technique: str) -> tuple[str, bool]:
        if technique not in self._known:
            try:
                found = self._reference.technique(technique)
                self._known[technique] = (str(found.lure_class), found.is_surface)
            except UnknownName:
                self._known[technique] = ("", False)
        return self._known[technique]


def _kind(word: str) -> str:
    kind = LINE_WORDS.get(word, word)
    return kind if kind in _LINES else ""
