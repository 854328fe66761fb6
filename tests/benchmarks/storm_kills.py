"""Kill a saving program at random moments, thousands of times, and count what was lost.

Run: python -m tests.benchmarks.storm_kills [KILLS] [SEED]

Each round a program saves one card over and over and reports every save that
returned. After a SIGKILL at a random moment the card must be whole and hold
the last reported save or the one under way; after the next start nothing of
the killed one may be left. Every tenth round imports a set of cards instead:
all of them must be there, or none.
"""

import json
import os
import random
import signal
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore
from rigbuilder.store.errors import StoreError
from rigbuilder.store.history import History
from rigbuilder.store.importing import import_cards
from rigbuilder.store.paths import Places
from rigbuilder.store.tidy import tidy

SET_SIZE = 12


def card(number: int, identity: str) -> dict[str, object]:
    notes = f"save {number} " + "retie after every third fish; " * 600
    return {
        "format": "rigbuilder.card",
        "version": 1,
        "id": identity,
        "name": "Storm",
        "notes": notes,
        "n": number,
    }


def places_in(root: Path) -> Places:
    return Places(root / "data", root / "config", root / "state", root / "cache")


def store_in(places: Places) -> CardStore:
    return CardStore(places.cards, history=History(places.history), bin_=Bin(places.bin))


def save_for_ever(store: CardStore, path: Path, pipe: int) -> None:
    loaded = store.load(path)
    number, fingerprint = loaded.document["n"], loaded.fingerprint
    while True:
        number += 1
        fingerprint = store.save(card(number, "storm"), path, expected=fingerprint).fingerprint
        os.write(pipe, number.to_bytes(8, "little"))


def import_once(places: Places, first: int) -> None:
    import_cards([card(first + each, f"set-{first + each}") for each in range(SET_SIZE)], places.cards)
    signal.pause()


def killed_after(work: Callable[[int], None], delay_s: float) -> bytes:
    """Run ``work(pipe)`` in a process of its own, kill it, and return what it had reported."""
    read, write = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(read)
        try:
            work(write)
        finally:
            os._exit(70)  # only reached when the work fails by itself
    os.close(write)
    time.sleep(delay_s)
    os.kill(child, signal.SIGKILL)
    _, status = os.waitpid(child, 0)
    with os.fdopen(read, "rb") as reports:
        told = reports.read()
    if not os.WIFSIGNALED(status):
        raise RuntimeError("the saving program failed by itself")
    return told


class Tally(dict[str, int]):
    def add(self, what: str, count: int = 1) -> None:
        self[what] = self.get(what, 0) + count


def leftovers(places: Places) -> int:
    return sum(1 for path in places.data.rglob(".rigbuilder-*"))


def round_of_saves(places: Places, store: CardStore, path: Path, tally: Tally, delay_s: float) -> None:
    before = store.load(path).document["n"]
    told = killed_after(lambda pipe: save_for_ever(store, path, pipe), delay_s)
    whole = len(told) - len(told) % 8
    last = int.from_bytes(told[whole - 8 : whole], "little") if whole else before
    tally.add("acknowledged saves", max(0, last - before))
    tally.add("remnants found", leftovers(places))
    try:
        number = store.load(path).document["n"]
        tally.add("lost acknowledged saves", number < last)
        tally.add("in no possible state", number not in (last, last + 1))
    except StoreError as trouble:
        tally.add("torn or unreadable cards")
        sys.exit(f"{path}: {trouble}")


def round_of_import(places: Places, first: int, tally: Tally, delay_s: float) -> None:
    killed_after(lambda pipe: import_once(places, first), delay_s)
    tidy(places)
    numbers = [json.loads(path.read_bytes())["n"] for path in places.cards.glob("*.rigcard")]
    came = sum(first <= number < first + SET_SIZE for number in numbers)
    tally.add(
        "imports whole" if came == SET_SIZE else "imports not begun" if came == 0 else "imports in part"
    )


def storm(kills: int, seed: int) -> Tally:
    chance, tally = random.Random(seed), Tally()
    for what in (
        "lost acknowledged saves",
        "torn or unreadable cards",
        "in no possible state",
        "imports in part",
    ):
        tally[what] = 0
    with tempfile.TemporaryDirectory() as name:
        places = places_in(Path(name))
        store = store_in(places)
        path = store.create(card(0, "storm")).path
        for number in range(kills):
            if number % 10 == 9:
                clear_imports(places, path)
                round_of_import(places, 1_000_000 + number * SET_SIZE, tally, chance.uniform(0, 0.15))
            else:
                round_of_saves(places, store, path, tally, chance.uniform(0, 0.04))
            tidy(places)
            tally.add("left after the next start", leftovers(places))
    return tally


def clear_imports(places: Places, keep: Path) -> None:
    for path in places.cards.glob("*.rigcard"):
        if path != keep:
            path.unlink()


def main() -> None:
    kills = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    os.nice(10)
    start = time.time()
    tally = storm(kills, seed)
    print(f"{kills:,} kills, seed {seed}, {time.time() - start:.0f} s")
    for what in sorted(tally):
        print(f"{what:<30}{tally[what]:>12,}")
    bad = ("lost acknowledged saves", "torn or unreadable cards", "in no possible state", "imports in part")
    sys.exit(any(tally[what] for what in (*bad, "left after the next start")))


if __name__ == "__main__":
    main()
