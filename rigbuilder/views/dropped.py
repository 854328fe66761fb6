"""Which card was dropped onto the window."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QUrl


def card_dropped(urls: Sequence[QUrl]) -> Path | str:
    """Return the card among what was dropped, or a sentence that says why there is none."""
    files = [Path(url.toLocalFile()) for url in urls if url.isLocalFile()]
    cards = [path for path in files if path.suffix.casefold() == ".rigcard"]
    if len(cards) == 1:
        return cards[0]
    if cards:
        return "One card at a time: drop a single .rigcard file."
    return "Only a rig card can be opened here: a file whose name ends in .rigcard."
