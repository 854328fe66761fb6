"""What the actions of the library do: they ask where needed, tell what was done, and offer the way back."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog, QWidget

from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.compare_cards import compare_cards
from rigbuilder.viewmodels.desk import Desk
from rigbuilder.viewmodels.library_bench import OnBench
from rigbuilder.viewmodels.library_deeds import Deeds, tags_in
from rigbuilder.viewmodels.library_done import Deed, Trail
from rigbuilder.viewmodels.library_lines import Card
from rigbuilder.viewmodels.library_versions import Earlier, restore_version
from rigbuilder.views.controls.ask import Ask, WindowAsk
from rigbuilder.views.library_tags import AskTags, WindowAskTags

SETS = "Card sets (*.rigset)"
AskFolder = Callable[[Path], Path | None]


@dataclass(frozen=True, slots=True)
class Asking:
    """Everything the library may ask; tests answer in its place."""

    ask: Ask
    tags: AskTags
    folder: AskFolder


def window_asking(over: QWidget) -> Asking:
    """Return what asks with dialogs over a window."""

    def folder(start: Path) -> Path | None:
        name = QFileDialog.getExistingDirectory(over, "Show the cards of a folder", str(start))
        return Path(name) if name else None

    return Asking(WindowAsk(over), WindowAskTags(over), folder)


class LibraryWork(QObject):
    """Acts on cards; ``done`` carries each deed, also one that could not be done."""

    done = Signal(object)
    compared = Signal(object)  # a Comparison

    def __init__(
        self, desk: Desk, bench: Bench, asking: Asking, folder: Callable[[], Path], parent: QObject
    ) -> None:
        super().__init__(parent)
        self._desk, self._bench, self._asking = desk, bench, asking
        self._folder = folder  # the one that is shown
        self._deeds = Deeds(desk.store, OnBench(desk, bench))
        self.trail = Trail()

    def rename(self, card: Card, title: str) -> None:
        """Give a card another name."""
        self._do(self._deeds.rename(card.path, title))

    def retag(self, card: Card, text: str) -> None:
        """Give a card the tags that were written."""
        self._do(self._deeds.set_tags({card.path: tags_in(text)}))

    def tags(self, cards: Sequence[Card], known: Sequence[str]) -> None:
        """Ask for tags and change them."""
        present = sorted({tag for card in cards for tag in card.tags}, key=str.casefold)
        if not cards or (answer := self._asking.tags(len(cards), present, known)) is None:
            return
        self._do(self._deeds.tag(_paths(cards), *answer))

    def duplicate(self, cards: Sequence[Card]) -> None:
        """Copy cards."""
        self._do(self._deeds.duplicate(_paths(cards)))

    def delete(self, cards: Sequence[Card]) -> None:
        """Move cards into the bin."""
        if cards:
            self._do(self._deeds.delete(_paths(cards)))

    def bring_back(self, binned: Sequence[object]) -> None:
        """Bring deleted cards back."""
        self._do(self._deeds.bring_back(binned))  # type: ignore[arg-type]

    def bring_version_back(self, card: Card, earlier: Earlier) -> None:
        """Save an earlier version of a card as its newest."""
        self._do(restore_version(self._desk.store, card.path, earlier))

    def compare(self, cards: Sequence[Card], *, with_bench: bool = False) -> None:
        """Put cards side by side."""
        found = compare_cards(_paths(cards), self._desk, self._bench, with_bench=with_bench)
        if isinstance(found, str):
            self._do(Deed(troubles=(found,)))
        else:
            self.compared.emit(found)

    def export(self, cards: Sequence[Card]) -> None:
        """Pack cards into one file."""
        start = self._desk.store.folder.parent / "cards.rigset"
        target = self._asking.ask.save_path("Export cards as a set", start, SETS)
        if target is not None:
            target = target if target.suffix == ".rigset" else target.with_name(f"{target.name}.rigset")
            self._do(self._deeds.export(_paths(cards), target))

    def take_in(self, paths: Sequence[Path]) -> None:
        """Bring the cards of files into the folder that is shown."""
        for path in paths:
            self._do(self._deeds.take_in(path, self._folder()))

    def copy(self, cards: Sequence[Card]) -> None:
        """Put cards on the clipboard as text."""
        text, deed = self._deeds.as_text(_paths(cards))
        if text:
            QGuiApplication.clipboard().setText(text)
        self._do(deed)

    def paste(self) -> None:
        """Bring the cards in the clipboard's text in."""
        self._do(self._deeds.paste(QGuiApplication.clipboard().text(), self._folder()))

    def step(self, *, back: bool) -> None:
        """Take the last deed back, or do again what was taken back."""
        self.done.emit(self.trail.undo() if back else self.trail.redo())

    def _do(self, deed: Deed) -> None:
        self.done.emit(self.trail.add(deed))


def _paths(cards: Sequence[Card]) -> list[Path]:
    return [card.path for card in cards]
