"""Connects the actions of the library with the cards that are chosen."""

from collections.abc import Callable

from PySide6.QtCore import QObject, QPoint, Qt, Signal

from rigbuilder.viewmodels.library import CardLibrary
from rigbuilder.viewmodels.library_lines import Card
from rigbuilder.viewmodels.library_versions import Earlier
from rigbuilder.views.library_actions import LibraryActions
from rigbuilder.views.library_list import CardList
from rigbuilder.views.library_work import Asking, LibraryWork

CARDS_AND_SETS = "Cards and sets (*.rigcard *.rigset)"


class LibraryVerbs(QObject):
    """What each action acts on."""

    opened = Signal(object)  # a path
    find_wanted = Signal()

    def __init__(
        self, library: CardLibrary, cards: CardList, acts: LibraryActions, work: LibraryWork, asking: Asking
    ) -> None:
        super().__init__(cards)
        self._library, self._list, self._work, self._asking = library, cards, work, asking
        self._menu = acts.menu(cards)
        cards.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        cards.customContextMenuRequested.connect(self._show_menu)
        acts.connect_all(
            {
                "open": lambda: self._one(lambda card: self.opened.emit(card.path)),
                "rename": cards.rename,
                "duplicate": lambda: work.duplicate(cards.cards()),
                "tags": lambda: work.tags(cards.cards(), self.known_tags()),
                "compare": lambda: work.compare(cards.cards()),
                "bench": lambda: work.compare(cards.cards(), with_bench=True),
                "copy": lambda: work.copy(cards.cards()),
                "paste": work.paste,
                "export": lambda: work.export(cards.cards()),
                "import": self._import_asked,
                "delete": lambda: work.delete(cards.cards()),
                "undo": lambda: work.step(back=True),
                "redo": lambda: work.step(back=False),
                "find": self.find_wanted.emit,
                "folder": self._another_folder,
            }
        )

    def bring_version_back(self, version: Earlier) -> None:
        """Bring an earlier version of the chosen card back."""
        self._one(lambda card: self._work.bring_version_back(card, version))

    def known_tags(self) -> list[str]:
        """Return all tags that are on any card."""
        tags = {tag for row in self._library.rows.values() for tag in row.tags}
        return sorted(tags, key=str.casefold)

    def _one(self, act: Callable[[Card], object]) -> None:
        cards = self._list.cards()
        if len(cards) == 1:
            act(cards[0])

    def _import_asked(self) -> None:
        start = self._library.folder.parent
        path = self._asking.ask.open_path("Import cards", start, CARDS_AND_SETS)
        if path is not None:
            self._work.take_in([path])

    def _another_folder(self) -> None:
        folder = self._asking.folder(self._library.folder)
        if folder is not None:
            self._library.turn_to(folder)

    def _show_menu(self, place: QPoint) -> None:
        self._menu.popup(self._list.viewport().mapToGlobal(place))
