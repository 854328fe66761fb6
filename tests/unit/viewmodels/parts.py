"""Benches, desks and cards for the tests of view-models and views."""

import json
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from rigbuilder import resources
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference, load
from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore
from rigbuilder.store.drafts import Drafts
from rigbuilder.store.history import History
from rigbuilder.store.process import Process
from rigbuilder.store.settings import SettingsFile
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.desk import Desk
from rigbuilder.viewmodels.draftkeeper import DraftKeeper
from rigbuilder.viewmodels.preferences import Preferences


@cache
def reference() -> Reference:
    """The shipped reference, loaded once."""
    return load()


def demo_card() -> dict[str, Any]:
    """The ready card: a frog on sinking line."""
    document: dict[str, Any] = json.loads(resources.read_text("demo", "pad-frog.rigcard"))
    return document


def make_bench(document: dict[str, Any] | None = None) -> Bench:
    """A bench with a card on it, the ready one if none is given."""
    return Bench(demo_card() if document is None else document, reference(), House.shipped())


@dataclass
class Room:
    """A bench with a desk over fresh folders."""

    bench: Bench
    desk: Desk
    store: CardStore
    preferences: Preferences
    drafts: Path


def make_room(folder: Path, *, process: Process | None = None) -> Room:
    """A room of its own in ``folder``, as another program would have it with another ``process``."""
    store = CardStore(folder / "cards", history=History(folder / "history"), bin_=Bin(folder / "bin"))
    bench = make_bench({})
    preferences = Preferences(SettingsFile(folder / "config" / "settings.json"), bench)
    keeper = DraftKeeper(Drafts(folder / "drafts", process), store, bench)
    desk = Desk(bench, store, keeper, preferences, bench)
    desk.new("frog")
    return Room(bench, desk, store, preferences, folder / "drafts")


def save_card(folder: Path, document: dict[str, Any] | None = None, name: str = "frog.rigcard") -> Path:
    """Put a card into ``folder`` as a file."""
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / name
    path.write_text(json.dumps(demo_card() if document is None else document), encoding="utf-8")
    return path
