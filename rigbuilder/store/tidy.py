"""What is done with the folders when the program starts, before anything is opened."""

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from rigbuilder.store import atomic
from rigbuilder.store.drafts import Drafts
from rigbuilder.store.history import History
from rigbuilder.store.importing import finish_imports
from rigbuilder.store.lock import sweep_notices
from rigbuilder.store.paths import Places


@dataclass(frozen=True, slots=True)
class Tidied:
    """How many remnants of killed programs were removed, and cards of interrupted imports brought in."""

    removed: int
    imported: int


def tidy(places: Places, folders: Iterable[Path] = ()) -> Tidied:
    """Clear up after programs that were killed; ``folders`` are other places where cards lie.

    Never raises and never touches what is not the program's own remnant.
    """
    card_folders = {places.cards, *folders}
    imported = sum(map(finish_imports, card_folders))
    removed = sum(map(atomic.sweep, {*card_folders, places.bin, places.config, places.cache}))
    removed += sum(map(sweep_notices, card_folders))
    removed += History(places.history).sweep()
    removed += Drafts(places.drafts).sweep()
    return Tidied(removed, imported)
