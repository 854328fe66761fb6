"""Which cards, sets and lessons were dropped onto a window."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QUrl

CARD, SET, LESSON = ".rigcard", ".rigset", ".riglesson"


def card_dropped(urls: Sequence[QUrl]) -> Path | str:
    """Return the card, set or lesson that was dropped, or a sentence that says why there is none."""
    known = [path for path in _files(urls) if is_card(path) or is_set(path) or is_lesson(path)]
    if len(known) == 1:
        return known[0]
    if known:
        return "One file at a time: drop a single card or lesson here, or several cards onto the library."
    return (
        "Only a rig card can be opened here: a file whose name ends in .rigcard; "
        "or a set of cards (.rigset), or a lesson (.riglesson)."
    )


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


def is_lesson(path: Path) -> bool:
    """Whether a file is named as a lesson."""
    return path.suffix.casefold() == LESSON


def _files(urls: Sequence[QUrl]) -> list[Path]:
    return [Path(url.toLocalFile()) for url in urls if url.isLocalFile()]
