"""Which cards and sets were dropped onto a window."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QUrl

CARD, SET = ".rigcard", ".rigset"


def card_dropped(urls: Sequence[QUrl]) -> Path | str:
    """Return the card or the set among what was dropped, or a sentence that says why there is none."""
    files = _files(urls)
    cards = [path for path in files if is_card(path)]
    sets = [path for path in files if is_set(path)]
    if len(cards) + len(sets) == 1:
        return (cards + sets)[0]
    if cards or sets:
        return "One card at a time: drop a single .rigcard file, or several onto the library."
    return "Only a rig card can be opened here: a file whose name ends in .rigcard, or a set, in .rigset."


def cards_dropped(urls: Sequence[QUrl]) -> list[Path] | str:
    """Return the cards and sets that were dropped, or a sentence that says why there are none."""
    files = _files(urls)
    taken = [path for path in files if is_card(path) or is_set(path)]
    if len(taken) < len(files) or not taken:
        others = [path.name for path in files if path not in taken]
        named = f"“{others[0]}” is neither. " if others else ""
        return (
            f"{named}Only cards (.rigcard) and sets of cards (.rigset) can be taken in; nothing was changed."
        )
    return taken


def is_card(path: Path) -> bool:
    """Whether a file is named as a card."""
    return path.suffix.casefold() == CARD


def is_set(path: Path) -> bool:
    """Whether a file is named as a set of cards."""
    return path.suffix.casefold() == SET


def _files(urls: Sequence[QUrl]) -> list[Path]:
    return [Path(url.toLocalFile()) for url in urls if url.isLocalFile()]
