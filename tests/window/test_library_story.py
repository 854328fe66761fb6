"""The library in a real window, by keys alone; and a second start that comes to the open window."""

import time
from collections.abc import Callable
from pathlib import Path

from rigbuilder.model.usual import usual_document
from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore
from rigbuilder.store.history import History
from tests.unit.viewmodels.parts import save_card
from tests.window.desk import Desk, Program, wait_for


def own_cards(home: Path) -> CardStore:
    data = home / ".local" / "share" / "Rigbuilder"
    return CardStore(data / "cards", history=History(data / "history"), bin_=Bin(data / "bin"))


def test_a_card_is_found_renamed_deleted_brought_back_and_opened_by_keys(
    start: Callable[..., Program], desk: Desk, home: Path
) -> None:
    store = own_cards(home)
    for technique, name in (("drop-shot", "Wall rod"), ("ned", "Bank rod"), ("frog", "Pad rod")):
        store.create(usual_document(technique) | {"id": technique, "name": name})
    program = start()
    program.window("Hollow-body frog")
    desk.key("ctrl+l")
    program.window("Library")
    desk.type("technique:shot")
    time.sleep(0.5)  # nothing outside the window tells that the search has been made
    desk.key("Down", "F2", "ctrl+a")
    desk.type("Wall rod, drop shot")
    desk.key("Return")
    wait_for(
        lambda: any("drop shot" in each["name"] for each in _documents(store)), "the new name on the disk"
    )
    desk.key("Delete")
    wait_for(lambda: len(_documents(store)) == 2, "the card to be gone")
    desk.key("ctrl+z")
    wait_for(lambda: len(_documents(store)) == 3, "the card to come back")
    desk.key("Return")
    program.wait_for_title("Wall rod, drop shot")
    program.window("Wall rod, drop shot")
    desk.key("ctrl+q")
    assert program.wait() == 0


def test_a_second_start_comes_to_the_open_window(
    start: Callable[..., Program], tmp_path: Path, desk: Desk
) -> None:
    card = save_card(tmp_path / "own")
    program = start()
    program.window("Hollow-body frog")
    second = start(card)
    assert second.wait() == 0
    program.window("Pad frog, rod 3")
    assert start().wait() == 0
    desk.key("ctrl+q")
    assert program.wait() == 0


def _documents(store: CardStore) -> list[dict[str, object]]:
    return [entry.document for entry in store.entries() if entry.document is not None]
